import type { OperationRate, OwnValue, Rates } from './rates.ts';

/**
 * Examples that show how a quote looks: every one is marked as an example, is told as one on page and sheets, and stays so
 * until somebody types his own. All of them are made up, no source; they are no shop's.
 */
const example = (value: number): OwnValue => ({ value, since: '', example: true });

const operation = (hour: number, setUp: number, each: number, machine: number | null = null): OperationRate => ({
  hour: example(hour),
  machine: machine === null ? null : example(machine),
  setUp: example(setUp),
  each: example(each),
  perMetre: { value: 0, since: '', example: false }, // nothing that nobody asked for
});

export const RATES: Rates = {
  name: '',
  from: '',
  until: '',
  currency: 'EUR',
  minorDigits: 2, // ISO 4217, EUR
  tubes: [
    {
      size: null,
      by: 'metre',
      perMetre: example(1500),
      barLength: 6000, // usual length of welded stainless tube; common practice, no source
      perBar: example(9000),
    },
  ],
  waste: example(5),
  remnantCredit: example(0),
  gas: {
    by: 'used',
    perCubicMetre: example(1200),
    perBottle: example(6000),
    restOfBottle: { value: 0, since: '', example: false }, // nothing that nobody asked for
    rentPerDay: example(50),
  },
  fillerPerKilogram: example(2500),
  abrasivesPerWeld: example(200),
  labour: {
    bend: operation(5000, 20, 5, 1500),
    cut: operation(5000, 10, 5),
    fit: operation(5000, 15, 10),
    purge: operation(5000, 10, 5),
    bottle: operation(5000, 0, 10),
    weld: operation(5000, 10, 5),
    finish: operation(5000, 10, 5),
  },
  outside: { setUp: example(5000), perBend: example(1500), least: example(8000) },
  travel: { perKilometre: example(50), hour: example(5000) },
  overhead: example(10),
  margin: example(10),
  marginOn: 'price',
  tax: example(20),
  roundTo: 1,
};
