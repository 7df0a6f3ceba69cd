import { fixed } from '../language/length-format.ts';
import { formatFigure, quantityParts } from '../language/quantity-format.ts';
import { words, wordsOf } from '../language/words.ts';
import type { Figure } from '../plan/figure.ts';
import type { OrderedWeld, WeldMovement, WeldingPlan } from '../plan/welding.ts';
import type { Flow } from './flow.ts';
import { holesToDrill } from './holes-to-drill.ts';
import { HEIGHTS } from './ink.ts';
import type { SheetInput } from './sheet-input.ts';
import { table, type Cell } from './table.ts';
import { weldPlace } from './tube-place-words.ts';
import { paragraph, space, stacked, type Block } from './text-block.ts';
import { quarterWords } from './weld-table.ts';

const HEIGHT = 2;

/** Which weld after which, in which quarters, and what that does to the sizes. */
export function addOrder(flow: Flow, welding: WeldingPlan, input: SheetInput, head: readonly Block[]): void {
  const { plan } = input;
  const set = (name: string): string =>
    (plan.purge?.setups ?? [])
      .filter(({ welds }) => welds.includes(name))
      .map(({ number }) => String(number))
      .join(', ') || '—';
  flow.addTable(
    table(
      [
        { head: words('sheet.turn'), align: 'right' },
        { head: words('sheet.weld-name'), align: 'left' },
        { head: words('sheet.place'), align: 'left' },
        { head: words('sheet.quarters'), align: 'left' },
        { head: words('sheet.in-set-up'), align: 'left' },
        { head: words('sheet.done'), align: 'left' },
      ],
      welding.order.map(({ weld, quarters }, index): Cell[] => {
        const one = welding.welds.find(({ name }) => name === weld);
        return [
          String(index + 1),
          { text: weld, weight: 600 },
          one === undefined ? '—' : weldPlace(one, input),
          { text: quarterWords(quarters), weight: 600 },
          set(weld),
          '________',
        ];
      }),
      { width: flow.width },
    ),
    [...head, ...holesToDrill(input, flow.width), paragraph(words('sheet.order-how'), flow.width, { height: HEIGHT })],
  );
  flow.add(space(2));
  if (welding.movement !== null) addMovement(flow, welding, welding.movement, input);
}

/** With a sign, so that nobody has to think which way it goes; less than shows is nothing. */
function signed({ value, unit }: Pick<Figure, 'value' | 'unit'>, { job }: SheetInput): string {
  const { number, unit: name } = quantityParts(value, unit, job.units);
  const text = job.units.length === 'inch' && unit === 'mm' ? fixed(value / 25.4, 3) : number;
  const said = value > 0 && /[1-9]/.test(text) ? `+${text}` : text;
  return `${said} ${name}`;
}

function addMovement(flow: Flow, welding: WeldingPlan, movement: WeldMovement, input: SheetInput): void {
  const { checks, off, largestGiven, largestProposed, largestWorst } = movement;
  const own = !sameOrder(welding.order, welding.proposed);
  flow.addTable(
    table(
      [
        { head: words('sheet.check'), align: 'left' },
        { head: words('sheet.pulls-in'), align: 'right' },
        { head: words('sheet.this-order'), align: 'right' },
        ...(own ? [{ head: words('sheet.proposed-order'), align: 'right' as const }] : []),
        { head: words('sheet.worst-order'), align: 'right' },
        { head: words('sheet.tacked-more'), align: 'right' },
      ],
      checks.map(({ key, index, shrinkage, given, proposed, worst }): Cell[] => [
        wordsOf('check', key, { index }),
        signed(shrinkage, input),
        { text: signed(given, input), weight: 600 },
        ...(own ? [signed(proposed, input)] : []),
        signed(worst, input),
        { text: signed({ value: -(shrinkage.value + given.value), unit: shrinkage.unit }, input), weight: 600 },
      ]),
      { width: flow.width },
    ),
    [
      paragraph(words('sheet.movement'), flow.width, { height: HEIGHTS.head, weight: 600 }),
      paragraph(
        words('sheet.movement-how', {
          pull: formatFigure({ ...largestGiven, value: input.job.welding.pull, unit: 'deg' }, input.job.units),
        }),
        flow.width,
        { height: HEIGHT },
      ),
    ],
  );
  const worst = movement.worst
    .map(({ weld, quarters }) => words('sheet.order-of', { weld, quarters: quarterWords(quarters) }))
    .join('; ');
  flow.add(
    stacked([
      space(1),
      paragraph(
        words('sheet.movement-largest', {
          given: signed(largestGiven, input),
          proposed: signed(largestProposed, input),
          worst: signed(largestWorst, input),
        }),
        flow.width,
        { weight: 600, height: HEIGHT },
      ),
      paragraph(
        words('sheet.movement-off', {
          given: formatFigure(off.given, input.job.units),
          worst: formatFigure(off.worst, input.job.units),
        }),
        flow.width,
        { height: HEIGHT },
      ),
      paragraph(words('sheet.worst-is', { order: worst }), flow.width, { height: HEIGHTS.small }),
      space(2),
    ]),
  );
}

const sameOrder = (one: readonly OrderedWeld[], other: readonly OrderedWeld[]): boolean =>
  JSON.stringify(one) === JSON.stringify(other);
