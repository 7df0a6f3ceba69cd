import { Type, type Static } from 'typebox';
import { WAY_KEYS } from '../job/closing.ts';
import { Figure, literals } from './figure.ts';
import { PlanPiece } from './frame.ts';
import { Joint, KeepOut } from './joint.ts';
import { Data, Difference, ReadingsFit, Said } from './readings-fit.ts';
import { SlipKey } from './slip.ts';
import { FlatPoint } from './view.ts';

export { WAY_KEYS };

/** A slip, or two together, with what would have been measured, and how far that is from the readings. */
export const SlipScore = Type.Object({
  keys: Type.Array(SlipKey),
  /** JSON pointers of the sizes that were read another way; empty for a slip at the marks. */
  fields: Type.Array(Type.String()),
  /** The other die's radius where that is the slip. */
  dieRadius: Type.Union([Type.Number(), Type.Null()]),
  /** The one bend that the slip is about, counted from the member's start; null for every other slip. */
  bend: Type.Union([Type.Object({ member: Type.String(), number: Type.Integer() }), Type.Null()]),
  /** Root mean square of (predicted − measured), in units of each reading's accuracy. */
  misfit: Figure,
  explains: Type.Boolean(),
  predicted: Type.Array(
    Type.Object({
      field: Type.String(),
      name: Said,
      unit: literals(['mm', 'deg'], 'unit'),
      value: Type.Number(),
      measured: Type.Number(),
    }),
  ),
});
export type SlipScore = Static<typeof SlipScore>;

export const WayKey = literals(WAY_KEYS, 'way');
export type WayKey = (typeof WAY_KEYS)[number];

/** Turn of one existing bend, or a rolled crown rolled again. */
export const RebendRow = Type.Object({
  member: Type.String(),
  made: literals(['die', 'rolled'], 'made'),
  /** Die bends counted by themselves, crowns by themselves. */
  bend: Type.Integer(),
  turn: Figure,
  from: Figure,
  to: Figure,
  /** For a crown: its radius before and after. */
  radiusFrom: Type.Union([Figure, Type.Null()]),
  radiusTo: Type.Union([Figure, Type.Null()]),
});
export type RebendRow = Static<typeof RebendRow>;

/** A foot that is cut back so that its leg has the wanted length. */
export const Trim = Type.Object({ member: Type.String(), end: literals(['start', 'finish'], 'end'), length: Figure });
export type Trim = Static<typeof Trim>;

/** What stands under a foot so that the frame stands as wanted where a leg is short. */
export const Packing = Type.Object({
  member: Type.String(),
  end: literals(['start', 'finish'], 'end'),
  height: Figure,
});
export type Packing = Static<typeof Packing>;

/** A fixing point after the correction: how far it is from where it must land. A post says what room is left. */
export const FixingResult = Type.Object({
  /** JSON pointer of the fixing point; of no use where the free ends stand for it: then empty. */
  field: Type.String(),
  name: Type.String(),
  fixing: literals(['foot', 'pad', 'hole', 'post'], 'fixing'),
  misfit: Figure,
  allowed: Figure,
});
export type FixingResult = Static<typeof FixingResult>;

/** One step of the work on a way, in order; `joint` 0 where it is about no joint. */
export const WorkStep = Type.Object({ key: Type.String(), joint: Type.Integer(), data: Data });
export type WorkStep = Static<typeof WorkStep>;

