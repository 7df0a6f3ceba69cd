import { Type, type Static } from 'typebox';
import { LengthOrZero, ShortText } from './quantities.ts';

/** The ways of putting a frame right, in the order in which they are shown. */
export const WAY_KEYS = [
  'leave',
  'rebend',
  'splice-fewest',
  'splice-fairest',
  'splice-closest',
  'splice-own',
  'splice-rebend',
  'new-frame',
] as const;

const Station = (title: string) => LengthOrZero(50_000, title);

/** A stretch of a member that must not be cut, along the centreline of the frame as it came back. */
export const BarredStretch = Type.Object(
  {
    member: ShortText('member', 40),
    from: Station('from'),
    to: Station('to'),
    why: Type.Union([Type.Literal('fitting'), Type.Literal('weld'), Type.Literal('other')], { title: 'why' }),
  },
  { title: 'stretch not to be cut', additionalProperties: false },
);
export type BarredStretch = Static<typeof BarredStretch>;

/** A joint put down by hand: halfway between its two faces, along the centreline of the frame as it came back. */
export const PlacedJoint = Type.Object(
  { member: ShortText('member', 40), station: Station('station') },
  { title: 'joint', additionalProperties: false },
);
export type PlacedJoint = Static<typeof PlacedJoint>;

/** How the cuts of a splice are made and closed. */
export const Closing = Type.Object(
  {
    /** Root opening left between the two faces [mm]; 0 for a fused square butt. */
    gap: LengthOrZero(10, 'gap'),
    /** Width that the saw takes [mm]. */
    kerf: LengthOrZero(10, 'kerf'),
    /** What the weld pulls in at each joint [mm]; null: as its heat and its gap are reckoned to. */
    shrinkage: Type.Union([LengthOrZero(10, 'shrinkage'), Type.Null()], { title: 'shrinkage' }),
    /** Joints on one member at most, where the plan finds their places. */
    mostJoints: Type.Integer({ minimum: 1, maximum: 3, title: 'joints on a member at most' }),
    /** Members that may be cut; none named: any of them. */
    cutMembers: Type.Array(ShortText('member', 40), { maxItems: 40, title: 'members that may be cut' }),
    barred: Type.Array(BarredStretch, { maxItems: 60, title: 'stretches not to be cut' }),
    /** The joints of the way with one's own joints; none: there is no such way. */
    joints: Type.Array(PlacedJoint, { maxItems: 60, title: 'own joints' }),
    /** Paper thickness of wrap templates [mm]. */
    paperThickness: LengthOrZero(2, 'paper thickness'),
    /** Days that the bender keeps a frame; null: not known. */
    daysAtBender: Type.Union([Type.Number({ minimum: 0, maximum: 365, title: 'days at the bender' }), Type.Null()], {
      title: 'days at the bender',
    }),
    /** The correction that the sheets show; null: what the plan recommends. */
    way: Type.Union([Type.Enum<[...typeof WAY_KEYS]>([...WAY_KEYS]), Type.Null()], { title: 'way chosen' }),
  },
  { title: 'closing', additionalProperties: false },
);
export type Closing = Static<typeof Closing>;

/** Closing with the shrinkage known, typed or reckoned. */
export type SettledClosing = Closing & { readonly shrinkage: number };

/** What the cuts themselves depend on. */
export type CutClosing = Omit<SettledClosing, 'way' | 'daysAtBender'>;
