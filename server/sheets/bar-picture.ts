import { formatLength } from '../language/length-format.ts';
import { words } from '../language/words.ts';
import type { Units } from '../job/job.ts';
import type { BarPlan } from '../plan/stock.ts';
import { onTape, type OnTape } from './bars-on-tape.ts';
import { widthOf } from './fonts.ts';
import { hatch } from './hatch.ts';
import {
  HEIGHTS,
  STROKES,
  box,
  corners,
  line,
  shape,
  write,
  COLOURS,
  type Item,
  type Rectangle,
  type Written,
} from './ink.ts';
import type { Scale } from './scale.ts';
import { spread } from './straight-tube.ts';
import { fitted, type Block } from './text-block.ts';

/** How thick a bar is drawn, the line from it to a number above, air where there is none, room below it for the tape, and air about a text in a piece [mm on paper]. */
const THICK = 9;
const LEADER = 2;
const BARE = 1;
const TAPE = 4.4;
const AIR = 0.7;

/** From label to label of narrow pieces, and the smallest letters inside a piece [mm]. */
const PITCH = 2.9;
const SMALLEST = 1.5;
/** Narrower than this a piece has its number above it [mm on paper]. */
const NARROW = 11;

/** The number of a narrow piece, or of several alike, and where on the bar it belongs. */
type Leader = { readonly at: number; readonly text: Written };

/** How a bar is drawn: its scale, the room for the longest, and the number of each piece in the cut list. */
export type BarDrawing = {
  readonly scale: Scale;
  readonly width: number;
  readonly units: Units;
  readonly numberOf: (name: string, job: string) => string;
};

/** A bar to scale along its length: end cut off, pieces, saw cuts, and what is left, hatched where it is scrap. */
export function barPicture(bar: BarPlan, how: BarDrawing): Block {
  const { factor, text } = how.scale;
  const pieces = onTape(bar);
  const leaders = leadersOf(pieces, bar.endTrim, how);
  const top = leaders.length === 0 ? BARE : LEADER + 1 + Math.max(...leaders.map((one) => one.text.width));
  const area = (from: number, to: number): Rectangle => ({
    left: from * factor,
    top,
    width: Math.max(0, to - from) * factor,
    height: THICK,
  });
  const { endTrim } = bar;
  const last = pieces.at(-1)?.to ?? 0;
  const cut = bar.length - bar.offcut.value;
  const { second } = underBar(bar, area(cut, bar.length), offcutWords(bar, how.units), how.width);
  return {
    height: top + THICK + (second ? 1.7 : 1) * TAPE,
    scales: [text],
    items: [
      box('frame', area(0, bar.length), STROKES.thin),
      ...(endTrim > 0 ? hatch(corners(area(0, endTrim)), 0.8) : []),
      ...pieces.flatMap((piece) => pieceItems(piece, area(endTrim + piece.from, endTrim + piece.to), how)),
      ...pieces.slice(1).map((piece, index) => {
        const before = pieces[index]?.to ?? piece.from;
        return shape('mark', corners(area(endTrim + before, endTrim + piece.from)), BLACK);
      }),
      ...(bar.offcut.value > 0 ? [shape('mark', corners(area(endTrim + last, cut)), BLACK)] : []),
      ...offcutItems(bar, area(cut, bar.length), how),
      ...leaderItems(leaders, top, how.width),
    ],
  };
}

const BLACK = { stroke: null, fill: COLOURS.black } as const;

const isNarrow = ({ from, to }: Pick<OnTape, 'from' | 'to'>, factor: number): boolean => (to - from) * factor < NARROW;

