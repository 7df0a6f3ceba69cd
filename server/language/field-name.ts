import { fields, type FieldPattern } from './en/fields.ts';

/** A pointer with every index as #, and a frame that came back named like the wanted one. */
export const patternOf = (pointer: string): string =>
  pointer.replace(/^\/cameBack\/frame(?=\/|$)/, '/frame').replace(/\/\d+(?=\/|$)/g, '/#');

const isKnown = (pattern: string): pattern is FieldPattern => Object.hasOwn(fields, pattern);

/** The short label of a field, as it stands beside it: 'wall'. */
export function fieldLabel(pointer: string): string {
  const pattern = patternOf(pointer);
  if (isKnown(pattern)) return fields[pattern];
  const parent = pattern.slice(0, pattern.lastIndexOf('/'));
  return parent === '' ? pattern.slice(1) : fieldLabel(parent);
}

/** The name of a field wherever it is told apart from others: 'inner crossbar 2: from the left foot, as it came back'. */
export function fieldName(pointer: string): string {
  const label = fieldLabel(pointer);
  const found = /^(.*\/(?:innerCrossbars|dies|bends|points|members|pieces))\/(\d+)/.exec(pointer);
  const place = found === null ? '' : `${fieldLabel(`${found[1] ?? ''}/0`)} ${String(Number(found[2]) + 1)}`;
  const named = place === '' || place.startsWith(label) ? place || label : `${place}: ${label}`;
  return pointer.startsWith('/cameBack/frame/') ? `${named}, as it came back` : named;
}
