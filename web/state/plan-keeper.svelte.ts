import type { Job } from '../../server/job/job.ts';
import type { Plan } from '../../server/plan/plan.ts';
import type { JobProblem } from '../../server/job/problem.ts';
import type { Answer } from '../api/client.ts';

/** What the keeper needs from outside, so that it can be tried without a browser. */
export type PlanSource = {
  readonly ask: (job: Job) => Promise<Answer<Plan>>;
  /** Runs the work when the change that is being made is whole: several edits of one moment are one question. */
  readonly later: (work: () => void) => void;
  /** Runs the work after a while, to ask again where no answer came. */
  readonly again: (work: () => void) => void;
  /** Tells which values the server cannot plan with; the job that it was asked about goes along. */
  readonly refused: (job: Job, problems: readonly JobProblem[]) => void;
  /** Tells that this job's values are all possible. */
  readonly accepted: (job: Job) => void;
};

/**
 * Keeps the last good plan in sight and asks for the next. One question is on the way at a time; while it is, only
 * the newest job waits. An answer is shown even where the person has typed on since: it is newer than what stands.
 */
export class PlanKeeper {
  plan: Plan | null = $state.raw(null);
  /** True while the plan shown is not that of the job as it is. */
  working = $state(false);
  /** Why no new plan comes; empty where one does. */
  trouble = $state('');
  unreachable = $state(false);
  /** The last frame that could be drawn. */
  drawn: Plan | null = $state.raw(null);
  readonly #source: PlanSource;
  #waiting: Job | null = null;
  #asking = false;

  constructor(source: PlanSource) {
    this.#source = source;
  }

  request(job: Job): void {
    const first = this.#waiting === null && !this.#asking;
    this.#waiting = job;
    this.working = true;
    if (first) this.#source.later(() => void this.#askNext());
  }

  async #askNext(): Promise<void> {
    while (this.#waiting !== null) {
      const job = this.#waiting;
      this.#waiting = null;
      this.#asking = true;
      const answer = await this.#source.ask(job);
      this.#asking = false;
      this.#take(job, answer);
    }
    this.working = this.unreachable;
  }

  #take(job: Job, answer: Answer<Plan>): void {
    this.unreachable = answer.kind === 'unreachable';
    if (this.unreachable) {
      this.#source.again(() => {
        if (this.unreachable && this.#waiting === null) this.request(job);
      });
    }
    this.trouble = answer.kind === 'refused' && answer.problems.length === 0 ? answer.reason : '';
    if (answer.kind === 'refused') this.#source.refused(job, answer.problems);
    if (answer.kind !== 'done') return;
    this.plan = answer.body;
    if (answer.body.views.length > 0) this.drawn = answer.body;
    this.#source.accepted(job);
  }
}
