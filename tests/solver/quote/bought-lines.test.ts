import { describe, expect, it } from 'vitest';
import { formulaValue } from '../formula-value.ts';
import { usableGas } from '../../../server/solver/purge/bottle-plan.ts';
import { amounts, jobWith, own, piece, priced, SOME, TYPED, type Changes } from './made-up-order.ts';

const NO_TRIPS = { travel: { trips: 0, kilometres: 0, hours: 0 } };
const NOTHING_PUT_ON = { overhead: own(0), margin: own(0), tax: own(0) };
const NONE = { bend: 0, cut: 0, fit: 0, purge: 0, bottle: 0, weld: 0, finish: 0 };
const NO_WORK = { counts: NONE, metres: NONE, process: NONE, purgeGas: 0, torchGas: 0, filler: 0 };
const tubeOnly = ({ rates, ...changes }: Changes, quantity = 1, pieces = [piece('hoop', 2000)]) =>
  priced({ ...changes, quote: NO_TRIPS, rates: { ...NOTHING_PUT_ON, roundTo: 1, ...rates } }, quantity, {
    ...SOME,
    ...NO_WORK,
    pieces,
  });

describe('tube', () => {
  const byBar = { ...TYPED.tubes[0]!, by: 'bar' } as const;
  const saw = { kerf: 3, endTrim: 10, leastRemnant: 500 };

  it('by the bar is every bar begun, laid out for all frames at once; an offcut that is kept comes off', () => {
    const one = tubeOnly({ rates: { tubes: [byBar] }, stock: { saw } });
    // 6000 − 10 − 2000 − 3 mm are kept, at half of what 1.50 for a millimetre make
    expect(amounts(one)).toEqual({ tube: 9000, 'remnant-credit': -2990 });
    // three of 2000 do not go into one bar with its kerfs
    expect(amounts(tubeOnly({ rates: { tubes: [byBar] }, stock: { saw } }, 3))).toMatchObject({ tube: 18000 });
    expect(amounts(tubeOnly({ rates: { tubes: [byBar], remnantCredit: own(0) } }))).toEqual({ tube: 9000 });
  });

  it('stands open where a piece is longer than a bar', () => {
    const { lines } = tubeOnly({ rates: { tubes: [byBar] } }, 1, [piece('hoop', 7000)]);
    expect(lines).toMatchObject([{ key: 'tube', amount: null, missing: ['/rates/tubes/0/barLength'] }]);
  });

  it('of a size without a price stands open', () => {
    const size = { outsideDiameter: 50, wall: 2 };
    const { lines, total } = tubeOnly({ rates: { tubes: [{ ...TYPED.tubes[0]!, size }] } });
    expect(lines).toMatchObject([{ key: 'tube', amount: null, rateField: '/rates/tubes', missing: ['/rates/tubes'] }]);
    expect(total).toBe(0);
  });

  it('has a line for each size, what is credited after all of them', () => {
    const other = { ...piece('leg', 1000), outsideDiameter: 30 };
    const { lines } = tubeOnly({ rates: { tubes: [byBar] } }, 1, [piece('hoop', 2000), other]);
    expect(lines.map(({ key, of }) => `${key} ${of}`)).toEqual([
      'tube 40 × 2 316L',
      'tube 30 × 2 316L',
      'remnant-credit 40 × 2 316L',
      'remnant-credit 30 × 2 316L',
    ]);
  });
});

