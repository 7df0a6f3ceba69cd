import { Type, type Static } from 'typebox';
import { Job } from './job.ts';
import { JobProblem } from './problem.ts';

/** A job in the list: what finds it again, and when it was last saved (ISO 8601). */
export const JobSummary = Type.Object(
  {
    id: Type.String(),
    title: Type.String(),
    customer: Type.String(),
    drawingNumber: Type.String(),
    invented: Type.Boolean(),
    revision: Type.Integer(),
    createdAt: Type.String(),
    savedAt: Type.String(),
  },
  { title: 'job in the list' },
);
export type JobSummary = Static<typeof JobSummary>;

/** One save of a job. Saves are numbered from 1 and never change afterwards. */
export const SavedJob = Type.Object(
  { id: Type.String(), revision: Type.Integer(), savedAt: Type.String(), job: Job },
  { title: 'saved job' },
);
export type SavedJob = Static<typeof SavedJob>;

export const Revision = Type.Object(
  { revision: Type.Integer(), savedAt: Type.String(), title: Type.String() },
  { title: 'revision' },
);
export type Revision = Static<typeof Revision>;

/** Every refusal has this shape. `problems` says which fields of a job or a request were refused. */
export const ErrorAnswer = Type.Object(
  {
    error: Type.Object({
      code: Type.String(),
      message: Type.String(),
      problems: Type.Optional(Type.Array(JobProblem)),
    }),
  },
  { title: 'refusal' },
);
export type ErrorAnswer = Static<typeof ErrorAnswer>;

/**
 * Answer to a save that was based on an older revision than the latest: what was sent, what stands now, and what
 * both began from, so that they can be merged. Nothing has been changed.
 */
export const StaleSave = Type.Object(
  {
    error: Type.Object({ code: Type.Literal('stale-save'), message: Type.String() }),
    yours: Job,
    theirs: SavedJob,
    /** null where the save named a revision that has never been. */
    base: Type.Union([SavedJob, Type.Null()]),
  },
  { title: 'stale save' },
);
export type StaleSave = Static<typeof StaleSave>;
