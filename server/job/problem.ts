import { Type, type Static } from 'typebox';

/** Everything that can be wrong with a value that was given. */
export const PROBLEM_CODES = [
  'wrong-type',
  'below-range',
  'above-range',
  'not-whole',
  'not-one-of',
  'wrong-form',
  'too-short',
  'too-long',
  'missing-field',
  'unknown-field',
  'not-a-job',
  'newer-version',
] as const;
export type ProblemCode = (typeof PROBLEM_CODES)[number];

/** What would have been allowed, as data. A bound that is `open` is itself not allowed. */
export const Allowed = Type.Object({
  low: Type.Optional(Type.Number()),
  lowOpen: Type.Optional(Type.Boolean()),
  high: Type.Optional(Type.Number()),
  highOpen: Type.Optional(Type.Boolean()),
  options: Type.Optional(Type.Array(Type.Union([Type.String(), Type.Number(), Type.Boolean(), Type.Null()]))),
  unit: Type.Optional(Type.String()),
});
export type Allowed = Static<typeof Allowed>;

/** One value that was refused: which field (JSON pointer), what was given (shortened), what is allowed, in words. */
export const JobProblem = Type.Object(
  {
    code: Type.Enum<[...typeof PROBLEM_CODES]>([...PROBLEM_CODES]),
    field: Type.String(),
    value: Type.Union([Type.String(), Type.Number(), Type.Boolean(), Type.Null()]),
    allowed: Allowed,
    message: Type.String(),
  },
  { title: 'problem' },
);
export type JobProblem = Static<typeof JobProblem>;
