import type { Finish } from '../../job/finish.ts';
import type { Grade } from '../../job/tube.ts';
import type { Welding } from '../../job/welding.ts';
import { isPickle } from './cleaning.ts';
import { isFlush, type WeldKinds } from './finish-steps.ts';

/** Grades with the molybdenum that sea air asks for; guidance against tea staining, from memory. */
const FOR_THE_SEA: readonly string[] = ['316', '316L', '2205'];

/** A grade that is known to be too little for the sea, or not known. */
const isDoubtfulBySea = (grade: Grade): boolean => grade.from === 'own' || !FOR_THE_SEA.includes(grade.key);

/**
 * What to do and not to do, as keys of `finish.note.<key>`: keeping carbon steel and chlorides away always, then what
 * the steps, the symbols, the sea and the bath ask for. Acid that runs into a hollow frame comes out on people later.
 */
export function finishNotes(
  finish: Finish,
  { symbols, grade, kinds }: { readonly symbols: Welding['symbols']; readonly grade: Grade; readonly kinds: WeldKinds },
): string[] {
  const { treatment, cleaning, nearSea } = finish;
  const flush = isFlush(treatment);
  const bath = cleaning !== 'none' && !isPickle(cleaning);
  const notes: readonly (readonly [key: string, said: boolean])[] = [
    ['own-abrasives', true],
    ['stainless-brushes', true],
    ['no-carbon-steel', true],
    ['no-chlorides', true],
    ['find-iron', true],
    ['below-straw', treatment !== 'none'],
    ['agree-a-sample', finish.surface !== 'as-delivered'],
    ['corner-stays', flush && kinds.corners],
    ['symbol-iso-tail', flush && kinds.butts && symbols === 'iso-2553'],
    ['symbol-aws-letter', flush && kinds.butts && symbols === 'aws-a2-4'],
    ['sea-smooth', nearSea],
    ['sea-grain', nearSea],
    ['sea-grade', nearSea && isDoubtfulBySea(grade)],
    ['sea-rinse', nearSea],
    ['grease-first', cleaning !== 'none'],
    ['colour-first', bath && treatment === 'none'],
    ['hollow', cleaning !== 'none'],
    ['closed-tube', cleaning !== 'none' && cleaning !== 'pickle-paste'],
    ['rinse-clean', cleaning !== 'none'],
    ['chromium-six', cleaning === 'nitric-1'],
    ['pickle-trained', isPickle(cleaning)],
    ['pickle-sheet', cleaning === 'pickle-paste'],
  ];
  return notes.flatMap(([key, said]) => (said ? [key] : []));
}
