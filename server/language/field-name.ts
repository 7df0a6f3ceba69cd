import { fields, type FieldPattern } from './en/fields.ts';

/** A pointer with every index as #. */
export const patternOf = (pointer: string): string => pointer.replace(/\/\d+(?=\/|$)/g, '/#');

const isKnown = (pattern: string): pattern is FieldPattern => Object.hasOwn(fields, pattern);

/** The short label of a field, as it stands beside it: 'wall'. */
export function fieldLabel(pointer: string): string {
  const pattern = patternOf(pointer);
  if (isKnown(pattern)) return fields[pattern];
  const parent = pattern.slice(0, pattern.lastIndexOf('/'));
  return parent === '' ? pattern.slice(1) : fieldLabel(parent);
}

/** Lists of which each row is told apart by its number. */
const NUMBERED =
  /^(.*\/(?:innerCrossbars|dies|bends|points|members|pieces|readings|fixing|barred|joints|cutMembers|toAir|except|meter|order|sets|things|distances|directions|pairs|slopes|legs))\/(\d+)/;

/** Parts that have the same fields as their neighbours: the kinds of weld. */
const ALIKE = /^\/welding\/(?:butt|saddle|pad)(?=\/)/;

/** Which of many a field belongs to: 'inner crossbar 2', 'saddle'; empty where there is but one. */
function placeOf(pointer: string): string {
  const [, list, index] = NUMBERED.exec(pointer) ?? [];
  if (list !== undefined) return `${fieldLabel(`${list}/0`)} ${String(Number(index) + 1)}`;
  const [part] = ALIKE.exec(pointer) ?? [];
  return part === undefined ? '' : fieldLabel(part);
}

/** The name of a field wherever it is told apart from others: 'inner crossbar 2: from the left foot'. */
export function fieldName(pointer: string): string {
  const label = fieldLabel(pointer);
  const place = placeOf(pointer);
  return place === '' || place.startsWith(label) ? place || label : `${place}: ${label}`;
}
