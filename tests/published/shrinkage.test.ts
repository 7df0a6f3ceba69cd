/** What a weld pulls in: published forms from memory and second-hand, and the form that is derived from heat. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { AUSTENITIC } from '../../server/solver/tube/heat-properties.ts';
import {
  awsShrinkage,
  blodgettShrinkage,
  gapShrinkage,
  heatShrinkage,
  reckonedShrinkage,
  settledShrinkage,
  shrinkageOf,
  STAINLESS,
} from '../../server/solver/welding/shrinkage.ts';
import { bevelArea, fusedArea } from '../../server/solver/welding/weld-section.ts';
import { BRANCH, jobWith, MAIN, padAt, SADDLE, settings, welded } from '../solver/welding-frames.ts';

describe('heat that goes through the wall', () => {
  it('α/ρc is 4.3·10⁻¹² m³/J, 1.3 to 1.4 times the 3.1 of carbon steel', () => {
    const ratio = AUSTENITIC.growth / AUSTENITIC.heatCapacity;
    expect((ratio * 1e12).toFixed(1)).toBe('4.3');
    expect(ratio / 3.1e-12).toBeGreaterThan(1.3);
    expect(ratio / 3.1e-12).toBeLessThan(1.4);
  });
  it.each([
    [205, 1.65, '0.53'],
    [135, 1.2, '0.48'],
    [264, 2, '0.57'],
    [400, 3, '0.57'],
  ])('%d J/mm on %d mm: %s mm', (heat, wall, printed) => {
    expect(heatShrinkage(heat, wall).toFixed(2)).toBe(printed);
  });
});

describe('published forms', () => {
  it.each([
    [6, '0.81'],
    [10, '1.24'],
    [20, '2.37'],
  ])('AWS, 60° V of %d mm, gap 2, face 2: %s mm', (wall, printed) => {
    const area = bevelArea({ wall, gap: 2, land: 2, angle: Math.PI / 3 });
    expect(awsShrinkage({ area, wall, gap: 2 }).toFixed(2)).toBe(printed);
  });
  it('AWS, 4 mm bead on 1.65 mm, mean width 3.4: 0.68 mm', () => {
    expect(awsShrinkage({ area: 3.4 * 1.65, wall: 1.65, gap: 0 }).toFixed(2)).toBe('0.68');
  });
  it('Blodgett: a tenth of the mean width', () => {
    expect(blodgettShrinkage({ area: 3.4 * 1.65, wall: 1.65 })).toBeCloseTo(0.34, 12);
  });
  it('Capel: stainless 1.30 times carbon steel', () => {
    expect((22.7 / 17.4).toFixed(2)).toBe(STAINLESS.toFixed(2));
  });
});

describe('reckoned', () => {
  it('a tight thin-wall butt: 0.5 mm, between 0.3 and 0.8', () => {
    expect(shrinkageOf(jobWith({})).value.toFixed(1)).toBe('0.5');
    for (const wall of [1, 1.2, 1.5, 1.65, 2]) {
      const { value } = shrinkageOf(jobWith({ tube: { wall } }));
      expect(value).toBeGreaterThan(0.3);
      expect(value).toBeLessThan(0.8);
    }
  });
  it('is ± half at least, and holds what the published forms say', () => {
    for (const wall of [1, 1.65, 3]) {
      const { value, plusMinus } = shrinkageOf(jobWith({ tube: { wall } }));
      expect(plusMinus).toBeGreaterThanOrEqual(value / 2);
      const { groove } = jobWith({}).welding;
      const area = fusedArea({ wall, gap: 0, preparation: 'square-tight', groove });
      for (const other of [STAINLESS * awsShrinkage({ area, wall, gap: 0 }), blodgettShrinkage({ area, wall })])
        expect(Math.abs(other - value)).toBeLessThanOrEqual(plusMinus + 1e-12);
    }
  });
  it('a gap adds a third of itself, and all of it lies within the band', () => {
    expect(gapShrinkage(1)).toBeCloseTo(0.325, 12);
    const [tight, open] = [0, 1].map((gap) =>
      reckonedShrinkage({ heat: 200, wall: 2, gap, area: 7, grade: { from: 'catalogue', key: '316L' } }),
    );
    expect(open!.value - tight!.value).toBeCloseTo(gapShrinkage(1), 12);
    expect(tight!.value + 1 - open!.value).toBeLessThanOrEqual(open!.plusMinus + 1e-12);
  });
  it('duplex pulls in less for the same heat', () => {
    const of = (key: '316L' | '2205') =>
      reckonedShrinkage({ heat: 300, wall: 2, gap: 0, area: 7, grade: { from: 'catalogue', key } }).value;
    expect(of('2205') / of('316L')).toBeCloseTo(((13 / 17) * 7900) / 7800, 12);
  });
  it('grows with current, and falls with travel and wall', () => {
    const valueOf = (current: number, travelSpeed: number, wall: number) =>
      shrinkageOf(jobWith({ tube: { wall }, welding: settings('butt', { current, travelSpeed }) })).value;
    fc.assert(
      fc.property(
        fc.double({ min: 20, max: 80, noNaN: true }),
        fc.double({ min: 1, max: 4, noNaN: true }),
        fc.double({ min: 1, max: 3, noNaN: true }),
        fc.double({ min: 1.01, max: 2, noNaN: true }),
        (current, travel, wall, more) => {
          const value = valueOf(current, travel, wall);
          expect(valueOf(current * more, travel, wall)).toBeCloseTo(value * more, 10);
          expect(valueOf(current, travel * more, wall)).toBeCloseTo(value / more, 10);
          expect(valueOf(current, travel, wall * more)).toBeCloseTo(value / more, 10);
        },
      ),
    );
  });
});

describe('settled', () => {
  it('is what is typed, nothing included, and else what is reckoned', () => {
    for (const shrinkage of [0, 0.4]) expect(settledShrinkage(jobWith({ closing: { shrinkage } }))).toBe(shrinkage);
    const job = jobWith({ closing: { shrinkage: null } });
    expect(settledShrinkage(job)).toBe(shrinkageOf(job).value);
    const { welding } = welded(job);
    expect(welding.shrinkage).toEqual(welding.reckonedShrinkage);
    expect(welding.welds[0]!.shrinkage).toEqual(welding.shrinkage);
  });
  it('is never more than can be typed', () => {
    const hot = settings('butt', { current: 500, voltage: 40, travelSpeed: 0.05 });
    expect(settledShrinkage(jobWith({ closing: { shrinkage: null }, welding: hot }))).toBe(10);
  });
});

it('a fillet round a branch pulls 0.8 mm in, ± half; a plate moves nothing', () => {
  const { welding } = welded(jobWith({ more: { fixing: [padAt('start', { hole: 8 })] } }), {
    members: [MAIN, BRANCH],
    places: [SADDLE],
  });
  const [saddle, pad] = welding.welds;
  expect([saddle!.shrinkage.value, saddle!.shrinkage.band!.plusMinus]).toEqual([0.8, 0.4]);
  expect(pad!.shrinkage.value).toBe(0);
});
