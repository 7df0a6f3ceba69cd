import { Type, type Static } from 'typebox';
import { OPERATIONS } from '../job/rates.ts';
import { WayKey } from './correction.ts';
import { Figure, Unit, literals } from './figure.ts';

/** Lines in the order in which they stand. `machine` stands behind the labour of its operation. */
export const QUOTE_LINES = [
  'tube',
  'remnant-credit',
  'gas',
  'bottle-rent',
  'filler',
  'abrasives',
  ...OPERATIONS,
  'machine',
  'outside-bending',
  'travel',
  'travel-time',
  'overhead',
  'margin',
  'rounding',
  'tax',
] as const;
export const QuoteLineKey = literals(QUOTE_LINES, 'line');
export type QuoteLineKey = (typeof QUOTE_LINES)[number];

/** What a customer reads: the price before tax, shared out over these; overhead, margin and rounding are in each. */
export const QUOTE_GROUPS = ['tube', 'gas-and-filler', 'bending', 'work', 'travel'] as const;
export const QuoteGroup = literals(QUOTE_GROUPS, 'group');
export type QuoteGroup = (typeof QUOTE_GROUPS)[number];

/** A part of a line's quantity: a piece, a weld form, a set-up. `key`: language key `part.<key>`; `name` as typed, or empty. */
export const QuotePart = Type.Object({ key: Type.String(), name: Type.String(), value: Type.Number(), unit: Unit });
export type QuotePart = Static<typeof QuotePart>;

/** One line: quantity × rate. A line whose rate or time is missing stands open: its amount is null, never zero. */
export const QuoteLine = Type.Object({
  key: QuoteLineKey,
  /** What tells lines of one key apart: a size of tube, an operation; empty for the others. Read `size` for a size. */
  of: Type.String(),
  /** The tube that it is of [mm]; null for what is not of one size. */
  size: Type.Union(
    [Type.Object({ outsideDiameter: Type.Number(), wall: Type.Number(), grade: Type.String() }), Type.Null()],
    { title: 'size' },
  ),
  /** null while a time or length that it needs is open. A percentage has what it is taken of [minor]. */
  quantity: Type.Union([Figure, Type.Null()]),
  /**
   * Minor units for one unit of the quantity; for a percentage the percent, negative where it comes off. null: open, or, with
   * a quantity in minor units that is the amount itself, reckoned by a rule of its own (rounding, bender outside, bars kept).
   */
  rate: Type.Union([Type.Number(), Type.Null()]),
  rateUnit: literals(['minor', 'percent'], 'unit of the rate'),
  /** Fields that it hangs on: the rate's, and every one that is missing. */
  rateField: Type.String(),
  missing: Type.Array(Type.String()),
  /** Whether its rate or one of its times is only an example. */
  example: Type.Boolean(),
  /** Since when its rate has been so, ISO 8601; empty where none was given. */
  since: Type.String(),
  amount: Type.Union([Type.Integer(), Type.Null()]),
  /** What the quantity is made of, and where it comes from. */
  parts: Type.Array(QuotePart),
});
export type QuoteLine = Static<typeof QuoteLine>;

/** The price of so many frames, each line made anew for as many; everything adds up in minor units. */
export const QuoteBreak = Type.Object({
  quantity: Type.Integer(),
  lines: Type.Array(
    Type.Object({ key: QuoteLineKey, of: Type.String(), amount: Type.Union([Type.Integer(), Type.Null()]) }),
  ),
  /** How many of them have none: where there are any the sums are the least that it can be. */
  open: Type.Integer(),
  /** Before tax, tax, and all of it: sums of the lines that have an amount. */
  net: Type.Integer(),
  tax: Type.Integer(),
  total: Type.Integer(),
  /** Of one frame, before tax and with it [minor units, rounded]. */
  netEach: Type.Integer(),
  totalEach: Type.Integer(),
});
export type QuoteBreak = Static<typeof QuoteBreak>;

/** One way, or the frame as wanted, priced for the first of the quantities. */
export const QuoteOption = Type.Object({
  scope: Type.Union([Type.Literal('frame'), WayKey]),
  /** Whether the customer's quote shows it. */
  offered: Type.Boolean(),
  lines: Type.Array(QuoteLine),
  /** Lines that stand open, as places in `lines`. */
  open: Type.Array(Type.Integer()),
  /** How many of its lines rest on examples. */
  examples: Type.Integer(),
  /** All that is bought and done, before overhead and margin. */
  cost: Type.Integer(),
  net: Type.Integer(),
  tax: Type.Integer(),
  total: Type.Integer(),
  /** The price before tax shared out; adds up to `net`. */
  groups: Type.Array(Type.Object({ group: QuoteGroup, amount: Type.Integer() })),
  breaks: Type.Array(QuoteBreak),
  /** Labour of one frame; null while a time is open. */
  minutes: Type.Union([Figure, Type.Null()]),
});
export type QuoteOption = Static<typeof QuoteOption>;

