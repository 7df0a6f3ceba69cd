/**
 * Well mixed: sweep-through purging after Crowl & Louvar, Chemical Process Safety (example from memory; numbers
 * computed beforehand). Long tube: Taylor 1953, Aris 1956, Ogata & Banks 1961; tables computed beforehand, those of
 * the one-dimensional equation by finite volumes. Reynolds and error function: computed beforehand; DLMF 7.2.
 */
import { describe, expect, it } from 'vitest';
import { AIR_OXYGEN } from '../../server/solver/purge/argon.ts';
import { erfc, erfcinv } from '../../server/solver/purge/error-function.ts';
import * as models from '../../server/solver/purge/purge-models.ts';
import { longTubeVolumes } from './one-long-tube.ts';

const step = (target: number) => models.fromAir({ target, supply: 2 });

describe('well mixed', () => {
  it('sweeps 1000 ft³ through', () => {
    const volume = (supply: number) => 1000 * models.wellMixedVolumes({ start: 21, target: 1.25, supply });
    expect(volume(0.01).toFixed(2)).toBe('2828.93');
    expect(volume(0).toFixed(0)).toBe('2821');
  });
  it.each([
    [10_000, '3.04'],
    [5000, '3.74'],
    [1000, '5.35'],
    [500, '6.04'],
    [200, '6.96'],
    [100, '7.67'],
    [50, '8.38'],
    [20, '9.36'],
    [10, '10.17'],
  ])('%d ppm takes %s volumes', (target, printed) => {
    expect(models.wellMixedVolumes(step(target)).toFixed(2)).toBe(printed);
  });
  it.each([
    [2, 50, '8.38'],
    [5, 50, '8.45'],
    [10, 50, '8.56'],
    [10, 20, '9.95'],
  ])('gas with %d ppm to %d ppm takes %s', (supply, target, printed) => {
    expect(models.wellMixedVolumes(models.fromAir({ target, supply })).toFixed(2)).toBe(printed);
  });
  it.each([
    [1, 77_072],
    [2, 28_354],
    [3, 10_432],
    [4, 3839],
    [5, 1414],
    [6, 521],
    [7, 193],
    [8, 72],
    [9, 28],
    [10, 12],
  ])('after %d volumes %d ppm are left', (volumes, printed) => {
    expect(Math.round(models.wellMixedOxygen({ start: AIR_OXYGEN, supply: 2 }, volumes))).toBe(printed);
  });
});

