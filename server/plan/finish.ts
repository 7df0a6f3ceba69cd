import { Type, type Static } from 'typebox';
import { CLEANINGS, SURFACES, TREATMENTS } from '../job/finish.ts';
import { Figure, literals } from './figure.ts';

/** Which welds a step is for: every one, those round a tube, or those in the corner of a saddle or a pad. */
export const STEP_WELDS = ['all', 'butts', 'corners'] as const;

/** One grinding or polishing step: a language key with its grit (or range of grits), coarse to fine. */
export const FinishStep = Type.Object({
  key: Type.String(),
  gritFrom: Type.Integer(),
  gritTo: Type.Integer(),
  /** All steps for butts come first, then those for corners, where the two differ and there are both. */
  welds: literals(STEP_WELDS, 'welds of a step'),
});
export type FinishStep = Static<typeof FinishStep>;

/** A bath or paste: share of acid in words of the standard, temperature and time. */
export const CleaningPlan = Type.Object({
  key: literals(CLEANINGS, 'cleaning'),
  temperatureLow: Type.Union([Figure, Type.Null()]),
  temperatureHigh: Type.Union([Figure, Type.Null()]),
  timeLeast: Figure,
  /** null: the standard gives a least time alone. */
  timeMost: Type.Union([Figure, Type.Null()]),
});
export type CleaningPlan = Static<typeof CleaningPlan>;

export const FinishPlan = Type.Object({
  treatment: literals(TREATMENTS, 'treatment'),
  surface: literals(SURFACES, 'surface'),
  /** EN 10088-2 code and ASTM A480 number of the surface; empty where there is none. */
  designation: Type.String(),
  american: Type.String(),
  /** Roughness to aim at; null where the surface has none of its own. */
  roughness: Type.Union([Figure, Type.Null()]),
  /** How proud the bead stands before grinding, and what is left after the first step [mm]. */
  reinforcement: Type.Union([Figure, Type.Null()]),
  leftProud: Type.Union([Figure, Type.Null()]),
  steps: Type.Array(FinishStep),
  /** Minutes for each weld, by name, and together. */
  minutes: Type.Array(Type.Object({ weld: Type.String(), flush: Figure, surface: Figure })),
  total: Figure,
  cleaning: Type.Union([CleaningPlan, Type.Null()]),
  /** What to do and not to do, as language keys: contamination, the sea. */
  notes: Type.Array(Type.String()),
});
export type FinishPlan = Static<typeof FinishPlan>;
