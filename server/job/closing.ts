import { Type, type Static } from 'typebox';
import { LengthOrZero } from './quantities.ts';

/** How the cuts of a splice are made and closed. */
export const Closing = Type.Object(
  {
    /** Root opening left between the two faces [mm]; 0 for a fused square butt. */
    gap: LengthOrZero(10, 'gap'),
    /** Width that the saw takes [mm]. */
    kerf: LengthOrZero(10, 'kerf'),
    /** What the weld pulls in at each joint [mm]. */
    shrinkage: LengthOrZero(10, 'shrinkage'),
    /** Joints on each curved crossing member; the plan always computes both and shows which one this chooses. */
    joints: Type.Union([Type.Literal('best'), Type.Literal('one'), Type.Literal('two')], {
      title: 'joints for each member',
    }),
    /** Where the cut goes, from the middle of the frame towards its right-hand side [mm]. */
    cutOffset: Type.Number({ minimum: -10_000, maximum: 10_000, title: 'cut off the middle', unit: 'mm' }),
    /** Distance between the two joints where a member gets two [mm]. */
    spread: LengthOrZero(10_000, 'distance between two joints'),
    /** Paper thickness of wrap templates [mm]. */
    paperThickness: LengthOrZero(2, 'paper thickness'),
    /** The correction that the sheets show; null: what the plan recommends. */
    way: Type.Union(
      [
        Type.Literal('leave'),
        Type.Literal('rebend'),
        Type.Literal('splice-one'),
        Type.Literal('splice-two'),
        Type.Literal('splice-turned'),
        Type.Literal('new-frame'),
        Type.Null(),
      ],
      { title: 'way chosen' },
    ),
  },
  { title: 'closing', additionalProperties: false },
);
export type Closing = Static<typeof Closing>;
