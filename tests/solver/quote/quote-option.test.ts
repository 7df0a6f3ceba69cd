import { describe, expect, it } from 'vitest';
import { OPERATIONS as JOB_OPERATIONS } from '../../../server/job/rates.ts';
import { QUOTE_GROUPS, type QuoteOption } from '../../../server/plan/quote.ts';
import { offeredScopes } from '../../../server/solver/quote/offered-ways.ts';
import { OPERATIONS } from '../../../server/solver/quote/operations.ts';
import { openFindings } from '../../../server/solver/quote/open-findings.ts';
import { quoteOption } from '../../../server/solver/quote/quote-option.ts';
import { jobWith, operation, own, SOME, TYPED, type Changes } from './made-up-order.ts';

const optionOf = (changes: Changes = {}, quantities = SOME): QuoteOption => ({
  ...quoteOption({ scope: 'frame', quantities }, jobWith(changes)),
  offered: true,
});

const findingsOf = (changes: Changes) =>
  openFindings(optionOf(changes), []).map(({ code, field, data }) => [code, field, data['line']] as const);

describe('the closed lists', () => {
  it('are those of the job and the plan', () => {
    expect(OPERATIONS).toEqual(JOB_OPERATIONS);
    // tube, gas, bending, work and travel are all in the made-up order
    expect(optionOf().groups.map(({ group }) => group)).toEqual(QUOTE_GROUPS);
  });
});

describe('an option', () => {
  it('has its sums and its groups, which add up to the price before tax', () => {
    const { cost, net, tax, total, groups, minutes, examples, open } = optionOf();
    expect({ cost, net, tax, total, examples, open }).toEqual({
      cost: 37269,
      net: 51200,
      tax: 9728,
      total: 60928,
      examples: 0,
      open: [],
    });
    // 3300, 560, 3467, 11942 and 18000 of 37269, each times 51200: the largest remainders are rounded up
    expect(groups).toEqual([
      { group: 'tube', amount: 4534 },
      { group: 'gas-and-filler', amount: 769 },
      { group: 'bending', amount: 4763 },
      { group: 'work', amount: 16406 },
      { group: 'travel', amount: 24728 },
    ]);
    expect(minutes?.value).toBe(170.5);
  });

  it('has a break for each quantity, the first of them the option itself', () => {
    const { breaks, lines, net, total, minutes } = optionOf({ quote: { quantities: [1, 3, 10] } });
    expect(breaks.map(({ quantity }) => quantity)).toEqual([1, 3, 10]);
    expect(breaks[0]).toMatchObject({ net, total, netEach: net, totalEach: total });
    expect(breaks[0]!.lines).toEqual(lines.map(({ key, of, amount }) => ({ key, of, amount })));
    expect(breaks[1]!.totalEach).toBe(Math.round(breaks[1]!.total / 3));
    expect(breaks[2]!.totalEach).toBeLessThan(breaks[1]!.totalEach);
    expect(minutes?.value).toBe(170.5);
  });

  it('ordered several at once has the labour of one of them', () => {
    const { minutes, total, breaks } = optionOf({ quote: { quantities: [4, 1] } });
    // set-ups of 75 min are shared by four
    expect(minutes?.value).toBeCloseTo(75 / 4 + (170.5 - 75), 9);
    expect(breaks[0]).toMatchObject({ quantity: 4, total });
  });

  it('counts the lines that rest on an example, be it the rate or a time', () => {
    const labour = { ...TYPED.labour, cut: { ...operation({ setUp: 10 }), each: own(5, true) } };
    expect(optionOf({ rates: { labour, fillerPerKilogram: own(2500, true) } }).examples).toBe(2);
    // of a machine the times of its operation, too
    const bend = { ...TYPED.labour.bend, each: own(5, true) };
    expect(optionOf({ rates: { labour: { ...TYPED.labour, bend } } }).examples).toBe(2);
    // what is not needed rests on nothing
    expect(
      optionOf({ rates: { travel: { perKilometre: own(50, true), hour: own(5000) } }, quote: NO_TRIPS }).examples,
    ).toBe(0);
  });
});

const NO_TRIPS = { travel: { trips: 0, kilometres: 0, hours: 0 } };

