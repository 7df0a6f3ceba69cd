import { formatClosely, formatLength } from '../language/length-format.ts';
import { words, wordsOf } from '../language/words.ts';
import type { Figure } from '../plan/figure.ts';
import type { BottlePlan, ExtentWork, MeterVerdict, PurgePlan, RoomPlan } from '../plan/purge.ts';
import type { Sleeve } from '../plan/welding.ts';
import { bigFigure } from './big-figure.ts';
import { figuresRow, type Named } from './figures-row.ts';
import type { Flow } from './flow.ts';
import { HEIGHTS } from './ink.ts';
import { codeWords, type SheetInput } from './sheet-input.ts';
import { table, type Cell } from './table.ts';
import { paragraph, space, stacked, type Block } from './text-block.ts';

type Show = (figure: Figure) => string;

const showIn =
  ({ job }: SheetInput): Show =>
  (figure) =>
    bigFigure(figure, job.units);

const headline = (text: string, width: number): Block =>
  stacked([space(1), paragraph(text, width, { height: HEIGHTS.head, weight: 600 }), space(0.5)]);

/** How much gas the job takes, what that leaves in the bottle, and what it does to the air of the room. */
export function addSupply(flow: Flow, purge: PurgePlan, input: SheetInput): void {
  const show = showIn(input);
  const { width } = flow;
  flow.add(
    stacked([
      headline(words('sheet.bottle-and-room'), width),
      figuresRow(bottleNumbers(purge, purge.bottle, show), width, HEIGHTS.title),
      paragraph(words('sheet.bottle-how', { purge: show(purge.purgeGas), torch: show(purge.torchGas) }), width, {
        height: HEIGHTS.small,
      }),
      space(1),
      figuresRow(roomNumbers(purge.room, show), width, HEIGHTS.title),
      paragraph(roomWords(purge.room, show), width, { height: HEIGHTS.small }),
      space(1.5),
    ]),
  );
}

const bottleNumbers = ({ jobGas }: PurgePlan, bottle: BottlePlan, show: Show): Named[] => [
  { name: words('sheet.gas-for-job'), value: show(jobGas) },
  {
    name: words('sheet.bottles'),
    value: bottle.bottles === null ? '—' : String(Math.ceil(bottle.bottles.value - 1e-9)),
  },
  {
    name: words('sheet.gauge-after'),
    value: bottle.gaugeAfter === null ? words('sheet.does-not-last') : show(bottle.gaugeAfter),
  },
  { name: words('sheet.usable'), value: show(bottle.usable) },
  ...(bottle.left === null ? [] : [{ name: words('sheet.left-now'), value: show(bottle.left) }]),
];

const roomNumbers = ({ alarmStill, alarmFan, airToStaySafe, low }: RoomPlan, show: Show): Named[] => [
  { name: words('sheet.alarm-still'), value: show(alarmStill) },
  { name: words('sheet.alarm-fan'), value: alarmFan === null ? words('sheet.no-alarm') : show(alarmFan) },
  { name: words('sheet.air-to-run'), value: show(airToStaySafe) },
  ...(low === null ? [] : [{ name: words('sheet.alarm-low'), value: show(low.alarm) }]),
];

function roomWords({ oxygenStill, oxygenFan, leftOn, bottleOut, recovers, low }: RoomPlan, show: Show): string {
  return [
    words('sheet.room-oxygen', { still: show(oxygenStill), fan: show(oxygenFan) }),
    ...(low === null ? [] : [words('sheet.room-low', { oxygen: show(low.oxygen) })]),
    words('sheet.room-worst', { leftOn: show(leftOn), bottleOut: show(bottleOut) }),
    ...(recovers === null ? [] : [words('sheet.room-recovers', { time: show(recovers) })]),
    words('sheet.room-alarm'),
  ].join(' ');
}

