/**
 * 34.8 mm × 3 m from air to a target with gas of 2 ppm: the figures of programs of their own, computed beforehand by
 * finite volumes along the tube, and ring by ring across it. The solvers here are the witnesses of
 * tests/properties/purge-long-tube.test.ts; here they are held to what was printed.
 */
import { describe, expect, it } from 'vitest';
import { ARGON_AIR_DIFFUSIVITY } from '../../server/solver/purge/argon.ts';
import { erfc } from '../../server/solver/purge/error-function.ts';
import * as models from '../../server/solver/purge/purge-models.ts';
import { secondsUntil, type Column } from '../properties/purge-advection.ts';
import { volumesThrough } from '../properties/purge-cross-section.ts';

const step = (target: number) => models.fromAir({ target, supply: 2 });
const LEFT = [10_000, 1000, 50].map((target) => models.remaining(step(target)));
const AT_50 = [models.remaining(step(50))];
const tube = (flow: number) => ({ length: 3000, bore: 34.8, flow });

const column = (flow: number, mixed = 0): Column => ({
  length: 3,
  speed: models.meanSpeed(tube(flow)),
  dispersion: models.dispersion(tube(flow)),
  mixed,
});

const volumes = (of: Column, shares: readonly number[], grid: { cells: number; at?: number }) =>
  secondsUntil(of, shares, grid).map((seconds) => (seconds * of.speed) / of.length);

describe('along the tube, closed ends', () => {
  it.each([
    [5, ['1.248', '1.418', '1.606']],
    [10, ['1.356', '1.619', '1.920']],
  ])('at %d L/min to 10 000, 1000 and 50 ppm: %s volumes', (flow, printed) => {
    const coarse = volumes(column(flow), LEFT, { cells: 700 });
    const fine = volumes(column(flow), LEFT, { cells: 1400 });
    expect(fine.map((one) => one.toFixed(3))).toEqual(printed);
    // halving the cells moves none of them by a unit of the last digit
    for (const [index, one] of fine.entries()) expect(Math.abs(one - coarse[index]!)).toBeLessThan(5e-4);
  });

  it.each([
    [5, [0, 0.05, 0.1, 0.2], ['1.61', '1.64', '1.85', '2.52']],
    [10, [0, 0.05, 0.1, 0.2], ['1.92', '1.92', '2.02', '2.57']],
  ])('at %d L/min with a share of %s mixed at the feed: %s volumes', (flow, shares, printed) => {
    const got = shares.map((mixed) => volumes(column(flow, mixed), AT_50, { cells: 800 })[0]!.toFixed(2));
    expect(got).toEqual(printed);
  });

  it('places before the outlet have it sooner: a quarter on at 0.64 volumes, half 0.98, three quarters 1.31', () => {
    const got = [0.25, 0.5, 0.75].map((at) => volumes(column(5), AT_50, { cells: 800, at })[0]!.toFixed(2));
    expect(got).toEqual(['0.64', '0.98', '1.31']);
  });
});

describe('Ogata & Banks with both terms', () => {
  /** ½[erfc((L − Ut)/2√(Kt)) + exp(UL/K) erfc((L + Ut)/2√(Kt))] of the gas has come; what is left of the air. */
  const left = (bodenstein: number, swept: number): number => {
    const width = 2 * Math.sqrt(swept / bodenstein);
    return 1 - (erfc((1 - swept) / width) + Math.exp(bodenstein) * erfc((1 + swept) / width)) / 2;
  };
  it.each([
    [5, '1.609'],
    [10, '1.932'],
  ])('at %d L/min %s volumes to 50 ppm', (flow, printed) => {
    let [low, high] = [1, 4];
    for (let round = 0; round < 60; round += 1) {
      const middle = (low + high) / 2;
      if (left(models.bodenstein(tube(flow)), middle) > AT_50[0]!) low = middle;
      else high = middle;
    }
    expect(low.toFixed(3)).toBe(printed);
  });
});

describe('across the tube', () => {
  // The two programs share no code and no grid; refining this one from 12 × 150 to 28 × 1000 moves it by 0.15 %, so
  // that 0.4 % is what two grids may be apart.
  const APART = 0.004;
  it.each([
    [5, 1.532, [1.27, 1.415, 1.559]],
    [10, 1.747, [1.398, 1.6, 1.798]],
  ])('at %d L/min a mean of %d volumes to 50 ppm, and at the wall %s', (flow, mean, wall) => {
    const speed = models.meanSpeed(tube(flow));
    const ratios = {
      across: (ARGON_AIR_DIFFUSIVITY * (3 / speed)) / 0.0174 ** 2,
      along: ARGON_AIR_DIFFUSIVITY / (speed * 3),
    };
    const got = volumesThrough(ratios, LEFT, { rings: 16, cells: 240 });
    expect(Math.abs(got.mean[2]! / mean - 1)).toBeLessThan(APART);
    for (const [index, printed] of wall.entries()) expect(Math.abs(got.wall[index]! / printed - 1)).toBeLessThan(APART);
  });

  // τ = π D L/Q, with L/Q of 1.2 to 0.006 m for each L/min; printed wall figures two digits after the point.
  it.each([
    [1.2, '4.28', '1.41', 1.39],
    [0.6, '2.14', '1.62', 1.56],
    [0.3, '1.07', '1.97', 1.8],
    [0.15, '0.53', '2.57', 2.13],
    [0.1, '0.36', '3.12', 2.37],
    [0.06, '0.21', '4.17', 2.77],
    [0.03, '0.107', '6.65', 3.36],
    [0.015, '0.053', '11.5', 4.11],
    [0.006, '0.021', '25.9', 5.47],
  ])('%d m for each L/min: τ %s, closed form %s, wall %d', (ratio, printedTau, printedClosed, wall) => {
    const across = Math.PI * ARGON_AIR_DIFFUSIVITY * ratio * 60_000;
    const digits = (text: string) => text.split('.')[1]?.length;
    expect(across.toFixed(digits(printedTau))).toBe(printedTau);
    // bore and flow are not printed, and tell by the molecular part of the dispersion: 34.8 mm at 5 and at 10 L/min
    const closedAt = (flow: number) =>
      models.closedFormVolumes({
        bodenstein: models.bodenstein({ length: 1000 * ratio * flow, bore: 34.8, flow }),
        quantile: models.stepQuantile(step(50)),
      });
    const [closed, slow] = [closedAt(10), closedAt(5)];
    const half = 0.5 * 10 ** -(digits(printedClosed) ?? 0);
    expect(Number(printedClosed)).toBeGreaterThan(closed - half);
    expect(Number(printedClosed)).toBeLessThan(slow + half);
    expect(slow / closed).toBeLessThan(1.007);
    // this grid is coarse and leaves diffusion along the tube out: both tell more, the shorter the tube is for its flow
    const got = volumesThrough({ across, along: 0 }, AT_50, { rings: 16, cells: 160 }).wall[0]!;
    expect(Math.abs(got / wall - 1)).toBeLessThan(across > 0.3 ? 0.01 : 0.025);
    expect(got).toBeLessThan(Math.min(closed, models.wellMixedVolumes(step(50))));
  });
});
