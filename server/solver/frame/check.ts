import type { Dimension } from '../../job/quantities.ts';
import type { Check, Spot } from './frame-geometry.ts';

/** What over the outside adds to a size, and inside to inside takes off it [mm]; and where the size grows. */
export type Extra = Pick<Check, 'outsideExtra' | 'insideExtra' | 'bothEnds'>;

/** A width across two tubes: half a diameter more at both ends. */
export const acrossTubes = (outsideDiameter: number): Extra => ({
  outsideExtra: outsideDiameter,
  insideExtra: -outsideDiameter,
  bothEnds: true,
});

/** A length from a cut end to the corner of a bend: (D/2) tan(θ/2) more at the far end. Derived. */
export const toCorner = (bend: { angle: number; outsideDiameter: number }): Extra => {
  const more = (bend.outsideDiameter / 2) * Math.tan(bend.angle / 2);
  return { outsideExtra: more, insideExtra: -more, bothEnds: false };
};

/** A distance between two points of the centrelines: the same in every reference. */
export const betweenPoints: Extra = { outsideExtra: 0, insideExtra: 0, bothEnds: false };

/** A typed size, centre to centre [mm]. */
export const centred = (typed: Dimension, extra: Extra): number =>
  typed.value -
  (typed.reference === 'outside' ? extra.outsideExtra : typed.reference === 'inside' ? extra.insideExtra : 0);

/** A centre size as it would be typed in the reference of another [mm]. */
export const asTyped = (centre: number, like: Dimension, extra: Extra): number =>
  centre + (like.reference === 'outside' ? extra.outsideExtra : like.reference === 'inside' ? extra.insideExtra : 0);

/** A check of a typed size, or of one that follows from others (no field), on two spots. */
export const check = (
  key: string,
  of: { extra: Extra; reference: Check['reference']; field?: string; index?: number; from: Spot; to: Spot },
): Check => ({
  key,
  index: of.index ?? 0,
  field: of.field ?? '',
  reference: of.reference,
  ...of.extra,
  from: of.from,
  to: of.to,
});
