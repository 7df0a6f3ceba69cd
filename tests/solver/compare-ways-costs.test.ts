import { describe, expect, it } from 'vitest';
import { hasWords } from '../../server/language/words.ts';
import type { CorrectionPlan, Way } from '../../server/plan/correction.ts';
import type { QuoteLine, QuoteOption } from '../../server/plan/quote.ts';
import { priceRisksOf } from '../../server/solver/correction/way-risks.ts';
import { withCosts } from '../../server/solver/correction/with-costs.ts';
import { made, wayOf } from './made-up-ways.ts';

const line = (given: Partial<QuoteLine> = {}): QuoteLine => ({
  key: 'weld',
  of: '',
  size: null,
  quantity: made(1, 'h'),
  rate: 100,
  rateUnit: 'minor',
  rateField: '/rates/labour/weld/hour/value',
  missing: [],
  example: false,
  since: '',
  amount: 100,
  parts: [],
  ...given,
});

/** An option of one line that costs so much for so many frames. */
function optionOf(
  scope: QuoteOption['scope'],
  total: number,
  given: Partial<QuoteOption> = {},
  quantity = 1,
): QuoteOption {
  const lines = given.lines ?? [line({ amount: total })];
  return {
    scope,
    offered: true,
    lines,
    open: lines.flatMap(({ amount }, place) => (amount === null ? [place] : [])),
    examples: 0,
    cost: total,
    net: total,
    tax: 0,
    total,
    groups: [],
    breaks: [
      {
        quantity,
        lines: [],
        open: 0,
        net: total,
        tax: 0,
        total,
        netEach: total / quantity,
        totalEach: total / quantity,
      },
    ],
    minutes: made(240, 'min'),
    ...given,
  };
}

const correctionOf = (ways: Way[]): CorrectionPlan =>
  ({ ways, recommended: ways[0]?.key ?? null, wouldChange: [] }) as Partial<CorrectionPlan> as CorrectionPlan;

const SETTING = { bender: { bending: 'outside', daysAtBender: 5 }, tolerance: 4 } as const;
const SPLICE = wayOf('splice-fewest', { cost: made(100, 'minor'), days: made(0, 'd'), risks: ['weld-pull'] });
const ANEW = wayOf('new-frame', { cost: made(50, 'minor'), welds: made(0, 'count') });

