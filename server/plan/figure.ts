import { Type, type Static } from 'typebox';

/** A closed list of words as a schema. */
export const literals = <const T extends string[]>(values: readonly [...T], title: string) =>
  Type.Enum<T>(values, { title });

/** Units of everything that the plan says. */
export const Unit = literals(
  [
    'mm',
    'm',
    'mm2',
    'mm3',
    'mm4',
    'deg',
    'mm/deg',
    'kg',
    'g',
    'kg/m',
    'N/m',
    'kg/m3',
    'N',
    'N.m',
    'MPa',
    'L',
    'L/m',
    'L/min',
    'mL/min',
    'm3',
    's',
    'min',
    'h',
    'd',
    'mm/s',
    'Pa',
    'bar',
    'ppm',
    'percent',
    'ratio',
    'count',
    'degC',
    'minor',
    'km',
    'min/m',
    'A',
    'A/mm',
    'V',
    'K',
    'kJ/mm',
    'J/mm',
    'um',
    'mm/K',
    'm2/s',
    'J/m3K',
    'W/m2K',
    '1/K',
  ],
  'unit',
);
export type Unit = Static<typeof Unit>;

/** One input of a formula. `name` is a key of the language catalogue. */
export const WorkingInput = Type.Object({
  symbol: Type.String(),
  name: Type.String(),
  value: Type.Number(),
  unit: Unit,
});
export type WorkingInput = Static<typeof WorkingInput>;

/** How a number came about: the formula in symbols, what went in, and which sources (keys) it rests on. */
export const Working = Type.Object({
  formula: Type.String(),
  inputs: Type.Array(WorkingInput),
  sources: Type.Array(Type.String()),
});
export type Working = Static<typeof Working>;

/** The ± of a number, first order, with the names (language keys) of what it comes from. */
export const Band = Type.Object({ plusMinus: Type.Number(), from: Type.Array(Type.String()) });
export type Band = Static<typeof Band>;

/** A public number: value, unit, how sure, and its working. */
export const Figure = Type.Object({
  value: Type.Number(),
  unit: Unit,
  band: Type.Union([Band, Type.Null()]),
  working: Working,
});
export type Figure = Static<typeof Figure>;

/** A point in the frame's own axes [mm]. */
export const Point = Type.Object({ x: Type.Number(), y: Type.Number(), z: Type.Number() });
export type Point = Static<typeof Point>;
