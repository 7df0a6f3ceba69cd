import { api, type Answer, type Catalogue } from '../api/client.ts';
import { forgetLastJob, lastJob, rememberJob } from './drafts.ts';
import { JobSession } from './job-session.svelte.ts';

const reasonOf = (answer: Answer<unknown>): string =>
  answer.kind === 'refused' || answer.kind === 'unreachable' ? answer.reason : '';

/** Opens jobs, and says why one does not open. */
export class Opening {
  session: JobSession | null = $state.raw(null);
  trouble = $state('');
  #catalogue: Catalogue | null = null;

  async open(id: string): Promise<void> {
    if (this.session?.id === id) return;
    this.trouble = '';
    this.session = null;
    const [stored, catalogue] = await Promise.all([api.open(id), this.#theCatalogue()]);
    if (stored.kind !== 'done' || catalogue === null) {
      if (stored.kind !== 'done') this.trouble = reasonOf(stored);
      if (lastJob() === id) forgetLastJob();
      return;
    }
    rememberJob(id);
    this.session = new JobSession(stored.body, catalogue);
  }

  async #theCatalogue(): Promise<Catalogue | null> {
    if (this.#catalogue !== null) return this.#catalogue;
    const answer = await api.catalogue();
    if (answer.kind === 'done') this.#catalogue = answer.body;
    else this.trouble = reasonOf(answer);
    return this.#catalogue;
  }

  /** The job to show where the address names none: the last one here, else the made-up example, else any. */
  async firstJob(): Promise<string | null> {
    this.trouble = '';
    const last = lastJob();
    if (last !== null) return last;
    const answer = await api.jobs('');
    if (answer.kind !== 'done') {
      this.trouble = reasonOf(answer);
      return null;
    }
    const first = answer.body.find(({ invented }) => invented) ?? answer.body[0];
    return first?.id ?? null;
  }
}
