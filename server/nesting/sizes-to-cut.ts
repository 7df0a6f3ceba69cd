import type { Rates, SawSettings } from '../job/rates.ts';
import type { StockRow } from '../job/stock-row.ts';
import type { CutPiece } from '../plan/stock.ts';
import { boughtPrice } from '../solver/stock/bought-price.ts';
import { bySize, isSameKind, tubeRateOf, type BarKind } from '../solver/stock/tube-sizes.ts';
import type { CuttingTask } from './cutting-task.ts';

/** A job whose pieces are cut; this job has an empty id. */
export type NestedJob = {
  readonly id: string;
  /** What its pieces are called on the bars of others: no two jobs alike, and never empty. */
  readonly title: string;
  readonly pieces: readonly CutPiece[];
  /** How many frames. */
  readonly quantity: number;
};

/** So many pieces of one name and length, for one job. */
export type WantedPiece = {
  /** Its job; empty: this one. */
  readonly id: string;
  readonly name: string;
  readonly length: number;
  readonly count: number;
};

/** Where a bar comes from. */
export type BarSource = BarKind & {
  /** Its row in stock; empty: to be bought. */
  readonly stock: string;
  readonly name: string;
  readonly remnant: boolean;
  readonly length: number;
  readonly price: number | null;
  /** Whether its row in stock has no price: what it costs here is reckoned, and goes by the rates of each day. */
  readonly isReckoned: boolean;
  readonly heat: string;
  /** null: as many as are wanted. */
  readonly count: number | null;
};

/** The pieces of one size and grade with the bars for them. */
export type SizeToCut = {
  readonly kind: BarKind;
  /** Pieces of each length of the task, in its order; and those that no bar is long enough for. */
  readonly wanted: readonly (readonly WantedPiece[])[];
  readonly overlong: readonly WantedPiece[];
  /** Bars of each kind of the task, in its order. Empty for the last one where bars may run out: it stands for those. */
  readonly sources: readonly (readonly BarSource[])[];
  /** The longest piece that any bar gives [mm]; 0: there is no bar. */
  readonly longest: number;
  /** Whether the costs of the task are prices; else lengths stand in for them. */
  readonly isPriced: boolean;
  readonly task: CuttingTask;
};

/**
 * Millionths of a millimetre: up for what is cut off, down for what there is, so that what fits can be cut. So fine, and
 * with so much taken for the rounding of a sum, that nothing that fits is taken for too long: thirty pieces on a bar are
 * too long by 0.00003 mm at most.
 */
const UNITS = 1_000_000;
const ROUNDING = 1e-2;
/** What stands in for prices that are not known counts in hundredths of a millimetre. */
const PER_COST = UNITS / 100;
const up = (length: number): number => Math.ceil(length * UNITS - ROUNDING);
const down = (length: number): number => Math.floor(length * UNITS + ROUNDING);

type Asked = {
  readonly jobs: readonly NestedJob[];
  /** Rows of the stock that may be used. */
  readonly stock: readonly StockRow[];
  readonly rates: Pick<Rates, 'tubes'>;
  readonly saw: SawSettings;
};

/** What is to be cut, size by size and grade by grade in the order of the cut lists, and from what. */
export function sizesToCut({ jobs, stock, rates, saw }: Asked): SizeToCut[] {
  const kinds = bySize(jobs.flatMap(({ pieces }) => pieces)).map(({ kind }) => kind);
  return kinds.map((kind) => {
    const wanted = jobs.flatMap((job) => wantedOf(job, kind));
    const sources = [...inStock(stock, kind, rates), ...toBuy(kind, rates)].map((source) => capped(source, wanted));
    return sizeToCut({ kind, wanted, sources, saw });
  });
}

const wantedOf = ({ id, pieces, quantity }: NestedJob, kind: BarKind): WantedPiece[] =>
  pieces
    .filter((piece) => isSameKind(piece, kind) && piece.count > 0)
    .map(({ name, length, count }) => ({ id, name, length: length.value, count: count * quantity }));

/** No more bars of a row than there are pieces: a row of many is no more work than a row of enough. */
const capped = (source: BarSource, wanted: readonly WantedPiece[]): BarSource =>
  source.count === null ? source : { ...source, count: Math.min(source.count, sum(wanted)) };

