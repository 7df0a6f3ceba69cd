/** Bore that no gas runs through: what the stream mixes, where it is measured from, and what it bleeds into the stream. */
import { describe, expect, it } from 'vitest';
import type { Chamber } from '../../server/plan/purge.ts';
import { bleedTime, holeFreedom } from '../../server/solver/purge/bleed.ts';
import type { DeadBore } from '../../server/solver/purge/dead-legs.ts';
import { faultsOf } from './figures-in.ts';
import { airHole, holes, hoopJob, jobOf, MAIN, pad, purged } from './purge-frames.ts';

const chamberOf = (number: number, ...made: Parameters<typeof purged>): Chamber => {
  const found = purged(...made).purge?.chambers.find((one) => one.number === number);
  if (found === undefined) throw new Error('no such chamber');
  return found;
};
const codes = (...made: Parameters<typeof purged>) => purged(...made).findings.map(({ code }) => code);

/** The main tube with a plate on its start, and a hole so far from it. */
const blind = (distance: number) =>
  jobOf([MAIN], holes({ toAir: [airHole('main', distance)] }), { fixing: [pad('main', 'start')] });

describe('a short dead end beside the stream', () => {
  it('holes 20 mm from either saddle of a crossbar clear it', () => {
    const job = hoopJob([300], holes({ toAir: [airHole('crossbar 1', 20), airHole('crossbar 1', 841.9)] }));
    const stops = purged(job).findings.filter(({ grade }) => grade === 'stop');
    expect(stops).toEqual([]);
    const chamber = chamberOf(2, job);
    expect(chamber.deadLegs).toEqual([]);
    // all of its bore counts as filled
    expect(chamber.wellMixed.volumes.value).toBeGreaterThanOrEqual(Math.log(209_498 / 48) - 1e-9);
  });

  it('up to three bores of 34.8 mm, and no farther', () => {
    expect(chamberOf(1, blind(104)).deadLegs).toEqual([]);
    expect(codes(blind(104))).not.toContain('weld-in-dead-leg');
    expect(chamberOf(1, blind(105)).deadLegs.map(({ length }) => length.value)).toEqual([105]);
    expect(codes(blind(105))).toContain('weld-in-dead-leg');
  });
});

const leg = (length: number, behindHole = false, mouths = 1): DeadBore => ({
  ...{ parts: [], length, rise: 0, welds: [], mouths, behindHole, bored: length, passing: 10 },
});
const STEP = { start: 209_500, target: 50, supply: 2 };
const BY = { bore: 34.8, holeBore: 6, wall: 1.65, flow: 10 };

/** ∂c/∂t = D ∂²c/∂x² cell by cell, from a mouth at c = 0, or with a hole before it, to a closed end; bleed in ppm of 10 L/min. */
function solved(length: number, freedom: number | null, cells = 200): number {
  const [cell, diffusivity] = [length / 1000 / cells, 1.89e-5];
  const step = (0.4 * cell ** 2) / diffusivity;
  const through = freedom === null ? 2 / cell : 1 / (1 / freedom + cell / 2);
  const area = (Math.PI * 0.0348 ** 2) / 4;
  const ppm = (slope: number) => (diffusivity * area * slope * 209_500 * 60_000) / 10;
  let left = new Float64Array(cells).fill(1);
  let time = 0;
  while (ppm(through * left[0]!) > 48) {
    const next = left.slice();
    for (let at = 0; at < cells; at += 1) {
      const out = at === 0 ? through * cell * left[0]! : left[at]! - left[at - 1]!;
      const on = at === cells - 1 ? 0 : left[at + 1]! - left[at]!;
      next[at] = left[at]! + 0.4 * (on - out);
    }
    left = next;
    time += step;
  }
  return time;
}

describe('what a dead leg bleeds into the stream', () => {
  it('is over the target as long as the equation solved cell by cell', () => {
    const freedom = holeFreedom(BY);
    for (const length of [110, 300, 900])
      for (const behindHole of [false, true]) {
        const wanted = solved(length, behindHole ? freedom : null);
        expect(Math.abs(bleedTime([leg(length, behindHole)], STEP, BY) / wanted - 1)).toBeLessThan(0.01);
      }
  });

  it('without an end it is D A C₀/√(π D t)', () => {
    const area = (Math.PI * 0.0348 ** 2) / 4;
    const seconds = bleedTime([leg(20_000)], STEP, BY);
    const ppm = (1.89e-5 * area * 209_500 * 60_000) / 10 / Math.sqrt(Math.PI * 1.89e-5 * seconds);
    expect(ppm).toBeCloseTo(48, 6);
  });

  it('is waited for: the cautious time is never shorter', () => {
    const chamber = chamberOf(1, blind(300));
    const bleed = bleedTime([leg(300)], STEP, BY);
    expect(chamber.wellMixed.time.value).toBeCloseTo(bleed, 6);
    expect(chamber.wellMixed.time.value).toBeGreaterThan(1000);
    expect(chamber.printed).toEqual(chamber.wellMixed);
    const { inputs } = chamber.wellMixed.time.working;
    expect(inputs.find(({ symbol }) => symbol === 't_b')?.value).toBeCloseTo(bleed, 6);
    expect(faultsOf(chamber)).toEqual([]);
    expect(faultsOf(chamberOf(1, hoopJob([300], holes({ except: [{ member: 'crossbar 1', end: 'start' }] }))))).toEqual(
      [],
    );
  });

  it('more legs take longer, and more gas is sooner done', () => {
    const alone = bleedTime([leg(300)], STEP, BY);
    expect(bleedTime([leg(300), leg(200)], STEP, BY)).toBeGreaterThan(alone);
    expect(bleedTime([leg(300)], STEP, { ...BY, flow: 20 })).toBeLessThan(alone);
  });
});
