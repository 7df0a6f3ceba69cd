import type { Allowed, ProblemCode } from './problem.ts';

/** The part of JSON Schema that the documents are written in. */
export type Schema = {
  readonly type?: string;
  readonly title?: string;
  readonly unit?: string;
  readonly const?: string | number | boolean;
  readonly enum?: readonly string[];
  readonly anyOf?: readonly Schema[];
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly required?: readonly string[];
  readonly additionalProperties?: boolean | Schema;
  readonly patternProperties?: Readonly<Record<string, Schema>>;
  readonly maxProperties?: number;
  readonly items?: Schema;
  readonly minItems?: number;
  readonly maxItems?: number;
  readonly minimum?: number;
  readonly maximum?: number;
  readonly exclusiveMinimum?: number;
  readonly exclusiveMaximum?: number;
  readonly minLength?: number;
  readonly maxLength?: number;
  readonly pattern?: string;
};

/** A refused value before it is put into words. `title` is the field's; `wanted` the kind of value it takes. */
export type Refusal = {
  readonly code: ProblemCode;
  readonly field: string;
  readonly title: string;
  readonly value: unknown;
  readonly wanted: string;
  readonly allowed: Allowed;
};

type Place = { readonly field: string; readonly title: string };
type Report = (refusal: Refusal) => void;
/** A JSON object that nothing is known of yet. */
export type Document = { readonly [name: string]: unknown };

export const isPlainObject = (value: unknown): value is Document =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** A member name inside a JSON pointer (RFC 6901, section 3). */
const escaped = (name: string): string => name.replaceAll('~', '~0').replaceAll('/', '~1');

const refuse = (
  report: Report,
  place: Place,
  code: ProblemCode,
  value: unknown,
  wanted: string,
  allowed: Allowed = {},
) => {
  report({ code, ...place, value, wanted, allowed });
};

function checkNumber(schema: Schema, value: unknown, place: Place, report: Report): void {
  const { minimum, maximum, exclusiveMinimum, exclusiveMaximum, unit } = schema;
  const low = exclusiveMinimum ?? minimum;
  const high = exclusiveMaximum ?? maximum;
  const allowed: Allowed = {
    ...(low === undefined ? {} : { low }),
    ...(exclusiveMinimum === undefined ? {} : { lowOpen: true }),
    ...(high === undefined ? {} : { high }),
    ...(exclusiveMaximum === undefined ? {} : { highOpen: true }),
    ...(unit === undefined ? {} : { unit }),
  };
  const wanted = schema.type === 'integer' ? 'whole number' : 'number';
  const say = (code: ProblemCode) => refuse(report, place, code, value, wanted, allowed);
  if (typeof value !== 'number' || Number.isNaN(value)) return say('wrong-type');
  if (low !== undefined && (value < low || value === exclusiveMinimum)) return say('below-range');
  if (high !== undefined && (value > high || value === exclusiveMaximum)) return say('above-range');
  if (!Number.isFinite(value)) return say(value > 0 ? 'above-range' : 'below-range');
  if (schema.type === 'integer' && !Number.isInteger(value)) return say('not-whole');
}

/** Length in Unicode code points, as JSON Schema counts it. */
const lengthOf = (text: string): number => [...text].length;

function checkText(schema: Schema, value: unknown, place: Place, report: Report): void {
  const { minLength, maxLength, pattern } = schema;
  const allowed: Allowed = {
    ...(minLength === undefined ? {} : { low: minLength }),
    ...(maxLength === undefined ? {} : { high: maxLength }),
  };
  const say = (code: ProblemCode) => refuse(report, place, code, value, 'text', allowed);
  if (typeof value !== 'string') return say('wrong-type');
  if (minLength !== undefined && lengthOf(value) < minLength) return say('too-short');
  if (maxLength !== undefined && lengthOf(value) > maxLength) return say('too-long');
  if (pattern !== undefined && !new RegExp(pattern, 'u').test(value)) return say('wrong-form');
}

function checkList(schema: Schema, value: unknown, place: Place, report: Report): void {
  const { items = {}, minItems, maxItems } = schema;
  const allowed: Allowed = {
    ...(minItems === undefined ? {} : { low: minItems }),
    ...(maxItems === undefined ? {} : { high: maxItems }),
  };
  const say = (code: ProblemCode) => refuse(report, place, code, value, 'list', allowed);
  if (!Array.isArray(value)) return say('wrong-type');
  if (minItems !== undefined && value.length < minItems) return say('too-short');
  if (maxItems !== undefined && value.length > maxItems) return say('too-long');
  for (const [index, item] of value.entries()) {
    const title = items.title ?? place.title;
    checkValue(items, item, { field: `${place.field}/${String(index)}`, title }, report);
  }
}

/** A record of any names: each name no longer than a value may be, each value as the pattern's schema says. */
function checkRecord(schema: Schema, entries: Schema, value: Document, place: Place, report: Report): void {
  const names = Object.keys(value);
  const { maxProperties } = schema;
  if (maxProperties !== undefined && names.length > maxProperties)
    return refuse(report, place, 'too-long', value, 'object', { high: maxProperties });
  for (const name of names) {
    const at: Place = { field: `${place.field}/${escaped(name)}`, title: place.title };
    checkText(entries, name, at, report);
    checkValue(entries, value[name], at, report);
  }
}