/** Rows of the stock that are of a size and grade; a remnant without a price costs nothing. */
function inStock(stock: readonly StockRow[], kind: BarKind, rates: Pick<Rates, 'tubes'>): BarSource[] {
  const { rate } = tubeRateOf(rates, kind);
  return stock
    .filter(({ document }) => document.count > 0 && isSameKind(document, kind))
    .map(({ id, document }): BarSource => {
      const { name, remnant, outsideDiameter, wall, grade, length, heat, count } = document;
      const asBought = rate === null ? null : boughtPrice(rate, length).price;
      const price = document.price ?? (remnant ? 0 : asBought);
      return {
        stock: id,
        name,
        remnant,
        outsideDiameter,
        wall,
        grade,
        length,
        price,
        isReckoned: document.price === null,
        heat,
        count,
      };
    });
}

/** Bars as the rates say that they are bought; none where no row is for the size. */
function toBuy(kind: BarKind, rates: Pick<Rates, 'tubes'>): BarSource[] {
  const { rate } = tubeRateOf(rates, kind);
  if (rate === null) return [];
  const length = rate.barLength;
  const { price } = boughtPrice(rate, length);
  return [{ ...kind, stock: '', name: '', remnant: false, length, price, isReckoned: false, heat: '', count: null }];
}

type OneSize = {
  readonly kind: BarKind;
  readonly wanted: readonly WantedPiece[];
  readonly sources: readonly BarSource[];
  readonly saw: SawSettings;
};

function sizeToCut({ kind, wanted, sources, saw }: OneSize): SizeToCut {
  const endTrim = up(saw.endTrim);
  const longest = Math.max(0, ...sources.map(({ length }) => down(length) - endTrim));
  const isPriced = sources.every(({ price }) => price !== null);
  const costOf = ({ length, price }: BarSource): number =>
    isPriced ? (price ?? 0) : price === 0 ? 0 : Math.floor(down(length) / PER_COST);
  const pieces = grouped(
    wanted.filter(({ length }) => up(length) <= longest),
    ({ length }) => up(length),
  );
  const bars = grouped(
    sources.filter(({ length }) => down(length) > endTrim),
    (source) => `${String(down(source.length))} ${String(costOf(source))} ${source.count === null ? 'bought' : ''}`,
  );
  const task: CuttingTask = {
    pieces: pieces.map((alike) => ({ length: up(alike[0]?.length ?? 0), count: sum(alike) })),
    bars: bars.map((alike) => ({
      length: down(alike[0]?.length ?? 0),
      count: alike.some(({ count }) => count === null) ? null : sum(alike),
      cost: alike[0] === undefined ? 0 : costOf(alike[0]),
    })),
    kerf: up(saw.kerf),
    endTrim,
  };
  const missing = missingBars(task);
  return {
    kind,
    wanted: pieces,
    overlong: wanted.filter(({ length }) => up(length) > longest),
    sources: [...bars, ...missing.map(() => [])],
    longest: longest / UNITS,
    isPriced,
    task: { ...task, bars: [...task.bars, ...missing] },
  };
}

const sum = (alike: readonly { readonly count: number | null }[]): number =>
  alike.reduce((total, { count }) => total + (count ?? 0), 0);

/** Things that have a key alike together, in the order in which the keys come up. */
function grouped<Thing>(things: readonly Thing[], keyOf: (thing: Thing) => string | number): Thing[][] {
  const groups = new Map<string | number, Thing[]>();
  for (const thing of things) {
    const key = keyOf(thing);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [thing]);
    else group.push(thing);
  }
  return [...groups.values()];
}

/**
 * Where bars may run out, a bar that is not there: as long as the longest and dearer than all others together, so that an
 * answer has one only where there are too few.
 */
function missingBars({ pieces, bars, endTrim }: CuttingTask): CuttingTask['bars'][number][] {
  const longestPiece = Math.max(0, ...pieces.map(({ length }) => length));
  const bought = bars.filter(({ count }) => count === null).map(({ length }) => length - endTrim);
  if (pieces.length === 0 || longestPiece <= Math.max(0, ...bought)) return [];
  const all = pieces.reduce((total, { count }) => total + count, 0);
  const cost = 1 + bars.reduce((total, bar) => total + bar.cost * Math.min(all, bar.count ?? all), 0);
  return [{ length: Math.max(...bars.map(({ length }) => length)), count: null, cost }];
}