describe('a rate or a time that nobody typed', () => {
  it('leaves its line open, never zero, and out of every sum', () => {
    const whole = optionOf({ rates: { overhead: own(0), margin: own(0), roundTo: 1 } });
    const open = optionOf({ rates: { overhead: own(0), margin: own(0), roundTo: 1, fillerPerKilogram: own(null) } });
    const filler = open.lines.findIndex(({ key }) => key === 'filler');
    expect(open.lines[filler]).toMatchObject({ amount: null, rate: null, missing: ['/rates/fillerPerKilogram/value'] });
    expect(open.open).toEqual([filler]);
    expect(open.net).toBe(whole.net - 30);
    expect(findingsOf({ rates: { fillerPerKilogram: own(null) } })).toEqual([
      ['rate-open', '/rates/fillerPerKilogram/value', 'filler'],
    ]);
  });

  it('is told once with its operation, whatever hangs on it', () => {
    const bend = { ...TYPED.labour.bend, each: own(null) };
    const option = optionOf({ rates: { labour: { ...TYPED.labour, bend } } });
    // bending, its machine, and the days of rent
    expect(option.open.map((place) => option.lines[place]!.key)).toEqual(['bottle-rent', 'bend', 'machine']);
    expect(option.minutes).toBeNull();
    expect(findingsOf({ rates: { labour: { ...TYPED.labour, bend } } })).toEqual([
      ['time-open', '/rates/labour/bend/each/value', 'bend'],
    ]);
  });

  it('that nothing asks for is not missed', () => {
    const bend = { ...TYPED.labour.bend, perMetre: own(null) };
    const quantities = { ...SOME, metres: { ...SOME.metres, bend: 0 } };
    expect(optionOf({ rates: { labour: { ...TYPED.labour, bend } } }, quantities).open).toEqual([]);
  });

  it('leaves percentages open, too', () => {
    const option = optionOf({ rates: { overhead: own(null), margin: own(null), tax: own(null) } });
    expect(option.open.map((place) => option.lines[place]!.key)).toEqual(['overhead', 'margin', 'tax']);
    expect(option.net).toBe(37300); // rounded to whole hundreds
    expect(option.total).toBe(option.net);
  });

  it('of a tube is told with its size', () => {
    expect(openFindings(optionOf({ rates: { tubes: [] } }), [])).toMatchObject([
      { code: 'tube-rate-missing', field: '/rates/tubes', data: { outside: 40, wall: 2 } },
    ]);
  });
});

describe('an amount beyond counting', () => {
  const least = { setUp: own(0), perBend: own(0), least: own(1_000_000_000) };

  it('of the dearest rates stays whole', () => {
    const option = optionOf({
      rates: { outside: least, margin: own(90) },
      quote: { bending: 'outside', bendersOffer: null },
    });
    expect(Number.isSafeInteger(option.total)).toBe(true);
    expect(option.cost).toBeGreaterThan(1_000_000_000);
  });

  it('stands open and says so', () => {
    const hour = own(1_000_000_000);
    const labour = { ...TYPED.labour, bend: { ...operation({ each: 10_000 }), hour } };
    const quantities = { ...SOME, counts: { ...SOME.counts, bend: 200 } };
    const option = {
      ...quoteOption({ scope: 'frame', quantities }, jobWith({ rates: { labour }, quote: { quantities: [1000] } })),
      offered: true,
    };
    const place = option.lines.findIndex(({ key }) => key === 'bend');
    expect(option.lines[place]).toMatchObject({ amount: null, missing: [] });
    expect(openFindings(option, [])).toMatchObject([
      { code: 'amount-out-of-range', field: '/rates/labour/bend/hour/value', data: { line: 'bend' } },
    ]);
  });

  it('of more frames alone is counted where it drops out', () => {
    const hour = own(1_000_000_000);
    const labour = { ...TYPED.labour, bend: { ...operation({ each: 10_000 }), hour } };
    const option = optionOf({ rates: { labour }, quote: { quantities: [1, 1000] } });
    expect(option.breaks.map(({ open }) => open)).toEqual([0, 1]);
    expect(option.open).toEqual([]);
    const [, many] = option.breaks;
    expect(many!.lines.filter(({ amount }) => amount === null).map(({ key }) => key)).toEqual(['bend']);
    expect(many!.net).toBeLessThan(option.net * 1000);
  });
});

describe('what the customer is offered', () => {
  const priced = (scope: QuoteOption['scope'], total: number, open: number[] = []) => ({ scope, total, open });
  const ALL = [
    priced('leave', 10),
    priced('rebend', 300),
    priced('splice-fewest', 500),
    priced('splice-fairest', 400),
    priced('splice-rebend', 600),
    priced('new-frame', 900),
  ];
  const offered = (shown: QuoteOption['scope'], named: Exclude<QuoteOption['scope'], 'frame'>[] = [], options = ALL) =>
    [...offeredScopes(options, { shown, named })].sort();

  it('is what is shown and the cheapest of each other sort', () => {
    expect(offered('splice-fewest')).toEqual(['new-frame', 'rebend', 'splice-fewest', 'splice-rebend']);
    expect(offered('rebend')).toEqual(['new-frame', 'rebend', 'splice-fairest', 'splice-rebend']);
    expect(offered('frame', [], [priced('frame', 5)])).toEqual(['frame']);
  });

  it('leaves a frame as it is only where that is shown or named', () => {
    expect(offered('leave')).toContain('leave');
    expect(offered('new-frame')).not.toContain('leave');
    expect(offered('new-frame', ['leave', 'new-frame'])).toEqual(['leave', 'new-frame']);
  });

  it('is what the job names, where that is possible', () => {
    expect(offered('rebend', ['splice-own', 'splice-fewest'])).toEqual(['splice-fewest']);
    expect(offered('rebend', ['splice-own'])).toEqual(['new-frame', 'rebend', 'splice-fairest', 'splice-rebend']);
  });

  it('does not take one for cheap whose lines stand open', () => {
    const options = [priced('rebend', 1), priced('splice-fewest', 5, [2]), priced('splice-closest', 9)];
    expect(offered('rebend', [], options)).toEqual(['rebend', 'splice-closest']);
  });
});
