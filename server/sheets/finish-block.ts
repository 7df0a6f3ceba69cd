import { formatClosely } from '../language/length-format.ts';
import { formatBand, formatFigure } from '../language/quantity-format.ts';
import { words, wordsOf } from '../language/words.ts';
import type { Figure } from '../plan/figure.ts';
import type { CleaningPlan, FinishPlan, FinishStep } from '../plan/finish.ts';
import { bigFigure } from './big-figure.ts';
import { figuresRow, type Named } from './figures-row.ts';
import type { Flow } from './flow.ts';
import { HEIGHTS, write } from './ink.ts';
import type { SheetInput } from './sheet-input.ts';
import { tick } from './sign.ts';
import { table, tableBlock, type Cell } from './table.ts';
import { beside, capital, lineHeight, paragraph, space, stacked, wrap, type Block } from './text-block.ts';

/** What the steps take of the width beside the minutes of each weld, and what a box to tick takes [mm]. */
const STEPS = 0.6;
const AIR = 5;
const BOX = 6;
const HEIGHT = 2;

/** From the coarse grit to the surface that was agreed, then the bath, with what to keep away from the work. */
export function addFinish(flow: Flow, finish: FinishPlan, input: SheetInput, head: readonly Block[]): void {
  const { width } = flow;
  const left = STEPS * (width - AIR);
  const { steps, notes, cleaning } = finish;
  const told = stacked([
    ...stepBlocks(steps, left),
    ...(cleaning === null ? [] : [space(1), ...cleaningLines(cleaning, left, input)]),
  ]);
  flow.add(
    stacked([
      ...head,
      figuresRow(aims(finish, input), width),
      beside([
        { left: 0, block: told },
        { left: left + AIR, block: minutesTable(finish, input, width - left - AIR) },
      ]),
      space(1),
    ]),
  );
  const half = (width - AIR) / 2;
  const said = notes.map((note) => paragraph(wordsOf('finish.note', note), half, { height: HEIGHTS.small }));
  const first = Math.ceil(said.length / 2);
  flow.add(
    stacked([
      beside([
        { left: 0, block: stacked(said.slice(0, first)) },
        { left: half + AIR, block: stacked(said.slice(first)) },
      ]),
      paragraph(words('sheet.grit-sentence'), width, { height: HEIGHTS.small }),
      space(2),
    ]),
  );
}

function aims(
  { treatment, surface, designation, american, roughness, reinforcement, leftProud }: FinishPlan,
  { job }: SheetInput,
): Named[] {
  const standards = [
    ...(designation === '' ? [] : [words('sheet.en-10088', { code: designation })]),
    ...(american === '' ? [] : [words('sheet.a480', { code: american })]),
  ];
  const close = (figure: Figure): string => formatClosely(Number(figure.value.toFixed(2)), job.units);
  return [
    { name: words('sheet.weld-taken-to'), value: wordsOf('choice.treatment', treatment) },
    { name: words('sheet.surface'), value: wordsOf('choice.surface', surface) },
    ...(standards.length === 0 ? [] : [{ name: words('sheet.by-standard'), value: standards.join(', ') }]),
    ...(roughness === null ? [] : [{ name: words('sheet.roughness'), value: withBand(roughness, job.units) }]),
    ...(reinforcement === null ? [] : [{ name: words('sheet.bead-proud'), value: close(reinforcement) }]),
    ...(leftProud === null ? [] : [{ name: words('sheet.left-proud'), value: close(leftProud) }]),
  ];
}

const withBand = (figure: Figure, units: SheetInput['job']['units']): string =>
  figure.band === null
    ? formatFigure(figure, units)
    : `${formatFigure(figure, units)} ${formatBand(figure.band, figure.unit, units)}`;

/** The steps, those of each kind of weld under its name where they differ. */
const stepBlocks = (steps: readonly FinishStep[], width: number): Block[] =>
  steps.flatMap((step, index) => {
    const begins = step.welds !== 'all' && step.welds !== steps[index - 1]?.welds;
    const head = begins ? [paragraph(wordsOf('finish.welds', step.welds), width, { weight: 600 })] : [];
    return [...head, ...stepLine(step, width)];
  });

/** '80: level with the tube', with a box to tick; a step without a grit has its words alone. */
function stepLine({ key, gritFrom, gritTo }: FinishStep, width: number): Block[] {
  const name = wordsOf('finish.step', key);
  const grit = gritFrom === gritTo ? String(gritFrom) : words('sheet.grits', { from: gritFrom, to: gritTo });
  const said = gritFrom === 0 ? capital(name) : words('sheet.grit-step', { grit, step: name });
  return wrap(said, width - BOX, { height: HEIGHTS.text, weight: 400 }).map((part, index) =>
    index === 0 ? tick(part) : { height: lineHeight(HEIGHTS.text), items: [write([BOX, 1.4 * HEIGHTS.text], part)] },
  );
}

function cleaningLines(
  { key, temperatureLow, temperatureHigh, timeLeast, timeMost }: CleaningPlan,
  width: number,
  { job }: SheetInput,
): Block[] {
  const show = (figure: Figure): string => bigFigure(figure, job.units);
  const warmth =
    temperatureLow === null || temperatureHigh === null
      ? []
      : [words('sheet.bath-warmth', { low: show(temperatureLow), high: show(temperatureHigh) })];
  const time =
    timeMost === null
      ? words('sheet.bath-least', { time: show(timeLeast) })
      : words('sheet.bath-time', { least: show(timeLeast), most: show(timeMost) });
  const said = [wordsOf('sheet.bath', key), ...warmth, time].join(', ');
  return [
    paragraph(words('sheet.cleaning', { said }), width, { weight: 600 }),
    paragraph(wordsOf('finish.bath', key), width, { height: HEIGHT }),
  ];
}

/** Minutes of each weld to grind and to blend in, and together. */
function minutesTable({ minutes, total }: FinishPlan, { job }: SheetInput, width: number): Block {
  const show = (figure: Figure): string => bigFigure(figure, job.units);
  const rows = minutes.map(({ weld, flush, surface }): Cell[] => [
    { text: weld, weight: 600 },
    show(flush),
    show(surface),
  ]);
  return stacked([
    tableBlock(
      table(
        [
          { head: words('sheet.weld-name'), align: 'left' },
          { head: words('sheet.to-grind'), align: 'right' },
          { head: words('sheet.to-blend'), align: 'right' },
        ],
        rows,
        { width, height: HEIGHT },
      ),
    ),
    space(0.5),
    paragraph(words('sheet.minutes-together', { time: withBand(total, job.units) }), width, {
      height: HEIGHT,
      weight: 600,
    }),
  ]);
}