describe('prices of the quote in the ways', () => {
  const options = [optionOf('splice-fewest', 9000), optionOf('new-frame', 12_000, { minutes: made(96, 'min') })];
  const { ways, wouldChange, recommended } = withCosts(correctionOf([SPLICE, ANEW]), options, SETTING);
  const [splice, anew] = ways;

  it('are the cost of one frame, with days by its labour and the bender', () => {
    expect([splice?.cost?.value, anew?.cost?.value]).toEqual([9000, 12_000]);
    expect(splice?.cost?.working).toMatchObject({ sources: ['money'] });
    expect(splice?.costAtLeast.value).toBe(9000);
    expect([splice?.minutes?.value, anew?.minutes?.value]).toEqual([240, 96]);
    // half a day of 8 hours; a fifth, and five at the bender
    expect([splice?.days?.value, anew?.days?.value]).toEqual([0.5, 5.2]);
    const [shared] = withCosts(correctionOf([SPLICE]), [optionOf('splice-fewest', 9000, {}, 6)], SETTING).ways;
    expect(shared?.cost?.value).toBe(1500);
  });

  it('leave the recommendation, and say anew what would change it', () => {
    expect(recommended).toBe('splice-fewest');
    // by what stood there before the new frame was cheaper by 50
    expect(wouldChange.some(({ key }) => key === 'change.money')).toBe(false);
    const dear = [optionOf('splice-fewest', 9000), optionOf('new-frame', 7000)];
    expect(withCosts(correctionOf([SPLICE, ANEW]), dear, SETTING).wouldChange).toContainEqual({
      key: 'change.money',
      data: { way: 'new-frame', cost: 2000 },
    });
  });

  it('say what the recommended way costs beside a new frame, and beside the cheapest of the others', () => {
    const leave = wayOf('leave', { cornerMisfit: made(17.1, 'mm') });
    const moneyOf = (costs: Partial<Record<Way['key'], number>>, ways: Way[]) =>
      withCosts(
        correctionOf(ways),
        ways.flatMap(({ key }) => (costs[key] === undefined ? [] : [optionOf(key, costs[key])])),
        SETTING,
      ).money;
    const three = [
      wayOf('splice-fewest', { cornerMisfit: made(0.25, 'mm'), fixingMisfit: made(0, 'mm') }),
      leave,
      ANEW,
    ];
    expect(moneyOf({ 'splice-fewest': 9000, leave: 7000, 'new-frame': 12_000 }, three)).toEqual([
      { key: 'money.cheaper-than-new', data: { cost: 3000 } },
      { key: 'money.other-less-but-off', data: { other: 'leave', cost: 2000, off: 16.85 } },
    ]);
    expect(moneyOf({ 'splice-fewest': 9000, leave: 9500, 'new-frame': 8000 }, three)).toEqual([
      { key: 'money.dearer-than-new', data: { cost: 1000 } },
    ]);
    const near = [SPLICE, wayOf('splice-fairest')];
    expect(moneyOf({ 'splice-fewest': 9000, 'splice-fairest': 8000 }, near)).toEqual([
      { key: 'money.other-less', data: { other: 'splice-fairest', cost: 1000 } },
    ]);
    expect(moneyOf({ 'splice-fewest': 9000, 'new-frame': 9000 }, [SPLICE, ANEW])).toEqual([
      { key: 'money.as-new', data: {} },
    ]);
  });

  it('say nothing beside others where a cost of one is open', () => {
    const open = { lines: [line({ amount: 900 }), line({ amount: null })] };
    const [taken, other] = [optionOf('splice-fewest', 900, open), optionOf('new-frame', 9000)];
    expect(withCosts(correctionOf([SPLICE, ANEW]), [taken, other], SETTING).money).toEqual([]);
    const anewOpen = optionOf('new-frame', 900, open);
    const priced = withCosts(correctionOf([SPLICE, ANEW]), [optionOf('splice-fewest', 9000), anewOpen], SETTING);
    expect(priced.money).toEqual([]);
  });

  it('say who is unbeaten now', () => {
    const same = wayOf('splice-fairest');
    const costs = (one: number, other: number) =>
      withCosts(
        correctionOf([wayOf('splice-fewest'), same]),
        [optionOf('splice-fewest', one), optionOf('splice-fairest', other)],
        SETTING,
      ).ways.map(({ unbeaten }) => unbeaten);
    expect(costs(100, 101)).toEqual([true, false]);
    expect(costs(101, 100)).toEqual([false, true]);
    expect(costs(100, 100)).toEqual([true, true]);
  });

  it('stand open with a line, and say at least how much', () => {
    const open = optionOf('splice-fewest', 900, {
      lines: [line({ amount: 900 }), line({ amount: null })],
      minutes: null,
    });
    const [way] = withCosts(correctionOf([SPLICE, ANEW]), [open], SETTING).ways;
    expect(way).toMatchObject({ cost: null, minutes: null, days: null, costAtLeast: { value: 900 } });
    expect(way?.risks).toEqual(['weld-pull', 'price-open']);
  });

  it('a way that is no option keeps what it had', () => {
    const shut = wayOf('rebend', { possible: false });
    expect(withCosts(correctionOf([shut]), [], SETTING).ways[0]).toEqual(shut);
  });
});

it('what can go wrong with a price, each in words', () => {
  const risks = (given: Partial<QuoteOption>) => priceRisksOf(optionOf('rebend', 100, given));
  const outside = (rateField: string) => ({ lines: [line({ key: 'outside-bending', rateField })] });
  expect(risks({})).toEqual([]);
  expect(risks({ open: [0] })).toEqual(['price-open']);
  expect(risks({ examples: 3 })).toEqual(['price-on-examples']);
  expect(risks(outside('/rates/outside/perBend/value'))).toEqual(['offer-not-asked']);
  expect(risks(outside('/quote/bendersOffer'))).toEqual([]);
  for (const risk of risks({ ...outside('/rates/outside/perBend/value'), open: [1], examples: 1 }))
    expect(hasWords(`risk.${risk}`)).toBe(true);
});
