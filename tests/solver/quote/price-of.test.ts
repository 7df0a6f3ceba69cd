import { describe, expect, it } from 'vitest';
import { addQuantities } from '../../../server/solver/quote/add-quantities.ts';
import { sumOf } from '../../../server/solver/quote/minor-units.ts';
import { formulaValue } from '../formula-value.ts';
import { amounts, operation, own, piece, priced, SOME, TYPED, type Changes } from './made-up-order.ts';

describe('a price', () => {
  it('is reckoned line by line, as by hand', () => {
    const made = priced();
    expect(amounts(made)).toEqual({
      tube: 3300, // 2 m and a tenth, at 15.00
      gas: 480, // 0.4 m³ at 12.00
      'bottle-rent': 50, // 170.5 min are one day
      filler: 30, // 0.012 kg at 25.00
      abrasives: 400, // two welds
      bend: 2667, // 20 + 2 × 5 + 2 m × 1 = 32 min at 50.00 an hour
      'machine of bend': 800, // 32 min at 15.00
      cut: 2500, // 10 + 4 × 5
      fit: 2917, // 15 + 2 × 10
      purge: 1583, // 10 + 5 + 4 of waiting
      weld: 1875, // 10 + 2 × 5 + 2.5 of arc
      finish: 2667, // 10 + 2 × 5 + 12 of grinding
      travel: 3000, // 2 × 30 km at 0.50
      'travel-time': 15000, // 2 × 1.5 h
      overhead: 3727, // a tenth of 372.69
      margin: 10249, // a fifth of 512.45, 409.96 being the rest
      rounding: -45, // to 512.00
      tax: 9728, // 19 %
    });
    expect(made).toMatchObject({ cost: 37269, net: 51200, tax: 9728, total: 60928, minutes: 170.5 });
  });

  it('stands in the order of a quote, a machine behind its operation', () => {
    expect(
      priced()
        .lines.map(({ key }) => key)
        .join(' '),
    ).toBe(
      'tube gas bottle-rent filler abrasives bend machine cut fit purge weld finish travel travel-time overhead margin rounding tax',
    );
  });

  it('for three frames takes set-ups, trips and the rent of a day once, all else three times', () => {
    expect(amounts(priced({}, 3))).toMatchObject({
      tube: 9900,
      gas: 1440,
      'bottle-rent': 50, // 361.5 min
      filler: 90,
      abrasives: 1200,
      bend: 4667, // 20 + 3 × 12
      cut: 5833, // 10 + 3 × 20
      purge: 3083, // 10 + 3 × 9
      weld: 3958, // 10 + 3 × 12.5
      travel: 3000,
      'travel-time': 15000,
    });
  });

  it('has the rent of a second day from the first minute of it', () => {
    const until = (setUp: number) =>
      amounts(priced({ rates: { labour: { ...TYPED.labour, cut: operation({ setUp, each: 0 }) } } }))['bottle-rent'];
    // 140.5 min of other work
    expect(until(480 - 140.5)).toBe(50);
    expect(until(480 - 140.5 + 0.01)).toBe(100);
  });

  it('has no line for what is not needed', () => {
    const bare = { ...SOME, counts: { ...SOME.counts, finish: 0 }, filler: 0, purgeGas: 0, torchGas: 0 };
    const quantities = {
      ...bare,
      metres: { ...SOME.metres, finish: 0 },
      process: { ...SOME.process, finish: 0 },
    };
    const rates: Changes = {
      rates: { overhead: own(0), margin: own(0), tax: own(0), roundTo: 1 },
      quote: { travel: { trips: 0, kilometres: 30, hours: 1 } },
    };
    expect(priced(rates, 1, quantities).lines.map(({ key }) => key)).toEqual([
      'tube',
      'bend',
      'machine',
      'cut',
      'fit',
      'purge',
      'weld',
    ]);
  });

  it('with a margin on the cost puts so much on it', () => {
    expect(amounts(priced({ rates: { marginOn: 'cost', roundTo: 1 } }))['margin']).toBe(8199); // a fifth of 409.96
  });
});

describe('bending outside', () => {
  const outside = (quote: Changes['quote'], quantity = 1, quantities = SOME) =>
    amounts(priced({ quote: { bending: 'outside', bendersOffer: null, ...quote } }, quantity, quantities));

  it('takes the place of bending and its machine', () => {
    expect(outside({})).not.toHaveProperty('bend');
    expect(outside({})).not.toHaveProperty('machine of bend');
    expect(outside({})['outside-bending']).toBe(8000); // 50.00 + 2 × 15.00, at least 80.00
    expect(outside({}, 2)['outside-bending']).toBe(11000);
    expect(priced({ quote: { bending: 'outside' } }).minutes).toBe(138.5);
  });

  it('goes by the offer for a frame that is made anew, and by the bend for any other', () => {
    expect(outside({ bendersOffer: 4200 }, 3)['outside-bending']).toBe(12600);
    expect(outside({ bendersOffer: 4200 }, 1, { ...SOME, anew: false })['outside-bending']).toBe(8000);
  });
});

describe('every line', () => {
  const gas = { ...TYPED.gas, by: 'bottles' } as const;
  const made = [
    priced(),
    priced({ rates: { marginOn: 'cost', tubes: [{ ...TYPED.tubes[0]!, by: 'bar' }], gas } }, 7),
    priced({ quote: { bending: 'outside', bendersOffer: null } }, 2),
  ];

  it('has a working that comes to its quantity', () => {
    const lines = made.flatMap((one) => one.lines);
    expect(new Set(lines.map(({ key }) => key)).size).toBeGreaterThan(17);
    for (const line of lines) {
      const figure = line.figure()!;
      const { formula } = figure.working;
      // what is rounded up or half up is checked by hand above
      if (/[⌈⌊]/u.test(formula)) continue;
      expect(formulaValue(figure), `${line.key}: ${formula}`).toBeCloseTo(line.quantity!, 9);
      expect(figure.unit).toBe(line.unit);
    }
  });

  it('that is made of parts is their sum', () => {
    const perUnit = { h: 60, m: 1, m3: 1000 } as const;
    const summed = priced({ rates: { waste: own(0) } }, 2).lines.filter(
      ({ parts, key }) => parts.length > 0 && !['purge', 'finish'].includes(key),
    );
    expect(summed.map(({ key }) => key)).toEqual(['tube', 'gas', 'bend', 'machine', 'cut', 'fit', 'weld']);
    for (const { key, parts, quantity, unit } of summed)
      expect(
        parts.reduce((sum, { value }) => sum + value, 0),
        key,
      ).toBeCloseTo(quantity! * perUnit[unit as keyof typeof perUnit], 9);
  });

  it('is rounded by itself, so that sums are of whole units', () => {
    for (const { lines, net, tax, total } of made) {
      expect(sumOf(lines)).toBe(total);
      expect(sumOf(lines.filter(({ key }) => key === 'tax'))).toBe(tax);
      expect(net + tax).toBe(total);
    }
  });
});

describe('two pieces of work done together', () => {
  it('are their sum, but for what is set up once', () => {
    const both = addQuantities(SOME, { ...SOME, pieces: [piece('other', 2000)] });
    const once = amounts(priced());
    const together = amounts(priced({}, 1, both));
    expect(together).toEqual(amounts(priced({}, 2)));
    expect(together['tube']).toBe(2 * once['tube']!);
    expect(both.parts.gas).toEqual([
      { key: 'purge', name: '', value: 600, unit: 'L' },
      { key: 'torch', name: '', value: 200, unit: 'L' },
    ]);
  });
});
