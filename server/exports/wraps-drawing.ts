import type { Units } from '../job/job.ts';
import { formatLength } from '../language/length-format.ts';
import { words, wordsOf } from '../language/words.ts';
import type { WrapTemplate } from '../plan/frame.ts';
import type { FlatPoint } from '../plan/view.ts';
import type { NamedWrap } from './chosen-wraps.ts';

/** cut: to be cut to. ring: where ordinates count from. scrap: strokes into the scrap. paper: edges, and the four generators. */
export const WRAP_LAYERS = ['cut', 'ring', 'scrap', 'paper', 'check', 'names'] as const;
export type WrapLayer = (typeof WRAP_LAYERS)[number];

/** A line or a text of the drawing [mm at full size, y up]. */
export type WrapLine = { readonly layer: WrapLayer; readonly points: readonly FlatPoint[] };
export type WrapText = { readonly text: string; readonly at: FlatPoint };
export type WrapsDrawing = {
  readonly lines: readonly WrapLine[];
  readonly texts: readonly WrapText[];
  readonly width: number;
  readonly height: number;
};

/** Paper beyond the lowest and highest ordinate, and room round everything [mm]. Our own choice. */
const MARGIN = 12;
const ROOM = 10;
/** Height of lettering [mm]: ISO 3098, the size for A4 and A3. */
export const LETTERING = 3.5;
/** Length of the bar that a rule is laid on [mm]. */
const CHECK_BAR = 100;
/** Length of the strokes into the scrap [mm], and how many there are round the tube. Our own choice. */
const STROKE = 4;
const STROKES = 24;

const GENERATOR_NAMES = ['outside', 'top', 'inside', 'bottom'] as const;

/** The wraps one under another, the first at the top, and a bar of 100 mm below them. The far end of each tube is up. */
export function wrapsDrawing(wraps: readonly NamedWrap[], units: Units): WrapsDrawing {
  const lines: WrapLine[] = [];
  const texts: WrapText[] = [];
  const heights = wraps.map(({ wrap }) => wrap.high - wrap.low + 2 * MARGIN + 4 * LETTERING);
  const bar = 2 * LETTERING + ROOM;
  const height = heights.reduce((sum, one) => sum + one + ROOM, bar + ROOM);
  let top = height - ROOM;
  for (const [index, { wrap, title, ring: from }] of wraps.entries()) {
    // the strip's own names stand above it
    const ring = top - 4 * LETTERING - MARGIN - wrap.high;
    const placed = ([x, y]: FlatPoint): FlatPoint => [ROOM + x, ring + y];
    for (const { layer, points } of linesOf(wrap)) lines.push({ layer, points: points.map(placed) });
    const station = ringWords(wrap, from, units);
    texts.push({ text: title, at: [ROOM, top - LETTERING] }, { text: station, at: [ROOM, top - 2.3 * LETTERING] });
    for (const { text, at } of namesOf(wrap, 'legEnd' in from)) texts.push({ text, at: placed(at) });
    top -= (heights[index] ?? 0) + ROOM;
  }
  const level = ROOM;
  lines.push({
    layer: 'check',
    points: [
      [ROOM, level],
      [ROOM + CHECK_BAR, level],
    ],
  });
  for (const x of [ROOM, ROOM + CHECK_BAR])
    lines.push({
      layer: 'check',
      points: [
        [x, level - 2],
        [x, level + 2],
      ],
    });
  texts.push({ text: words('export.wrap.check-bar'), at: [ROOM, level + LETTERING] });
  const width = Math.max(CHECK_BAR, ...wraps.map(({ wrap }) => wrap.wrapLength)) + 2 * ROOM;
  return { lines, texts, width, height };
}

/** Where the ring of a wrap lies: so far along its tube, or on the sawn end of a leg. */
const ringWords = ({ ringStation }: WrapTemplate, ring: NamedWrap['ring'], units: Units): string =>
  'legEnd' in ring
    ? words(`export.wrap.leg-ring-${ring.legEnd}`)
    : words('export.wrap.ring', { distance: formatLength(ringStation, units), member: ring.tube });

