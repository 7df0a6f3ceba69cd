import type { Job } from '../job/job.ts';
import { formatBand, formatFigure, formatMeasured } from '../language/quantity-format.ts';
import { tellingResiduals } from '../language/site-rules.ts';
import { wallClockAfter, wallClockWords } from '../language/wall-clock.ts';
import { words } from '../language/words.ts';
import type { Figure } from '../plan/figure.ts';
import type { LevelPlan, Side, SiteResidual } from '../plan/site.ts';
import { figuresRow, type Named } from './figures-row.ts';
import { HEIGHTS, STROKES, box, write, type Item } from './ink.ts';
import { sideWords } from './site-words.ts';
import { paragraph, space, stacked, type Block } from './text-block.ts';

/** Flatter than this is level: under what a level shows [degrees]. */
const FLAT = 0.005;

/** Height of the two numbers that everything hangs on: both on one line [mm]. */
const BIG = 4.2;

/** Rows of empty boxes, their height, and that of their heads [mm]. */
const ROWS = 3;
const BOX = 7;
const HEAD = 4.5;

type Sides = { readonly up: Side; readonly down: Side };

const LENGTHWISE: Sides = { up: 'ahead', down: 'back' };
const SIDEWAYS: Sides = { up: 'port', down: 'starboard' };

/** How much, and which side is higher: '0.80° ± 0.10°, astern higher'. */
function inclineWords(figure: Figure, sides: Sides, job: Job): string {
  const size = formatFigure({ ...figure, value: Math.abs(figure.value) }, job.units);
  const band = figure.band === null ? '' : ` ${formatBand(figure.band, figure.unit, job.units)}`;
  if (Math.abs(figure.value) < FLAT) return `${size}${band}`;
  const side = sideWords(job, figure.value > 0 ? sides.up : sides.down);
  return words('sheet.side-higher', { size: `${size}${band}`, side });
}

/** How it lies lengthwise; that nobody read it where nobody did. */
export const trimWords = ({ known, trim }: LevelPlan, job: Job): string =>
  known ? inclineWords(trim, LENGTHWISE, job) : words('sheet.not-read');

/** How it lies sideways; that nobody read it where nobody did. */
export const listWords = ({ known, list }: LevelPlan, job: Job): string =>
  known ? inclineWords(list, SIDEWAYS, job) : words('sheet.not-read');

/** How the structure lies, from which set, and until when that may be believed. */
export function howItLies(level: LevelPlan, job: Job, width: number): Block {
  const { sides } = job.site;
  const big: Named[] = [
    { name: words(`sheet.trim.${sides}`), value: trimWords(level, job) },
    { name: words(`sheet.list.${sides}`), value: listWords(level, job) },
  ];
  const until = wallClockAfter(level.taken, level.goodFor);
  const small: Named[] = [
    { name: words('sheet.tilt'), value: formatFigure(level.tilt, job.units) },
    { name: words('sheet.level-set'), value: String(level.set) },
    {
      name: words('sheet.level-taken'),
      value: level.taken === '' ? words('sheet.not-noted') : wallClockWords(level.taken),
    },
    { name: words('sheet.good-until'), value: until === '' ? words('sheet.not-known') : wallClockWords(until) },
  ];
  return stacked([
    figuresRow(big, width, BIG),
    level.known
      ? figuresRow(small, width, HEIGHTS.head)
      : paragraph(words('sheet.level-unknown'), width, { weight: 600 }),
  ]);
}

/** Empty boxes for the readings that are taken again, beside what they are held against. */
export function readAgain(level: LevelPlan, job: Job, width: number): Block {
  const column = width / 4;
  const { trim, list } = level;
  const bare: LevelPlan = { ...level, trim: { ...trim, band: null }, list: { ...list, band: null } };
  const heads = [
    words('sheet.again-time'),
    words('sheet.again-trim', { value: trimWords(bare, job) }),
    words('sheet.again-list', { value: listWords(bare, job) }),
    words('sheet.again-by'),
  ];
  const items: Item[] = [
    ...heads.map((head, index) => write([index * column + 1, 3], head, { height: HEIGHTS.small, weight: 600 })),
    ...Array.from({ length: ROWS }, (_, row) =>
      heads.map((_head, index) =>
        box('log', { left: index * column, top: HEAD + row * BOX, width: column, height: BOX }, STROKES.narrow),
      ),
    ).flat(),
  ];
  return stacked([
    paragraph(words('sheet.read-again'), width, { weight: 600 }),
    space(1),
    { height: HEAD + ROWS * BOX, items },
    space(2),
  ]);
}

/** What each reading is off by, where there are more than it takes, and what has changed since the set before. */
export function levelSpare(level: LevelPlan, job: Job, width: number): Block[] {
  const { drift } = level;
  const { sides } = job.site;
  const moved =
    drift === null
      ? []
      : [
          paragraph(
            words('sheet.level-drift', {
              set: drift.set,
              taken: drift.taken === '' ? words('sheet.not-noted') : wallClockWords(drift.taken),
              turn: formatFigure(drift.turn, job.units),
              trimName: words(`sheet.trim.${sides}`),
              trim: formatFigure(drift.trim, job.units),
              listName: words(`sheet.list.${sides}`),
              list: formatFigure(drift.list, job.units),
              ahead: sideWords(job, 'ahead'),
              port: sideWords(job, 'port'),
            }),
            width,
          ),
        ];
  const said = tellingResiduals(level.residuals).map(
    (one, index) => `${words('sheet.level-reading', { number: index + 1 })} ${residualWords(one, job)}`,
  );
  if (said.length === 0) return moved;
  return [...moved, paragraph(words('sheet.level-residuals', { list: said.join('; ') }), width)];
}

/** What a measured value is off by, with its sign, and that it disagrees where it does. */
export function residualWords({ residual, disagrees }: SiteResidual, { units }: Job): string {
  const off = formatMeasured(residual.value, residual.unit, units);
  const signed = residual.value > 0 && /[1-9]/.test(off) ? `+${off}` : off;
  return disagrees ? words('sheet.residual-disagrees', { off: signed }) : signed;
}