/** One way of putting the frame right. All ways have the same columns. */
export const Way = Type.Object({
  key: WayKey,
  possible: Type.Boolean(),
  /** Stops that keep it from being possible, by finding code. */
  reasons: Type.Array(Type.String()),
  /** Largest distance of a fixing point from where it must land, the frame laid on the wanted one as well as it goes. */
  fixingMisfit: Figure,
  fixings: Type.Array(FixingResult),
  /** Largest distance of a corner. */
  cornerMisfit: Figure,
  /** Corner and end width after the correction less the wanted ones; null for a frame without them. */
  cornerWidth: Type.Union([Figure, Type.Null()]),
  endWidth: Type.Union([Figure, Type.Null()]),
  toe: Figure,
  largestKink: Figure,
  largestHiLo: Figure,
  welds: Figure,
  purgeSetups: Figure,
  purgeGas: Figure,
  minutes: Type.Union([Figure, Type.Null()]),
  /** Minor units; null while a rate that it needs is open. */
  cost: Type.Union([Figure, Type.Null()]),
  /** Sum of the lines that have a rate: what it costs at least while others stand open. */
  costAtLeast: Figure,
  /** Days until the frame is there again; null while the days at the bender are not known. */
  days: Type.Union([Figure, Type.Null()]),
  /** What can go wrong, by language key. */
  risks: Type.Array(Type.String()),
  /** Check dimensions after the correction. */
  after: Type.Array(Difference),
  joints: Type.Array(Joint),
  rebends: Type.Array(RebendRow),
  trims: Type.Array(Trim),
  packing: Type.Array(Packing),
  /** The order of the work. */
  steps: Type.Array(WorkStep),
  /** The corrected frame, for drawing. */
  members: Type.Array(Type.Object({ name: Type.String(), pieces: Type.Array(PlanPiece) })),
  /** Every fixing point and corner comes as near as it must, and no tube too near to a post. */
  within: Type.Boolean(),
  /** No other possible way is at least as good in every column and better in one. */
  unbeaten: Type.Boolean(),
});
export type Way = Static<typeof Way>;

/** A member as it came back. */
export const ReturnedMember = Type.Object({
  name: Type.String(),
  closed: Type.Boolean(),
  developedLength: Figure,
  pieces: Type.Array(PlanPiece),
  /** Where a joint may stand: stretches of its centreline, and the rule that ends each. */
  free: Type.Array(Type.Object({ from: Type.Number(), to: Type.Number(), startRule: KeepOut, endRule: KeepOut })),
});
export type ReturnedMember = Static<typeof ReturnedMember>;

/** Other places for the joints, best first. */
export const Alternative = Type.Object({
  joints: Type.Array(Type.Object({ member: Type.String(), station: Type.Number(), on: Type.String() })),
  fixingMisfit: Type.Number(),
  cornerMisfit: Type.Number(),
  largestKink: Type.Number(),
  largestHiLo: Type.Number(),
  welds: Type.Integer(),
  /** Work on it; null while a time that it needs is open. */
  minutes: Type.Union([Type.Number(), Type.Null()]),
});
export type Alternative = Static<typeof Alternative>;

/** Each way drawn over the wanted frame, its distance from it enlarged; all ways with the same factor and bounds. */
export const MisfitPicture = Type.Object({
  enlarged: Type.Number(),
  bounds: Type.Tuple([Type.Number(), Type.Number(), Type.Number(), Type.Number()]),
  wanted: Type.Array(Type.Array(FlatPoint)),
  ways: Type.Array(
    Type.Object({ key: WayKey, lines: Type.Array(Type.Array(FlatPoint)), joints: Type.Array(FlatPoint) }),
  ),
});
export type MisfitPicture = Static<typeof MisfitPicture>;

export const CorrectionPlan = Type.Object({
  fit: ReadingsFit,
  members: Type.Array(ReturnedMember),
  differences: Type.Array(Difference),
  slips: Type.Array(SlipScore),
  ways: Type.Array(Way),
  alternatives: Type.Array(Alternative),
  /** How many layouts of cuts were looked at, how many worked out to the end, and whether none was left out for time. */
  search: Type.Object({ layouts: Type.Integer(), workedOut: Type.Integer(), complete: Type.Boolean() }),
  recommended: Type.Union([WayKey, Type.Null()]),
  /** Why, as a language key with its data. */
  reason: Said,
  /** What the recommended way costs beside others, where costs are known. */
  money: Type.Array(Said),
  /** What would change the recommendation. */
  wouldChange: Type.Array(Said),
  /** What the sheets show: the user's choice where it is possible, else the recommended way. */
  chosen: Type.Union([WayKey, Type.Null()]),
  picture: Type.Union([MisfitPicture, Type.Null()]),
});
export type CorrectionPlan = Static<typeof CorrectionPlan>;
