import fc from 'fast-check';
import type { Schema } from '../../server/job/check-value.ts';

/** Names of members and of welds, among those that saddles, purge ends and orders of welding may ask for. */
const NAMES = ['', 'hoop', 'crossbar 1', 'ring', 'run', 'tube', 'post', 'rail', 'nobody', '1', '2A', 'S1', 'C1', 'P1'];

/** What has a pattern: a currency, a time or none. */
const PATTERNED = ['EUR', '2026-11-26T09:40', '2026-11-26T11:05', ''];

/** Numbers that a schema allows: its bounds, just inside them, everyday ones, and any size in between. */
function numbers({ type, minimum, maximum, exclusiveMinimum, exclusiveMaximum }: Schema): fc.Arbitrary<number> {
  const low = minimum ?? exclusiveMinimum ?? 0;
  const high = maximum ?? exclusiveMaximum ?? 1e6;
  const allowed = (value: number) =>
    (type !== 'integer' || Number.isInteger(value)) &&
    (exclusiveMinimum === undefined ? value >= low : value > low) &&
    (exclusiveMaximum === undefined ? value <= high : value < high);
  const odd = [low, high, low + 1e-9, low + 1e-3, high - 1e-9, 0, 1, 90, 180, 360, 1000];
  const size = fc
    .double({ min: -4, max: 1, noNaN: true })
    .map((power) => low + (high - low) * Math.min(1, 10 ** power));
  return fc.oneof(
    fc.constantFrom(...odd.filter(allowed)),
    (type === 'integer' ? size.map(Math.round) : size).filter(allowed),
  );
}

/** Any value that a schema allows. Lists are short, texts are names. */
export function valuesOf(schema: Schema): fc.Arbitrary<unknown> {
  const {
    anyOf,
    enum: choices,
    properties,
    items,
    minItems = 0,
    maxItems = 60,
    minLength = 0,
    maxLength = 60,
  } = schema;
  if (schema.const !== undefined) return fc.constant(schema.const);
  if (choices !== undefined) return fc.constantFrom(...choices);
  if (anyOf !== undefined) return fc.oneof(...anyOf.map(valuesOf));
  if (schema.pattern !== undefined)
    return fc.constantFrom(...PATTERNED.filter((text) => new RegExp(schema.pattern ?? '').test(text)));
  if (properties !== undefined)
    return fc.record(Object.fromEntries(Object.entries(properties).map(([name, one]) => [name, valuesOf(one)])));
  switch (schema.type) {
    case 'array':
      return fc.array(valuesOf(items ?? {}), { minLength: minItems, maxLength: Math.min(maxItems, minItems + 4) });
    case 'string':
      return fc.constantFrom(...NAMES.filter(({ length }) => length >= minLength && length <= maxLength));
    case 'boolean':
      return fc.boolean();
    case 'null':
      return fc.constant(null);
    case 'object':
      return fc.constant({});
    default:
      return numbers(schema);
  }
}
