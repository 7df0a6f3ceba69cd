import { Type, type Static } from 'typebox';
import { MemberBending } from '../job/bending.ts';
import { literals } from './figure.ts';

/** Every finding that a plan can hold. The language catalogue has words for each; a test keeps the two equal. */
export const FINDING_CODES = [
  // tube
  'wall-over-half-diameter',
  'wall-outside-usual',
  'grade-springback-estimated',
  'tolerance-no-row',
  // machine and bends
  'die-radius-under-tube-radius',
  'die-radius-tight',
  'die-missing',
  'die-for-other-tube',
  'test-bends-too-few',
  'test-bends-one-angle',
  'test-bends-other-tube',
  'test-bend-impossible',
  'scatter-over-typed',
  'test-bends-no-fit',
  'springback-estimate',
  'springback-extrapolated',
  'springback-too-large',
  'angle-over-machine',
  'straight-negative',
  'straight-short-for-machine',
  'grip-short',
  'elongation-over-grade',
  'flattening-likely',
  'mandrel-advised',
  'mandrel-not-on-die',
  'radius-not-of-die',
  'bend-angle-zero',
  'bend-angle-straight-back',
  'last-straight-short',
  'tube-strikes',
  'bend-another-way',
  'bend-no-way',
  'bending-member-missing',
  'closing-weld-near-bend',
  'closing-straight-missing',
  // frame
  'width-under-tube',
  'leg-short-for-bend',
  'width-short-for-bends',
  'crown-radius-too-small',
  'crossbar-outside-legs',
  'saddle-partner-missing',
  'saddle-end-off-partner',
  'member-name-twice',
  'members-cross',
  'member-crosses-itself',
  'path-not-possible',
  'points-coincide',
  'frame-too-large',
  'crowned-bar-gripped',
  'size-doubtful',
  // came back
  'came-back-as-wanted',
  'no-single-slip',
  'readings-none',
  'reading-no-such-size',
  'reading-no-such-place',
  'reading-along-tube',
  'reading-disagrees',
  'reading-angle-disagrees',
  'readings-contradict',
  'readings-piece-negative',
  // correction
  'cut-no-place',
  'cut-beside-bend',
  'cut-holds-together',
  'cut-parts-nothing',
  'cut-member-missing',
  'splice-gains-nothing',
  'post-struck',
  'cut-in-many-pieces',
  'own-joint-no-member',
  'own-joint-off-tube',
  'own-joint-kept-out',
  'own-joints-too-near',
  'own-joints-no-fit',
  'joint-pushed',
  'target-out-of-reach',
  'cut-narrower-than-kerf',
  'cut-short-of-metal',
  'joint-twist',
  'kink-visible',
  'hi-lo-over-practice',
  'hi-lo-over-standard',
  'leg-to-be-trimmed',
  'leg-too-short',
  'rebend-cannot-narrow',
  'rebend-opens-bend',
  'rebend-over-machine',
  'fixing-no-place',
  'fixing-no-axis',
  'rebend-no-bends',
  'rebend-not-needed',
  'rebend-ring-closed',
  'rebend-no-grip',
  'rebend-no-straight',
  'rebend-at-limit',
  're-roll-between-bends',
  'rebend-saddle-off',
  'way-not-possible',
  // purge
  'closed-chamber',
  'bore-by-vent-holes',
  'feed-is-vent',
  'feed-not-an-end',
  'feed-not-free',
  'target-below-gas',
  'vent-pressure-high',
  'bottle-not-enough',
  'room-oxygen-low',
  'dam-near-weld',
  'dam-beyond-end',
  'purge-flow-turbulent',
  'argon-caution',
  // quote
  'rate-open',
  'time-open',
] as const;

export const FindingCode = literals(FINDING_CODES, 'finding code');
export type FindingCode = (typeof FINDING_CODES)[number];

/** note: good to know. caution: look before you go on. stop: this cannot be made as typed. */
export const FindingGrade = literals(['note', 'caution', 'stop'], 'grade');
export type FindingGrade = Static<typeof FindingGrade>;

/** Something that the plan has to tell. `field` is the JSON pointer of the Job field that causes it. */
export const Finding = Type.Object({
  code: FindingCode,
  grade: FindingGrade,
  field: Type.String(),
  /** Numbers [mm, degrees, ppm, Pa … as the words say] and names that the words of this code need. */
  data: Type.Record(Type.String(), Type.Union([Type.Number(), Type.String()])),
  /** A value that would mend it, where the program can say one. */
  wayOut: Type.Union([
    Type.Object({
      field: Type.String(),
      value: Type.Union([Type.Number(), Type.String(), Type.Null(), Type.Array(MemberBending)]),
    }),
    Type.Null(),
  ]),
  /** The finding in words; added where a plan leaves the program (API, terminal). */
  message: Type.Optional(Type.String()),
});
export type Finding = Static<typeof Finding>;
