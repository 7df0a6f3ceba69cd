import type { SettledJob } from '../../job/job.ts';
import type { LaidBar, StockLayout } from '../../job/stock.ts';
import type { Finding } from '../../plan/finding.ts';
import type { CutPiece } from '../../plan/stock.ts';
import { finding } from '../finding.ts';
import { barsTogether } from './bars-alike.ts';
import { strayPieces, type KeptSize } from './kept-layout.ts';
import type { KeptPrice } from './kept-price.ts';
import type { BarKind } from './tube-sizes.ts';

const FIELD = '/stock/layout';

/** One size and grade of the cut list with the bars of the layout for it, and what they cost. */
export type LaidOut = {
  readonly kind: BarKind;
  readonly pieces: readonly CutPiece[];
  readonly kept: KeptSize;
  readonly price: KeptPrice;
};

/**
 * What there is to say of a layout that the job keeps: whether it is for the pieces that there are, of one heat, priced, in
 * the currency of the rates, and taken.
 *
 * @param sizes its bars for each size and grade of the cut list
 */
export function layoutFindings(
  layout: StockLayout,
  sizes: readonly LaidOut[],
  { rates, tube }: Pick<SettledJob, 'rates' | 'tube'>,
): Finding[] {
  const findings: Finding[] = [];
  const stray = strayPieces(
    layout,
    sizes.map(({ kind }) => kind),
  );
  const differ = sizes.reduce((sum, { kept }) => sum + kept.differ, stray.count);
  if (differ > 0) {
    const name = sizes.find(({ kept }) => kept.differ > 0)?.kept.name ?? stray.name;
    findings.push(finding('layout-stale', 'caution', FIELD, { name, value: differ }));
  }
  const used = sizes.filter(({ kept }) => kept.differ === 0);
  if (used.some(({ price }) => price.isForeign)) findings.push(otherMoney(layout, rates));
  else findings.push(...openPrices(used.flatMap(({ price }) => price.unpriced)));
  const free = used.flatMap(({ kept }) => kept.bars.filter(({ remnant, price }) => remnant && price === null));
  if (free.length > 0) {
    const name = [...new Set(free.map((bar) => (bar.name === '' ? bar.stock : bar.name)))].join(', ');
    findings.push(finding('layout-remnant-free', 'note', FIELD, { name, value: barsTogether(free) }));
  }
  const heats = heatsOf(used, tube.heat);
  if (heats.length > 1)
    findings.push(finding('layout-heats', 'caution', FIELD, { heats: heats.join(', '), value: heats.length }));
  const fromStock = barsTogether(layout.bars.filter(({ stock }) => stock !== ''));
  if (differ === 0 && layout.taken === null && fromStock > 0)
    findings.push(finding('layout-not-taken', 'note', FIELD, { value: fromStock }));
  return findings;
}

/** Prices of the stock in another currency than the rates, or counted in other minor units of it. */
function otherMoney(layout: StockLayout, { currency }: SettledJob['rates']): Finding {
  const field = layout.currency === currency ? `${FIELD}/minorDigits` : `${FIELD}/currency`;
  const names = layout.currency === currency ? {} : { other: layout.currency, currency };
  return finding('layout-currency', 'caution', field, { ...names, value: layout.minorDigits });
}

/** Bars of the stock without a price, each of them once. */
function openPrices(bars: readonly LaidBar[]): Finding[] {
  const counts = new Map<string, number>();
  for (const { name, stock, times } of bars) {
    const called = name === '' ? stock : name;
    counts.set(called, (counts.get(called) ?? 0) + times);
  }
  // without a layout there is no open price of a bar: that can be undone
  return [...counts].map(([name, value]) =>
    finding('layout-price-open', 'caution', FIELD, { name, value }, { field: FIELD, value: null }),
  );
}

/** Heats of the tube that is bent: that of the job, and those of the bars that its pieces lie on; legs are not bent. */
function heatsOf(sizes: readonly LaidOut[], ofJob: string): string[] {
  const bent = sizes.flatMap(({ kept, pieces }) => {
    const names = new Set(pieces.flatMap(({ kind, name }) => (kind === 'leg' ? [] : [name])));
    return kept.bars.flatMap((bar) =>
      bar.pieces.some(({ job, name }) => job === '' && names.has(name)) ? [bar.heat] : [],
    );
  });
  return bent.length === 0 ? [] : [...new Set([ofJob, ...bent])].filter((heat) => heat !== '');
}