/** What the gas costs one way or another: minutes are those in which somebody waits, welds, sets up and changes bottles. */
export const GasChoice = Type.Object({
  extent: literals(['whole-frame', 'dams'], 'purge extent'),
  /** together: all welds of a chamber in one filling. one-by-one: every weld has a filling of its own. */
  joints: literals(['together', 'one-by-one'], 'welds of a filling'),
  /** Whether this is how the job does it. */
  chosen: Type.Boolean(),
  stops: Type.Array(Type.String()),
  fillings: Figure,
  minutes: Figure,
  /** Purge and torch [m3]. */
  gas: Figure,
  /** Bottles that are begun, and changed on the way; null where nothing can be taken from one. */
  bottles: Type.Union([Figure, Type.Null()]),
  changes: Type.Union([Figure, Type.Null()]),
  /** Gas, rent, and labour of purging and changing; null while a rate of them is open. */
  cost: Type.Union([Figure, Type.Null()]),
});
export type GasChoice = Static<typeof GasChoice>;

/**
 * Where two ways cost alike: `way` is cheaper up to `at`, `other` above it. joints: joints of the splice, each as dear as its
 * own are on the mean. labour: what an hour of handwork costs, from cutting to finishing, the same for all; `now` is the mean
 * of what the hours of the way cost. offer: what a bender asks for a frame; there `other` is cheaper below `at`. frames: how
 * many of them. Tube goes by the metre or by first fit in all of it.
 */
export const BreakEven = Type.Object({
  by: literals(['joints', 'labour', 'offer', 'frames'], 'break-even by'),
  way: WayKey,
  other: WayKey,
  /** null where one of them is cheaper all along. */
  at: Type.Union([Figure, Type.Null()]),
  /** Whether `way` is cheaper again somewhere above `at`, as bars and bottles come out. */
  wavers: Type.Boolean(),
  now: Figure,
  /** Whichever costs less as it is quoted now. */
  cheaper: WayKey,
});
export type BreakEven = Static<typeof BreakEven>;

/** What the shop's own times come to for one operation; `band` is the spread (one standard deviation), null for one entry. */
export const OwnTime = Type.Object({
  operation: literals(OPERATIONS, 'operation'),
  entries: Type.Integer(),
  setUp: Figure,
  each: Figure,
  /** Taken over planned, all of it. */
  ratio: Type.Union([Figure, Type.Null()]),
});
export type OwnTime = Static<typeof OwnTime>;

/** What the option that is shown has for an operation, for the first of the quantities, as a log of times taken has it. */
export const PlannedTime = Type.Object({
  operation: literals(OPERATIONS, 'operation'),
  /** Bends, cuts, joints … of all frames. */
  count: Type.Integer(),
  /** Getting ready, and then all of them together [min]; null while a time is open. */
  setUp: Type.Union([Type.Number(), Type.Null()]),
  minutes: Type.Union([Type.Number(), Type.Null()]),
  /** The part of `minutes` that follows from arc, waiting, grinding and metres [min]. */
  process: Type.Number(),
});
export type PlannedTime = Static<typeof PlannedTime>;

export const QuotePlan = Type.Object({
  /** What is shown: the frame as wanted, or one way of putting it right. */
  scope: Type.Union([Type.Literal('frame'), WayKey]),
  currency: Type.String(),
  minorDigits: Type.Integer(),
  /** First and last day of the quote, ISO 8601; empty where it has no date. */
  date: Type.String(),
  validUntil: Type.String(),
  options: Type.Array(QuoteOption),
  gas: Type.Array(GasChoice),
  breakEven: Type.Array(BreakEven),
  /** What this job really took, operation by operation. */
  own: Type.Array(OwnTime),
  /** What is planned for each operation that is needed, in the order of the work. */
  planned: Type.Array(PlannedTime),
  /** What the legs take of one frame: they are in the work and the money of every option. null: there are none. */
  legs: Type.Union([Type.Object({ welds: Figure, purgeGas: Figure }), Type.Null()]),
});
export type QuotePlan = Static<typeof QuotePlan>;
