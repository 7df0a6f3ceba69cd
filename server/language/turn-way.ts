import type { Figure } from '../plan/figure.ts';

/** Nearer to nothing than this nobody marks a turn [degrees]; our own choice. */
const IN_LINE = 0.05;

export type TurnWay = 'clockwise' | 'anticlockwise' | 'inLine' | 'half';

/** Which way round a turn goes, seen from the foot; in line or half round where its ± leaves the way open. */
export function turnWay({ value, band }: Figure): TurnWay {
  const doubt = Math.max(IN_LINE, band?.plusMinus ?? 0);
  const size = Math.abs(value);
  if (size <= doubt) return 'inLine';
  if (180 - size <= doubt) return 'half';
  return value > 0 ? 'clockwise' : 'anticlockwise';
}
