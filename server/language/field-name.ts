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
  /\/(?:innerCrossbars|dies|bends|points|members|pieces|readings|fixing|barred|joints|cutMembers|toAir|except|meter|order|sets|things|distances|directions|pairs|slopes|legs|tubes|bars|quantities|offered|log)\/(\d+)/g;

/** Parts that have the same fields as their neighbours: the kinds of weld. */
const ALIKE = /^\/welding\/(?:butt|saddle|pad)(?=\/)/;

/** Which of many a field belongs to: 'inner crossbar 2', 'site point 1, distance 3', 'saddle'; empty where there is but one. */
function placeOf(pointer: string): string {
  const rows = [...pointer.matchAll(NUMBERED)].map(({ 0: row, 1: number, index }) => {
    const end = index + row.length;
    return `${fieldLabel(pointer.slice(0, end))} ${String(Number(number) + 1)}`;
  });
  if (rows.length > 0) return rows.join(', ');
  const [part] = ALIKE.exec(pointer) ?? [];
  return part === undefined ? '' : fieldLabel(part);
}

/** The name of a field wherever it is told apart from others: 'inner crossbar 2: from the left foot'. */
export function fieldName(pointer: string): string {
  const label = fieldLabel(pointer);
  const place = placeOf(pointer);
  return place === '' || place.startsWith(label) ? place || label : `${place}: ${label}`;
}
