import type { Reading } from '../../server/job/came-back.ts';
import type { Job } from '../../server/job/job.ts';
import type { CorrectionPlan } from '../../server/plan/correction.ts';
import type { Plan } from '../../server/plan/plan.ts';
import type { Answer } from '../api/client.ts';
import { freshCameBack } from './readings.ts';

/** What it would take to put a frame right that came back as a misread sketch makes it; asked for when wanted. */
export class Trial {
  correction: CorrectionPlan | null = $state.raw(null);
  /** Why there is no answer; empty where there is one, or none yet. */
  trouble = $state('');
  working = $state(false);
  readonly #ask: (job: Job) => Promise<Answer<Plan>>;

  constructor(ask: (job: Job) => Promise<Answer<Plan>>) {
    this.#ask = ask;
  }

  /** Plans the job as if this had been measured on the frame that came back; the job itself stays as it is. */
  async make(job: Job, readings: readonly Reading[]): Promise<void> {
    this.working = true;
    this.trouble = '';
    const answer = await this.#ask({
      ...job,
      cameBack: { ...(job.cameBack ?? freshCameBack), readings: [...readings] },
      closing: { ...job.closing, way: null },
    });
    this.working = false;
    this.correction = answer.kind === 'done' ? answer.body.correction : null;
    if (answer.kind === 'refused' || answer.kind === 'unreachable') this.trouble = answer.reason;
  }
}
