import { Type, type Static } from 'typebox';

/**
 * The building blocks of every typed number in a Job. Ranges are plausibility limits of the program
 * (common practice, no source): they only keep out slips of the keyboard. What a shop can really make is
 * decided by the plan, which answers with findings.
 */

/** Shorter than this nothing is a length [mm]: finer than a micrometer reads. */
const SHORTEST = 0.001;

/** A length greater than nothing [mm]. */
export const PositiveLength = (maximum: number, title: string) =>
  Type.Number({ minimum: SHORTEST, maximum, title, unit: 'mm' });

/** A length that may be nothing [mm]. */
export const LengthOrZero = (maximum: number, title: string) => Type.Number({ minimum: 0, maximum, title, unit: 'mm' });

/** A coordinate [mm], either side of the origin. */
export const Coordinate = (title: string) => Type.Number({ minimum: -50_000, maximum: 50_000, title, unit: 'mm' });

/** A vector or a point; whose axes it counts in is said where it stands. */
export const Vector = (title: string) =>
  Type.Object({ x: Coordinate('x'), y: Coordinate('y'), z: Coordinate('z') }, { title, additionalProperties: false });

/** How a width, length or height was measured across the tube. */
export const Reference = Type.Union([Type.Literal('outside'), Type.Literal('centre'), Type.Literal('inside')], {
  title: 'reference',
});
export type Reference = Static<typeof Reference>;

/** A typed size with the way it was measured: over the outside, centre to centre, or inside to inside. */
export const Dimension = (title: string, maximum = 20_000) =>
  Type.Object({ value: PositiveLength(maximum, title), reference: Reference }, { title, additionalProperties: false });
export type Dimension = { value: number; reference: Reference };

/** A text of limited length; empty is allowed unless the title says otherwise. */
export const ShortText = (title: string, maxLength = 120) => Type.String({ maxLength, title });

/** A day that a calendar has, as the pattern of its month and day; leap years apart. */
export const MONTH_AND_DAY =
  '(02-(0[1-9]|[12]\\d)|(0[469]|11)-(0[1-9]|[12]\\d|30)|(0[13578]|1[02])-(0[1-9]|[12]\\d|3[01]))';
