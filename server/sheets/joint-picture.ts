import { words, wordsOf } from '../language/words.ts';
import type { Units } from '../job/job.ts';
import { formatFigure } from '../language/quantity-format.ts';
import type { Joint, JointFace } from '../plan/correction.ts';
import type { WrapTemplate } from '../plan/frame.ts';
import { arrowhead, dimensionLines, dimensionText } from './dimension.ts';
import { hatch } from './hatch.ts';
import { COLOURS, HEIGHTS, STROKES, line, shape, write, type Item, type Spot } from './ink.ts';
import { largestScale, type Scale } from './scale.ts';
import type { Block } from './text-block.ts';

const PAD = 12;
const TOP = 12;
const SIDE = 17;

/** Ordinate of the line to cut to at the generator that is nearest to an angle [degrees]; square where there is no wrap. */
function ordinateAt(template: WrapTemplate | null, angle: number): number {
  const off = (one: number): number => Math.abs(((one - angle + 540) % 360) - 180);
  const [first, ...rest] = template?.stations ?? [];
  return first === undefined
    ? 0
    : rest.reduce((best, one) => (off(one.angle) < off(best.angle) ? one : best), first).cut;
}

/** Where a face crosses the outside and the inside of the curve, along the tube [mm]. */
const edgesOf = ({ station, template }: JointFace): { outside: number; inside: number } => ({
  outside: station.value + ordinateAt(template, 0),
  inside: station.value + ordinateAt(template, 180),
});

/** Both faces of a joint on the tube drawn straight, outside of the curve up, the piece that falls out hatched. */
export function jointPicture(
  joint: Joint,
  diameter: number,
  units: Units,
  width: number,
): { block: Block; scale: Scale } {
  const a = edgesOf(joint.faceA);
  const b = edgesOf(joint.faceB);
  const from = Math.min(a.outside, a.inside);
  const to = Math.max(b.outside, b.inside);
  const scale = largestScale((factor) => diameter * factor <= 32 && (to - from) * factor + 2 * PAD + 2 * SIDE <= width);
  const across = diameter * scale.factor;
  const top = TOP;
  const bottom = top + across;
  const axis = top + across / 2;
  const left = (width - (to - from) * scale.factor) / 2;
  const x = (station: number): number => left + (station - from) * scale.factor;
  const start = left - PAD;
  const finish = x(to) + PAD;
  const scrap: readonly Spot[] = [
    [x(a.outside), top],
    [x(b.outside), top],
    [x(b.inside), bottom],
    [x(a.inside), bottom],
  ];
  const small = { height: HEIGHTS.small } as const;
  const middle = (one: { outside: number; inside: number }): number => (x(one.outside) + x(one.inside)) / 2;
  const removed = {
    from: [middle(a), bottom] as Spot,
    to: [middle(b), bottom] as Spot,
    line: [
      [middle(a), bottom + 7],
      [middle(b), bottom + 7],
    ] as [Spot, Spot],
    text: formatFigure(joint.removed, units),
    radius: false,
  };
  const items: Item[] = [
    ...(joint.removed.value > 0
      ? [shape('edge', scrap, { stroke: null, fill: COLOURS.white }), ...hatch(scrap, 1.2)]
      : []),
    line(
      'edge',
      [
        [start, top],
        [finish, top],
      ],
      STROKES.edge,
    ),
    line(
      'edge',
      [
        [start, bottom],
        [finish, bottom],
      ],
      STROKES.edge,
    ),
    line(
      'centreline',
      [
        [start - 2, axis],
        [finish + 2, axis],
      ],
      STROKES.centreline,
    ),
    line(
      'edge',
      [
        [x(a.outside), top],
        [x(a.inside), bottom],
      ],
      STROKES.edge,
    ),
    line(
      'edge',
      [
        [x(b.outside), top],
        [x(b.inside), bottom],
      ],
      STROKES.edge,
    ),
    write([middle(a) - 1, top - 1.5], words('sheet.face-a'), { weight: 600, align: 'right' }),
    write([middle(b) + 1, top - 1.5], words('sheet.face-b'), { weight: 600 }),
    write([width / 2, 3], wordsOf('generator', 'outside'), { ...small, align: 'middle' }),
    ...dimensionLines(removed),
    arrowhead([start - 10, axis], { x: -1, y: 0 }),
    line(
      'mark',
      [
        [start - 9, axis],
        [start - 3, axis],
      ],
      STROKES.narrow,
    ),
    write([start - 2.5, axis + 4.5], words('sheet.to-datum'), { ...small, align: 'right' }),
    write([width / 2, bottom + 11], wordsOf('generator', 'inside'), { ...small, align: 'middle' }),
  ];
  items.push(...dimensionText(removed, items, { left: 0, top: 0, width, height: bottom + 13 }));
  return { block: { height: bottom + 13, items, scales: [scale.text] }, scale };
}
