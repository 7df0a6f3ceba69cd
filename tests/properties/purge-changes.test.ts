// What a change of flow, target or size does to the times of a purge, and what turning a frame round must not do.
import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Chamber, PurgePlan } from '../../server/plan/purge.ts';
import { planPurge } from '../../server/solver/purge/plan-purge.ts';
import { firstDifference } from './plans-compared.ts';
import { purgeCases } from './purge-frames.ts';
import { mirrored, reversed, scaled } from './purge-turned.ts';
import { workload, workloadOf, type PurgeWorkload } from './purge-workload.ts';

let works: { work: PurgeWorkload; purge: PurgePlan }[] = [];

const planOf = (work: PurgeWorkload): PurgePlan => {
  const { purge } = planPurge(work.context);
  if (purge === null) throw new Error('nothing to purge');
  return purge;
};

beforeAll(() => {
  works = fc.sample(purgeCases, { numRuns: 80, seed: 21 }).flatMap((one) => {
    const work = workloadOf(one);
    return work === undefined || work.welds.length === 0 ? [] : [{ work, purge: planOf(work) }];
  });
});

const withPurge = ({ job, frame, welds }: PurgeWorkload, change: Partial<PurgeWorkload['job']['purge']>) =>
  workload({ ...job, purge: { ...job.purge, ...change } }, frame, welds);

const TIMES = ['plug', 'wellMixed', 'longTube'] as const;

/** Each time of each chamber beside that of a changed plan, where both have it and gas runs through the same bores. */
const eachTime = (
  before: PurgePlan,
  after: PurgePlan,
): { key: string; ways: number; dead: boolean; was: number; is: number }[] =>
  before.chambers.flatMap((one, index) => {
    const other = after.chambers[index]!;
    // bore that diffusion clears sooner than the little gas in it is a dead leg, whose air the times leave out
    if (one.deadLegs.length !== other.deadLegs.length) return [];
    return TIMES.flatMap((key) => {
      const [was, is] = [one[key], other[key]];
      if (was === null || is === null) return [];
      const dead = one.deadLegs.length > 0;
      return [{ key, ways: one.paths.length, dead, was: was.time.value, is: is.time.value }];
    });
  });

describe('times of a purge', () => {
  it.each([1.3, 4])('fall with %d times the flow', (times) => {
    let looked = 0;
    for (const { work, purge } of works) {
      const { prePurgeFlow } = work.job.purge;
      const after = planOf(withPurge(work, { prePurgeFlow: times * prePurgeFlow }));
      expect(after.chambers.length).toBe(purge.chambers.length);
      for (const { was, is } of eachTime(purge, after)) {
        looked += 1;
        expect(is).toBeLessThan(was);
      }
    }
    expect(looked).toBeGreaterThan(250);
  });

  it('rise with a lower target, and plug flow does not', () => {
    for (const { work, purge } of works) {
      const after = planOf(withPurge(work, { targetOxygen: 20 }));
      for (const [index, { plug, wellMixed, longTube }] of purge.chambers.entries()) {
        const lower = after.chambers[index]!;
        expect(lower.plug.time.value).toBe(plug.time.value);
        expect(lower.wellMixed.time.value).toBeGreaterThan(wellMixed.time.value);
        if (longTube !== null) expect(lower.longTube!.time.value).toBeGreaterThan(longTube.time.value);
      }
    }
  });

  it.each([1.2, 3])('rise with a frame %d times as large', (times) => {
    for (const { work, purge } of works) {
      const after = planOf(scaled(work, times));
      expect(after.chambers.length).toBe(purge.chambers.length);
      for (const [index, { volume }] of purge.chambers.entries())
        expect(after.chambers[index]!.volume.value / volume.value).toBeCloseTo(times, 9);
      // the jet at the feed is as long as ever: where gas parts within it, other bore is mixed in a larger frame
      for (const { key, ways, dead, was, is } of eachTime(purge, after)) {
        // what a dead leg bleeds hangs on its length only where its end is felt
        if (key === 'wellMixed' && dead) expect(is).toBeGreaterThan(was * (1 - 1e-9));
        else if (key !== 'longTube' || ways === 1) expect(is).toBeGreaterThan(was);
      }
    }
  });
});

/** A chamber as a person would compare it: what is in it, how long it takes, where gas passes. */
const compared = ({ volume, welds, plug, wellMixed, longTube, feed, vents, paths, deadLegs }: Chamber) => ({
  volume: volume.value,
  welds: [...welds].sort(),
  plug: plug.time.value,
  wellMixed: wellMixed.time.value,
  longTube: longTube?.time.value ?? 0,
  heights: [feed.height, ...vents.map(({ height }) => height)],
  ways: paths.length,
  dead: deadLegs.map(({ length }) => length.value).sort((a, b) => a - b),
});

describe('the same frame', () => {
  it('in the mirror takes as long', () => {
    for (const { work, purge } of works) {
      const after = planOf(mirrored(work));
      for (const [index, one] of purge.chambers.entries())
        expect(differs(compared(one), compared(after.chambers[index]!))).toBeUndefined();
    }
  });

  it('counted from the other ends takes as long', () => {
    let looked = 0;
    for (const { work } of works) {
      // held askew: level openings are chosen between by their order, which is another from the other ends
      const held = withPurge(work, { up: { x: 0.31, y: 0.52, z: 0.79 } });
      const [before, after] = [planOf(held), planOf(reversed(held))];
      for (const [index, one] of before.chambers.entries()) {
        const other = after.chambers[index]!;
        if (level(held, one)) continue;
        looked += 1;
        expect(differs(compared(one), compared(other))).toBeUndefined();
      }
    }
    expect(looked).toBeGreaterThan(70);
  });
});

/** Whether two ends or holes of a chamber are within a bore of one height, so that neither is the lower. */
function level({ context, job }: PurgeWorkload, { stretches }: Chamber): boolean {
  const own = new Set(stretches.map(({ member }) => member));
  const heights = context.openings
    .filter(({ member }) => own.has(context.members[member]!.name))
    .map(({ height }) => height)
    .sort((a, b) => a - b);
  const bore = job.tube.outsideDiameter - 2 * job.tube.wall;
  return heights.slice(1).some((height, index) => height - heights[index]! <= bore);
}

const differs = (one: unknown, other: unknown) => firstDifference(one, other, 1e-6);
