import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  beamSag,
  beamStress,
  loadAtProof,
  type Beam,
  type BeamCase,
  type BeamLoad,
} from '../../../server/solver/site/strength/beam.ts';
import { eulerLoad, reducedStrut } from '../../../server/solver/site/strength/strut.ts';
import { sectionProperties } from '../../../server/solver/tube/section.ts';

const beamOf = (kind: BeamCase, length: number, size = { outsideDiameter: 25.4, wall: 1.65 }): Beam => {
  const { elasticModulus: sectionModulus, secondMoment } = sectionProperties(size);
  return { case: kind, length, elasticModulus: 193_000, sectionModulus, secondMoment };
};

const point = (whole: number): BeamLoad => ({ kind: 'point', whole });
const along = (whole: number): BeamLoad => ({ kind: 'along', whole });

/**
 * Bending moment at a place [N mm]. Of a point load: half of it from the nearer support; all of it from the free end. Of one
 * along the beam: what a support bears less what stands before the place; what stands beyond it at half its way.
 */
function moment(held: BeamCase, { kind, whole }: BeamLoad, length: number, x: number): number {
  if (kind === 'point') return held === 'beam' ? (whole / 2) * Math.min(x, length - x) : whole * (length - x);
  const each = whole / length;
  return held === 'beam' ? (whole / 2) * x - (each * x * x) / 2 : (each * (length - x) ** 2) / 2;
}

/** The loaded place's sag by integrating the curvature twice, in small steps, without any of the formulas. */
function integrated({ case: kind, length, elasticModulus, secondMoment }: Beam, load: BeamLoad): number {
  const steps = 20_000;
  const step = length / steps;
  let slope = 0;
  let sag = 0;
  const end = kind === 'beam' ? steps / 2 : steps;
  // a beam is level at its middle, so that the ends rise over it as the free end of a cantilever sinks below its hold
  for (let index = 0; index < end; index += 1) {
    const x = kind === 'beam' ? length / 2 - (index + 0.5) * step : (index + 0.5) * step;
    const curvature = moment(kind, load, length, x) / (elasticModulus * secondMoment);
    sag += (slope + (curvature * step) / 2) * step;
    slope += curvature * step;
  }
  return sag;
}

describe('a simple beam', () => {
  it.each(['beam', 'cantilever'] as const)('%s: sags as its bending line does', (kind) => {
    for (const [length, load] of [
      [600, point(890)],
      [1350, point(300)],
      [140, point(1500)],
      [600, along(438)],
      [2500, along(1825)],
    ] as const) {
      const beam = beamOf(kind, length);
      const sag = beamSag(beam, load);
      expect(Math.abs(sag / integrated(beam, load) - 1)).toBeLessThan(1e-6);
      const most = Math.max(...[0, 0.25, 0.5, 0.75, 1].map((share) => moment(kind, load, length, share * length)));
      expect(beamStress(beam, load)).toBeCloseTo((most * 25.4) / 2 / beam.secondMoment, 9);
    }
  });

  it('25.4 × 1.65, 600 mm, 890 N at the middle: 133 500 N·mm, by hand', () => {
    // I = π/64 (25.4⁴ − 22.1⁴) = 8722.2 mm⁴, W = 686.8 mm³
    const beam = beamOf('beam', 600);
    expect(beam.secondMoment.toFixed(1)).toBe('8722.2');
    expect(beamStress(beam, point(890)).toFixed(1)).toBe('194.4');
    expect(beamSag(beam, point(890)).toFixed(2)).toBe('2.38');
  });

  it('of a load along a rail and one at its middle the first governs from 2.44 m on, by hand', () => {
    // P L/4 = w L²/8 at L = 2 P/w = 2 × 890/730 m
    const stresses = (length: number) => [
      beamStress(beamOf('beam', length), along(0.73 * length)),
      beamStress(beamOf('beam', length), point(890)),
    ];
    const [less, more] = [stresses(2400), stresses(2480)];
    expect(less[0]!).toBeLessThan(less[1]!);
    expect(more[0]!).toBeGreaterThan(more[1]!);
  });

  it('is at its proof stress under the load that is told for it', () => {
    fc.assert(
      fc.property(
        fc.constantFrom<BeamCase>('beam', 'cantilever'),
        fc.double({ min: 20, max: 5000, noNaN: true }),
        fc.double({ min: 50, max: 900, noNaN: true }),
        (kind, length, proof) => {
          const beam = beamOf(kind, length);
          expect(beamStress(beam, point(loadAtProof(beam, proof))) / proof).toBeCloseTo(1, 12);
        },
      ),
      { numRuns: 100 },
    );
  });

  it.each([1e-3, 1e3])(
    '%d times as large and with its square of the load: the same stress, so many times the sag',
    (times) => {
      for (const kind of ['beam', 'cantilever'] as const) {
        const small = beamOf(kind, 600);
        const large = beamOf(kind, 600 * times, { outsideDiameter: 25.4 * times, wall: 1.65 * times });
        expect(beamStress(large, point(890 * times ** 2)) / beamStress(small, point(890))).toBeCloseTo(1, 9);
        expect(beamSag(large, point(890 * times ** 2)) / (times * beamSag(small, point(890)))).toBeCloseTo(1, 9);
      }
    },
  );
});

describe('a strut', () => {
  const euler = (bucklingLength: number, times = 1) => {
    const { secondMoment } = sectionProperties({ outsideDiameter: 25.4 * times, wall: 1.65 * times });
    return eulerLoad({ elasticModulus: 193_000, secondMoment, bucklingLength: bucklingLength * times });
  };

  it.each([1e-3, 1e3])('%d times as large carries its square as much, reduced or not', (times) => {
    const area = (by: number) => sectionProperties({ outsideDiameter: 25.4 * by, wall: 1.65 * by }).area;
    expect(euler(800, times) / (times ** 2 * euler(800))).toBeCloseTo(1, 9);
    const small = reducedStrut({ area: area(1), proofStress: 205, euler: euler(800) });
    const large = reducedStrut({ area: area(times), proofStress: 205, euler: euler(800, times) });
    expect(large.load / (times ** 2 * small.load)).toBeCloseTo(1, 9);
  });

  it('carries less than Euler and than its yield load, and less the longer it is, at every length', () => {
    const { area } = sectionProperties({ outsideDiameter: 25.4, wall: 1.65 });
    let before = Infinity;
    for (let long = 1; long < 50_000; long *= 1.3) {
      const critical = euler(long);
      const { load, share } = reducedStrut({ area, proofStress: 205, euler: critical });
      expect(Number.isFinite(load)).toBe(true);
      expect(share).toBeLessThanOrEqual(1);
      expect(load).toBeLessThanOrEqual((Math.min(critical, area * 205) / 1.1) * (1 + 1e-12));
      expect(load).toBeLessThanOrEqual(before);
      before = load;
    }
  });
});
