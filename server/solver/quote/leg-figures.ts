import type { QuotePlan } from '../../plan/quote.ts';
import { figure, input } from '../figure.ts';
import type { Quantities } from './quantities.ts';

/**
 * Welds [count] and purge gas [L] of all legs of one frame, to be told beside ways that are compared by the frame's own.
 *
 * @param legs as `legWork` adds them up; null where there are none
 */
export function legFigures(legs: Quantities | null): QuotePlan['legs'] {
  if (legs === null) return null;
  const { welds, purgeGas } = legs;
  return {
    welds: figure(welds, 'count', 'n', [input('n', 'welds-of-legs', welds, 'count')], ['geometry']),
    purgeGas: figure(purgeGas, 'L', 'V = Σ V_i', [input('V', 'purge-gas-of-legs', purgeGas, 'L')], ['geometry']),
  };
}
