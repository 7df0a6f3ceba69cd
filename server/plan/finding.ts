import { Type, type Static } from 'typebox';
import { MemberBending } from '../job/bending.ts';
import { PlacedJoint } from '../job/closing.ts';
import { TubePlace } from '../job/tube-place.ts';
import { literals } from './figure.ts';
import { FINDING_CODES } from './finding-codes.ts';

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
      value: Type.Union([
        Type.Number(),
        Type.String(),
        Type.Null(),
        Type.Array(MemberBending),
        Type.Array(PlacedJoint),
        TubePlace,
      ]),
    }),
    Type.Null(),
  ]),
  /** The finding in words; added where a plan leaves the program (API, terminal). */
  message: Type.Optional(Type.String()),
});
export type Finding = Static<typeof Finding>;
