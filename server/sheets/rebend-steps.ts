import { formatFigure } from '../language/quantity-format.ts';
import { words, wordsOf } from '../language/words.ts';
import type { RebendRow, Way } from '../plan/correction.ts';
import type { Flow } from './flow.ts';
import type { SheetInput } from './sheet-input.ts';
import { stepHead } from './step.ts';
import { table, type Cell } from './table.ts';
import { paragraph, space } from './text-block.ts';

/** Bends that are turned further or opened, and crowns that are rolled again to another radius. */
export function addRebends(flow: Flow, way: Way, { job }: SheetInput, number: number): void {
  const radii = way.rebends.some(({ radiusTo }) => radiusTo !== null);
  const row = ({ member, made, bend, turn, from, to, radiusFrom, radiusTo }: RebendRow): Cell[] => [
    member,
    { text: wordsOf('bendName', made, { bend }), weight: 600 },
    { text: turnWords(turn, job.units), weight: 600 },
    formatFigure(from, job.units),
    { text: formatFigure(to, job.units), weight: 600 },
    ...(radii
      ? [
          radiusFrom === null ? '—' : formatFigure(radiusFrom, job.units),
          { text: radiusTo === null ? '—' : formatFigure(radiusTo, job.units), weight: 600 as const },
        ]
      : []),
  ];
  flow.addTable(
    table(
      [
        { head: words('sheet.member'), align: 'left' },
        { head: words('sheet.bend-number'), align: 'left' },
        { head: words('sheet.turn-by'), align: 'right' },
        { head: words('sheet.angle-now'), align: 'right' },
        { head: words('sheet.angle-then'), align: 'right' },
        ...(radii
          ? [
              { head: words('sheet.radius-now'), align: 'right' as const },
              { head: words('sheet.radius-then'), align: 'right' as const },
            ]
          : []),
      ],
      way.rebends.map(row),
      { width: flow.width },
    ),
    [stepHead(number, words('sheet.step-rebend'), flow.width)],
  );
  flow.add(space(2));
}

/** 'bend 1.20° further' or 'open 0.80°'. */
function turnWords(turn: RebendRow['turn'], units: SheetInput['job']['units']): string {
  const angle = formatFigure({ ...turn, value: Math.abs(turn.value) }, units);
  return turn.value >= 0 ? words('sheet.turn-further', { angle }) : words('sheet.turn-open', { angle });
}

const endWords = (end: 'start' | 'finish'): string => words(end === 'start' ? 'sheet.at-start' : 'sheet.at-finish');

/** Ends that are cut back so that each leg has its length. */
export function addTrims(flow: Flow, way: Way, { job }: SheetInput, number: number): void {
  flow.addTable(
    table(
      [
        { head: words('sheet.member'), align: 'left' },
        { head: words('sheet.end'), align: 'left' },
        { head: words('sheet.cut-back'), align: 'right' },
      ],
      way.trims.map(({ member, end, length }) => [
        member,
        endWords(end),
        { text: formatFigure(length, job.units), weight: 600 },
      ]),
      { width: flow.width },
    ),
    [
      stepHead(number, words('sheet.step-trim'), flow.width),
      paragraph(words(way.joints.length > 0 ? 'sheet.trim-last' : 'sheet.trim-now'), flow.width, { weight: 600 }),
    ],
  );
  flow.add(space(2));
}

/** What goes under the feet that are short, so that the frame stands as wanted. */
export function addPacking(flow: Flow, way: Way, { job }: SheetInput, number: number): void {
  flow.addTable(
    table(
      [
        { head: words('sheet.member'), align: 'left' },
        { head: words('sheet.end'), align: 'left' },
        { head: words('sheet.packing-height'), align: 'right' },
      ],
      way.packing.map(({ member, end, height }) => [
        member,
        endWords(end),
        { text: formatFigure(height, job.units), weight: 600 },
      ]),
      { width: flow.width },
    ),
    [
      stepHead(number, words('sheet.step-packing'), flow.width),
      paragraph(words('sheet.packing-how'), flow.width, { weight: 600 }),
    ],
  );
  flow.add(space(2));
}
