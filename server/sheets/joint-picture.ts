import type { Job } from '../job/job.ts';
import { formatFigure } from '../language/quantity-format.ts';
import { words } from '../language/words.ts';
import type { Joint } from '../plan/joint.ts';
import { arrowhead, dimensionLines, dimensionText, type Dimension } from './dimension.ts';
import { hatch } from './hatch.ts';
import { HEIGHTS, STROKES, line, write, type Item, type Spot } from './ink.ts';
import { generatorWords, sliceOf, type Edge, type Slice } from './joint-slice.ts';
import { largestScale, type Scale } from './scale.ts';
import { breakAt } from './straight-tube.ts';
import type { Block } from './text-block.ts';

/** Tube that is drawn beyond the faces, room above and at the sides, and the least length of a broken stretch [mm]. */
const PAD = 12;
const TOP = 13;
const SIDE = 17;
const BROKEN = 14;

/** The tallest that a tube is drawn, and the least that a hinge is drawn to be seen [mm]. */
const TALLEST = 32;
const HINGE = 0.8;

/** Shorter than this nothing is taken out: finer than a saw [mm]. */
const NOTHING = 0.005;

const lean = ({ upper, lower }: Edge): number => Math.abs(upper - lower);

/** Where stations lie on paper; a long straight piece between the two faces is broken. */
type Layout = { readonly x: (station: number) => number; readonly middle: number; readonly broken: boolean };

function layout({ a, b }: Slice, factor: number, width: number): Layout {
  const from = Math.min(a.upper, a.lower);
  const to = Math.max(b.upper, b.lower);
  const room = width - 2 * PAD - 2 * SIDE;
  const drawn = Math.min((to - from) * factor, room);
  const left = (width - drawn) / 2;
  const half = (from + to) / 2;
  return {
    x: (station) => (station <= half ? left + (station - from) * factor : left + drawn - (to - station) * factor),
    middle: left + drawn / 2,
    broken: (to - from) * factor > drawn + 1e-9,
  };
}

/** Both faces of a joint on the uncut tube laid straight, to scale, seen so that their lean shows; scrap is hatched. */
export function jointPicture(joint: Joint, { tube, units }: Job, width: number): { block: Block; scale: Scale } {
  const diameter = tube.outsideDiameter;
  const slice = sliceOf(joint);
  const { a, b } = slice;
  const length = Math.max(b.upper, b.lower) - Math.min(a.upper, a.lower);
  const room = width - 2 * PAD - 2 * SIDE;
  const scale = largestScale(
    (factor) =>
      diameter * factor <= TALLEST && (length * factor <= room || (lean(a) + lean(b)) * factor + BROKEN <= room),
  );
  const { x, middle, broken } = layout(slice, scale.factor, width);
  const across = diameter * scale.factor;
  const [top, bottom, axis] = [TOP, TOP + across, TOP + across / 2];
  const uncut = joint.kind === 'dart' ? Math.min(across / 3, Math.max(HINGE, tube.wall * scale.factor)) : 0;
  const end = bottom - uncut;
  const foot = ({ upper, lower }: Edge): number => x(upper) + ((x(lower) - x(upper)) * (end - top)) / across;
  const start = Math.min(x(a.upper), x(a.lower)) - PAD;
  const finish = Math.max(x(b.upper), x(b.lower)) + PAD;
  const scrap: readonly Spot[] = [
    [x(a.upper), top],
    [x(b.upper), top],
    [foot(b), end],
    [foot(a), end],
  ];
  const pair = (role: 'edge' | 'centreline' | 'mark', from: Spot, to: Spot, stroke = STROKES.edge): Item =>
    line(role, [from, to], stroke);
  const items: Item[] = [
    ...(joint.removed.value > NOTHING ? hatch(scrap, 1.2) : []),
    pair('edge', [start, top], [finish, top]),
    pair('edge', [start, bottom], [finish, bottom]),
    pair('centreline', [start - 2, axis], [finish + 2, axis], STROKES.centreline),
    ...(broken ? breakAt(middle, top, bottom) : []),
    pair('edge', [x(a.upper), top], [foot(a), end]),
    pair('edge', [x(b.upper), top], [foot(b), end]),
    write([x(a.upper) - 1, top - 1.5], words('sheet.face-a'), { weight: 600, align: 'right', height: HEIGHTS.head }),
    write([x(b.upper) + 1, top - 1.5], words('sheet.face-b'), { weight: 600, height: HEIGHTS.head }),
    arrowhead([start - 10, axis], { x: -1, y: 0 }),
    pair('mark', [start - 9, axis], [start - 3, axis], STROKES.narrow),
    write([start - 2.5, axis + 4.5], words('sheet.to-datum'), { height: HEIGHTS.small, align: 'right' }),
  ];
  items.push(...besides(joint, slice, { top, bottom, width }));
  const removed = removedDimension(joint, [(x(a.upper) + foot(a)) / 2, (x(b.upper) + foot(b)) / 2], bottom, units);
  if (removed !== null) {
    items.push(...dimensionLines(removed));
    items.push(...dimensionText(removed, items, { left: 0, top: 0, width, height: bottom + 8 }));
  }
  return { block: { height: bottom + 14, items, scales: [scale.text] }, scale };
}

/** Names of the two sides that are seen edge on; at a dart the lower one is the hinge. */
function besides(
  { kind }: Joint,
  { upper }: Slice,
  { top, bottom, width }: { top: number; bottom: number; width: number },
): Item[] {
  const small = { height: HEIGHTS.small, align: 'middle' } as const;
  const below = generatorWords(upper + 180);
  return [
    write([width / 2, top - 9], generatorWords(upper), small),
    write([width / 2, bottom + 12], kind === 'dart' ? words('sheet.hinge-at', { place: below }) : below, small),
  ];
}

/** What is taken out along the centreline, under the tube; nothing where nothing is. */
function removedDimension(
  { removed }: Joint,
  [from, to]: readonly [number, number],
  bottom: number,
  units: Job['units'],
): Dimension | null {
  if (removed.value <= NOTHING) return null;
  return {
    from: [from, bottom],
    to: [to, bottom],
    line: [
      [from, bottom + 7],
      [to, bottom + 7],
    ],
    text: formatFigure(removed, units),
    radius: false,
  };
}
