import type { Job } from '../../server/job/job.ts';

/** Steps that can be undone; a session's whole work, bounded so that a day of typing does not fill the memory. */
const LONGEST = 500;

/** The job as it is worked on, with everything that was done to it. */
export class JobHistory {
  job: Job = $state.raw() as Job;
  #past: Job[] = $state.raw([]);
  #future: Job[] = $state.raw([]);
  /** Changes with the same key that follow each other are one step: the letters of one word, not each. */
  #key: string | null = null;
  readonly #changed: () => void;

  constructor(job: Job, changed: () => void) {
    this.job = job;
    this.#changed = changed;
  }

  get canUndo(): boolean {
    return this.#past.length > 0;
  }

  get canRedo(): boolean {
    return this.#future.length > 0;
  }

  change(job: Job, key: string | null = null): void {
    if (job === this.job) return;
    if (key === null || key !== this.#key) this.#past = [...this.#past, this.job].slice(-LONGEST);
    this.#future = [];
    this.#key = key;
    this.job = job;
    this.#changed();
  }

  /** Ends a step: the next change is a new one, even in the same field. */
  pause(): void {
    this.#key = null;
  }

  /** Puts back what the server refused without making a step of it; the person's own text is not touched. */
  amend(job: Job): void {
    if (job === this.job) return;
    this.job = job;
    this.#changed();
  }

  undo(): void {
    const before = this.#past.at(-1);
    if (before === undefined) return;
    this.#past = this.#past.slice(0, -1);
    this.#future = [this.job, ...this.#future];
    this.#show(before);
  }

  redo(): void {
    const [after, ...rest] = this.#future;
    if (after === undefined) return;
    this.#past = [...this.#past, this.job];
    this.#future = rest;
    this.#show(after);
  }

  #show(job: Job): void {
    this.#key = null;
    this.job = job;
    this.#changed();
  }
}
