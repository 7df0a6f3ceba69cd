import { words } from '../../server/language/words.ts';
import type { api, IssuedQuote } from '../api/client.ts';
import type { SaveState } from './job-saver.svelte.ts';

/** What the list needs from outside, so that it can be tried without a browser. */
export type IssueSource = Pick<typeof api, 'quotes' | 'issueQuote'>;

/** How the job is saved at the moment. */
export type Saving = { readonly state: SaveState; readonly revision: number; readonly reason: string };

/** Quotes of a job that were issued, the latest first, and issuing one more as soon as the job is saved. */
export class IssuedList {
  issued: readonly IssuedQuote[] = $state.raw([]);
  /** Why the list could not be read, or nothing was issued; empty where nothing is wrong. */
  trouble = $state('');
  /** The one that was just issued. */
  latest: IssuedQuote | null = $state.raw(null);
  /** Somebody wants a quote issued, and the job is still being saved. */
  waiting = $state(false);
  /** The list could not be read; no state of the page, so that nothing is read again by its change alone. */
  #unread = false;
  #sending = false;
  readonly #id: string;
  readonly #source: IssueSource;

  constructor(id: string, source: IssueSource) {
    this.#id = id;
    this.#source = source;
  }

  async load(): Promise<void> {
    const answer = await this.#source.quotes(this.#id);
    this.#unread = answer.kind !== 'done';
    if (answer.kind === 'done') {
      this.trouble = '';
      this.#show(answer.body);
    } else if (answer.kind !== 'conflict') this.trouble = words('offer.listFailed', { reason: answer.reason });
  }

  /** The network is back: what could not be read is read now, and what was not issued can be wanted again. */
  async back(): Promise<void> {
    if (this.#unread) await this.load();
    else this.trouble = '';
  }

  want(): void {
    this.trouble = '';
    this.latest = null;
    this.waiting = true;
  }

  /** Looks whether what is wanted can be done: call whenever the saving has gone on. */
  async look({ state, revision, reason }: Saving): Promise<void> {
    // the server answers again
    if (state === 'saved' && this.#unread && !this.waiting) await this.load();
    if (!this.waiting || this.#sending) return;
    if (state === 'saved') await this.#issue(revision);
    else if (state === 'conflict') this.#stop(words('offer.conflict'));
    else if (state === 'refused' || state === 'failed') this.#stop(reason);
  }

  async #issue(revision: number): Promise<void> {
    this.#sending = true;
    const answer = await this.#source.issueQuote(this.#id, revision);
    this.#sending = false;
    this.waiting = false;
    if (answer.kind === 'done') {
      this.latest = answer.body;
      this.#show([...this.issued, answer.body]);
    } else
      this.trouble = words('offer.failed', {
        reason: answer.kind === 'conflict' ? words('offer.conflict') : answer.reason,
      });
  }

  #stop(reason: string): void {
    this.waiting = false;
    this.trouble = words('offer.notSaved', { reason });
  }

  #show(issued: readonly IssuedQuote[]): void {
    this.issued = [...issued].sort((one, other) => other.number - one.number);
  }
}
