import type { Rates } from '../../job/rates.ts';
import type { WayKey } from '../../plan/correction.ts';
import type { Figure, Unit } from '../../plan/figure.ts';
import type { Finding } from '../../plan/finding.ts';
import type { QuoteLine, QuoteLineKey, QuotePlan } from '../../plan/quote.ts';
import { figure, input } from '../figure.ts';
import { finding } from '../finding.ts';

/** Operations that labour is reckoned by. */
const OPERATIONS = ['bend', 'cut', 'fit', 'purge', 'weld', 'finish'] as const;
type Operation = (typeof OPERATIONS)[number];

/** What a piece of work takes. */
export type Quantities = {
  readonly tubeMetres: number;
  readonly gasCubicMetres: number;
  readonly fillerKilograms: number;
  /** How often each operation is done. */
  readonly counts: Readonly<Record<Operation, number>>;
  /** Arc time of all welds and waiting time of all purges [min], on top of the operations' own times. */
  readonly arcMinutes: number;
  readonly purgeMinutes: number;
};

/**
 * A first quote: quantities at the shop's own rates. A line whose rate or time nobody typed stands open, its amount
 * null and never zero; what is not needed has no line.
 *
 * @returns the quote; the labour minutes, or null while one that is needed is open; a finding for each open line
 */
export function planQuote(work: { rates: Rates; scope: 'frame' | WayKey; quantities: Quantities }): {
  quote: QuotePlan;
  minutes: number | null;
  findings: Finding[];
} {
  const { rates, scope, quantities } = work;
  const findings: Finding[] = [];
  const open = (code: 'rate-open' | 'time-open', key: QuoteLineKey, field: string) =>
    findings.push(finding(code, 'note', field, { line: key }));
  const lineFor = (key: QuoteLineKey, quantity: Figure | null, rate: number | null, rateField: string): QuoteLine => {
    if (rate === null) open('rate-open', key, rateField);
    const amount = rate === null || quantity === null ? null : Math.round(quantity.value * rate);
    return { key, quantity, rate, rateField, amount };
  };
  const stuff = (key: QuoteLineKey, value: number, unit: Unit, rate: number | null, rateField: string): QuoteLine[] =>
    value > 0
      ? [
          lineFor(
            key,
            figure(value, unit, 'q', [input('q', `quantity-${key}`, value, unit)], ['geometry']),
            rate,
            rateField,
          ),
        ]
      : [];

  const lines: QuoteLine[] = [
    ...stuff('tube', quantities.tubeMetres, 'm', rates.tubePerMetre, '/rates/tubePerMetre'),
    ...stuff('gas', quantities.gasCubicMetres, 'm3', rates.gasPerCubicMetre, '/rates/gasPerCubicMetre'),
    ...stuff('filler', quantities.fillerKilograms, 'kg', rates.fillerPerKilogram, '/rates/fillerPerKilogram'),
  ];
  let minutes: number | null = 0;
  for (const operation of OPERATIONS) {
    const count = quantities.counts[operation];
    if (count === 0) continue;
    const time = rates.times[operation];
    const extra = operation === 'weld' ? quantities.arcMinutes : operation === 'purge' ? quantities.purgeMinutes : 0;
    for (const part of ['setUp', 'each'] as const) {
      if (time[part] === null) open('time-open', operation, `/rates/times/${operation}/${part}`);
    }
    const taken = time.setUp === null || time.each === null ? null : time.setUp + time.each * count + extra;
    minutes = minutes === null || taken === null ? null : minutes + taken;
    const hours =
      taken === null
        ? null
        : figure(
            taken / 60,
            'h',
            'h = (s + n e + x) / 60',
            [
              input('s', 'set-up-time', time.setUp ?? 0, 'min'),
              input('n', `count-${operation}`, count, 'count'),
              input('e', 'time-each', time.each ?? 0, 'min'),
              input('x', 'process-time', extra, 'min'),
            ],
            ['typed'],
          );
    lines.push(lineFor(operation, hours, rates.labourPerHour[operation], `/rates/labourPerHour/${operation}`));
  }
  return {
    quote: {
      scope,
      currency: rates.currency,
      minorDigits: rates.minorDigits,
      date: rates.date,
      lines,
      subtotal: lines.reduce((sum, line) => sum + (line.amount ?? 0), 0),
      open: lines.filter((line) => line.amount === null).map((line) => line.key),
    },
    minutes,
    findings,
  };
}
