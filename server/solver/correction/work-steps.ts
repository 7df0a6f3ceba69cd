import type { Way, WorkStep } from '../../plan/correction.ts';

/** A step of the work on a way; `joint` left out where it is about none. */
export type Step = { readonly key: string; readonly joint?: number; readonly data?: WorkStep['data'] };

/** Steps in the order in which they are done, as the plan holds them. */
export const workSteps = (steps: readonly Step[]): WorkStep[] =>
  steps.map(({ key, joint, data }) => ({ key, joint: joint ?? 0, data: data ?? {} }));

/** Feet that are cut back, one step for each. */
export const trimSteps = (trims: readonly Way['trims'][number][]): Step[] =>
  trims.map(({ member, end, length }) => ({ key: 'trim-feet', data: { member, end, value: length.value } }));
