import { Type, type Static } from 'typebox';

/** A rate in minor units of the currency for one unit of work or stuff; null: nobody has typed it yet. */
const Rate = (title: string, per: string) =>
  Type.Union([Type.Integer({ minimum: 0, maximum: 1_000_000_000, title, unit: `minor/${per}` }), Type.Null()], {
    title,
  });

/** Minutes for one operation: a set-up and each piece; null: not known, its line stays open. */
const Minutes = (title: string) =>
  Type.Union([Type.Number({ minimum: 0, maximum: 10_000, title, unit: 'min' }), Type.Null()], { title });

const OperationTime = (title: string) =>
  Type.Object(
    { setUp: Minutes(`${title}: set-up`), each: Minutes(`${title}: each`) },
    { title, additionalProperties: false },
  );

/** The shop's rates and times that a first quote is made with. */
export const Rates = Type.Object(
  {
    /** ISO 4217 code with its number of decimal digits. */
    currency: Type.String({ pattern: '^[A-Z]{3}$', title: 'currency' }),
    minorDigits: Type.Integer({ minimum: 0, maximum: 3, title: 'digits of the minor unit' }),
    /** Date that the rates were typed, ISO 8601; empty where none was given. */
    date: Type.String({ maxLength: 10, title: 'date of the rates' }),
    tubePerMetre: Rate('tube', 'm'),
    gasPerCubicMetre: Rate('gas', 'm3'),
    fillerPerKilogram: Rate('filler', 'kg'),
    labourPerHour: Type.Object(
      {
        bend: Rate('labour: bending', 'h'),
        cut: Rate('labour: marking and cutting', 'h'),
        fit: Rate('labour: fitting and tacking', 'h'),
        purge: Rate('labour: purging', 'h'),
        weld: Rate('labour: welding', 'h'),
        finish: Rate('labour: grinding and polishing', 'h'),
      },
      { title: 'labour', additionalProperties: false },
    ),
    times: Type.Object(
      {
        bend: OperationTime('bending'),
        cut: OperationTime('marking and cutting'),
        fit: OperationTime('fitting and tacking'),
        purge: OperationTime('purge set-up'),
        weld: OperationTime('welding beside arc time'),
        finish: OperationTime('grinding and polishing'),
      },
      { title: 'times', additionalProperties: false },
    ),
  },
  { title: 'rates', additionalProperties: false },
);
export type Rates = Static<typeof Rates>;
