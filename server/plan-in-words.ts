import type { Job } from './job/job.ts';
import { describeFinding } from './language/finding-words.ts';
import type { Plan } from './plan/plan.ts';
import type { Memory } from './solver/memory.ts';
import { plan } from './solver/plan.ts';

/** The plan of a job with each finding in words, as it leaves the program. */
export function planInWords(job: Job, memory?: Memory): Plan {
  const made = plan(job, memory);
  const findings = made.findings.map((finding) => ({ ...finding, message: describeFinding(finding, job.units) }));
  return { ...made, findings };
}
