import { Type, type Static, type TNumber, type TInteger } from 'typebox';
import { LengthOrZero, MONTH_AND_DAY, PositiveLength, ShortText } from './quantities.ts';

/** The work that labour is reckoned by, in the order in which it is done; `bottle`: changing a gas bottle. */
export const OPERATIONS = ['bend', 'cut', 'fit', 'purge', 'bottle', 'weld', 'finish'] as const;
export type Operation = (typeof OPERATIONS)[number];

/** A day that a calendar has, ISO 8601; empty where none was given. */
export const DAY = `^(\\d{4}-${MONTH_AND_DAY})?$`;
export const Day = (title: string) => Type.String({ maxLength: 10, pattern: DAY, title });

/**
 * One value of the shop's own. `value` null: nobody knows it, so that its line stands open. `example`: it is only there to
 * show how a quote looks, until somebody types his own.
 */
const own = (title: string, value: TNumber | TInteger) =>
  Type.Object(
    {
      value: Type.Union([value, Type.Null()], { title }),
      /** Since when it has been so. */
      since: Day(`${title}: since`),
      example: Type.Boolean({ title: `${title}: example` }),
    },
    { title, additionalProperties: false },
  );

/** The most that any rate may be [minor units]. */
const MOST_MONEY = 1_000_000_000;

const Money = (title: string, per: string) =>
  own(title, Type.Integer({ minimum: 0, maximum: MOST_MONEY, title, unit: `minor/${per}` }));

const Minutes = (title: string) => own(title, Type.Number({ minimum: 0, maximum: 10_000, title, unit: 'min' }));

const Percent = (title: string, maximum: number) =>
  own(title, Type.Number({ minimum: 0, maximum, title, unit: 'percent' }));

/** A value of the shop's own, whatever its unit. */
export type OwnValue = { value: number | null; since: string; example: boolean };

/** Outside diameter and wall of a tube. */
export const TubeSize = Type.Object(
  { outsideDiameter: PositiveLength(500, 'outside diameter'), wall: PositiveLength(50, 'wall') },
  { title: 'size', additionalProperties: false },
);
export type TubeSize = Static<typeof TubeSize>;

/** What one size of tube costs: by the metre, or by the bar as it is bought. */
export const TubeRate = Type.Object(
  {
    /** null: every size that has no row of its own. */
    size: Type.Union([TubeSize, Type.Null()], { title: 'size' }),
    by: Type.Union([Type.Literal('metre'), Type.Literal('bar')], { title: 'tube is charged by' }),
    perMetre: Money('tube', 'm'),
    /** Length of a bar as it is bought [mm]. */
    barLength: PositiveLength(20_000, 'length of a bar'),
    perBar: Money('bar', 'bar'),
  },
  { title: 'price of a tube', additionalProperties: false },
);
export type TubeRate = Static<typeof TubeRate>;

/** Time of an operation: set-up + count × each + length × perMetre. */
const OperationRate = (title: string) =>
  Type.Object(
    {
      hour: Money(`${title}: an hour`, 'h'),
      /** What the machine costs in the same time; null: nothing of its own. */
      machine: Type.Union([Money(`${title}: the machine an hour`, 'h'), Type.Null()], { title: 'machine' }),
      setUp: Minutes(`${title}: set-up`),
      each: Minutes(`${title}: each`),
      perMetre: Minutes(`${title}: each metre`),
    },
    { title, additionalProperties: false },
  );

