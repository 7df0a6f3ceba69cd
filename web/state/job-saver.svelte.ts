import type { Job } from '../../server/job/job.ts';
import type { SavedJob } from '../../server/job/saved-job.ts';
import type { Answer } from '../api/client.ts';
import { changedFields, merged } from './merge.ts';
import { differences } from './pointer.ts';

export type SaveState = 'saved' | 'unsaved' | 'saving' | 'failed' | 'refused' | 'conflict';

/** What the saver needs from outside, so that it can be tried without a browser. */
export type SaveSource = {
  readonly save: (job: Job, basedOn: number) => Promise<Answer<SavedJob>>;
  readonly later: (work: () => void, milliseconds: number) => void;
  /** Keeps unsaved work on this machine, or with null forgets it. */
  readonly keepDraft: (draft: Draft | null) => void;
  readonly now: () => Job;
};

/** Unsaved work with what it was based on, so that it can be merged after a reload too. */
export type Draft = { readonly job: Job; readonly base: Job; readonly basedOn: number };

/** Wait after the last change before saving, and before trying again without an answer [ms]; our own choice. */
const PAUSE = 700;
const AGAIN = 5000;

const isSame = (one: Job, other: Job): boolean => differences(one, other).length === 0;

/** Saves the job after every change, and holds both sides where two people saved at once. */
export class JobSaver {
  state: SaveState = $state('saved');
  savedAt = $state('');
  revision = $state(0);
  reason = $state('');
  theirs: SavedJob | null = $state.raw(null);
  /** The job as the server last had it from us or gave it to us. */
  #base: Job;
  #turn = 0;
  readonly #source: SaveSource;

  /** @param draft unsaved work of this job that was left behind, or null */
  constructor(stored: SavedJob, source: SaveSource, draft: Draft | null = null) {
    this.#base = stored.job;
    this.#source = source;
    this.revision = stored.revision;
    this.savedAt = stored.savedAt;
    if (draft === null || draft.basedOn === stored.revision || isSame(draft.job, stored.job)) return;
    this.#base = draft.base;
    this.revision = draft.basedOn;
    this.theirs = stored;
    this.state = 'conflict';
  }

  /** Call after every change of the job. */
  changed(): void {
    const job = this.#source.now();
    if (job === this.#base) {
      if (this.state !== 'conflict') this.state = 'saved';
      this.#source.keepDraft(null);
      return;
    }
    this.#source.keepDraft({ job, base: this.#base, basedOn: this.revision });
    if (this.state === 'conflict') return;
    if (this.state !== 'saving') this.state = 'unsaved';
    const turn = ++this.#turn;
    this.#source.later(() => {
      if (turn === this.#turn) void this.save();
    }, PAUSE);
  }

  async save(): Promise<void> {
    if (this.state === 'saving' || this.state === 'conflict') return;
    const job = this.#source.now();
    if (job === this.#base) return;
    this.state = 'saving';
    this.#take(job, await this.#source.save(job, this.revision));
  }

  #take(job: Job, answer: Answer<SavedJob>): void {
    if (answer.kind === 'done') {
      this.#base = job;
      this.revision = answer.body.revision;
      this.savedAt = answer.body.savedAt;
      this.state = 'saved';
      if (this.#source.now() === job) this.#source.keepDraft(null);
      else this.changed();
      return;
    }
    // an answer that was lost on the way: what stands there is what was sent
    if (answer.kind === 'conflict' && isSame(answer.theirs.job, job)) {
      this.#take(job, { kind: 'done', body: answer.theirs });
      return;
    }
    if (answer.kind === 'conflict') {
      this.theirs = answer.theirs;
      this.state = 'conflict';
      return;
    }
    this.reason = answer.reason;
    this.state = answer.kind === 'unreachable' ? 'failed' : 'refused';
    if (answer.kind === 'unreachable') this.#source.later(() => void this.save(), AGAIN);
    else if (this.#source.now() !== job) this.changed();
  }

  /** What each side changed since both had the same job. */
  get sides(): { readonly yours: readonly string[]; readonly theirs: readonly string[] } {
    if (this.theirs === null) return { yours: [], theirs: [] };
    return {
      yours: changedFields(this.#base, this.#source.now()),
      theirs: changedFields(this.#base, this.theirs.job),
    };
  }

  /** Ends the conflict; the answer is the job to go on with, to be put into the history so that it can be undone. */
  settle(how: 'both' | 'mine' | 'theirs'): Job {
    const mine = this.#source.now();
    if (this.theirs === null) return mine;
    const { job, revision, savedAt } = this.theirs;
    const next = how === 'mine' ? mine : how === 'theirs' ? job : merged(this.#base, mine, job);
    this.#base = job;
    this.revision = revision;
    this.savedAt = savedAt;
    this.theirs = null;
    this.state = next === job ? 'saved' : 'unsaved';
    return next;
  }
}
