import { Type, type Static } from 'typebox';
import { Figure, Point, literals } from './figure.ts';

const PurgeTime = Type.Object({ volumes: Figure, time: Figure, gas: Figure });
export type PurgeTime = Static<typeof PurgeTime>;

/** A connected bore that is filled in one set-up. */
export const Chamber = Type.Object({
  number: Type.Integer(),
  /** Members in it; with dams the one member and the stations between them. */
  stretches: Type.Array(Type.Object({ member: Type.String(), from: Type.Number(), to: Type.Number() })),
  joints: Type.Array(Type.Integer()),
  volume: Figure,
  length: Figure,
  plug: PurgeTime,
  /** null where the model does not hold (pockets between dams). */
  longTube: Type.Union([PurgeTime, Type.Null()]),
  wellMixed: PurgeTime,
  /** The model chosen in the job, or the cautious one where that has no answer. */
  printed: PurgeTime,
  feed: Type.Object({ member: Type.String(), station: Type.Number(), point: Point }),
  vent: Type.Object({ member: Type.String(), station: Type.Number(), point: Point }),
  dams: Type.Array(Type.Object({ member: Type.String(), station: Type.Number(), point: Point })),
  /** Open ends that must be plugged. */
  plugs: Type.Array(Type.Object({ member: Type.String(), end: literals(['start', 'finish'], 'end'), point: Point })),
});
export type Chamber = Static<typeof Chamber>;

export const PurgePlan = Type.Object({
  gasOxygen: Figure,
  targetOxygen: Figure,
  chambers: Type.Array(Chamber),
  prePurgeFlow: Figure,
  weldingFlow: Figure,
  ventPressure: Figure,
  ventBoreFor100Pa: Figure,
  leakLimit: Figure,
  reynolds: Figure,
  hold: Figure,
  /** Purge gas before, during and after all the joints. */
  purgeGas: Figure,
  torchGas: Figure,
  jobGas: Figure,
  bottleContents: Figure,
  bottleShare: Figure,
  /** Oxygen in the room when the job's gas has been let out: still air, and with the fan. */
  roomOxygenStill: Figure,
  roomOxygenFan: Figure,
  timeToAlarm: Type.Union([Figure, Type.Null()]),
  airToStaySafe: Figure,
});
export type PurgePlan = Static<typeof PurgePlan>;

export const WeldingPlan = Type.Object({
  weldLength: Figure,
  arcTime: Figure,
  joints: Figure,
  currentLow: Figure,
  currentHigh: Figure,
  filler: Type.String(),
  fillerMass: Figure,
  fillerLength: Figure,
  /** Tacks of one joint. */
  tacks: Figure,
  /** Where each joint is, in the order of welding: member and station on it [mm]. */
  order: Type.Array(Type.Object({ number: Type.Integer(), member: Type.String(), station: Type.Number() })),
});
export type WeldingPlan = Static<typeof WeldingPlan>;
