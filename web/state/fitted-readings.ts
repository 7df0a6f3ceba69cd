import type { FittedReading } from '../../server/plan/readings-fit.ts';
import type { Plan } from '../../server/plan/plan.ts';
import { readingOfField } from './readings.ts';

/** What the fitted frame has at a reading: one figure, three for a point, none where it was not used. */
export const fittedAt = (plan: Plan | null, reading: number): readonly FittedReading[] =>
  reading < 0 ? [] : (plan?.correction?.fit.readings.filter(({ field }) => readingOfField(field) === reading) ?? []);
