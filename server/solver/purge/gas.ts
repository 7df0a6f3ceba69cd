import type { Purge } from '../../job/purge.ts';
import type { Figure } from '../../plan/figure.ts';
import { figure, input } from '../figure.ts';

type GradeKey = Extract<Purge['gas'], { from: 'grade' }>['key'];

/** Most oxygen of argon by grade [ppm]; typical of suppliers, 6.0 by its sum of all impurities: ask for the certificate. */
const GRADE_OXYGEN: Readonly<Record<GradeKey, number>> = { '4.5': 10, '4.6': 10, '4.8': 5, '5.0': 2, '6.0': 1 };

/** Oxygen in the gas as supplied [ppm]: by certificate, or typical of its grade. */
export function gasOxygen(gas: Purge['gas']): Figure {
  if (gas.from === 'certificate') {
    return figure(gas.oxygen, 'ppm', 'Cᵢ', [input('Cᵢ', 'gas-oxygen', gas.oxygen, 'ppm')], ['typed']);
  }
  const oxygen = GRADE_OXYGEN[gas.key];
  return figure(oxygen, 'ppm', 'Cᵢ', [input('Cᵢ', 'gas-oxygen', oxygen, 'ppm')], ['gas-grades']);
}
