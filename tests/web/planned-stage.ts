import { landingStage } from '../../db/demo/landing-stage.ts';
import type { Job } from '../../server/job/job.ts';
import { plan } from '../../server/solver/plan.ts';

/** The landing stage before its frame came back, and its plan. */
export const demo: Job = { ...landingStage(), cameBack: null };
export const demoPlan = plan(demo);
