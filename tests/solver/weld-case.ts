import type { Job } from '../../server/job/job.ts';
import type { FindingCode, FindingGrade } from '../../server/plan/finding.ts';
import type { Work } from './welding-frames.ts';

/** Work that raises one finding; `beside` what comes with it, `mend` what a person does where there is no way out; null: nothing in the job. */
export type WeldCase = {
  readonly code: FindingCode;
  readonly name: string;
  readonly grade: FindingGrade;
  readonly field: string;
  readonly job: Job;
  readonly work?: Work;
  readonly data?: Readonly<Record<string, number | string>>;
  readonly beside?: readonly FindingCode[];
  readonly mend?: ((job: Job) => Job) | null;
};
