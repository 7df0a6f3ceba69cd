import type { JobSummary } from '../../server/job/saved-job.ts';
import { JobList } from './job-list.svelte.ts';

/** As many other jobs as can be cut from the same bars at once; the server takes no more. */
export const MOST_TOGETHER = 20;

/** Jobs that are chosen from the list, in the order in which they were; a search loses none of them. */
export class JobPicker {
  readonly list = new JobList();
  chosen: readonly JobSummary[] = $state.raw([]);
  readonly #without: string;
  readonly most: number;

  /** @param without id of the job that is open; empty where none is */
  constructor(without: string, most: number) {
    this.#without = without;
    this.most = most;
  }

  /** Those that were chosen stay in sight whatever is searched for. */
  get offered(): readonly JobSummary[] {
    const found = (this.list.jobs ?? []).filter(({ id }) => id !== this.#without);
    return [...this.chosen.filter((one) => !found.some(({ id }) => id === one.id)), ...found];
  }

  get full(): boolean {
    return this.chosen.length >= this.most;
  }

  isChosen({ id }: JobSummary): boolean {
    return this.chosen.some((one) => one.id === id);
  }

  choose(job: JobSummary, on: boolean): void {
    const others = this.chosen.filter(({ id }) => id !== job.id);
    this.chosen = on ? [...others, job] : others;
  }
}