function checkObject(schema: Schema, value: unknown, place: Place, report: Report): void {
  if (!isPlainObject(value)) return refuse(report, place, 'wrong-type', value, 'object');
  const entries = Object.values(schema.patternProperties ?? {})[0];
  if (entries !== undefined) return checkRecord(schema, entries, value, place, report);
  const properties = schema.properties ?? {};
  for (const [name, property] of Object.entries(properties)) {
    const at: Place = { field: `${place.field}/${escaped(name)}`, title: property.title ?? name };
    if (Object.hasOwn(value, name)) checkValue(property, value[name], at, report);
    else if (schema.required?.includes(name) === true)
      refuse(report, at, 'missing-field', null, kindOf(property), optionsOf(property));
  }
  if (schema.additionalProperties !== false) return;
  for (const name of Object.keys(value))
    if (!Object.hasOwn(properties, name)) {
      const at: Place = { field: `${place.field}/${escaped(name)}`, title: place.title };
      refuse(report, at, 'unknown-field', value[name], 'nothing', { options: Object.keys(properties) });
    }
}

/** The values that a branch of a union takes for a field: one fixed value, or a closed choice of some. */
const fixedFor = (branch: Schema, name: string): readonly unknown[] =>
  optionsOf(branch.properties?.[name] ?? {}).options ?? [];

/** The field whose value tells the branches of a union apart: shape, form, from, method, by, piece, end, fixing. */
function tellTale(branches: readonly Schema[]): string | undefined {
  const names = Object.keys(branches[0]?.properties ?? {});
  return names.find((name) => {
    const fixed = branches.map((branch) => fixedFor(branch, name));
    const all = fixed.flat();
    return fixed.every(({ length }) => length > 0) && new Set(all).size === all.length;
  });
}

/** The branch that alone has one of the fields that are there; the first where none has. */
function byOwnField(branches: readonly Schema[], value: Document): Schema | undefined {
  const has = ({ properties = {} }: Schema, name: string): boolean => Object.hasOwn(properties, name);
  const own = (branch: Schema) => (name: string) =>
    has(branch, name) && branches.every((other) => other === branch || !has(other, name));
  return branches.find((branch) => Object.keys(value).some(own(branch))) ?? branches[0];
}

const constantsOf = (schemas: readonly Schema[]) => schemas.flatMap(({ const: value }) => value ?? []);

/** The values that a closed choice takes, null among them where the field may be empty. */
function optionsOf(schema: Schema): Allowed {
  if (schema.const !== undefined) return { options: [schema.const] };
  if (schema.enum !== undefined) return { options: [...schema.enum] };
  const constants = constantsOf(schema.anyOf ?? []);
  if (constants.length === 0) return {};
  return { options: schema.anyOf?.some(({ type }) => type === 'null') === true ? [...constants, null] : constants };
}

function kindOf(schema: Schema): string {
  if (optionsOf(schema).options !== undefined) return 'choice';
  if (schema.anyOf !== undefined) return kindOf(schema.anyOf[0] ?? {});
  const kinds: Readonly<Record<string, string>> = { string: 'text', integer: 'whole number', array: 'list' };
  return kinds[schema.type ?? ''] ?? schema.type ?? 'value';
}

/** Problems are those of the branch that was meant, never 'matches none of them'. */
function checkUnion(schema: Schema, branches: readonly Schema[], value: unknown, place: Place, report: Report): void {
  const filled = branches.filter(({ type }) => type !== 'null');
  if (value === null && filled.length < branches.length) return;
  const [only] = filled;
  if (only !== undefined && filled.length === 1) return checkValue(only, value, place, report);
  if (filled.every(({ const: fixed }) => fixed !== undefined)) {
    const { options = [] } = optionsOf(schema);
    if (!options.some((option) => option === value)) refuse(report, place, 'not-one-of', value, 'choice', { options });
    return;
  }
  if (!isPlainObject(value)) return refuse(report, place, 'wrong-type', value, 'object');
  const name = tellTale(filled);
  if (name === undefined) return checkObject(byOwnField(filled, value) ?? {}, value, place, report);
  const at: Place = { field: `${place.field}/${name}`, title: `${place.title}: ${name}` };
  const options = filled.flatMap((branch) => optionsOf(branch.properties?.[name] ?? {}).options ?? []);
  if (!Object.hasOwn(value, name)) return refuse(report, at, 'missing-field', null, 'choice', { options });
  const meant = filled.find((branch) => fixedFor(branch, name).includes(value[name]));
  if (meant === undefined) return refuse(report, at, 'not-one-of', value[name], 'choice', { options });
  checkObject(meant, value, place, report);
}

/** Holds a value against a schema and reports every value that it refuses. Never throws, whatever the value. */
export function checkValue(schema: Schema, value: unknown, place: Place, report: Report): void {
  if (schema.anyOf !== undefined) return checkUnion(schema, schema.anyOf, value, place, report);
  const { options } = optionsOf(schema);
  if (options !== undefined) {
    if (!options.some((option) => option === value)) refuse(report, place, 'not-one-of', value, 'choice', { options });
    return;
  }
  switch (schema.type) {
    case 'object':
      return checkObject(schema, value, place, report);
    case 'array':
      return checkList(schema, value, place, report);
    case 'string':
      return checkText(schema, value, place, report);
    case 'number':
    case 'integer':
      return checkNumber(schema, value, place, report);
    case 'boolean':
      if (typeof value !== 'boolean') refuse(report, place, 'wrong-type', value, 'true or false');
  }
}
