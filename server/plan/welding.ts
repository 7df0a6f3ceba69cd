import { Type, type Static } from 'typebox';
import { WELD_FORMS } from '../job/welding.ts';
import { Figure, Point, literals } from './figure.ts';

/**
 * splice: the two faces of a cut. let-in: one of the two welds of a let-in piece. closing: where a closed member begins
 * and ends. saddle: an end on another tube. pad: an end on a plate. bar-joint: two lengths of tube welded together before
 * they are bent.
 */
export const WELD_KINDS = ['splice', 'let-in', 'closing', 'saddle', 'pad', 'bar-joint'] as const;
export type WeldKind = (typeof WELD_KINDS)[number];

export const PREPARATIONS = ['square-tight', 'square-gap', 'bevel', 'saddle', 'fillet'] as const;
export type Preparation = (typeof PREPARATIONS)[number];

/** Tacks round a joint: angles from the outside of the tube [degrees], in the order in which they are set. */
export const Tacks = Type.Object({ count: Figure, length: Figure, angles: Type.Array(Type.Number()) });
export type Tacks = Static<typeof Tacks>;

/** Position by ISO 6947 with the American code beside it; how steep the tube runs there as held [degrees off level]. */
export const WeldPosition = Type.Object({ code: Type.String(), american: Type.String(), steep: Figure });
export type WeldPosition = Static<typeof WeldPosition>;

/** What the correction leaves at a joint, against the standard's limit and the tighter one that polish needs. */
export const WeldMisfit = Type.Object({
  hiLo: Figure,
  kink: Figure,
  /** ISO 5817 imperfection 5072 at the job's quality level. */
  standard: Figure,
  /** A tenth of the wall: what a belt takes away. */
  polish: Figure,
  /** Kink of ISO 5817 imperfection 508 at the job's quality level. */
  kinkLimit: Figure,
  grade: literals(['good', 'practice', 'standard', 'over'], 'grade of misfit'),
});
export type WeldMisfit = Static<typeof WeldMisfit>;

/** What a weld symbol says, whichever standard draws it. */
export const WeldSymbol = Type.Object({
  standard: literals(['iso-2553', 'aws-a2-4'], 'symbols'),
  elementary: literals(['square', 'v', 'flare-bevel', 'fillet'], 'elementary symbol'),
  allRound: Type.Boolean(),
  /** Flush, as ground. */
  flush: Type.Boolean(),
  /** Included angle of a V [degrees], root gap [mm], leg of a saddle or a fillet [mm]; null: not said. */
  angle: Type.Union([Type.Number(), Type.Null()]),
  gap: Type.Union([Type.Number(), Type.Null()]),
  leg: Type.Union([Type.Number(), Type.Null()]),
  /** Process by ISO 4063. */
  process: Type.String(),
});
export type WeldSymbol = Static<typeof WeldSymbol>;

export const Weld = Type.Object({
  /** '1', '2A' and '2B' for the two of a let-in, 'S1' a saddle, 'C1' a closing weld, 'P1' a pad, 'B1' a joint between bars. */
  name: Type.String(),
  kind: literals(WELD_KINDS, 'kind of weld'),
  form: literals(WELD_FORMS, 'form of weld'),
  /** Number of the cut joint that it closes; 0 for the others. */
  joint: Type.Integer(),
  member: Type.String(),
  /** On the frame that is welded (as it came back, or new) [mm], and where that is. */
  station: Type.Number(),
  point: Point,
  /** The tube that it sits on, or the name of the fixing point of a pad; empty for the others. */
  onto: Type.String(),
  preparation: literals(PREPARATIONS, 'preparation'),
  gap: Figure,
  /** Of each side, for a bevel. */
  bevel: Type.Union([Figure, Type.Null()]),
  land: Type.Union([Figure, Type.Null()]),
  /** Off square: half the kink for a butt; the angle between the axes for a saddle; null for a pad. */
  endAngle: Type.Union([Figure, Type.Null()]),
  /** How far the two faces may be out of parallel. */
  squareness: Figure,
  backing: literals(['purge', 'sleeve'], 'backing'),
  length: Figure,
  position: WeldPosition,
  tacks: Tacks,
  misfit: Type.Union([WeldMisfit, Type.Null()]),
  runs: Figure,
  arcTime: Figure,
  fillerLength: Figure,
  fillerMass: Figure,
  shrinkage: Figure,
  symbol: WeldSymbol,
});
export type Weld = Static<typeof Weld>;

