import type { Operation } from '../../job/rates.ts';

/** Names of the fields of bars and their layout. */
const stock = {
  '/stock': 'stock',
  '/stock/saw': 'saw',
  '/stock/saw/kerf': 'kerf of the saw for bars',
  '/stock/saw/endTrim': 'cut off the end of every bar',
  '/stock/saw/leastRemnant': 'shortest offcut kept',
  '/stock/joints': 'joints between bars',
  '/stock/joints/#': 'joint between bars',
  '/stock/joints/#/member': 'on member',
  '/stock/joints/#/station': 'stands at',
  '/stock/layout': 'bars as laid out',
  '/stock/layout/found': 'found',
  '/stock/layout/date': 'laid out on',
  '/stock/layout/saw': 'saw of the layout',
  '/stock/layout/saw/kerf': 'kerf of the layout',
  '/stock/layout/saw/endTrim': 'cut off the end of every bar of the layout',
  '/stock/layout/saw/leastRemnant': 'shortest offcut kept of the layout',
  '/stock/layout/currency': 'currency of the bars',
  '/stock/layout/minorDigits': 'decimal digits of the bars',
  '/stock/layout/bars': 'bars to be cut',
  '/stock/layout/bars/#': 'bar to be cut',
  '/stock/layout/bars/#/stock': 'place in stock',
  '/stock/layout/bars/#/name': 'name',
  '/stock/layout/bars/#/remnant': 'remnant',
  '/stock/layout/bars/#/outsideDiameter': 'outside diameter',
  '/stock/layout/bars/#/wall': 'wall',
  '/stock/layout/bars/#/grade': 'grade',
  '/stock/layout/bars/#/length': 'length',
  '/stock/layout/bars/#/price': 'price',
  '/stock/layout/bars/#/heat': 'heat',
  '/stock/layout/bars/#/times': 'how many alike',
  '/stock/layout/bars/#/pieces': 'pieces',
  '/stock/layout/bars/#/pieces/#': 'piece',
  '/stock/layout/bars/#/pieces/#/name': 'name',
  '/stock/layout/bars/#/pieces/#/length': 'length',
  '/stock/layout/bars/#/pieces/#/job': 'for another job',
  '/stock/layout/taken': 'taken as',
} as const;

type Own<Field extends string, Name extends string> = Readonly<
  Record<Field, Name> &
    Record<`${Field}/value`, Name> &
    Record<`${Field}/since`, `${Name}: since`> &
    Record<`${Field}/example`, `${Name}: only an example`>
>;

/** A value of the shop's own, with since when it has been so and whether it is an example. */
const own = <const Field extends string, const Name extends string>(field: Field, name: Name) =>
  ({
    [field]: name,
    [`${field}/value`]: name,
    [`${field}/since`]: `${name}: since`,
    [`${field}/example`]: `${name}: only an example`,
  }) as Own<Field, Name>;

/** What an operation is called, and what it is done to once. */
const WORK = {
  bend: ['bending', 'bend'],
  cut: ['marking and cutting', 'cut'],
  fit: ['fitting and tacking', 'joint'],
  purge: ['purging', 'filling'],
  bottle: ['changing bottles', 'bottle'],
  weld: ['welding beside arc time', 'weld'],
  finish: ['cleaning beside grinding', 'weld'],
} as const satisfies Record<Operation, readonly [work: string, one: string]>;

type OwnFields<Field extends string> = `${Field}${'' | '/value' | '/since' | '/example'}`;
type LabourField =
  | `/rates/labour/${Operation}`
  | OwnFields<`/rates/labour/${Operation}/${'hour' | 'machine' | 'setUp' | 'each' | 'perMetre'}`>;

const labour = Object.fromEntries(
  Object.entries(WORK).flatMap(([operation, [work, one]]) => {
    const at = `/rates/labour/${operation}`;
    const fields = {
      [at]: work,
      ...own(`${at}/hour`, `${work}, each hour`),
      ...own(`${at}/machine`, `${work}: machine, each hour`),
      ...own(`${at}/setUp`, `${work}: set-up`),
      ...own(`${at}/each`, `${work}: each ${one}`),
      ...own(`${at}/perMetre`, `${work}: each metre`),
    };
    return Object.entries(fields);
  }),
) as Readonly<Record<LabourField, string>>;

const rates = {
  '/rates': 'rates',
  '/rates/name': 'name of the rates',
  '/rates/from': 'in effect from',
  '/rates/until': 'in effect until',
  '/rates/currency': 'currency',
  '/rates/minorDigits': 'decimal digits of money',
  '/rates/tubes': 'prices of tubes',
  '/rates/tubes/#': 'price of tube',
  '/rates/tubes/#/size': 'size',
  '/rates/tubes/#/size/outsideDiameter': 'outside diameter',
  '/rates/tubes/#/size/wall': 'wall',
  '/rates/tubes/#/by': 'charged by',
  ...own('/rates/tubes/#/perMetre', 'each metre'),
  '/rates/tubes/#/barLength': 'length of a bar',
  ...own('/rates/tubes/#/perBar', 'each bar'),
  ...own('/rates/waste', 'waste'),
  ...own('/rates/remnantCredit', 'credit for an offcut kept'),
  '/rates/gas': 'price of gas',
  '/rates/gas/by': 'gas charged by',
  ...own('/rates/gas/perCubicMetre', 'gas, each m³'),
  ...own('/rates/gas/perBottle', 'gas, each bottle'),
  ...own('/rates/gas/restOfBottle', 'rest of a begun bottle charged'),
  ...own('/rates/gas/rentPerDay', 'rent of a bottle, each day'),
  ...own('/rates/fillerPerKilogram', 'filler, each kg'),
  ...own('/rates/abrasivesPerWeld', 'abrasives, each weld'),
  '/rates/labour': 'labour',
  ...labour,
  '/rates/outside': 'bending outside',
  ...own('/rates/outside/setUp', 'bender outside, each order'),
  ...own('/rates/outside/perBend', 'bender outside, each bend'),
  ...own('/rates/outside/least', 'bender outside, at least'),
  '/rates/travel': 'price of travel',
  ...own('/rates/travel/perKilometre', 'travel, each kilometre'),
  ...own('/rates/travel/hour', 'travel, each hour'),
  ...own('/rates/overhead', 'overhead'),
  ...own('/rates/margin', 'margin'),
  '/rates/marginOn': 'margin is a share of',
  ...own('/rates/tax', 'tax'),
  '/rates/roundTo': 'price rounded to',
} as const;

const quote = {
  '/quote': 'quote',
  '/quote/reference': 'quote number',
  '/quote/date': 'date of the quote',
  '/quote/validDays': 'valid for',
  '/quote/terms': 'terms',
  '/quote/quantities': 'how many frames',
  '/quote/quantities/#': 'how many frames',
  '/quote/bending': 'bent by',
  '/quote/bendersOffer': 'offer of the bender for a frame',
  '/quote/travel': 'travel',
  '/quote/travel/trips': 'trips',
  '/quote/travel/kilometres': 'kilometres of a trip',
  '/quote/travel/hours': 'hours of a trip',
  '/quote/offered': 'ways offered',
  '/quote/offered/#': 'way offered',

  '/log': 'times taken',
  '/log/#': 'time taken',
  '/log/#/operation': 'operation',
  '/log/#/date': 'on',
  '/log/#/count': 'how many',
  '/log/#/setUp': 'set-up took',
  '/log/#/minutes': 'the work took',
  '/log/#/planned': 'planned',
  '/log/#/process': 'of that arc, waiting, grinding and metres',
} as const;

export const quoteFields = { ...stock, ...rates, ...quote } as const;