/** The rates and times of a shop: what a quote is made with, and what it keeps. */
export const Rates = Type.Object(
  {
    /** What the shop calls this list; empty: these are a job's own. */
    name: ShortText('name of the rates', 60),
    /** First and last day that they are in effect. */
    from: Day('in effect from'),
    until: Day('in effect until'),
    /** ISO 4217 code with its number of decimal digits. */
    currency: Type.String({ pattern: '^[A-Z]{3}$', title: 'currency' }),
    minorDigits: Type.Integer({ minimum: 0, maximum: 3, title: 'digits of the minor unit' }),
    tubes: Type.Array(TubeRate, { maxItems: 40, title: 'prices of tubes' }),
    /** What is lost of tube on top of what is cut, where it is charged by the metre. */
    waste: Percent('waste', 100),
    /** What an offcut that is kept is worth, of what it cost by the bar. */
    remnantCredit: Percent('credit for an offcut kept', 100),
    gas: Type.Object(
      {
        /** used: what is used. bottles: every bottle that is begun. */
        by: Type.Union([Type.Literal('used'), Type.Literal('bottles')], { title: 'gas is charged by' }),
        perCubicMetre: Money('gas', 'm3'),
        perBottle: Money('bottle of gas', 'bottle'),
        /** Where gas is charged by what is used: what of the rest of a begun bottle is charged too. */
        restOfBottle: Percent('rest of a begun bottle charged', 100),
        /** null: bottles are not rented. */
        rentPerDay: Type.Union([Money('rent of a bottle', 'd'), Type.Null()], { title: 'rent' }),
      },
      { title: 'gas', additionalProperties: false },
    ),
    fillerPerKilogram: Money('filler', 'kg'),
    /** Discs, belts, wheels and pickle. */
    abrasivesPerWeld: Money('abrasives', 'weld'),
    labour: Type.Object(
      {
        bend: OperationRate('bending'),
        cut: OperationRate('marking and cutting'),
        fit: OperationRate('fitting and tacking'),
        purge: OperationRate('purging'),
        bottle: OperationRate('changing bottles'),
        weld: OperationRate('welding beside arc time'),
        finish: OperationRate('cleaning beside grinding'),
      } satisfies Record<Operation, unknown>,
      { title: 'labour', additionalProperties: false },
    ),
    /** What a bender outside takes. */
    outside: Type.Object(
      {
        setUp: Money('bender outside: each order', 'order'),
        perBend: Money('bender outside: each bend', 'bend'),
        least: Money('bender outside: at least', 'order'),
      },
      { title: 'bending outside', additionalProperties: false },
    ),
    travel: Type.Object(
      { perKilometre: Money('travel: each kilometre', 'km'), hour: Money('travel: an hour', 'h') },
      { title: 'travel', additionalProperties: false },
    ),
    /** Of all that is bought and done. */
    overhead: Percent('overhead', 500),
    margin: Percent('margin', 90),
    /** price: so much of the price before tax is margin. cost: so much is put on the cost. */
    marginOn: Type.Union([Type.Literal('price'), Type.Literal('cost')], { title: 'margin is a share of' }),
    tax: Percent('tax', 100),
    /** The price before tax is rounded to a multiple of so many minor units. */
    roundTo: Type.Integer({ minimum: 1, maximum: 10_000_000, title: 'price rounded to', unit: 'minor' }),
  },
  { title: 'rates', additionalProperties: false },
);
export type Rates = Static<typeof Rates>;
export type OperationRate = Rates['labour'][Operation];

/** How an operation went: what it really took. */
export const LogEntry = Type.Object(
  {
    operation: Type.Enum<[...typeof OPERATIONS]>([...OPERATIONS], { title: 'operation' }),
    date: Day('date'),
    /** Bends, cuts, joints … that were done. */
    count: Type.Integer({ minimum: 1, maximum: 100_000, title: 'how many' }),
    /** Getting ready, and then all of them together [min]. */
    setUp: Type.Number({ minimum: 0, maximum: 10_000, title: 'set-up took', unit: 'min' }),
    minutes: Type.Number({ minimum: 0, maximum: 100_000, title: 'the work took', unit: 'min' }),
    /** What the plan had then for as many: all of it, and the part that follows from arc, waiting, grinding and metres [min]. */
    planned: Type.Number({ minimum: 0, maximum: 100_000, title: 'planned', unit: 'min' }),
    process: Type.Number({
      minimum: 0,
      maximum: 100_000,
      title: 'of that arc, waiting, grinding, metres',
      unit: 'min',
    }),
  },
  { title: 'time taken', additionalProperties: false },
);
export type LogEntry = Static<typeof LogEntry>;

/** How the saw works, for stock that is cut up. */
export const SawSettings = Type.Object(
  {
    /** Width that the saw for bars takes [mm]. */
    kerf: LengthOrZero(10, 'kerf of the saw'),
    /** Cut off the end of every bar before the first piece [mm]. */
    endTrim: LengthOrZero(500, 'end of a bar cut off'),
    /** The shortest offcut that is kept [mm]. */
    leastRemnant: LengthOrZero(10_000, 'shortest offcut kept'),
  },
  { title: 'saw', additionalProperties: false },
);
export type SawSettings = Static<typeof SawSettings>;