describe('long tube', () => {
  it.each([
    [1000, '1.833'],
    [500, '1.996'],
    [200, '2.197'],
    [100, '2.340'],
    [50, '2.478'],
    [20, '2.657'],
    [10, '2.797'],
  ])('q of %d ppm is %s', (target, printed) => {
    expect(models.stepQuantile(step(target)).toFixed(3)).toBe(printed);
  });

  it.each([
    [0.05, '8.6', ['3.27', '4.33', '4.66', '5.11']],
    [0.1, '17.1', ['2.36', '2.94', '3.12', '3.35']],
    [0.2, '34.2', ['1.85', '2.18', '2.28', '2.41']],
    [0.3, '51.3', ['1.66', '1.90', '1.97', '2.07']],
    [0.6, '102.6', ['1.43', '1.58', '1.62', '1.68']],
    [1.2, '205', ['1.29', '1.38', '1.41', '1.45']],
    [2.4, '410', ['1.20', '1.26', '1.28', '1.30']],
  ] as const)('%d m for each L/min: Bo %s whatever the bore', (ratio, printed, volumes) => {
    // Bo = 48π D L/Q is the limit of a large Peclet number
    const bo = 48 * Math.PI * 1.89e-5 * ratio * 60_000;
    const digits = printed.includes('.') ? 1 : 0;
    expect(bo.toFixed(digits)).toBe(printed);
    const got = [1000, 100, 50, 20].map((target) =>
      models.closedFormVolumes({ bodenstein: bo, quantile: models.stepQuantile(step(target)) }).toFixed(2),
    );
    expect(got).toEqual(volumes);
    // 0.8 % of it is the molecular term 192/Pe² at this bore and flow
    const tube = { length: ratio * 5000, bore: 34.8, flow: 5 };
    expect(models.bodenstein(tube) / bo).toBeGreaterThan(0.992);
    expect(models.bodenstein(tube) / bo).toBeLessThan(1);
  });

  it.each([
    [5, '0.0876', '227', '2.581e-3', '101.9', ['1.626', '1.435', '1.263'], '34.2', '55.7', '287'],
    [10, '0.1752', '454', '1.027e-2', '51.2', ['1.973', '1.660', '1.388'], '17.1', '33.8', '143'],
  ] as const)('34.8 mm × 3 m at %d L/min', (flow, speed, reynolds, dispersion, bodenstein, volumes, ...seconds) => {
    const tube = { length: 3000, bore: 34.8, flow };
    expect(models.meanSpeed(tube).toFixed(4)).toBe(speed);
    expect(models.reynolds(tube).toFixed(0)).toBe(reynolds);
    expect(models.dispersion(tube).toExponential(3)).toBe(dispersion);
    expect(models.bodenstein(tube).toFixed(1)).toBe(bodenstein);
    const bo = models.bodenstein(tube);
    const got = [50, 1000, 10_000].map((target) =>
      models.closedFormVolumes({ bodenstein: bo, quantile: models.stepQuantile(step(target)) }).toFixed(3),
    );
    expect(got).toEqual(volumes);
    const [once, printed, mixed] = seconds;
    const fill = 3 / models.meanSpeed(tube);
    expect(fill.toFixed(1)).toBe(once);
    expect(
      (fill * models.closedFormVolumes({ bodenstein: bo, quantile: models.stepQuantile(step(50)) })).toFixed(1),
    ).toBe(printed);
    expect((fill * models.wellMixedVolumes(step(50))).toFixed(0)).toBe(mixed);
    // litres: what the flow brings in that time
    expect(((flow * fill) / 60).toFixed(4)).toBe('2.8534');
  });

  it('N(101.9, 2.478) and N(51.2, 2.478)', () => {
    expect(models.closedFormVolumes({ bodenstein: 101.9, quantile: 2.478 }).toFixed(3)).toBe('1.626');
    expect(models.closedFormVolumes({ bodenstein: 51.2, quantile: 2.478 }).toFixed(3)).toBe('1.973');
  });

  it.each([
    [15.7, '23'],
    [22.1, '32'],
    [28.4, '41'],
    [34.8, '51'],
    [47.5, '69'],
    [60.2, '88'],
  ])('a bore of %d mm stays laminar up to %s L/min', (bore, printed) => {
    expect(models.flowAtReynolds(bore, models.LAMINAR_LIMIT).toFixed(0)).toBe(printed);
  });

  // One-dimensional finite-volume solution at 50 ppm with a share f of the 3 m mixed at the feed: the estimate is never
  // below it, and at most a third above.
  it.each([
    [5, 0.05, 1.64],
    [5, 0.1, 1.85],
    [5, 0.2, 2.52],
    [10, 0.05, 1.92],
    [10, 0.1, 2.02],
    [10, 0.2, 2.57],
  ])('at %d L/min with %d mixed, not below %d volumes', (flow, share, solved) => {
    const wellMixed = models.wellMixedVolumes(step(50));
    const rest = models.bodenstein({ length: 3000 * (1 - share), bore: 34.8, flow });
    const closed = models.closedFormVolumes({ bodenstein: rest, quantile: models.stepQuantile(step(50)) });
    const estimate = share * wellMixed + (1 - share) * closed;
    expect(estimate).toBeGreaterThan(solved);
    expect(estimate).toBeLessThan((4 / 3) * solved);
  });
  it('the mixed share of 34.8 mm × 3 m is 0.058, and all of a short tube', () => {
    expect(models.tubesInRow([{ length: 3000, bore: 34.8, flow: 10 }])?.mixedShare.toFixed(3)).toBe('0.058');
    const short = longTubeVolumes({ length: 150, bore: 34.8, flow: 10 }, step(50));
    expect(short).toBe(models.wellMixedVolumes(step(50)));
  });
  it('has no answer for a turbulent flow', () => {
    expect(longTubeVolumes({ length: 3000, bore: 15.7, flow: 24 }, step(50))).toBeNull();
    expect(longTubeVolumes({ length: 3000, bore: 15.7, flow: 22 }, step(50))).not.toBeNull();
  });
});

describe('error function', () => {
  it('has the printed values', () => {
    expect(erfc(0.5).toFixed(10)).toBe('0.4795001222');
    expect(erfc(1).toFixed(10)).toBe('0.1572992071');
    expect(erfc(2).toPrecision(9)).toBe('0.00467773498');
  });
  it.each([-2, 0.1, 1.5, 2, 3.5, 5])('erfcinv brings %d back', (x) => {
    expect(erfcinv(erfc(x))).toBeCloseTo(x, 9);
  });
});
