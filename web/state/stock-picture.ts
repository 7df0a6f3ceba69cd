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

/** How many bars some entries are: those that are cut alike are one. */
export const barsTogether = (bars: readonly { readonly times: number }[]): number =>
  bars.reduce((sum, { times }) => sum + times, 0);

/** Bars of a plan, as it says that they lie. */
export const barsOfPlan = (bars: readonly BarPlan[]): readonly DrawnBar[] =>
  bars.map((bar) => ({
    ...drawnAs(bar, bar.number),
    endTrim: bar.endTrim,
    pieces: bar.pieces,
    offcut: bar.offcut.value > NOTHING ? { from: bar.length - bar.offcut.value, kept: bar.kept } : null,
  }));

/**
 * Bars that were laid out and that no plan has looked at yet: pieces one after the other behind the end that is cut off, a
 * kerf between them and one more before what is left. The plan draws them so too once they are kept; a test holds both
 * equal.
 */
export function barsOfLayout({ bars, saw }: Pick<StockLayout, 'bars' | 'saw'>): readonly DrawnBar[] {
  let next = 1;
  return bars.map((bar) => {
    const drawn = { ...drawnAs(bar, next), ...placesOn(bar, saw) };
    next += bar.times;
    return drawn;
  });
}

const drawnAs = ({ times, name, stock, remnant, heat, length }: BarPlan | LaidBar, number: number) => ({
  count: times,
  first: number,
  last: number + times - 1,
  name,
  bought: stock === '',
  remnant,
  heat,
  length,
});

function placesOn(
  { length, pieces }: Pick<LaidBar, 'length' | 'pieces'>,
  { endTrim, kerf, leastRemnant }: StockLayout['saw'],
): Pick<DrawnBar, 'endTrim' | 'pieces' | 'offcut'> {
  let at = endTrim;
  const placed = pieces.map(({ name, job, length: long }) => {
    const piece = { name, job, from: at, to: at + long };
    at = piece.to + kerf;
    return piece;
  });
  const rest = length - at;
  return { endTrim, pieces: placed, offcut: rest > NOTHING ? { from: at, kept: rest >= leastRemnant } : null };
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
