import { Type, type Static } from 'typebox';
import { Figure, literals } from './figure.ts';

/** A leg as a strut. Information: no approval. */
export const StrutPlan = Type.Object({
  leg: Type.String(),
  field: Type.String(),
  /** Buckling length over leg length, buckling length, slenderness K L / i. */
  factor: Figure,
  bucklingLength: Figure,
  slenderness: Figure,
  /** Euler's load, and whether it is below what yields: above that it says nothing. */
  euler: Figure,
  eulerHolds: Type.Boolean(),
  /** What is in the leg to adjust it; null: nothing. It gives where its parts meet, and nothing is told of what it carries. */
  adjusted: Type.Union([literals(['thread', 'slip'], 'adjusted by'), Type.Null()]),
  /** Reduced by imperfections, EN 1993-1-4; null where the grade has no proof stress, or the leg is adjusted. */
  reduced: Type.Union([Figure, Type.Null()]),
});
export type StrutPlan = Static<typeof StrutPlan>;

/** A straight stretch of a tube between what holds it, or from there to a free end. */
export const SpanPlan = Type.Object({
  member: Type.String(),
  /** beam: held at both ends, free to turn. cantilever: held at one end, loaded at the other. */
  case: literals(['beam', 'cantilever'], 'case'),
  from: Figure,
  to: Figure,
  length: Figure,
  /** Point load at the middle, or at the free end, that bends it to its proof stress; null where the grade has none. */
  atProof: Type.Union([Figure, Type.Null()]),
  /** How far it gives under each load of the list, in its order, and the stress then. */
  loads: Type.Array(Type.Object({ key: Type.String(), stress: Figure, sag: Figure, overProof: Type.Boolean() })),
});
export type SpanPlan = Static<typeof SpanPlan>;

/** Published loads in their order, and one's own; that along a rail is so much for each metre of it. */
const LOADS = [
  'rail-vessel',
  'rail-vessel-along',
  'guardrail',
  'midrail',
  'boarding-step',
  'boarding-rail',
  'own',
] as const;

/** A published load, or one's own. */
export const LoadPlan = Type.Object({
  key: literals([...LOADS], 'load'),
  /** [N], or along a rail [N/m]. */
  load: Figure,
  /**
   * Force along each leg where the load stands on the frame's furthest place from its hinge and one leg alone carries it;
   * empty without a hinge, and for a load along a rail.
   */
  legs: Type.Array(
    Type.Object({
      leg: Type.String(),
      field: Type.String(),
      force: Figure,
      overReduced: Type.Union([Type.Boolean(), Type.Null()]),
    }),
  ),
});
export type LoadPlan = Static<typeof LoadPlan>;

export const StrengthPlan = Type.Object({
  struts: Type.Array(StrutPlan),
  spans: Type.Array(SpanPlan),
  loads: Type.Array(LoadPlan),
});
export type StrengthPlan = Static<typeof StrengthPlan>;
