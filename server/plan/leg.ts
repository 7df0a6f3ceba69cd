import { Type, type Static } from 'typebox';
import { Figure, Point, literals } from './figure.ts';
import { WrapTemplate } from './frame.ts';

/** What a part of a length's band comes from. */
export const DOUBTS = ['level', 'point', 'placing', 'thing', 'frame', 'made', 'cutting'] as const;
export type DoubtSource = (typeof DOUBTS)[number];

/** One part of a band: everything of one source and name (all readings of the level; one point), root of squares. */
export const Doubt = Type.Object({
  from: literals([...DOUBTS], 'doubt'),
  /** Language key `doubt.<words>`: how a person would point at it. */
  words: Type.String(),
  /** Name of the point or the thing; empty for the others. */
  name: Type.String(),
  /** Job field to go back to; empty where there is none. */
  field: Type.String(),
  plusMinus: Figure,
});
export type Doubt = Static<typeof Doubt>;

export const LegFoot = Type.Object({
  end: literals(['mitre', 'square', 'socket'], 'foot end'),
  /** Between the leg and the way square out of the surface: 0 where it stands square on it. */
  tilt: Figure,
  /** What the foot takes off the centre length, at the middle of the tube; negative for a socket. */
  takes: Figure,
  /** Long side over short side of the mitre; null for the others. */
  rise: Type.Union([Figure, Type.Null()]),
  /** Round the tube from the scribed line, right-handed seen from the foot, to the mitre's long side; null where it has none. */
  longSide: Type.Union([Figure, Type.Null()]),
  /** Thickness of the plate under it that is welded to the leg; 0: none. */
  plate: Type.Number(),
});

export const LegHead = Type.Object({
  end: literals(['saddle', 'eye'], 'head end'),
  member: Type.String(),
  /** From the member's datum end along its centreline. */
  station: Figure,
  /** Between the two axes, acute or right. */
  axisAngle: Figure,
  /** What the head takes off the centre length, to the tube's longest point there. */
  takes: Figure,
});

/** One leg, as it is cut. Stations along it count from its foot point. */
export const LegPlan = Type.Object({
  /** Counted as the job lists them. */
  number: Type.Integer(),
  name: Type.String(),
  field: Type.String(),
  /**
   * Where legs stand on both sides of the structure's middle (y = 0), by that; where all stand on one side, by the middle
   * between them; within 1 mm of it, or alone on it, in the middle. A leg stands where the middle of its length is.
   */
  side: literals(['port', 'starboard', 'middle'], 'side'),
  outsideDiameter: Type.Number(),
  wall: Type.Number(),
  foot: LegFoot,
  head: LegHead,
  footPoint: Point,
  headPoint: Point,
  /** From the foot point to the head on the tube's centreline, without what an adjustment can do. */
  centreLength: Figure,
  /** What is sawn off the bar, longest point to longest point, the middle of an adjustment taken off. */
  cutLength: Figure,
  /** Along the middle of the tube from the foot's face to the longest point of the head: to check with. */
  middleLength: Figure,
  /** Shortest to longest: the least length along one generator of the finished leg, and the most. */
  shortest: Figure,
  longest: Figure,
  mass: Figure,
  /**
   * From the long side of the mitre round to the acute side of the saddle (where the two tubes close in on each other; on a
   * straight tube it is cut deepest there), right-handed about the leg seen from the foot: clockwise. −180 to 180; a saddle
   * at right angles has two such sides, the nearer is meant. Null where an end has no direction.
   */
  roll: Type.Union([Figure, Type.Null()]),
  rollRound: Type.Union([Figure, Type.Null()]),
  /**
   * Foot (start) and head (finish), their left edges on one line along the tube, the ring of each on a sawn end of the bar:
   * ordinates of the foot are 0 and more, of the head 0 and less.
   */
  templates: Type.Array(WrapTemplate),
  adjust: Type.Union([
    Type.Object({
      by: literals(['thread', 'slip'], 'adjusted by'),
      /** Of the finished leg, foot point to head. */
      least: Figure,
      most: Figure,
      /**
       * What the first of `slopes` changes by with the leg at its least length, and at its most; null where the leg does not
       * set it by itself.
       */
      slope: Type.Union([Type.Object({ least: Figure, most: Figure }), Type.Null()]),
    }),
    Type.Null(),
  ]),
  /** Leg length for a degree of the first of `slopes`, without its sign; null where the leg does not set it. */
  perDegree: Type.Union([Figure, Type.Null()]),
  /**
   * How much longer the leg gets while a slope rises by a degree, for each that the legs set. On a hinge: the first slope
   * asked for, or without one the turn about the hinge, right-handed. On legs alone: each slope asked for, or without one
   * those of the frame's x and y, all legs changed together, so that the frame turns as little as it can.
   */
  slopes: Type.Array(
    Type.Object({
      axis: literals(['asked', 'x', 'y', 'turn'], 'axis'),
      /** /site/standing/slopes/#, or empty. */
      field: Type.String(),
      perDegree: Figure,
    }),
  ),
  /** Largest first. */
  doubts: Type.Array(Doubt),
  /** The part that is worth measuring again: null where none makes up most of the band. */
  measureAgain: Type.Union([Doubt, Type.Null()]),
  /**
   * In which order legs are cut and set up, from 1. `bandThen`: set up under the frame that the legs before it hold, how far
   * it may be off there. It may be more than its own ±, as it must follow how the first was sawn, too.
   */
  order: Type.Integer(),
  bandThen: Figure,
});
export type LegPlan = Static<typeof LegPlan>;
