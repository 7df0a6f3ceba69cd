import { describe, expect, it } from 'vitest';
import { newJob } from '../../server/job/default-job.ts';
import { saidWords } from '../../server/language/said-words.ts';
import { hasWords } from '../../server/language/words.ts';
import { recommend } from '../../server/solver/correction/compare-ways.ts';
import { whatWouldChange } from '../../server/solver/correction/what-would-change.ts';
import type { Way } from '../../server/plan/correction.ts';
import { made, wayOf } from './made-up-ways.ts';

const TOLERANCE = 4;
const { units, rates } = newJob('hoop');

/** What would change the recommendation of some ways. */
function changes(ways: readonly Way[]) {
  const { recommended, reason } = recommend(ways, TOLERANCE);
  const said = whatWouldChange(ways, recommended, TOLERANCE);
  for (const one of [reason, ...said]) {
    expect(hasWords(one.key)).toBe(true);
    expect(saidWords(one, units, rates)).not.toMatch(/[{}[\]]|undefined/);
  }
  return { recommended, said };
}

const leave = wayOf('leave', {
  fixingMisfit: made(31),
  welds: made(0, 'count'),
  cost: made(0, 'minor'),
  days: made(0, 'd'),
});
const one = wayOf('splice-fewest', { largestKink: made(1.48, 'deg'), welds: made(2, 'count') });
const two = wayOf('splice-fairest', { largestKink: made(0.74, 'deg'), welds: made(4, 'count') });

describe('what would change a recommendation', () => {
  it('is the tolerance at which the frame could be left, and the kink that would have to show', () => {
    const { recommended, said } = changes([leave, one, two]);
    expect(recommended).toBe('splice-fairest');
    expect(said).toEqual([
      { key: 'change.tolerance-leave', data: { tolerance: 31 } },
      { key: 'change.kink-welds', data: { kink: 1.48, way: 'splice-fewest', welds: 2 } },
    ]);
    const three = { ...two, welds: made(3, 'count') };
    expect(changes([one, three]).said).toContainEqual({
      key: 'change.kink-one-weld',
      data: { kink: 1.48, way: 'splice-fewest' },
    });
  });

  it('does as it says: at that tolerance the recommendation is another', () => {
    const ways = [leave, one, two];
    expect(recommend(ways, 31).recommended).toBe('leave');
    expect(recommend(ways, 30.999).recommended).toBe('splice-fairest');
  });

  it('is no tolerance of the frame where a fixing point has a narrower one of its own, or a post is struck', () => {
    const fixed = (allowed: number, misfit = 31, fixing: 'hole' | 'post' = 'hole') => ({
      ...leave,
      fixings: [{ field: '/fixing/0', name: 'hole', fixing, misfit: made(misfit), allowed: made(allowed) }],
    });
    const keys = (way: Way) => changes([way, two]).said.map(({ key }) => key);
    expect(keys(fixed(TOLERANCE))).toContain('change.tolerance-leave');
    expect(keys(fixed(1))).not.toContain('change.tolerance-leave');
    expect(keys(fixed(0, -2, 'post'))).not.toContain('change.tolerance-leave');
  });

  it('is a tolerance at which anything is put right, before a new frame is made', () => {
    const beyond = { ...two, fixingMisfit: made(6) };
    const { recommended, said } = changes([wayOf('new-frame', { welds: made(0, 'count') }), beyond, leave]);
    expect(recommended).toBe('new-frame');
    expect(said[0]).toEqual({ key: 'change.tolerance', data: { tolerance: 6, way: 'splice-fairest' } });
  });

  it('is how much the next one with as many welds costs more, and that a rate is missing', () => {
    const other = { ...two, key: 'splice-closest' as const, cost: made(12_500, 'minor') };
    expect(changes([two, other]).said).toEqual([{ key: 'change.cost', data: { way: 'splice-closest', cost: 2500 } }]);
    expect(changes([two, { ...other, cost: null }]).said).toEqual([{ key: 'change.rate-open', data: {} }]);
  });

  it('is money alone and days alone where another way is cheaper or sooner', () => {
    const fresh = wayOf('new-frame', { cost: made(4000, 'minor'), days: made(0.75, 'd') });
    expect(changes([two, fresh]).said).toEqual([
      { key: 'change.money', data: { way: 'new-frame', cost: 6000 } },
      { key: 'change.days', data: { way: 'new-frame', days: 0.3 } },
    ]);
  });

  it('is readings so many times as exact where the band decides', () => {
    const doubtful = { ...two, fixingMisfit: made(3, 'mm', 2.5) };
    expect(changes([doubtful]).said).toEqual([{ key: 'change.readings', data: { times: 2.5, tolerance: 4 } }]);
  });

  it('says three things at most, and nothing where nothing is recommended', () => {
    const doubtful = { ...two, fixingMisfit: made(3, 'mm', 2.5), cost: null };
    expect(changes([leave, one, doubtful, wayOf('new-frame', { days: made(0, 'd') })]).said).toHaveLength(3);
    expect(whatWouldChange([{ ...one, possible: false }], null, TOLERANCE)).toEqual([]);
  });
});
