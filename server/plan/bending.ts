import { Type, type Static } from 'typebox';
import { Figure, literals } from './figure.ts';

/** The least and the most that a tolerance allows; null: no limit on that side. */
const Limits = Type.Object({ least: Figure, most: Type.Union([Figure, Type.Null()]) });

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
  /** Elongation that the grade is sure to have: what bends may ask of it. */
  elongation: Figure,
  /** What the tolerance allows; null where it sets no limit or has no row for this size. */
  diameterLimits: Type.Union([Limits, Type.Null()]),
  wallLimits: Type.Union([Limits, Type.Null()]),
});
export type TubePlan = Static<typeof TubePlan>;

/** s = a + b c through the test bends, with how well it holds. */
const SpringbackFit = Type.Object({
  fixed: Figure,
  share: Figure,
  /** Standard deviation of the test bends about the line; null where two bends leave none. */
  residual: Type.Union([Figure, Type.Null()]),
  /** ± of the line itself at a finished 90 degrees, 95 %. */
  confidence: Figure,
  /** Heat that the test bends are of; empty where they are of any. */
  heat: Type.String(),
  /** Commanded angle and springback of each test bend used [degrees]. */
  bends: Type.Array(Type.Object({ commanded: Type.Number(), springback: Type.Number() })),
});

export const SpringbackPlan = Type.Object({
  method: literals(['theory', 'fitted'], 'method used'),
  /** Share of the angle that is lost, at 90 degrees. */
  shareAt90: Figure,
  /** Angle to bend to for a finished 90 degrees. */
  bendTo90: Figure,
  /** Centreline radius after release. */
  radiusAfterRelease: Figure,
  /** What a bend of 90 degrees grows by. */
  stretchAt90: Figure,
  /** The line through the test bends; null by theory. */
  fit: Type.Union([SpringbackFit, Type.Null()]),
  /** Test bends in the record, and those on this tube and die that were measured, by their place in the record. */
  bendsTyped: Type.Integer(),
  bendsOfTube: Type.Array(Type.Integer()),
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
  /** Die radius over the tube's diameter. */
  bendRatio: Figure,
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
