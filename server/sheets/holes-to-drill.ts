import { formatClosely, formatLength } from '../language/length-format.ts';
import { words, wordsOf } from '../language/words.ts';
import type { AirHole, EndOfMember } from '../job/purge.ts';
import type { SheetInput } from './sheet-input.ts';
import { paragraph, type Block } from './text-block.ts';

/** Saddle ends under which the wall of the other tube is drilled through. */
function drilledEnds({ plan, job }: SheetInput): EndOfMember[] {
  const { underSaddles, except } = job.purge.holes;
  const saddles = (plan.frame?.members ?? []).flatMap(({ name, start, finish }) => [
    ...(start.kind === 'saddle' ? [{ member: name, end: 'start' as const }] : []),
    ...(finish.kind === 'saddle' ? [{ member: name, end: 'finish' as const }] : []),
  ]);
  const isExcepted = (one: EndOfMember): boolean =>
    except.some(({ member, end }) => member === one.member && end === one.end);
  return saddles.filter((one) => isExcepted(one) !== (underSaddles === 'all'));
}

/** What is drilled before anything is tacked, so that gas can pass; nothing where nothing is. */
export function holesToDrill(input: SheetInput, width: number): Block[] {
  const { units, purge } = input.job;
  const ends = drilledEnds(input).map(({ member, end }) =>
    words(end === 'start' ? 'sheet.place-start' : 'sheet.place-finish', { member }),
  );
  const said = [
    ...(ends.length === 0
      ? []
      : [words('sheet.drill-under', { bore: formatClosely(purge.holes.bore, units), ends: ends.join('; ') })]),
    ...purge.holes.toAir.map((hole, index) => airHoleWords(hole, index + 1, input)),
  ];
  return said.length === 0 ? [] : [paragraph(said.join(' '), width, { weight: 600, height: 2 })];
}

function airHoleWords({ at, bore }: AirHole, number: number, { job }: SheetInput): string {
  const place = wordsOf('hole', at.spot, { number: at.number, distance: formatLength(at.distance, job.units) });
  return words('sheet.drill-to-air', { number, bore: formatClosely(bore, job.units), member: at.member, place });
}
