import type { Finish } from '../../job/finish.ts';
import type { Figure } from '../../plan/figure.ts';
import { band, figure, input } from '../figure.ts';
import type { SourceKey } from '../sources.ts';

type Kind = {
  /** Code of EN 10088-2, hot and cold rolled strip; number of ASTM A480 (from memory). */
  readonly designation: string;
  readonly american: string;
  /** Roughness Ra [µm]; null: whatever the tube came with. */
  readonly roughness: {
    readonly low: number;
    readonly high: number;
    readonly sources: readonly [SourceKey, ...SourceKey[]];
  } | null;
};

/**
 * Surfaces by their standards: J brushed with grit 120 to 180, Ra 0.2 to 1.0; K satin with 240 to 320, Ra under 0.5, and
 * 0.3 from grit 240 by a trade article; P mirror, Ra under 0.1. A standard names how a surface is made, which does not
 * settle how it looks: agree a sample.
 */
const KINDS: Readonly<Record<Finish['surface'], Kind>> = {
  'as-delivered': { designation: '', american: '', roughness: null },
  brushed: {
    designation: '1J/2J',
    american: 'No. 4',
    roughness: { low: 0.2, high: 1, sources: ['en-10088-2'] },
  },
  satin: {
    designation: '1K/2K',
    american: 'No. 4',
    roughness: { low: 0.3, high: 0.5, sources: ['en-10088-2', 'grit-roughness'] },
  },
  mirror: { designation: '1P/2P', american: 'No. 8', roughness: { low: 0, high: 0.1, sources: ['en-10088-2'] } },
};

/** Roughest that should stand near the sea [µm Ra]; guidance against tea staining, from memory. */
export const ROUGHEST_BY_THE_SEA = 0.5;

/** How a surface is named, and the roughness to aim at: the middle of what it may have. */
export function surfaceOf(surface: Finish['surface']): {
  readonly designation: string;
  readonly american: string;
  readonly roughness: Figure | null;
} {
  const { designation, american, roughness } = KINDS[surface];
  if (roughness === null) return { designation, american, roughness };
  const { low, high, sources } = roughness;
  const aim = figure(
    (low + high) / 2,
    'um',
    'R_a = (R_low + R_high)/2',
    [input('R_low', 'lowest-roughness', low, 'um'), input('R_high', 'highest-roughness', high, 'um')],
    sources,
    band((high - low) / 2, 'what-the-surface-may-have'),
  );
  return { designation, american, roughness: aim };
}

/** Roughest that a surface may be [µm Ra]; null: as the tube came. */
export const roughestOf = (surface: Finish['surface']): number | null => KINDS[surface].roughness?.high ?? null;
