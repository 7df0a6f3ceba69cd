import { Type, type Static } from 'typebox';
import { Figure, literals } from './figure.ts';

export const TubePlan = Type.Object({
  bore: Figure,
  area: Figure,
  secondMoment: Figure,
  elasticModulus: Figure,
  plasticModulus: Figure,
  radiusOfGyration: Figure,
  wallFactor: Figure,
  massPerMetre: Figure,
  litresPerMetre: Figure,
});
export type TubePlan = Static<typeof TubePlan>;

export const SpringbackPlan = Type.Object({
  method: literals(['theory', 'fitted', 'share'], 'method used'),
  /** Share of the angle that is lost, at 90 degrees. */
  shareAt90: Figure,
  /** Angle to bend to for a finished 90 degrees. */
  bendTo90: Figure,
  /** Centreline radius after release. */
  radiusAfterRelease: Figure,
});
export type SpringbackPlan = Static<typeof SpringbackPlan>;

/** One row of a member's bend table: a bend on the die or a rolled crown. */
export const BendRow = Type.Object({
  number: Type.Integer(),
  made: literals(['die', 'rolled'], 'made'),
  /** Straight before this arc. */
  feed: Figure,
  /** Turn of the tube about its axis since the last arc, in the machine's sign. */
  rotation: Figure,
  /** The same, along the outside of the tube. */
  rotationRound: Figure,
  /** Wanted change of direction. */
  angle: Figure,
  /** What the machine is told; for a rolled crown the wanted angle. */
  angleToBendTo: Figure,
  /** Die that makes this radius (the machine's own where none was typed). */
  dieRadius: Figure,
  radiusAfterRelease: Figure,
  /** Marks from the datum end on the straight tube. */
  startMark: Figure,
  middleMark: Figure,
  endMark: Figure,
  arcLength: Figure,
  tangentLength: Type.Union([Figure, Type.Null()]),
  elongation: Figure,
  wallOutside: Figure,
  wallInside: Figure,
  flatteningGuidance: Figure,
  mandrel: literals(
    ['none', 'none-or-plug', 'plug', 'ball', 'ball-and-wiper', 'special', 'not-needed'],
    'mandrel advice',
  ),
  /** Outside-to-outside size that a tape can reach after this bend: along the straight before it, over the bend. */
  check: Type.Union([Figure, Type.Null()]),
});
export type BendRow = Static<typeof BendRow>;
