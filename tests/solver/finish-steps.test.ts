import { describe, expect, it } from 'vitest';
import { SURFACES, TREATMENTS, type Finish } from '../../server/job/finish.ts';
import { finishWords } from '../../server/language/en/finish.ts';
import { finishSteps, isFlush } from '../../server/solver/finish/finish-steps.ts';

const ways = TREATMENTS.flatMap((treatment) => SURFACES.map((surface) => ({ treatment, surface })));
const named = ways.map((way) => [`${way.treatment}, ${way.surface}`, way] as const);
const BUTTS = { butts: true, corners: false };
const CORNERS = { butts: false, corners: true };
const BOTH = { butts: true, corners: true };
const told = (way: Pick<Finish, 'treatment' | 'surface'>, kinds = BUTTS) =>
  finishSteps(way, kinds).map(({ key, gritFrom, gritTo }) =>
    gritFrom === 0 ? key : `${key} ${String(gritFrom)}${gritTo === gritFrom ? '' : `-${String(gritTo)}`}`,
  );

describe('grinding and polishing', () => {
  it('flush and satin, as practice has it', () => {
    expect(told({ treatment: 'flush', surface: 'satin' })).toEqual([
      'knock-down 40-60',
      'flush 80',
      'cross 120',
      'cross 180',
      'satin-round 240-320',
      'satin-along 240-320',
    ]);
  });
  it('flush, free of pits and a mirror', () => {
    expect(told({ treatment: 'pit-free', surface: 'mirror' })).toEqual([
      'knock-down 40-60',
      'flush 80',
      'pits',
      'cross 120',
      'cross 180',
      'cross 240',
      'cross 320',
      'cross 400',
      'cross 600-800',
      'sisal',
      'cotton',
      'wipe',
    ]);
  });
  it('colours alone leave the bead, and the tube beside it gets its surface', () => {
    expect(told({ treatment: 'colour', surface: 'as-delivered' })).toEqual(['colour']);
    expect(told({ treatment: 'colour', surface: 'satin' })).toEqual(['colour', 'satin-along 240-320']);
  });

  it('in a corner the bead is blended by hand to the same grits, whether the others are ground flush or not', () => {
    for (const treatment of ['ripple', 'flush'] as const)
      expect(told({ treatment, surface: 'satin' }, CORNERS)).toEqual([
        'colour',
        'ripple 120',
        'corner 180',
        'corner 240-320',
      ]);
    expect(told({ treatment: 'pit-free', surface: 'brushed' }, CORNERS)).toEqual([
      'colour',
      'corner-pits',
      'ripple 120',
      'corner 120-180',
    ]);
    expect(told({ treatment: 'colour', surface: 'satin' }, CORNERS)).toEqual(['colour', 'satin-along 240-320']);
  });
  it.each(named)('%s: of both kinds, says which welds each step is for, butts first', (_, way) => {
    const steps = finishSteps(way, BOTH);
    if (way.treatment === 'none' || way.treatment === 'colour') {
      expect(steps).toEqual(finishSteps(way, BUTTS));
      return;
    }
    const forThem = (welds: string) =>
      steps.filter((one) => one.welds === welds).map((one) => ({ ...one, welds: 'all' }));
    expect(forThem('butts')).toEqual(finishSteps(way, BUTTS));
    expect(forThem('corners')).toEqual(finishSteps(way, CORNERS));
    expect(steps.map(({ welds }) => welds).join()).toMatch(/^(butts,)+corners(,corners)*$/);
  });

  const either = named.flatMap(([name, way]) => [
    [`${name}, round a tube`, way, BUTTS] as const,
    [`${name}, in a corner`, way, CORNERS] as const,
  ]);
  it.each(either)('%s: coarse to fine, and no grit is skipped', (_, way, kinds) => {
    const grits = finishSteps(way, kinds).filter(({ gritFrom }) => gritFrom > 0);
    for (const { gritFrom, gritTo } of grits) expect(gritTo).toBeGreaterThanOrEqual(gritFrom);
    for (const [index, next] of grits.slice(1).entries()) {
      const before = grits[index]!;
      expect(next.gritFrom).toBeGreaterThanOrEqual(before.gritFrom);
      expect(next.gritTo).toBeGreaterThanOrEqual(before.gritTo);
      // from any grit of one step to any of the next at most twice as fine, 1.5 times where both end
      expect(next.gritFrom / before.gritFrom).toBeLessThanOrEqual(2);
      expect(next.gritTo / before.gritTo).toBeLessThanOrEqual(2);
      expect(next.gritFrom / before.gritTo).toBeLessThanOrEqual(1.5);
    }
  });
  it.each(named)('%s: a bead is ground away only where it is to be, knocked down first', (_, way) => {
    const keys = finishSteps(way, BUTTS).map(({ key }) => key);
    const corner = finishSteps(way, CORNERS).map(({ key }) => key);
    for (const key of ['knock-down', 'flush', 'pits', 'cross', 'satin-round']) expect(corner).not.toContain(key);
    expect(corner.includes('corner-pits')).toBe(way.treatment === 'pit-free');
    expect(keys.includes('flush')).toBe(isFlush(way.treatment));
    expect(keys.includes('pits')).toBe(way.treatment === 'pit-free');
    expect(keys[0] === 'knock-down').toBe(isFlush(way.treatment));
    expect(keys.length === 0).toBe(way.treatment === 'none');
    // buffing comes last, without a grit
    expect(keys.includes('cotton')).toBe(way.treatment !== 'none' && way.surface === 'mirror');
    for (const key of [...keys, ...corner]) expect(finishWords).toHaveProperty([`finish.step.${key}`]);
  });
});
