import { widthOf, type Weight } from './fonts.ts';
import { hatch } from './hatch.ts';
import { COLOURS, HEIGHTS, STROKES, line, moved, shape, write, type Item, type Spot, type Stroke } from './ink.ts';
import { largestScale, type Scale } from './scale.ts';
import { stacked, type Block } from './text-block.ts';

/** A mark on the tube laid straight: where [mm from the datum end], how its line is drawn, and what it says. */
export type TubeMark = {
  readonly station: number;
  readonly label: string;
  readonly stroke: Stroke;
  /** Bold where the work goes by it. */
  readonly bold?: boolean;
};

/** A stretch of it between two marks. Only a breakable one may be drawn shorter than it is. */
export type Stretch = {
  readonly length: number;
  readonly breakable: boolean;
  readonly hatched: boolean;
  readonly caption: string;
};

export type Tube = {
  readonly diameter: number;
  readonly stretches: readonly Stretch[];
  readonly marks: readonly TubeMark[];
  /** Height of what the marks say [mm]; 2.5 where it is left out. */
  readonly lettering?: number;
};

/** Room for captions, for no captions, and above the labels, and least length of a broken stretch [mm]. */
const CAPTIONS = 7;
const NO_CAPTIONS = 1.5;
const LEADERS = 7;
const BROKEN = 16;
const TALLEST = 12;
const ROWS = 6;

/** Least distance from label to label, for a height of their letters. */
const pitchOf = (lettering: number): number => 1.6 * lettering;

const weightOf = ({ bold = false }: TubeMark): Weight => (bold ? 600 : 400);

/** Paper lengths of the stretches at a scale, broken ones no longer than `most`. */
const onPaper = (stretches: readonly Stretch[], factor: number, most: number): number[] =>
  stretches.map(({ length, breakable }) => (breakable ? Math.min(length * factor, most) : length * factor));

const total = (lengths: readonly number[]): number => lengths.reduce((sum, one) => sum + one, 0);

/** Stretches row by row, filled from the left; each row has room for its labels. */
function rowsOf(lengths: readonly number[], width: number, pitch: number): number[][] {
  const rows: number[][] = [[]];
  const mostMarks = Math.floor(width / pitch) - 1;
  for (const [index, length] of lengths.entries()) {
    const row = rows.at(-1) ?? [];
    const used = total(row.map((one) => lengths[one] ?? 0));
    if (row.length > 0 && (used + length > width || row.length >= mostMarks)) rows.push([index]);
    else row.push(index);
  }
  return rows;
}

/** The longest that a broken stretch may be drawn so that a row just fits. */
function fillRow(stretches: readonly Stretch[], factor: number, width: number): number[] {
  let [low, high] = [BROKEN, width];
  for (let step = 0; step < 30; step += 1) {
    const middle = (low + high) / 2;
    if (total(onPaper(stretches, factor, middle)) <= width) low = middle;
    else high = middle;
  }
  return onPaper(stretches, factor, low);
}

/** Moves label places apart until each has its pitch, keeping their order and as near as possible to their marks. */
export function spread(places: readonly number[], pitch: number, range: { low: number; high: number }): number[] {
  const spots = [...places];
  for (let index = 0; index < spots.length; index += 1) {
    spots[index] = Math.max(spots[index] ?? 0, index === 0 ? range.low : (spots[index - 1] ?? 0) + pitch);
  }
  for (let index = spots.length - 1; index >= 0; index -= 1) {
    const limit = index === spots.length - 1 ? range.high : (spots[index + 1] ?? 0) - pitch;
    spots[index] = Math.min(spots[index] ?? 0, limit);
  }
  return spots;
}

