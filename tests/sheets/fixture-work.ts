import type { Figure } from '../../server/plan/figure.ts';
import type { QuoteLine, QuotePlan } from '../../server/plan/quote.ts';
import { figure } from './fixture-figure.ts';

export function quote(): QuotePlan {
  const line = (key: QuoteLine['key'], quantity: Figure | null, rate: number | null): QuoteLine => ({
    key,
    quantity,
    rate,
    rateField: '/rates/tubePerMetre',
    amount: quantity === null || rate === null ? null : Math.round(quantity.value * rate),
  });
  const lines = [
    line('tube', figure(3.1, 'm'), 1450),
    line('gas', figure(0.1, 'm3'), 1100),
    line('filler', figure(0.004, 'kg'), null),
    line('weld', figure(0.5, 'h'), 6200),
    line('finish', null, 5800),
  ];
  return {
    scope: 'splice-fewest',
    currency: 'EUR',
    minorDigits: 2,
    date: '2026-11-02',
    lines,
    subtotal: lines.reduce((sum, { amount }) => sum + (amount ?? 0), 0),
    open: ['filler', 'finish'],
  };
}
