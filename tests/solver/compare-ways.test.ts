import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { WAY_KEYS, type Way } from '../../server/plan/correction.ts';
import { markUnbeaten, recommend } from '../../server/solver/correction/compare-ways.ts';
import { made, wayOf } from './made-up-ways.ts';

const few = fc.integer({ min: -3, max: 3 });
const openOr = (unit: 'min' | 'minor' | 'd') => fc.option(few.map((value) => made(Math.abs(value), unit)));

/** Ways of few different figures, so that many are beaten and many are alike. */
const anyWay = (key: Way['key']): fc.Arbitrary<Way> =>
  fc
    .record({
      possible: fc.boolean(),
      fixingMisfit: few.map((value) => made(Math.abs(value))),
      cornerWidth: fc.constant(null),
      endWidth: few.map((value) => made(value)),
      toe: few.map((value) => made(value, 'deg')),
      welds: few.map((value) => made(Math.abs(value), 'count')),
      minutes: openOr('min'),
      cost: openOr('minor'),
      days: openOr('d'),
    })
    .map((given) => wayOf(key, given));
const anyWays = fc.tuple(...WAY_KEYS.map(anyWay));

/** What a beats b in, and what it is worse in, among the columns that all possible ways fill. */
function against(a: Way, b: Way, all: readonly Way[]): { better: number; worse: number } {
  const names = ['fixingMisfit', 'endWidth', 'toe', 'welds', 'minutes', 'cost', 'days'] as const;
  const filled = names.filter((name) => all.every((way) => !way.possible || way[name] !== null));
  const size = (way: Way, name: (typeof names)[number]): number => Math.abs(way[name]!.value);
  return {
    better: filled.filter((name) => size(a, name) < size(b, name)).length,
    worse: filled.filter((name) => size(a, name) > size(b, name)).length,
  };
}
const beats = (a: Way, b: Way, all: readonly Way[]): boolean => {
  const { better, worse } = against(a, b, all);
  return better > 0 && worse === 0;
};

describe('ways that no other beats', () => {
  it('are beaten by none, and every other possible one is beaten by one of them', () => {
    fc.assert(
      fc.property(anyWays, (ways) => {
        const marked = markUnbeaten(ways);
        const best = marked.filter(({ unbeaten }) => unbeaten);
        expect(best.length > 0).toBe(ways.some(({ possible }) => possible));
        for (const way of marked.filter(({ possible }) => possible)) {
          const beaten = best.some((other) => beats(other, way, ways));
          expect(way.unbeaten).toBe(!beaten);
        }
        for (const way of marked.filter(({ possible }) => !possible)) expect(way.unbeaten).toBe(false);
      }),
    );
  });

  it('leave a column out for all where one possible way has it open', () => {
    const dear = wayOf('rebend', { cost: made(900, 'minor') });
    const cheap = wayOf('splice-fewest', { cost: made(100, 'minor') });
    const open = wayOf('new-frame', { cost: null, fixingMisfit: made(5) });
    expect(markUnbeaten([dear, cheap]).map(({ unbeaten }) => unbeaten)).toEqual([false, true]);
    expect(markUnbeaten([dear, cheap, open]).map(({ unbeaten }) => unbeaten)).toEqual([true, true, false]);
    const closed = markUnbeaten([dear, cheap, { ...open, possible: false }]);
    expect(closed.map(({ unbeaten }) => unbeaten)).toEqual([false, true, false]);
  });

  it('count a width by how far it is off, whichever way', () => {
    const narrow = wayOf('rebend', { cornerWidth: made(-8) });
    const wide = wayOf('splice-fewest', { cornerWidth: made(3) });
    expect(markUnbeaten([narrow, wide]).map(({ unbeaten }) => unbeaten)).toEqual([false, true]);
  });
});

