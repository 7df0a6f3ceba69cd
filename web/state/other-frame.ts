import type { Frame } from '../../server/job/frame.ts';
import type { Job } from '../../server/job/job.ts';
import { withChoice } from './typed-text.ts';

/** What is said of places on the old frame's tubes, and how it is without any. */
const OF_PLACES: readonly (readonly [pointer: string, none: unknown])[] = [
  ['/cameBack', null],
  ['/fixing', []],
  ['/closing/cutMembers', []],
  ['/closing/barred', []],
  ['/closing/joints', []],
];

/** The job with another frame in the place of its own: what was measured, fastened or cut on the old one goes with it. */
export const withOtherFrame = (job: Job, frame: Frame): Job =>
  OF_PLACES.reduce((next, [pointer, none]) => withChoice(next, pointer, none), withChoice(job, '/frame', frame));
