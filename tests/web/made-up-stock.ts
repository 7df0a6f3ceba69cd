import type { StockBar } from '../../server/job/stock.ts';
import type { Figure } from '../../server/plan/figure.ts';

export const madeUpFigure = (value: number, unit: Figure['unit']): Figure => ({
  value,
  unit,
  band: null,
  working: { formula: 'made up', inputs: [], sources: [] },
});

/** A bar as it lies on a rack. */
export const rackBar = (given: Partial<StockBar> = {}): StockBar => ({
  name: 'Rack 3',
  remnant: false,
  outsideDiameter: 38.1,
  wall: 1.65,
  grade: '316L',
  length: 6000,
  count: 4,
  price: 9000,
  currency: 'EUR',
  minorDigits: 2,
  heat: '',
  ...given,
});
