import type { SettledJob } from '../../job/job.ts';
import type { StockLayout } from '../../job/stock.ts';
import type { Finding } from '../../plan/finding.ts';
import type { CutPiece } from '../../plan/stock.ts';
import { finding } from '../finding.ts';
import { strayPieces, type KeptSize } from './kept-layout.ts';
import type { BarKind } from './tube-sizes.ts';

const FIELD = '/stock/layout';

/**
 * What there is to say of a layout that the job keeps: whether it is for the pieces that there are, of one heat, in the
 * currency of the rates, and taken.
 *
 * @param sizes its bars for each size and grade of the cut list
 */
export function layoutFindings(
  layout: StockLayout,
  sizes: readonly { readonly kind: BarKind; readonly kept: KeptSize; readonly pieces: readonly CutPiece[] }[],
  { rates, tube }: Pick<SettledJob, 'rates' | 'tube'>,
): Finding[] {
  const findings: Finding[] = [];
  const stray = strayPieces(
    layout,
    sizes.map(({ kind }) => kind),
  );
  const differ = sizes.reduce((sum, { kept }) => sum + kept.differ, stray.length);
  if (differ > 0) {
    const name = sizes.find(({ kept }) => kept.differ > 0)?.kept.name ?? stray[0] ?? '';
    findings.push(finding('layout-stale', 'caution', FIELD, { name, value: differ }));
  }
  const used = sizes.filter(({ kept }) => kept.differ === 0);
  if (used.length > 0 && layout.currency !== rates.currency) {
    const data = { other: layout.currency, currency: rates.currency };
    findings.push(finding('layout-currency', 'caution', `${FIELD}/currency`, data));
  }
  const heats = heatsOf(used, tube.heat);
  if (heats.length > 1)
    findings.push(finding('layout-heats', 'caution', FIELD, { heats: heats.join(', '), value: heats.length }));
  const fromStock = layout.bars.filter(({ stock }) => stock !== '').length;
  if (differ === 0 && layout.taken === null && fromStock > 0)
    findings.push(finding('layout-not-taken', 'note', FIELD, { value: fromStock }));
  return findings;
}

/** Heats of the tube that is bent: that of the job, and those of the bars that its pieces lie on; legs are not bent. */
function heatsOf(sizes: Parameters<typeof layoutFindings>[1], ofJob: string): string[] {
  const bent = sizes.flatMap(({ kept, pieces }) => {
    const names = new Set(pieces.flatMap(({ kind, name }) => (kind === 'leg' ? [] : [name])));
    return kept.bars.flatMap((bar) =>
      bar.pieces.some(({ job, name }) => job === '' && names.has(name)) ? [bar.heat] : [],
    );
  });
  return bent.length === 0 ? [] : [...new Set([ofJob, ...bent])].filter((heat) => heat !== '');
}
