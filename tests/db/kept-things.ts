import type { KeptSettings, KeptSize } from '../../server/job/kept.ts';
import { newJob } from '../../server/job/default-job.ts';
import type { Machine } from '../../server/job/machine.ts';
import type { Rates } from '../../server/job/rates.ts';
import type { StockBar } from '../../server/job/stock.ts';
import type { OwnGrade } from '../../server/job/tube.ts';

/** Things that a shop keeps, and the minutes at which it does. */
export const at = (minute: number) => `2026-01-01T00:${String(minute).padStart(2, '0')}:00.000Z`;
export const machine = (name: string, leastStraight = 76.2): Machine => ({
  ...newJob('hoop').machine,
  name,
  leastStraight,
});
export const size = (name: string, wall = 2): KeptSize => ({
  name,
  outsideDiameter: 42.4,
  wall,
  tolerance: { by: 'own', outsideDiameter: 0.2, wall: 0.1 },
});
export const grade: OwnGrade = {
  from: 'own',
  name: 'Coil 7',
  density: 7900,
  elasticModulus: 193_000,
  strengthCoefficient: 1300,
  hardeningExponent: 0.4,
  proofStress: 220,
  elongation: 42,
};
export const settings = (name: string, current: number | null = 55): KeptSettings => ({
  name,
  form: 'saddle',
  outsideDiameter: 38.1,
  wall: 1.65,
  grade: '316L',
  settings: { ...newJob('hoop').welding.saddle, provedOn: 'test piece 4', current },
});
export const rates = (name: string): Rates => ({ ...newJob('hoop').rates, name, from: '2026-01-01' });
export const bar = (name: string, more: Partial<StockBar> = {}): StockBar => ({
  name,
  remnant: false,
  outsideDiameter: 38.1,
  wall: 1.65,
  grade: '316L',
  length: 6000,
  count: 3,
  price: 9000,
  currency: 'EUR',
  minorDigits: 2,
  heat: 'H-1',
  ...more,
});
