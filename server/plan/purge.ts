import { Type, type Static } from 'typebox';
import { Figure, Point, literals } from './figure.ts';

const PurgeTime = Type.Object({ volumes: Figure, time: Figure, gas: Figure });
export type PurgeTime = Static<typeof PurgeTime>;

export const MemberEnd = literals(['start', 'finish'], 'end');

/** A place on a member, at its centreline. */
export const Spot = Type.Object({ member: Type.String(), station: Type.Number(), point: Point });
export type Spot = Static<typeof Spot>;

/**
 * Where gas passes between a chamber and the air: an open end, a joint's gap until the weld closes it, a hole drilled to
 * the air, the hole in a pad's plate, or beside a dam.
 */
export const GasSpot = Type.Object({
  ...Spot.properties,
  kind: literals(['end', 'gap', 'hole', 'plate', 'dam'], 'opening'),
  /** Bore of the opening once it is a vent [mm]. */
  bore: Type.Number(),
  /** Weld whose gap it is, or the number of the vent hole; empty for the others. */
  name: Type.String(),
  /** Height over the lowest place of the chamber as the frame is held [mm]. */
  height: Type.Number(),
});
export type GasSpot = Static<typeof GasSpot>;

/** Part of a member's bore; the gas runs from `from` to `to`, so that either may be the larger. */
export const Stretch = Type.Object({ member: Type.String(), from: Type.Number(), to: Type.Number() });
export type Stretch = Static<typeof Stretch>;

/** A way of the gas from the feed to a vent, stretch by stretch, and the share of the flow that takes it [percent]. */
export const GasPath = Type.Object({ stretches: Type.Array(Stretch), vent: Type.Integer(), share: Figure });
export type GasPath = Static<typeof GasPath>;

/** Bore that no gas runs through: it clears by diffusion alone. `points` as the frame is held, away from the gas. */
export const DeadLeg = Type.Object({
  stretches: Type.Array(Stretch),
  length: Figure,
  clears: Figure,
  points: literals(['up', 'down', 'level'], 'points'),
  /** Welds that stand in it. */
  welds: Type.Array(Type.String()),
});
export type DeadLeg = Static<typeof DeadLeg>;

/** A connected bore that is filled with argon for its welds. */
export const Chamber = Type.Object({
  number: Type.Integer(),
  /** Number of the set-up that it is filled in. */
  setup: Type.Integer(),
  /** What is in it; between dams the one member and the stations between them. */
  stretches: Type.Array(Stretch),
  /** Welds that are made while it is filled, by name. */
  welds: Type.Array(Type.String()),
  volume: Figure,
  length: Figure,
  plug: PurgeTime,
  /** null where the model does not hold (pockets between dams, turbulent flow, no way through). */
  longTube: Type.Union([PurgeTime, Type.Null()]),
  wellMixed: PurgeTime,
  /** The model chosen in the job, or the cautious one where that has no answer. */
  printed: PurgeTime,
  feed: GasSpot,
  /** Every opening that must stay open, the highest first; empty where the chamber has no way out. */
  vents: Type.Array(GasSpot),
  /** Share of the gas that leaves by each of them [percent]. */
  ventShares: Type.Array(Figure),
  /** Height of the first vent over the feed as the frame is held [mm]. */
  rise: Figure,
  /** Gaps of joints that are taped until they are welded. */
  taped: Type.Array(Type.Object({ ...Spot.properties, weld: Type.String() })),
  dams: Type.Array(Spot),
  /** Open ends that must be plugged; an end with a hose or a vent in its plug is among them. */
  plugs: Type.Array(Type.Object({ member: Type.String(), end: MemberEnd, point: Point })),
  /** Vent holes to the air that must be plugged, by number. */
  pluggedHoles: Type.Array(Type.Integer()),
  paths: Type.Array(GasPath),
  deadLegs: Type.Array(DeadLeg),
});
export type Chamber = Static<typeof Chamber>;

/**
 * Chambers that are filled side by side, since a weld heats more than one of them; each has a hose of its own. One that
 * is full before the others is turned down to the welding flow.
 */
export const PurgeSetUp = Type.Object({
  number: Type.Integer(),
  /** By number, in order. */
  chambers: Type.Array(Type.Integer()),
  /** Welds that are made while all of them are full, by name. */
  welds: Type.Array(Type.String()),
  /** Until the last of its chambers has the target [s]. */
  wait: Figure,
});
export type PurgeSetUp = Static<typeof PurgeSetUp>;

