import { fieldLabel } from '../../server/language/field-name.ts';
import { words } from '../../server/language/words.ts';
import type { Pasted, PasteProblem } from './paste.ts';

/** A text of this many letters at most is said in a message; the whole of it stands in the box [letters]. */
const LONGEST = 40;

const shortened = (text: string): string => (text.length > LONGEST ? `${text.slice(0, LONGEST)} …` : text);

/** 2000 as 2,000: counts of rows are read, never typed back. */
const counted = (count: number): string => count.toLocaleString('en');

/** Why nothing was pasted, and the way out. */
export function pasteProblemWords(problem: PasteProblem, pointer: string): string {
  switch (problem.kind) {
    case 'cell': {
      const { row, text, why } = problem;
      const column = fieldLabel(`${pointer}/0/${problem.column}`);
      const said =
        text === ''
          ? words('paste.cellEmpty', { row, column })
          : words('paste.cell', { row, column, text: shortened(text), why: words(why) });
      return `${said} ${words('paste.kept')}`;
    }
    case 'too-many': {
      const { row: first, most, from } = problem;
      const count = counted(problem.count);
      return from === 1
        ? words('paste.tooMany', { count, most, first })
        : words('paste.tooManyBelow', { count, most, first, from, room: most - from + 1 });
    }
    case 'too-few':
      return words('paste.tooFew', { count: problem.count, least: problem.least });
    case 'too-wide':
      return words('paste.tooWide', { row: problem.row, count: problem.count, room: problem.room });
    case 'heading-twice':
      return words('paste.headingTwice', { heading: shortened(problem.heading) });
    case 'nothing':
      return words('paste.nothing');
  }
}

/** What was pasted, and what was left out or stands as it was. */
export function pastedWords(pasted: Extract<Pasted, { ok: true }>, pointer: string): string {
  const label = (name: string): string => fieldLabel(`${pointer}/0/${name}`);
  return [
    words('paste.done', { count: counted(pasted.count) }),
    ...(pasted.left > 0 ? [words('paste.left', { left: pasted.left })] : []),
    ...(pasted.unused.length > 0 ? [words('paste.unused', { columns: pasted.unused.map(shortened).join(', ') })] : []),
    ...(pasted.absent.length > 0 ? [words('paste.absent', { columns: pasted.absent.map(label).join(', ') })] : []),
  ].join(' ');
}
