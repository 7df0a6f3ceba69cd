import { formatFigure } from '../language/quantity-format.ts';
import { words } from '../language/words.ts';
import type { Way } from '../plan/correction.ts';
import type { Flow } from './flow.ts';
import type { SheetInput } from './sheet-input.ts';
import { stepHead } from './step.ts';
import { table } from './table.ts';
import { paragraph, space } from './text-block.ts';

/** Bends that are turned further or opened. */
export function addRebends(flow: Flow, way: Way, { job }: SheetInput, number: number): void {
  flow.addTable(
    table(
      [
        { head: words('sheet.member'), align: 'left' },
        { head: words('sheet.bend-number'), align: 'right' },
        { head: words('sheet.turn-by'), align: 'right' },
        { head: words('sheet.angle-now'), align: 'right' },
        { head: words('sheet.angle-then'), align: 'right' },
      ],
      way.rebends.map(({ member, bend, turn, from, to }) => [
        member,
        { text: String(bend), weight: 600 },
        { text: formatFigure(turn, job.units), weight: 600 },
        formatFigure(from, job.units),
        formatFigure(to, job.units),
      ]),
      { width: flow.width },
    ),
    [stepHead(number, words('sheet.step-rebend'), flow.width)],
  );
  flow.add(space(2));
}

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
        words(end === 'start' ? 'sheet.at-start' : 'sheet.at-finish'),
        { text: formatFigure(length, job.units), weight: 600 },
      ]),
      { width: flow.width },
    ),
    [
      stepHead(number, words('sheet.step-trim'), flow.width),
      paragraph(words('sheet.trim-last'), flow.width, { weight: 600 }),
    ],
  );
  flow.add(space(2));
}