/** Filling the whole frame, or pockets between dams: what each takes. */
export const ExtentWork = Type.Object({
  extent: literals(['whole-frame', 'dams'], 'purge extent'),
  setups: Figure,
  /** Waiting before the arc, all set-ups [s]. */
  wait: Figure,
  /** Gas before the arc, and all purge gas [L]. */
  gasBefore: Figure,
  gas: Figure,
  /** Waiting, welding from tack to last arc, holding, and the set-ups where the job has a time for them [min]. */
  minutes: Figure,
  /** Stops that keep it from being done, by finding code. */
  stops: Type.Array(Type.String()),
});
export type ExtentWork = Static<typeof ExtentWork>;

/** A meter reading beside what the models would have had by then. */
export const MeterVerdict = Type.Object({
  field: Type.String(),
  chamber: Type.Integer(),
  minutes: Type.Number(),
  oxygen: Type.Number(),
  wellMixed: Figure,
  longTube: Type.Union([Figure, Type.Null()]),
  /** Time from this reading to the target if it goes on well mixed; null where a leak would keep it above. */
  remaining: Type.Union([Figure, Type.Null()]),
  /** Air leaking in that would hold the reading where it is. */
  leak: Type.Union([Figure, Type.Null()]),
  verdict: literals(['reached', 'sooner', 'as-reckoned', 'later', 'below-gas', 'no-chamber'], 'verdict'),
});
export type MeterVerdict = Static<typeof MeterVerdict>;

/** Oxygen in a space that the argon of the job ends up in. */
export const RoomPlan = Type.Object({
  /** When the job's gas has been let out: still air, and with the fan. */
  oxygenStill: Figure,
  oxygenFan: Figure,
  /** Of the largest flow kept on, until the alarm: still air, and with the fan; null: it stays above. */
  alarmStill: Figure,
  alarmFan: Type.Union([Figure, Type.Null()]),
  /** If it were left on at the largest flow for a night of 8 h. */
  leftOn: Figure,
  /** If the whole bottle came out at once. */
  bottleOut: Figure,
  airToStaySafe: Figure,
  /** After the gas is shut off with the fan on, until the air is safe again; null without a fan or where it never was unsafe. */
  recovers: Type.Union([Figure, Type.Null()]),
  /** The low space, as if none of the gas left it; null: none typed. */
  low: Type.Union([Type.Object({ alarm: Figure, oxygen: Figure }), Type.Null()]),
});
export type RoomPlan = Static<typeof RoomPlan>;

export const BottlePlan = Type.Object({
  contents: Figure,
  /** What can be taken before the reserve is reached. */
  usable: Figure,
  share: Figure,
  /** How many bottles filled like this one the job takes; null where nothing can be taken from it. */
  bottles: Type.Union([Figure, Type.Null()]),
  /** Where the gauge stands when the job is done, at the same temperature; null where it does not last. */
  gaugeAfter: Type.Union([Figure, Type.Null()]),
  /** Taken since the first reading, and left above the reserve now, by the gauge read again; null: not read. */
  taken: Type.Union([Figure, Type.Null()]),
  left: Type.Union([Figure, Type.Null()]),
});
export type BottlePlan = Static<typeof BottlePlan>;

export const PurgePlan = Type.Object({
  gasOxygen: Figure,
  targetOxygen: Figure,
  /** AWS D18.2 sample whose backing gas held about as much oxygen as the target: its number, 1 to 10. */
  colour: Figure,
  /** Both are numbered in the order of the welds, so that a set-up has chambers that follow each other. */
  setups: Type.Array(PurgeSetUp),
  chambers: Type.Array(Chamber),
  prePurgeFlow: Figure,
  weldingFlow: Figure,
  /** What the flow is turned down to before the last quarter of a joint closes. */
  closingFlow: Figure,
  ventPressure: Figure,
  ventBoreFor100Pa: Figure,
  leakLimit: Figure,
  reynolds: Figure,
  hold: Figure,
  /** Until the root is below 250 °C, as reckoned. */
  cooling: Figure,
  /** Rise of temperature at a dam, and when its peak passes. */
  damRise: Figure,
  damPeak: Figure,
  extents: Type.Array(ExtentWork),
  meters: Type.Array(MeterVerdict),
  /** Purge gas before, during and after all the joints, of every chamber that is kept full for them. */
  purgeGas: Figure,
  torchGas: Figure,
  jobGas: Figure,
  bottle: BottlePlan,
  room: RoomPlan,
});
export type PurgePlan = Static<typeof PurgePlan>;
