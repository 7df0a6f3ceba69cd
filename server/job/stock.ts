import { Type, type Static } from 'typebox';
import { PlacedJoint } from './closing.ts';
import { PositiveLength, ShortText } from './quantities.ts';
import { Day, SawSettings, TubeSize } from './rates.ts';

/** The most that a bar may cost [minor units]. */
const MOST_MONEY = 1_000_000_000;

/** What a bar costs in minor units; null: nobody typed it. */
const BarPrice = Type.Union(
  [Type.Integer({ minimum: 0, maximum: MOST_MONEY, title: 'price of a bar', unit: 'minor/bar' }), Type.Null()],
  { title: 'price of a bar' },
);

/** A grade by what it is called: the key of the catalogue, or the name of the shop's own. */
const GradeName = ShortText('grade', 60);

/** Bars of one kind on the rack, or one remnant. */
export const StockBar = Type.Object(
  {
    /** Where it lies, or what the shop calls it. */
    name: ShortText('name', 60),
    remnant: Type.Boolean({ title: 'remnant' }),
    ...TubeSize.properties,
    grade: GradeName,
    length: PositiveLength(20_000, 'length'),
    count: Type.Integer({ minimum: 0, maximum: 100_000, title: 'how many' }),
    price: BarPrice,
    currency: Type.String({ pattern: '^[A-Z]{3}$', title: 'currency' }),
    /** Digits of its minor unit, as the price counts in it. */
    minorDigits: Type.Integer({ minimum: 0, maximum: 3, title: 'digits of the minor unit' }),
    /** Heat number from its certificate; empty: not known. */
    heat: ShortText('heat', 40),
  },
  { title: 'bar in stock', additionalProperties: false },
);
export type StockBar = Static<typeof StockBar>;

/** A piece on a bar, from its trimmed end on. */
const LaidPiece = Type.Object(
  {
    /** As the cut list calls it. */
    name: ShortText('piece', 120),
    length: PositiveLength(50_000, 'length'),
    /** Title of the other job that it is for; empty: this one. */
    job: ShortText('for another job'),
  },
  { title: 'piece on a bar', additionalProperties: false },
);

/** A bar that is cut up. */
export const LaidBar = Type.Object(
  {
    /** Its place in the shop's stock; empty: to be bought. */
    stock: ShortText('place in stock', 60),
    name: ShortText('name', 60),
    remnant: Type.Boolean({ title: 'remnant' }),
    ...TubeSize.properties,
    grade: GradeName,
    length: PositiveLength(20_000, 'length'),
    price: BarPrice,
    heat: ShortText('heat', 40),
    /** How many bars are cut alike. */
    times: Type.Integer({ minimum: 1, maximum: 100_000, title: 'bars cut alike' }),
    pieces: Type.Array(LaidPiece, { minItems: 1, maxItems: 400, title: 'pieces' }),
  },
  { title: 'bar to be cut', additionalProperties: false },
);
export type LaidBar = Static<typeof LaidBar>;

/** Which bars are cut into what, as it was found and kept. */
export const StockLayout = Type.Object(
  {
    /** proven: no dearer set of bars does, and none of as much with less of them used. */
    found: Type.Union([Type.Literal('proven'), Type.Literal('best-so-far')], { title: 'found' }),
    date: Day('found on'),
    saw: SawSettings,
    currency: Type.String({ pattern: '^[A-Z]{3}$', title: 'currency' }),
    /** Digits of its minor unit, as the price counts in it. */
    minorDigits: Type.Integer({ minimum: 0, maximum: 3, title: 'digits of the minor unit' }),
    bars: Type.Array(LaidBar, { maxItems: 400, title: 'bars to be cut' }),
    /** Its number in the shop's book once the bars have been taken; null: not taken. */
    taken: Type.Union([Type.Integer({ minimum: 1, maximum: 999_999_999, title: 'taken as' }), Type.Null()], {
      title: 'taken',
    }),
  },
  { title: 'bars as laid out', additionalProperties: false },
);
export type StockLayout = Static<typeof StockLayout>;

/** How the tube of a job is taken from bars. */
export const Stock = Type.Object(
  {
    saw: SawSettings,
    /** Where a member is made of several lengths that are welded before they are bent: stations on the frame as wanted. */
    joints: Type.Array(PlacedJoint, { maxItems: 60, title: 'joints between bars' }),
    layout: Type.Union([StockLayout, Type.Null()], { title: 'bars as laid out' }),
  },
  { title: 'stock', additionalProperties: false },
);
export type Stock = Static<typeof Stock>;
