import { Type, type Static } from 'typebox';
import { Figure, Point, literals } from './figure.ts';
import { GapPlan } from './gap.ts';
import { LegPlan } from './leg.ts';
import { SiteView } from './site-view.ts';
import { StrengthPlan } from './strength.ts';

/** The sides of the structure: x, −x, y, −y, z, −z. */
export const SIDES = ['ahead', 'back', 'port', 'starboard', 'up', 'down'] as const;
export const Side = Type.Enum<[...typeof SIDES]>([...SIDES], { title: 'side' });
export type Side = Static<typeof Side>;

/** A measured value beside what the solution makes of it: residual is measured less solved. */
export const SiteResidual = Type.Object({
  /** Job field of the measured value. */
  field: Type.String(),
  measured: Figure,
  residual: Figure,
  /** So far off that the others speak against it. */
  disagrees: Type.Boolean(),
});
export type SiteResidual = Static<typeof SiteResidual>;

/** How the structure lies now. */
export const LevelPlan = Type.Object({
  /** False: nobody has read a level, or the readings do not tell: its own axes are taken for level. */
  known: Type.Boolean(),
  /** Up by gravity, a unit vector in the structure's axes. */
  up: Point,
  /** Ahead up, and port up, positive: what levels along x and along y show. */
  trim: Figure,
  list: Figure,
  /** Between the structure's upright and plumb. */
  tilt: Figure,
  /** The set in use, the last that is read, counted from 1 (0: none), when it was taken (as typed) and for how many hours it is believed. */
  set: Type.Integer(),
  /** A later set that is begun and not read yet; 0: none. */
  waiting: Type.Integer(),
  taken: Type.String(),
  goodFor: Type.Number(),
  residuals: Type.Array(SiteResidual),
  /** What has changed since the set before; null where there is none that tells. */
  drift: Type.Union([
    Type.Object({ set: Type.Integer(), taken: Type.String(), trim: Figure, list: Figure, turn: Figure }),
    Type.Null(),
  ]),
});
export type LevelPlan = Static<typeof LevelPlan>;

/** What a level shows that is held in one plane of the structure. */
export const PlaneReading = Type.Object({
  plane: literals(['fore-and-aft', 'athwart'], 'plane'),
  /** 0 to 90, and the side on which the line is higher; null where it is level. */
  shows: Figure,
  rises: Type.Union([Side, Type.Null()]),
  /** 90 less that, and the side that the line's upper end leans to; null where it is plumb. */
  offPlumb: Figure,
  leans: Type.Union([Side, Type.Null()]),
});
export type PlaneReading = Static<typeof PlaneReading>;

/** What the level must show now for one direction. */
export const LevelRow = Type.Object({
  of: literals(['direction', 'member', 'leg', 'thing', 'hinge'], 'of'),
  name: Type.String(),
  /** Job field behind it; empty for a member or the hinge. */
  field: Type.String(),
  /** In the structure's axes, a unit vector, the end that is higher now ahead. */
  direction: Point,
  /** A level laid along it: 0 to 90; off plumb is 90 less that. */
  along: Figure,
  offPlumb: Figure,
  /** A level held in each plane; left out where the direction is square to the plane. */
  planes: Type.Array(PlaneReading),
  /** True where one of the planes shows something else than the level along it, by more than 0.1 degrees. */
  differs: Type.Boolean(),
});
export type LevelRow = Static<typeof LevelRow>;

export const SitePointPlan = Type.Object({
  name: Type.String(),
  field: Type.String(),
  x: Figure,
  y: Figure,
  z: Figure,
  /** Of the distances where there are more than it takes. */
  residuals: Type.Array(SiteResidual),
});
export type SitePointPlan = Static<typeof SitePointPlan>;

/** How the frame stands in the structure's axes. */
export const StandingPlan = Type.Object({
  /** Where its origin is and which way its axes run. */
  origin: Point,
  x: Point,
  y: Point,
  z: Point,
  /** How far each place of the frame is from the point that it is to lie on. */
  misfits: Type.Array(Type.Object({ field: Type.String(), name: Type.String(), misfit: Figure })),
  /** From how it was placed, about the hinge or about the level line that lifts least; null where nothing is asked for. */
  turn: Type.Union([Figure, Type.Null()]),
  /** Each slope that is asked for, then x and y of the frame: what it is against the structure and against level now. */
  slopes: Type.Array(
    Type.Object({
      /** /site/standing/slopes/#, or empty. */
      field: Type.String(),
      axis: literals(['asked', 'x', 'y'], 'axis'),
      toStructure: Figure,
      toLevel: Figure,
    }),
  ),
  /** Of the place whose height is asked for; null where none is. */
  height: Type.Union([Figure, Type.Null()]),
});
export type StandingPlan = Static<typeof StandingPlan>;

/** Everything about the site; parts that cannot be told are empty or null, and a finding says why. */
export const SitePlan = Type.Object({
  level: LevelPlan,
  rows: Type.Array(LevelRow),
  points: Type.Array(SitePointPlan),
  standing: Type.Union([StandingPlan, Type.Null()]),
  legs: Type.Array(LegPlan),
  gaps: Type.Array(GapPlan),
  strength: StrengthPlan,
  views: Type.Array(SiteView),
});
export type SitePlan = Static<typeof SitePlan>;