/** Settings for one form of weld; `proved` says on what, empty: starting values. */
export const Procedure = Type.Object({
  form: literals(WELD_FORMS, 'form of weld'),
  proved: Type.String(),
  process: literals(['141', '142'], 'process'),
  /** The starting band, and what is used: typed, or the middle of the band. */
  currentLow: Figure,
  currentHigh: Figure,
  current: Figure,
  voltage: Figure,
  travelSpeed: Figure,
  electrode: Figure,
  /** Designation by ISO 6848. */
  electrodeCode: Type.String(),
  cup: Figure,
  torchFlow: Figure,
  preFlow: Figure,
  postFlow: Figure,
  filler: Type.String(),
  fillerDiameter: Type.Union([Figure, Type.Null()]),
  runs: Figure,
  interpass: Figure,
  /** Q of EN 1011-1 with its factor, and the arc energy of ISO/TR 18491 without [kJ/mm]. */
  heatInput: Figure,
  arcEnergy: Figure,
  /** Area of weld metal; for a fillet its leg too. */
  area: Figure,
  leg: Type.Union([Figure, Type.Null()]),
});
export type Procedure = Static<typeof Procedure>;

/** A sleeve inside a butt that backs it and stays there. */
export const Sleeve = Type.Object({
  outsideDiameter: Figure,
  wall: Figure,
  length: Figure,
  /** Clearance in the largest bore of the tube's tolerance. */
  clearance: Figure,
  plugHoles: Figure,
  plugHoleBore: Figure,
});
export type Sleeve = Static<typeof Sleeve>;

/** A weld in the order of welding, and its quarters in turn: 1 from the outside on, right-handed about the member. */
export const OrderedWeld = Type.Object({ weld: Type.String(), quarters: Type.Array(Type.Integer()) });
export type OrderedWeld = Static<typeof OrderedWeld>;

/** How the frame moves from tacked to welded, at the check dimensions and by the order. Centre to centre. */
export const WeldMovement = Type.Object({
  checks: Type.Array(
    Type.Object({
      key: Type.String(),
      index: Type.Integer(),
      /** What shrinkage alone does, whatever the order; then what pull adds in each order. */
      shrinkage: Figure,
      given: Figure,
      proposed: Figure,
      worst: Figure,
    }),
  ),
  /** How far an end, a corner or a weld stands off at most, out of flat too, which no size tells. */
  off: Type.Object({ given: Figure, proposed: Figure, worst: Figure }),
  /** Largest of the checks in size. */
  largestGiven: Figure,
  largestProposed: Figure,
  largestWorst: Figure,
  worst: Type.Array(OrderedWeld),
});
export type WeldMovement = Static<typeof WeldMovement>;

export const WeldingPlan = Type.Object({
  welds: Type.Array(Weld),
  procedures: Type.Array(Procedure),
  sleeve: Type.Union([Sleeve, Type.Null()]),
  weldLength: Figure,
  arcTime: Figure,
  /** Arc time over the share of the day that an arc burns. */
  floorTime: Figure,
  count: Figure,
  fillerMass: Figure,
  fillerLength: Figure,
  /** What one butt pulls in: typed or reckoned, as the cuts use it; and as reckoned from heat and gap. */
  shrinkage: Figure,
  reckonedShrinkage: Figure,
  /** As welded: typed, or proposed. */
  order: Type.Array(OrderedWeld),
  proposed: Type.Array(OrderedWeld),
  movement: Type.Union([WeldMovement, Type.Null()]),
});
export type WeldingPlan = Static<typeof WeldingPlan>;
