import type { JobRepository } from '../job-repository.ts';
import { landingStage } from './landing-stage.ts';

/** Puts the demo job into a database that has never held a job; says whether it did. */
export async function loadDemo(jobs: JobRepository, id: string, now: string): Promise<boolean> {
  if ((await jobs.count()) > 0) return false;
  await jobs.create(id, landingStage(), now);
  return true;
}
