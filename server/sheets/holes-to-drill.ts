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

/** Whether the saddle at an end is welded in this work: one that was welded before can only be looked at. */
const isWeldedNow =
  ({ plan }: SheetInput) =>
  ({ member, end }: EndOfMember): boolean =>
    (plan.welding?.welds ?? []).some(
      (weld) => weld.kind === 'saddle' && weld.member === member && weld.station > 0 === (end === 'finish'),
    );

/** What is drilled before anything is tacked, and what must be there already, so that gas can pass. */
export function holesToDrill(input: SheetInput, width: number): Block[] {
  const { units, purge } = input.job;
  const all = drilledEnds(input);
  const now = isWeldedNow(input);
  const bore = formatClosely(purge.holes.bore, units);
  const under = (key: 'sheet.drill-under' | 'sheet.drilled-before', ends: readonly EndOfMember[]): string[] => {
    const places = ends.map(({ member, end }) =>
      words(end === 'start' ? 'sheet.place-start' : 'sheet.place-finish', { member }),
    );
    return places.length === 0 ? [] : [words(key, { bore, ends: places.join('; ') })];
  };
  const said = [
    ...under('sheet.drill-under', all.filter(now)),
    ...under(
      'sheet.drilled-before',
      all.filter((end) => !now(end)),
    ),
    ...purge.holes.toAir.map((hole, index) => airHoleWords(hole, index + 1, input)),
  ];
  return said.length === 0 ? [] : [paragraph(said.join(' '), width, { weight: 600, height: 2 })];
}

function airHoleWords({ at, bore }: AirHole, number: number, { job }: SheetInput): string {
  const place = wordsOf('hole', at.spot, { number: at.number, distance: formatLength(at.distance, job.units) });
  return words('sheet.drill-to-air', { number, bore: formatClosely(bore, job.units), member: at.member, place });
}
