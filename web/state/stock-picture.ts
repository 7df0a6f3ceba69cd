import type { LaidBar, StockLayout } from '../../server/job/stock.ts';
import type { BarPlan } from '../../server/plan/stock.ts';

/** A bar as it is drawn: places along it from its left end [mm]. */
export type DrawnBar = {
  /** How many bars of the layout look just like this one, and the numbers of the first and the last. */
  readonly count: number;
  readonly first: number;
  readonly last: number;
  /** What it is called where it lies; empty: nothing. */
  readonly name: string;
  readonly bought: boolean;
  readonly remnant: boolean;
  readonly heat: string;
  readonly length: number;
  readonly endTrim: number;
  readonly pieces: readonly DrawnPiece[];
  readonly offcut: { readonly from: number; readonly kept: boolean } | null;
};

export type DrawnPiece = {
  readonly name: string;
  /** Title of another job; empty: this one. */
  readonly job: string;
  readonly from: number;
  readonly to: number;
};

/** What is shorter than this cannot be seen on any screen and is nothing on a saw [mm]; our own choice. */
const NOTHING = 0.05;

/** Bars of a plan: pieces lie from the trimmed end on. */
export const barsOfPlan = (bars: readonly BarPlan[]): readonly DrawnBar[] =>
  alikeTogether(
    bars.map((bar) => ({
      count: 1,
      first: bar.number,
      last: bar.number,
      name: bar.name,
      bought: bar.stock === '',
      remnant: bar.remnant,
      heat: bar.heat,
      length: bar.length,
      endTrim: bar.endTrim,
      pieces: bar.pieces.map((piece) => ({
        ...piece,
        from: bar.endTrim + piece.from,
        to: bar.endTrim + piece.to,
      })),
      offcut: bar.offcut.value > NOTHING ? { from: bar.length - bar.offcut.value, kept: bar.kept } : null,
    })),
  );

/** Bars of a layout that no plan has looked at yet: its pieces one after the other, a kerf between them. */
export const barsOfLayout = ({ bars, saw }: Pick<StockLayout, 'bars' | 'saw'>): readonly DrawnBar[] =>
  alikeTogether(bars.map((bar, index) => drawnFrom(bar, index + 1, saw)));

function drawnFrom(bar: LaidBar, number: number, { endTrim, kerf, leastRemnant }: StockLayout['saw']): DrawnBar {
  let at = endTrim;
  const pieces = bar.pieces.map(({ name, job, length }) => {
    const piece = { name, job, from: at, to: at + length };
    at = piece.to + kerf;
    return piece;
  });
  const rest = bar.length - at;
  return {
    count: 1,
    first: number,
    last: number,
    name: bar.name,
    bought: bar.stock === '',
    remnant: bar.remnant,
    heat: bar.heat,
    length: bar.length,
    endTrim,
    pieces,
    offcut: rest > NOTHING ? { from: at, kept: rest >= leastRemnant } : null,
  };
}

const looks = ({ count: _count, first: _first, last: _last, ...bar }: DrawnBar): string => JSON.stringify(bar);

/** Bars that follow each other and look alike become one picture. */
function alikeTogether(bars: readonly DrawnBar[]): readonly DrawnBar[] {
  const drawn: DrawnBar[] = [];
  for (const bar of bars) {
    const before = drawn.at(-1);
    if (before !== undefined && looks(before) === looks(bar))
      drawn[drawn.length - 1] = { ...before, count: before.count + 1, last: bar.last };
    else drawn.push(bar);
  }
  return drawn;
}

/** Pieces of a bar that have one name, job and length, as they are told in words. */
export function piecesTold(pieces: readonly DrawnPiece[]): readonly (DrawnPiece & { readonly count: number })[] {
  const told: (DrawnPiece & { count: number })[] = [];
  for (const piece of pieces) {
    const same = told.find(
      ({ name, job, from, to }) =>
        name === piece.name && job === piece.job && Math.abs(to - from - (piece.to - piece.from)) < NOTHING,
    );
    if (same === undefined) told.push({ ...piece, count: 1 });
    else same.count += 1;
  }
  return told;
}

/** Width of a letter of a label [px]: what the page's type takes on the mean at 13 px, measured by eye. */
const LETTER = 7.2;

/** The longest of some labels that has room in so many pixels; empty where none has. */
export const labelThatFits = (labels: readonly string[], room: number): string =>
  labels.find((label) => label.length * LETTER + 6 <= room) ?? '';
