import { fieldName } from '../language/field-name.ts';
import { formatLength } from '../language/length-format.ts';
import { words, wordsOf } from '../language/words.ts';
import type { SlipScore } from '../plan/correction.ts';
import { HEIGHTS } from './ink.ts';
import type { SheetInput } from './sheet-input.ts';
import { paragraph, space, stacked, type Block } from './text-block.ts';

/** What went wrong with the last frame and what to do about it, where a slip explains what came back; null: none does. */
export function lastCameBack({ plan, job }: SheetInput, width: number): Block | null {
  const best = plan.correction?.slips[0];
  if (best?.explains !== true) return null;
  const { units } = job;
  const die = best.dieRadius === null ? [] : [words('reading.die', { radius: formatLength(best.dieRadius, units) })];
  const told = [...new Set(best.keys.map((key) => wordsOf('tell', key)))];
  return stacked([
    paragraph(words('sheet.last-came-back'), width, { height: HEIGHTS.head, weight: 600 }),
    paragraph([...wentWrong(best), ...die].join(' '), width),
    paragraph(told.join(' '), width, { weight: 600 }),
    space(2),
  ]);
}

/** Each slip in words, with the sizes that were read another way. */
const wentWrong = ({ keys, fields, bend }: SlipScore): string[] => [
  ...keys.map((key) => wordsOf('slip', key)),
  ...(fields.length === 0 ? [] : [words('sheet.last-fields', { fields: fields.map(fieldName).join(', ') })]),
  ...(bend === null ? [] : [words('sheet.last-bend', { member: bend.member, bend: bend.number })]),
];