describe('the recommendation', () => {
  const off = (misfit: number, given: Partial<Way> = {}) => ({ ...given, fixingMisfit: made(misfit, 'mm', 0.5) });
  const kink = (degrees: number) => ({ largestKink: made(degrees, 'deg') });
  const welds = (count: number) => ({ welds: made(count, 'count') });

  it('is to leave what is within as it is, even where bending again comes nearer and costs are open', () => {
    const leave = wayOf('leave', off(3, { ...welds(0), cost: null }));
    const rebend = wayOf('rebend', off(0.1, { ...welds(0), cost: null }));
    const { recommended, reason } = recommend([rebend, leave], 4);
    expect(recommended).toBe('leave');
    expect(reason).toEqual({
      key: 'reason.good-enough',
      data: { tolerance: 4, misfit: 3, band: 0.5, welds: 0, kink: 0, sure: 'yes' },
    });
  });

  it('is the fewest welds, then the cheapest, then the nearest', () => {
    const two = wayOf('splice-closest', off(0, welds(2)));
    const dear = wayOf('splice-fairest', off(1, { cost: made(900, 'minor') }));
    const cheap = wayOf('splice-fewest', off(2, { cost: made(800, 'minor') }));
    expect(recommend([two, dear, cheap], 4).recommended).toBe('splice-fewest');
    expect(recommend([two, dear, { ...cheap, cost: null }], 4).recommended).toBe('splice-fairest');
    expect(recommend([two], 4)).toMatchObject({
      recommended: 'splice-closest',
      reason: { key: 'reason.fewest-welds' },
    });
  });

  it('passes over kinks that show, and says so where only a new frame has none', () => {
    const showing = wayOf('splice-fewest', off(1, kink(1.5)));
    const fair = wayOf('splice-fairest', off(1, { ...kink(0.9), ...welds(2) }));
    const made = wayOf('new-frame', off(0, welds(0)));
    expect(recommend([showing, fair, made], 4).recommended).toBe('splice-fairest');
    expect(recommend([showing, made], 4)).toMatchObject({
      recommended: 'new-frame',
      reason: { key: 'reason.kinks-show' },
    });
    expect(recommend([showing], 4).reason.key).toBe('reason.least-misfit-kink');
  });

  it('is a new frame only where nothing else comes within', () => {
    const splice = wayOf('splice-fewest', off(5, welds(4)));
    const fresh = wayOf('new-frame', off(0, welds(0)));
    expect(recommend([splice, fresh], 6).recommended).toBe('splice-fewest');
    expect(recommend([splice, fresh], 4)).toMatchObject({
      recommended: 'new-frame',
      reason: { key: 'reason.only-new-frame' },
    });
  });

  it('is the least misfit where none comes within, and nothing where nothing is possible', () => {
    const near = wayOf('rebend', off(7));
    const far = wayOf('leave', off(9, welds(0)));
    expect(recommend([far, near], 4)).toMatchObject({
      recommended: 'rebend',
      reason: { key: 'reason.least-misfit', data: { misfit: 7, sure: 'no' } },
    });
    expect(recommend([{ ...near, possible: false }], 4)).toEqual({
      recommended: null,
      reason: { key: 'reason.none', data: { tolerance: 4 } },
    });
  });

  it('takes joints of one’s own only where they are the only ones within, or beat the rest', () => {
    const own = wayOf('splice-own', off(1));
    const found = wayOf('splice-fewest', off(1, welds(2)));
    expect(recommend([found, own], 4).recommended).toBe('splice-own');
    // fewer welds, but another figure is worse
    expect(recommend([found, { ...own, minutes: made(61, 'min') }], 4).recommended).toBe('splice-fewest');
    expect(recommend([found, own], 0.5).recommended).toBe('splice-own');
    const beyond = { ...found, fixingMisfit: made(5) };
    expect(recommend([beyond, { ...own, minutes: made(61, 'min') }], 4).recommended).toBe('splice-own');
    expect(recommend([own, wayOf('splice-fewest', off(1))], 4).recommended).toBe('splice-fewest');
  });

  it('asks every fixing point for what it allows, and a post for room', () => {
    const fixing = (value: number, allowed: number, kind: 'hole' | 'post' = 'hole') => ({
      field: '/fixing/0',
      name: 'hole',
      fixing: kind,
      misfit: made(value),
      allowed: made(allowed),
    });
    const splice = (...fixings: Way['fixings']) => wayOf('splice-fewest', { fixings });
    const fresh = wayOf('new-frame');
    expect(recommend([splice(fixing(2, 1)), fresh], 4).recommended).toBe('new-frame');
    expect(recommend([splice(fixing(2, 3)), fresh], 4).recommended).toBe('splice-fewest');
    expect(recommend([splice(fixing(-1, 0, 'post')), fresh], 4).recommended).toBe('new-frame');
    expect(recommend([splice(fixing(30, 0, 'post')), fresh], 4).recommended).toBe('splice-fewest');
  });

  it('says where the band decides', () => {
    const splice = wayOf('splice-fewest', { fixingMisfit: made(3, 'mm', 1.5) });
    expect(recommend([splice], 4).reason.data).toMatchObject({ sure: 'no', band: 1.5, unsure: 1.5 });
    expect(recommend([splice], 4.5).reason.data).not.toHaveProperty('unsure');
    expect(recommend([splice], 4.5).reason.data).toMatchObject({ sure: 'yes' });
  });
});
