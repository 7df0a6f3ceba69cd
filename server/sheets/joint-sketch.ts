import type { Job } from '../job/job.ts';
import { formatClosely } from '../language/length-format.ts';
import { formatFigure } from '../language/quantity-format.ts';
import { words } from '../language/words.ts';
import type { Weld } from '../plan/welding.ts';
import { hatch } from './hatch.ts';
import { COLOURS, HEIGHTS, STROKES, line, shape, write, type Item, type Spot } from './ink.ts';
import { largestScale } from './scale.ts';
import type { Block } from './text-block.ts';

/** Sizes on paper [mm]: the sketch, the thickest that a wall is drawn, and how long a piece of it. */
const WIDTH = 70;
const THICKEST = 8.5;
const PIECE = 26;
const MIDDLE = 17;

/** Teeth of a broken edge, and how deep they are [mm]. */
const TEETH = 12;
const TOOTH = 1;

/** A section through the joint as it is fitted, to scale: walls hatched, gap and faces as they are prepared. */
export function jointSketch(weld: Weld, job: Job, plate: number | null): Block {
  const { wall } = job.tube;
  const scale = largestScale((factor) => wall * factor <= THICKEST, 5);
  const items =
    weld.form === 'butt'
      ? buttSection(weld, job, scale.factor)
      : standingSection(weld, job, { factor: scale.factor, plate: plate ?? wall });
  const said = words('sheet.section-at-scale', { scale: scale.text });
  return {
    height: 32,
    items: [...items, write([0, 30.5], said, { height: HEIGHTS.small })],
    scales: [scale.text],
  };
}

const solid = (points: readonly Spot[]): Item[] => [
  shape('edge', points, { stroke: STROKES.edge, fill: COLOURS.white }),
  ...hatch(points, 1.1),
];

/** Two walls that meet: square faces, or bevels over a land at the root, with the gap between. */
function buttSection(weld: Weld, job: Job, factor: number): Item[] {
  const thick = job.tube.wall * factor;
  const gap = weld.gap.value * factor;
  const land = (weld.land?.value ?? job.tube.wall) * factor;
  const angle = ((weld.bevel?.value ?? 0) * Math.PI) / 180;
  const back = Math.max(0, thick - land) * Math.tan(angle);
  const [top, bottom] = [MIDDLE - thick / 2, MIDDLE + thick / 2];
  const side = (sense: 1 | -1): Spot[] => {
    const face = WIDTH / 2 + (sense * gap) / 2;
    return [
      [face, bottom],
      [face, Math.max(top, bottom - land)],
      [face + sense * back, top],
      [WIDTH / 2 + sense * PIECE, top],
      [WIDTH / 2 + sense * PIECE, bottom],
    ];
  };
  const { units } = job;
  const said = [
    words('sheet.wall-of', { wall: formatClosely(job.tube.wall, units) }),
    words('sheet.gap-of', { gap: formatClosely(Number(weld.gap.value.toFixed(2)), units) }),
    ...(weld.bevel === null ? [] : [words('sheet.bevel-each', { angle: formatFigure(weld.bevel, units) })]),
    ...(weld.land === null ? [] : [words('sheet.land-of', { land: formatClosely(weld.land.value, units) })]),
  ];
  return [
    ...solid(side(-1)),
    ...solid(side(1)),
    write([WIDTH / 2, 4], said.slice(0, 2).join(', '), { height: 2, align: 'middle' }),
    write([WIDTH / 2, 8], said.slice(2).join(', '), { height: 2, align: 'middle' }),
    write([WIDTH / 2, bottom + 5], words('sheet.bore-side'), { height: HEIGHTS.small, align: 'middle' }),
  ].filter((item) => item.kind !== 'text' || item.text !== '');
}

/** A wall that stands on a plate, or on the wall of another tube, with the weld outside. */
function standingSection(
  weld: Weld,
  job: Job,
  { factor, plate }: { readonly factor: number; readonly plate: number },
): Item[] {
  const { units } = job;
  const thick = job.tube.wall * factor;
  const whole = weld.form === 'pad' ? plate * factor : thick;
  const base = Math.min(whole, THICKEST);
  const floor = 27 - base;
  const gap = weld.gap.value * factor;
  const [left, right] = [WIDTH / 2 - thick / 2, WIDTH / 2 + thick / 2];
  const leg = Math.max(1.5, (weld.symbol.leg ?? job.tube.wall) * factor);
  const said = [
    words('sheet.wall-of', { wall: formatClosely(job.tube.wall, units) }),
    words('sheet.gap-of', { gap: formatClosely(Number(weld.gap.value.toFixed(2)), units) }),
    ...(weld.form === 'pad' ? [words('sheet.plate-of', { plate: formatClosely(plate, units) })] : []),
    ...(weld.symbol.leg === null
      ? []
      : [words('sheet.leg-of', { leg: formatClosely(Number(weld.symbol.leg.toFixed(2)), units) })]),
  ];
  return [
    ...solid([[WIDTH / 2 - PIECE, floor], [WIDTH / 2 + PIECE, floor], ...underside(floor + base, base < whole - 1e-9)]),
    ...solid([
      [left, 10],
      [right, 10],
      [right, floor - gap],
      [left, floor - gap],
    ]),
    shape(
      'edge',
      [
        [right, floor],
        [right, floor - leg],
        [right + leg, floor],
      ],
      { stroke: STROKES.narrow, fill: COLOURS.black },
    ),
    line(
      'centreline',
      [
        [left - 6, 9],
        [left - 6, floor + base + 2],
      ],
      STROKES.centreline,
    ),
    write([left - 8, 13], words('sheet.bore-side'), { height: HEIGHTS.small, align: 'right' }),
    write([WIDTH / 2, 4], said.slice(0, 2).join(', '), { height: 2, align: 'middle' }),
    ...(said.length > 2 ? [write([WIDTH / 2, 8], said.slice(2).join(', '), { height: 2, align: 'middle' })] : []),
  ];
}

/** The lower edge of what a wall stands on, from right to left; a zigzag where it goes on below. */
function underside(y: number, broken: boolean): Spot[] {
  const [left, right] = [WIDTH / 2 - PIECE, WIDTH / 2 + PIECE];
  if (!broken)
    return [
      [right, y],
      [left, y],
    ];
  return Array.from({ length: TEETH + 1 }, (_, index): Spot => [
    right + ((left - right) * index) / TEETH,
    y - (index % 2 === 0 ? 0 : TOOTH),
  ]);
}