/** The tube laid straight, to scale but for its breaks, in as many rows as it needs: as one block, or row by row. */
export function straightTube(tube: Tube, width: number): { block: Block; rows: readonly Block[]; scale: Scale } {
  const room = width - 8;
  const lettering = tube.lettering ?? HEIGHTS.text;
  const pitch = pitchOf(lettering);
  const scale = largestScale((factor) => {
    const rows = rowsOf(onPaper(tube.stretches, factor, BROKEN), room, pitch).length;
    return tube.diameter * factor <= TALLEST && rows <= (factor >= 0.2 ? 1 : factor >= 0.05 ? 3 : ROWS);
  });
  const rows = rowsOf(onPaper(tube.stretches, scale.factor, BROKEN), room, pitch);
  const across = Math.max(1.5, tube.diameter * scale.factor);
  const top = LEADERS + Math.max(0, ...tube.marks.map((mark) => widthOf(mark.label, lettering, weightOf(mark))));
  const captions = tube.stretches.some(({ caption }) => caption !== '') ? CAPTIONS : NO_CAPTIONS;
  const height = top + across + captions + 2;
  const blocks: Block[] = [];
  let from = 0;
  for (const [index, row] of rows.entries()) {
    const stretches = row.flatMap((one) => tube.stretches[one] ?? []);
    const to = from + total(stretches.map(({ length }) => length));
    const marks = tube.marks.filter(
      ({ station }) => station >= from - 1e-6 && station <= to + 1e-6 && (index === 0 || station > from + 1e-6),
    );
    const drawn = rowItems(stretches, marks, { from, factor: scale.factor, across, room, top, lettering });
    blocks.push({ height, items: drawn.map((item) => moved(item, [4, 0])), scales: [scale.text] });
    from = to;
  }
  return { block: stacked(blocks), rows: blocks, scale };
}

function rowItems(
  stretches: readonly Stretch[],
  marks: readonly TubeMark[],
  row: { from: number; factor: number; across: number; room: number; top: number; lettering: number },
): Item[] {
  const lengths = fillRow(stretches, row.factor, row.room);
  const { top } = row;
  const bottom = top + row.across;
  const items: Item[] = [];
  const ends: { station: number; x: number }[] = [{ station: row.from, x: 0 }];
  let station = row.from;
  let x = 0;
  let said = -Infinity;
  for (const [index, stretch] of stretches.entries()) {
    const length = lengths[index] ?? 0;
    const area: readonly Spot[] = [
      [x, top],
      [x + length, top],
      [x + length, bottom],
      [x, bottom],
    ];
    if (stretch.hatched) items.push(...hatch(area, 1));
    items.push(
      line(
        'edge',
        [
          [x, top],
          [x + length, top],
        ],
        STROKES.edge,
      ),
      line(
        'edge',
        [
          [x, bottom],
          [x + length, bottom],
        ],
        STROKES.edge,
      ),
    );
    if (stretch.length * row.factor > length + 1e-6) items.push(...breakAt(x + length / 2, top, bottom));
    const caption = write([x + length / 2, bottom + 5], stretch.caption, { align: 'middle', weight: 600 });
    // one that would run into the last is left out: the marks say the number too
    if (caption.width > 0 && x + length / 2 - caption.width / 2 > said) {
      items.push(caption);
      said = x + length / 2 + caption.width / 2 + 1;
    }
    x += length;
    station += stretch.length;
    ends.push({ station, x });
  }
  items.push(
    line(
      'edge',
      [
        [0, top],
        [0, bottom],
      ],
      STROKES.edge,
    ),
    line(
      'edge',
      [
        [x, top],
        [x, bottom],
      ],
      STROKES.edge,
    ),
  );
  const xs = marks.map(
    (mark) =>
      ends.reduce((best, end) =>
        Math.abs(end.station - mark.station) < Math.abs(best.station - mark.station) ? end : best,
      ).x,
  );
  const labels = spread(xs, pitchOf(row.lettering), { low: 0, high: row.room });
  for (const [index, mark] of marks.entries()) {
    const at = xs[index] ?? 0;
    const label = labels[index] ?? 0;
    items.push(
      line(
        'mark',
        [
          [at, bottom + 1],
          [at, top - 2],
        ],
        mark.stroke,
      ),
      line(
        'mark',
        [
          [at, top - 2],
          [label, top - 5],
        ],
        STROKES.thin,
      ),
      write([label + row.lettering / 2, top - 6], mark.label, {
        turn: 90,
        height: row.lettering,
        weight: weightOf(mark),
      }),
    );
  }
  return items;
}

/** Two zigzags with nothing between them: a long stretch is broken here. */
export function breakAt(x: number, top: number, bottom: number): Item[] {
  const zigzag = (at: number): Spot[] => {
    const middle = (top + bottom) / 2;
    return [
      [at, top - 1.2],
      [at, middle - 1],
      [at - 0.9, middle - 0.4],
      [at + 0.9, middle + 0.4],
      [at, middle + 1],
      [at, bottom + 1.2],
    ];
  };
  const left = zigzag(x - 0.9);
  const right = zigzag(x + 0.9);
  return [
    shape('edge', [...left, ...right.toReversed()], { stroke: null, fill: COLOURS.white }),
    line('edge', left, STROKES.thin),
    line('edge', right, STROKES.thin),
  ];
}
