import type { Frame } from '../../server/job/frame.ts';
import type { Job } from '../../server/job/job.ts';
import type { CorrectionPlan } from '../../server/plan/correction.ts';
import type { Plan } from '../../server/plan/plan.ts';
import type { Answer } from '../api/client.ts';

/** Sizes that nobody has read yet are taken as read by an ordinary tape, ± [mm]; common practice, no source. */
const TAPE = 1;

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

  /** Plans the job as if this frame had come back; the job itself stays as it is. */
  async make(job: Job, frame: Frame): Promise<void> {
    this.working = true;
    this.trouble = '';
    const answer = await this.#ask({
      ...job,
      cameBack: { tapeAccuracy: job.cameBack?.tapeAccuracy ?? TAPE, frame },
      closing: { ...job.closing, way: null },
    });
    this.working = false;
    this.correction = answer.kind === 'done' ? answer.body.correction : null;
    if (answer.kind === 'refused' || answer.kind === 'unreachable') this.trouble = answer.reason;
  }
}