/** Filling the whole frame beside pockets between dams. */
export function addExtents(flow: Flow, extents: readonly ExtentWork[], input: SheetInput): void {
  if (extents.length === 0) return;
  const show = showIn(input);
  flow.addTable(
    table(
      [
        { head: words('sheet.extent'), align: 'left' },
        { head: words('sheet.set-ups'), align: 'right' },
        { head: words('sheet.waiting'), align: 'right' },
        { head: words('sheet.gas-before'), align: 'right' },
        { head: words('sheet.purge-gas'), align: 'right' },
        { head: words('sheet.minutes-in-all'), align: 'right' },
      ],
      extents.flatMap(({ extent, setups, wait, gasBefore, gas, minutes, stops }): Cell[][] => {
        const weight = extent === input.job.purge.extent ? 600 : 400;
        const cell = (text: string): Cell => ({ text, weight });
        const why = [...new Set(stops)].map((code) => codeWords(code, input.job)).join(' ');
        const row = [
          cell(wordsOf('choice.extent', extent)),
          cell(show(setups)),
          cell(show(wait)),
          cell(show(gasBefore)),
          cell(show(gas)),
          cell(show(minutes)),
        ];
        const told: Cell = { text: words('sheet.kept-from-by', { why }), weight, span: true };
        return why === '' ? [row] : [row, [told]];
      }),
      { width: flow.width, height: 2 },
    ),
    [headline(words('sheet.extents'), flow.width)],
  );
  flow.add(space(2));
}

/** What the meter showed, beside what the models would have had by then, and what follows from it. */
export function addMeters(flow: Flow, meters: readonly MeterVerdict[], input: SheetInput): void {
  if (meters.length === 0) return;
  const show = showIn(input);
  const or = (figure: Figure | null): string => (figure === null ? '—' : show(figure));
  flow.addTable(
    table(
      [
        { head: words('sheet.chamber'), align: 'left' },
        { head: words('sheet.meter-after'), align: 'right' },
        { head: words('sheet.meter-showed'), align: 'right' },
        { head: words('sheet.well-mixed'), align: 'right' },
        { head: words('sheet.long-tube'), align: 'right' },
        { head: words('sheet.verdict'), align: 'left' },
        { head: words('sheet.still-to-wait'), align: 'right' },
        { head: words('sheet.leak-at-most'), align: 'right' },
      ],
      meters.map(({ chamber, minutes, oxygen, wellMixed, longTube, verdict, remaining, leak }): Cell[] => [
        String(chamber),
        `${String(minutes)} min`,
        { text: `${String(Math.round(oxygen))} ppm`, weight: 600 },
        show(wellMixed),
        or(longTube),
        { text: wordsOf('sheet.verdict', verdict), weight: 600 },
        or(remaining),
        or(leak),
      ]),
      { width: flow.width },
    ),
    [headline(words('sheet.meter-readings'), flow.width)],
  );
  flow.add(space(2));
}

/** The tube that stays inside a butt and backs it. */
export function addSleeve(flow: Flow, sleeve: Sleeve, { job }: SheetInput): void {
  const length = (figure: Figure): string => formatLength(figure.value, job.units);
  const close = (figure: Figure): string => formatClosely(Number(figure.value.toFixed(2)), job.units);
  flow.add(
    stacked([
      headline(words('sheet.sleeve'), flow.width),
      figuresRow(
        [
          { name: words('sheet.sleeve-diameter'), value: close(sleeve.outsideDiameter) },
          { name: words('sheet.sleeve-wall'), value: close(sleeve.wall) },
          { name: words('sheet.sleeve-length'), value: length(sleeve.length) },
          { name: words('sheet.sleeve-clearance'), value: close(sleeve.clearance) },
          {
            name: words('sheet.plug-holes'),
            value: words('sheet.holes-of', {
              count: Math.round(sleeve.plugHoles.value),
              bore: close(sleeve.plugHoleBore),
            }),
          },
        ],
        flow.width,
      ),
      paragraph(words('sheet.sleeve-how'), flow.width, { height: HEIGHTS.small }),
      space(2),
    ]),
  );
}
