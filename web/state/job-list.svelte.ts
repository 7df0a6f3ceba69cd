import type { JobSummary } from '../../server/job/saved-job.ts';
import { api } from '../api/client.ts';

/** The list of jobs with its search, and the job that was just deleted so that it can come back. */
export class JobList {
  jobs: readonly JobSummary[] | null = $state.raw(null);
  search = $state('');
  trouble = $state('');
  deleted: JobSummary | null = $state.raw(null);
  #turn = 0;

  async load(): Promise<void> {
    const turn = ++this.#turn;
    const answer = await api.jobs(this.search);
    if (turn !== this.#turn) return;
    if (answer.kind === 'done') {
      this.jobs = answer.body;
      this.trouble = '';
    } else if (answer.kind !== 'conflict') this.trouble = answer.reason;
  }

  async remove(job: JobSummary): Promise<void> {
    const answer = await api.remove(job.id);
    if (answer.kind === 'done') this.deleted = job;
    else if (answer.kind !== 'conflict') this.trouble = answer.reason;
    await this.load();
  }

  async restore(): Promise<void> {
    if (this.deleted === null) return;
    const answer = await api.restore(this.deleted.id);
    if (answer.kind === 'done') this.deleted = null;
    else if (answer.kind !== 'conflict') this.trouble = answer.reason;
    await this.load();
  }

  /** The new job's id, or null where it could not be made. */
  async duplicate(id: string): Promise<string | null> {
    const answer = await api.duplicate(id);
    if (answer.kind === 'done') return answer.body.id;
    if (answer.kind !== 'conflict') this.trouble = answer.reason;
    return null;
  }
}