describe('gas by the bottle', () => {
  const job = jobWith();
  const usable = usableGas(job.purge.bottle);
  const gas = { ...TYPED.gas, by: 'bottles' } as const;
  const of = (litres: number, quantity = 1) =>
    priced({ rates: { gas } }, quantity, { ...SOME, purgeGas: litres, torchGas: 0 });

  it('is every bottle that is begun, for all frames together, and one less is changed', () => {
    expect(amounts(of(usable))).toMatchObject({ gas: 6000 });
    expect(amounts(of(usable))).not.toHaveProperty('bottle');
    expect(amounts(of(1.01 * usable))).toMatchObject({ gas: 12000, bottle: 833 }); // 10 min
    expect(amounts(of(0.4 * usable, 6))).toMatchObject({ gas: 18000, bottle: 1667 });
  });

  it('stands open where nothing can be taken from one', () => {
    const { lines } = priced({ rates: { gas }, bottle: { gaugePressure: 0 } });
    for (const key of ['gas', 'bottle', 'bottle-rent'] as const)
      expect(lines.find((line) => line.key === key)).toMatchObject({
        amount: null,
        missing: ['/purge/bottle/gaugePressure'],
      });
  });

  it('has no rent where none is asked for', () => {
    expect(amounts(priced({ rates: { gas: { ...gas, rentPerDay: null } } }))).not.toHaveProperty('bottle-rent');
  });
});

describe('gas by what is used', () => {
  const usable = usableGas(jobWith().purge.bottle);
  const of = (litres: number, share: number | null, quantity = 1) =>
    priced({ rates: { gas: { ...TYPED.gas, restOfBottle: own(share) } } }, quantity, {
      ...SOME,
      purgeGas: litres,
      torchGas: 0,
    }).lines.find(({ key }) => key === 'gas')!;

  it('takes a share of what is left in the last bottle along, for all frames together', () => {
    expect(of(0.4 * usable, 0).quantity).toBeCloseTo((0.4 * usable) / 1000, 9);
    // the rest is 0.6 of one bottle, and half of that is charged
    expect(of(0.4 * usable, 50).quantity).toBeCloseTo((0.7 * usable) / 1000, 9);
    expect(of(0.4 * usable, 50).parts.at(-1)).toMatchObject({ key: 'rest-of-bottle', unit: 'L' });
    expect(of(0.4 * usable, 50).parts.at(-1)!.value).toBeCloseTo(0.3 * usable, 9);
    // six frames take 2.4 bottles
    expect(of(0.4 * usable, 100, 6).quantity).toBeCloseTo((3 * usable) / 1000, 9);
    expect(formulaValue(of(0.4 * usable, 50).figure()!)).toBeCloseTo((0.7 * usable) / 1000, 9);
  });

  it('stands open where that share is, or where nothing can be taken from a bottle', () => {
    expect(of(300, null)).toMatchObject({ amount: null, missing: ['/rates/gas/restOfBottle/value'] });
    const gas = { ...TYPED.gas, restOfBottle: own(10) };
    const { lines } = priced({ rates: { gas }, bottle: { gaugePressure: 0 } });
    expect(lines.find(({ key }) => key === 'gas')).toMatchObject({
      amount: null,
      missing: ['/purge/bottle/gaugePressure'],
    });
    const free = priced({ rates: { gas: TYPED.gas }, bottle: { gaugePressure: 0 } });
    expect(free.lines.find(({ key }) => key === 'gas')!.amount).toBe(480);
  });
});

describe('a price that is rounded', () => {
  it('goes to a multiple, half up', () => {
    const at = (perMetre: number) =>
      tubeOnly({ rates: { tubes: [{ ...TYPED.tubes[0]!, perMetre: own(perMetre) }], waste: own(0), roundTo: 10 } });
    expect(amounts(at(50))).toEqual({ tube: 100 });
    expect(amounts(at(52))).toEqual({ tube: 104, rounding: -4 });
    expect(amounts(at(52.5))).toEqual({ tube: 105, rounding: 5 });
    expect(at(53).net).toBe(110);
  });

  it('never comes to nothing while it is something', () => {
    const of = (perMetre: number) =>
      tubeOnly({ rates: { tubes: [{ ...TYPED.tubes[0]!, perMetre: own(perMetre) }], waste: own(0), roundTo: 10_000 } });
    expect(of(50)).toMatchObject({ cost: 100, net: 10_000 });
    expect(amounts(of(50))).toEqual({ tube: 100, rounding: 9900 });
    expect(of(0).net).toBe(0);
  });
});