/** A piece with its name and length in it, and under its far end where the tape says cut. */
function pieceItems(piece: OnTape, area: Rectangle, { units, scale, numberOf }: BarDrawing): Item[] {
  const drawn = box('edge', area, STROKES.narrow);
  if (isNarrow(piece, scale.factor)) return [drawn];
  const middle = area.left + area.width / 2;
  const room = area.width - 2 * AIR;
  const number = numberOf(piece.name, piece.job);
  const name = fitted(`${number} ${piece.name}`, room, { height: HEIGHTS.text, weight: 600 }, SMALLEST);
  const length = formatLength(piece.to - piece.from, units);
  const said = fitted(length, room, { height: HEIGHTS.text, weight: 400 }, SMALLEST);
  const tape = formatLength(piece.to, units);
  return [
    drawn,
    write([middle, area.top + 4], name.text, { height: name.height, weight: 600, align: 'middle' }),
    write([middle, area.top + 7.7], said.text, { height: said.height, align: 'middle' }),
    ...(widthOf(tape, HEIGHTS.small, 400) + 1 > area.width
      ? []
      : [
          write([area.left + area.width, area.top + THICK + 3.2], tape, { height: HEIGHTS.small, align: 'right' }),
          line(
            'mark',
            [
              [area.left + area.width, area.top + THICK],
              [area.left + area.width, area.top + THICK + 0.9],
            ],
            STROKES.thin,
          ),
        ]),
  ];
}

const offcutWords = ({ offcut, kept }: BarPlan, units: Units): string =>
  words(kept ? 'sheet.stock-keep-length' : 'sheet.stock-scrap-length', { length: formatLength(offcut.value, units) });

/** What is left of a bar: hatched where it is scrap; KEEP with its length where it goes back to the stock. */
function offcutItems(bar: BarPlan, area: Rectangle, { units, width }: BarDrawing): Item[] {
  if (bar.offcut.value <= 0) return [];
  const text = offcutWords(bar, units);
  const weight = bar.kept ? 600 : 400;
  const drawn = bar.kept ? [box('frame', area, STROKES.edge)] : hatch(corners(area), 0.8);
  const style = { height: HEIGHTS.text, weight } as const;
  const size = widthOf(text, style.height, weight);
  if (bar.kept && size + 2 * AIR <= area.width) {
    const at = [area.left + area.width / 2, area.top + 5.8] as const;
    return [...drawn, write(at, text, { ...style, align: 'middle' })];
  }
  const { left, below } = underBar(bar, area, text, width);
  return [...drawn, write([left, below], text, { height: HEIGHTS.small, weight })];
}

/** Where the words about a short offcut stand: under it; on a line of their own where they would run off the page. */
function underBar(
  bar: BarPlan,
  { left, top }: Pick<Rectangle, 'left' | 'top'>,
  text: string,
  width: number,
): { left: number; below: number; second: boolean } {
  const last = width - widthOf(text, HEIGHTS.small, bar.kept ? 600 : 400);
  const second = left + 1.5 > last;
  return { left: second ? last : left + 1.5, below: top + THICK + (second ? 6.2 : 3.2), second };
}

/** Numbers of pieces too narrow to write in, each where it stands on the bar; neighbours that are alike are numbered once. */
function leadersOf(pieces: readonly OnTape[], endTrim: number, how: BarDrawing): Leader[] {
  const { factor } = how.scale;
  const runs: { number: string; of: string; count: number; from: number; to: number }[] = [];
  for (const { name, job, from, to } of pieces) {
    const last = runs.at(-1);
    const of = isNarrow({ from, to }, factor) ? `${job}/${name}` : '';
    if (last === undefined || last.of !== of) runs.push({ number: how.numberOf(name, job), of, count: 1, from, to });
    else {
      last.count += 1;
      last.to = to;
    }
  }
  const narrow = runs.filter(({ of }) => of !== '');
  // more than there is room for: the list below has them all
  if (narrow.length * PITCH > how.width) return [];
  return narrow.map(({ number, count, from, to }) => {
    const text = count === 1 ? number : words('sheet.stock-times', { count, number });
    return {
      at: (endTrim + (from + to) / 2) * factor,
      text: write([0, 0], text, { height: HEIGHTS.small, turn: 90, weight: 600 }),
    };
  });
}

/** The numbers over a bar that begins at `top`, each with a line to its piece. */
function leaderItems(leaders: readonly Leader[], top: number, width: number): Item[] {
  const places = spread(
    leaders.map(({ at }) => at),
    PITCH,
    { low: PITCH / 2, high: width - PITCH / 2 },
  );
  return leaders.flatMap(({ at, text }, index): Item[] => {
    const place = places[index] ?? 0;
    return [
      line(
        'mark',
        [
          [at, top],
          [place, top - LEADER],
        ],
        STROKES.thin,
      ),
      { ...text, at: [place + HEIGHTS.small / 2, top - LEADER - 0.4] },
    ];
  });
}
