import { Type, type Static } from 'typebox';

/** How one member is bent, where that differs from the usual way. */
export const MemberBending = Type.Object(
  {
    member: Type.String({ minLength: 1, maxLength: 40, title: 'member' }),
    /** Which end is marked from, sticks out of the clamp and is bent first. */
    from: Type.Union([Type.Literal('start'), Type.Literal('finish')], { title: 'bent from' }),
    /** Which side of a machine with dies on both sides. */
    side: Type.Union([Type.Literal('usual'), Type.Literal('other')], { title: 'die side' }),
    /** The straight of a closed member that its closing weld stands in, counted from 1; null: by rule. */
    closingStraight: Type.Union([Type.Integer({ minimum: 1, maximum: 400, title: 'closing straight' }), Type.Null()], {
      title: 'closing weld in straight',
    }),
  },
  { title: 'bending of a member', additionalProperties: false },
);
export type MemberBending = Static<typeof MemberBending>;

/** How the frame is bent. */
export const Bending = Type.Object(
  {
    /** Mirrored: the frame for the other side, every rotation turned round. */
    hand: Type.Union([Type.Literal('as-drawn'), Type.Literal('mirrored')], { title: 'hand' }),
    /** Accuracy class that the bent frame is checked against: ISO 13920, table 1. */
    toleranceClass: Type.Union([Type.Literal('A'), Type.Literal('B'), Type.Literal('C'), Type.Literal('D')], {
      title: 'tolerance class',
    }),
    members: Type.Array(MemberBending, { maxItems: 60, title: 'members bent another way' }),
  },
  { title: 'bending', additionalProperties: false },
);
export type Bending = Static<typeof Bending>;
