import { Type, type Static } from 'typebox';
import { Figure, literals } from './figure.ts';

export const MAKING_KEYS = ['as-planned', 'other-end', 'other-side', 'other-end-other-side', 'split'] as const;
export const MakingKey = literals(MAKING_KEYS, 'way to bend');
export type MakingKey = (typeof MAKING_KEYS)[number];

export const OBSTACLES = ['bed', 'die', 'clamp', 'pressure-die', 'tube'] as const;
export type Obstacle = (typeof OBSTACLES)[number];

/** What keeps a member from being bent one way. `value` and `low` in mm or degrees as the code says. */
export const MakingProblem = Type.Object({
  code: literals(['grip-short', 'last-straight-short', 'straight-short', 'angle-over-machine', 'strikes'], 'problem'),
  bend: Type.Integer(),
  value: Type.Number(),
  low: Type.Union([Type.Number(), Type.Null()]),
  obstacle: Type.Union([literals(OBSTACLES, 'obstacle'), Type.Null()]),
});
export type MakingProblem = Static<typeof MakingProblem>;

/** The smallest distance between the bent part and what stands round it, over all bends of the member. */
export const Clearance = Type.Object({
  obstacle: literals(OBSTACLES, 'obstacle'),
  while: literals(['bending', 'turning'], 'while'),
  bend: Type.Integer(),
  distance: Figure,
});
export type Clearance = Static<typeof Clearance>;

/** One way to bend a member: from either end, on either side of the machine. */
export const Making = Type.Object({
  key: MakingKey,
  possible: Type.Boolean(),
  problems: Type.Array(MakingProblem),
  /** Left on for the machine to hold, cut off after bending: before the first bend, and after the last. */
  extraFirst: Figure,
  extraLast: Figure,
  clearance: Type.Union([Clearance, Type.Null()]),
});
export type Making = Static<typeof Making>;

/** A member made of two pieces with a joint in a straight. */
export const Split = Type.Object({
  /** Station of the joint from the member's start [mm]. */
  station: Figure,
  /** From the joint to the nearer bend. */
  clear: Figure,
  first: Type.Object({ length: Figure, way: MakingKey }),
  second: Type.Object({ length: Figure, way: MakingKey }),
});
export type Split = Static<typeof Split>;

/** Where a closed member's weld stands: in the longest straight, in its middle, clear of the bends. */
export const ClosingWeld = Type.Object({
  /** Number of the straight, counted from the member's first point. */
  straight: Type.Integer(),
  byRule: Type.Boolean(),
  length: Figure,
  /** From the weld to the bends beside it. */
  clear: Figure,
  choices: Type.Array(Type.Object({ straight: Type.Integer(), length: Type.Number(), usable: Type.Boolean() })),
});
export type ClosingWeld = Static<typeof ClosingWeld>;

/** How a member is bent, and how else it could be. */
export const MemberMaking = Type.Object({
  from: literals(['start', 'finish'], 'bent from'),
  side: literals(['right', 'left'], 'die lies'),
  /** Whether the bed was looked at; a member that is never turned stays above it. */
  bed: literals(['checked', 'not-known', 'not-needed'], 'bed'),
  ways: Type.Array(Making),
  split: Type.Union([Split, Type.Null()]),
  /** Centreline radii that both the material and the straights between the bends allow; null: none does. */
  radii: Type.Union([Type.Object({ least: Figure, most: Figure }), Type.Null()]),
  closing: Type.Union([ClosingWeld, Type.Null()]),
});
export type MemberMaking = Static<typeof MemberMaking>;
