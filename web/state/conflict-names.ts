import { fieldName } from '../../server/language/field-name.ts';

/** A part of a value of the shop's own: its number, since when it has been so, whether it is an example. */
const PART_OF_OWN = /^(\/rates\/.+)\/(?:value|since|example)$/;

/** What changed, in a few names: each once, and a value of the shop's own once for all that is kept of it. */
export const changedNames = (pointers: readonly string[]): readonly string[] => [
  ...new Set(pointers.map((pointer) => fieldName(PART_OF_OWN.exec(pointer)?.[1] ?? pointer))),
];