/** Every line of one wrap, its ring at 0 and its left edge at 0. */
function linesOf(wrap: WrapTemplate): WrapLine[] {
  const { wrapLength, low, high, curve, second, hinge } = wrap;
  const [bottom, top] = [low - MARGIN, high + MARGIN];
  const upright = (x: number): FlatPoint[] => [
    [x, bottom],
    [x, top],
  ];
  const lines: WrapLine[] = [
    {
      layer: 'paper',
      points: [
        [0, bottom],
        [wrapLength, bottom],
        [wrapLength, top],
        [0, top],
        [0, bottom],
      ],
    },
    ...[0.25, 0.5, 0.75].map((share): WrapLine => ({ layer: 'paper', points: upright(share * wrapLength) })),
    {
      layer: 'ring',
      points: [
        [0, 0],
        [wrapLength, 0],
      ],
    },
    { layer: 'cut', points: curve },
  ];
  if (second !== null) lines.push({ layer: 'cut', points: second });
  if (hinge !== null) {
    for (const side of [-1, 1]) {
      const x = hinge.girth + (side * hinge.width) / 2;
      lines.push({ layer: 'scrap', points: upright(x - wrapLength * Math.floor(x / wrapLength)) });
    }
  }
  return [...lines, ...strokesOf(wrap)];
}

/** Short strokes from the line to cut to into the scrap. */
function strokesOf({ curve, second, scrap, low, high }: WrapTemplate): WrapLine[] {
  const step = Math.max(1, Math.round((curve.length - 1) / STROKES));
  const middle: FlatPoint = [curve.reduce((sum, [x]) => sum + x, 0) / curve.length, (low + high) / 2];
  return curve.flatMap(([x, y], index): WrapLine[] => {
    if (index % step !== 0) return [];
    const other = second?.[index]?.[1] ?? y;
    const inwards: FlatPoint = scrap === 'inside' ? [middle[0] - x, middle[1] - y] : [0, scrap === 'start' ? -1 : 1];
    const size = Math.hypot(inwards[0], inwards[1]);
    // between two lines a stroke goes no further than to the other one
    const length = scrap === 'between' ? Math.min(STROKE, other - y) : STROKE;
    if (length <= 0 || size === 0) return [];
    return [
      {
        layer: 'scrap',
        points: [
          [x, y],
          [x + (inwards[0] / size) * length, y + (inwards[1] / size) * length],
        ],
      },
    ];
  });
}

/** Names of the generators above the strip, and where the scrap is. A saddle's count from its own generator 0, a leg's from its scribed line. */
function namesOf({ kind, wrapLength, high, low, edge, scrap, hinge }: WrapTemplate, ofLeg: boolean): WrapText[] {
  const above = high + MARGIN + LETTERING / 2;
  const names = [0, 1, 2, 3].map((quarter): WrapText => {
    const degrees = (edge + 90 * quarter) % 360;
    const name = GENERATOR_NAMES[Math.round(degrees / 90) % 4] ?? 'outside';
    const named = kind !== 'saddle' && !ofLeg && Math.abs(degrees - 90 * Math.round(degrees / 90)) < 0.05;
    const scribed = ofLeg && quarter === 0;
    const text = scribed
      ? words('export.wrap.scribed-line')
      : named
        ? wordsOf('generator', name)
        : `${degrees.toFixed(1)}°`;
    return { text, at: [(wrapLength * quarter) / 4 + 1, above] };
  });
  const level = scrap === 'start' ? low - MARGIN + LETTERING / 2 : high + MARGIN - 1.5 * LETTERING;
  const side = words(scrap === 'inside' || scrap === 'between' ? `export.wrap.scrap-${scrap}` : 'export.wrap.scrap');
  if (hinge !== null)
    names.push({
      text: words('export.wrap.hinge'),
      at: [hinge.girth - hinge.width / 2 + 1, low - MARGIN + LETTERING / 2],
    });
  return [...names, { text: side, at: [wrapLength / 2 + 1, level] }];
}
