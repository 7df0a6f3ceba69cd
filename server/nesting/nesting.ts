import { Type, type Static } from 'typebox';
import { Job } from '../job/job.ts';
import { StockLayout } from '../job/stock.ts';

/** The longest that anybody may have bars sought for [s]; our own choice. */
const MOST_SECONDS = 60;

/** Other stored jobs that are cut from the same bars at once; our own choice. */
const MOST_OTHERS = 20;

const Whole = (title: string) => Type.Integer({ minimum: 0, title });
const Money = (title: string) => Type.Union([Type.Integer({ title, unit: 'minor' }), Type.Null()], { title });

/** What is to be cut from bars. */
export const NestingRequest = Type.Object(
  {
    job: Job,
    /** Where it is stored; null: it is not. */
    id: Type.Union([Type.String({ minLength: 1, maxLength: 64 }), Type.Null()], { title: 'id of the job' }),
    /** Ids of stored jobs that are cut from the same bars, each as often as its own quote says. */
    with: Type.Array(Type.String({ minLength: 1, maxLength: 64 }), { maxItems: MOST_OTHERS, title: 'other jobs' }),
    /** How many frames of this job. */
    quantity: Type.Integer({ minimum: 1, maximum: 1000, title: 'how many frames' }),
    /** false: all bars are bought. */
    useStock: Type.Boolean({ title: 'use the bars in stock' }),
    seconds: Type.Number({ minimum: 1, maximum: MOST_SECONDS, title: 'longest search', unit: 's' }),
  },
  { title: 'what is to be cut from bars', additionalProperties: false },
);
export type NestingRequest = Static<typeof NestingRequest>;

/** The bars of one size and grade, for all jobs together. */
const NestedSize = Type.Object({
  outsideDiameter: Type.Number(),
  wall: Type.Number(),
  grade: Type.String(),
  bars: Whole('bars'),
  toBuy: Whole('bars to be bought'),
  /** What they cost, and what no set of bars can cost less than; null where a price is not known. */
  cost: Money('cost'),
  bound: Money('at least'),
  /** Nothing costs less, and nothing of that cost takes shorter bars. */
  proven: Type.Boolean(),
  /**
   * How far the cost, or where it is proven the length of the bars, may be over the least [percent]; null: they may come to
   * nothing, for all that is known.
   */
  gap: Type.Union([Type.Number({ minimum: 0, unit: 'percent' }), Type.Null()]),
});

/** A piece that no bar is long enough for; it is on none. */
const OverlongPiece = Type.Object({
  /** Title of the other job that it is for; empty: this one. */
  job: Type.String(),
  name: Type.String(),
  length: Type.Number(),
  /** What the longest bar takes after its end trim; 0: there is no bar of this size. */
  longest: Type.Number(),
});

/** What a job pays of all bars, by the length that is cut for it. */
const Share = Type.Object({ job: Type.String(), id: Type.String(), cost: Money('share') });

/** A row of the stock that was not cut from: its price is in another currency than the job, or in other digits of it. */
const LeftOutRow = Type.Object({
  id: Type.String(),
  name: Type.String(),
  currency: Type.String(),
  minorDigits: Whole('digits after the point'),
});

export const NestingResult = Type.Object(
  {
    /** The bars that something of this job is cut from, pieces of the other jobs among them named. */
    layout: StockLayout,
    /** The same for every job, this one first with null for its id; `title`: what its pieces are called on the others' bars. */
    layouts: Type.Array(
      Type.Object({ id: Type.Union([Type.String(), Type.Null()]), title: Type.String(), layout: StockLayout }),
    ),
    /** Every bar once, each piece with the name of its job; without names where there is one job only. */
    whole: StockLayout,
    sizes: Type.Array(NestedSize),
    overlong: Type.Array(OverlongPiece),
    /** This job first, with an empty id. */
    shares: Type.Array(Share),
    /** Rows of the stock that pieces could be cut from, and that nothing was sought on. */
    leftOut: Type.Array(LeftOutRow),
  },
  { title: 'bars as found' },
);
export type NestingResult = Static<typeof NestingResult>;

const STATES = ['waiting', 'running', 'done', 'cancelled', 'failed'] as const;

/** How far the search for bars has come. */
export const Nesting = Type.Object(
  {
    id: Type.String(),
    state: Type.Enum<[...typeof STATES]>([...STATES], { title: 'state' }),
    /** Pieces of all jobs that fit a bar. */
    pieces: Whole('pieces'),
    /** Best so far of all sizes together; null before there is any. */
    best: Type.Union([
      Type.Object({ bars: Whole('bars'), cost: Money('cost'), bound: Money('at least') }),
      Type.Null(),
    ]),
    /** When done, or cancelled after something was found. */
    result: Type.Union([NestingResult, Type.Null()]),
    /** In words, why it failed; else empty. */
    trouble: Type.String(),
  },
  { title: 'search for bars' },
);
export type Nesting = Static<typeof Nesting>;
