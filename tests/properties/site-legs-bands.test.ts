// Bands of legs held against errors drawn at random, and a plan whatever is typed.
import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { Leg } from '../../server/job/leg.ts';
import { laySite } from '../../server/solver/site/lay-site.ts';
import { cuttingDoubt } from '../../server/solver/site/legs/leg-band.ts';
import { cutLength } from '../../server/solver/site/legs/leg-cut.ts';
import { studyLeg } from '../../server/solver/site/legs/leg-study.ts';
import { siteDoubts } from '../../server/solver/site/site-doubts.ts';
import { faultsOf } from '../solver/figures-in.ts';
import { along, legOf, planned, studyOf } from '../solver/site/legs-made-up.ts';
import { number, sites } from './leg-sites.ts';

/** Normal numbers of mean 0 and standard deviation 1 by Box and Muller's method, the same every time. */
function normals(seed: number): () => number {
  let state = seed;
  const uniform = (): number => {
    // Park & Miller's generator, Comm. ACM 31 (1988) 1192
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}

const DRAWS = 2000;

it('the ± of a leg is what errors drawn at random make of it, and so is what is left once the first leg stands', () => {
  const normal = normals(2811);
  for (const source of fc.sample(sites, { numRuns: 3, seed: 7 })) {
    const study = studyOf(source);
    const legs = planned(source).legs;
    expect(legs).toHaveLength(2);
    const studied = [0, 1].map((index) => {
      const one = studyLeg(study, index);
      if (one === undefined || !('study' in one)) throw new Error('a leg that cannot be cut');
      return one.study;
    });
    const doubts = siteDoubts(source);
    const drawn = Array.from({ length: DRAWS }, () => {
      const errors = new Map(doubts.map(({ field, plusMinus }) => [field, plusMinus * normal()]));
      const { laid } = laySite(source, (field) => errors.get(field) ?? 0);
      return studied.map((one) => {
        const length = one.pick((cut) => cutLength(cut, one.at.headTip))(laid)!;
        return length - legs[one.index]!.cutLength.value + cuttingDoubt(one.cut) * normal();
      });
    });
    const spread = (values: readonly number[]): number =>
      Math.sqrt(values.reduce((sum, value) => sum + value ** 2, 0) / values.length);
    for (const index of [0, 1]) {
      const band = legs[index]!.cutLength.band!.plusMinus;
      expect(Math.abs(spread(drawn.map((errors) => errors[index]!)) / band - 1)).toBeLessThan(0.1);
    }
    const first = legs.findIndex(({ order }) => order === 1);
    const [stands, fitted] = [legs[first]!, legs[1 - first]!];
    const share = fitted.perDegree!.value / stands.perDegree!.value;
    const then = drawn.map((errors) => errors[1 - first]! - share * errors[first]!);
    expect(Math.abs(spread(then) / fitted.bandThen.value - 1)).toBeLessThan(0.1);
  }
});

it('a plan of legs has no number that is none, whatever foot, head and tube are', () => {
  const coordinate = number(-900, 900);
  const anywhere = fc.record({ x: coordinate, y: coordinate, z: coordinate });
  const any = fc.record({
    at: anywhere,
    // half of them stand on something level
    vector: fc.oneof(anywhere, fc.constant({ x: 0.1, y: 0, z: 1 })),
    end: fc.constantFrom(
      { end: 'mitre', plate: 3 } as const,
      { end: 'square', plate: 0 } as const,
      { end: 'socket', depth: 30 } as const,
    ),
    distance: number(0, 1000),
    head: fc.constantFrom({ end: 'saddle' } as const, { end: 'eye', takes: 20 } as const),
    outsideDiameter: fc.oneof(number(1, 60), number(20, 38)),
    wall: fc.oneof(number(0.1, 20), number(1, 3)),
    adds: fc.oneof(number(0, 900), number(5, 100)),
  });
  const seen = { planned: 0, stopped: 0 };
  fc.assert(
    fc.property(sites, any, (source, of) => {
      const base = legOf();
      const leg: Leg = {
        ...base,
        foot: { ...base.foot, at: of.at, surface: { by: 'axes', vector: of.vector }, end: of.end },
        head: { ...base.head, at: along('rail', of.distance), end: of.head },
        tube: { outsideDiameter: of.outsideDiameter, wall: of.wall },
        adjust: { by: 'slip', adds: of.adds, travel: 5 },
      };
      const { legs, findings } = planned({ ...source, site: { ...source.site, legs: [leg] } });
      expect(faultsOf(legs)).toEqual([]);
      const data = findings.flatMap((one) => Object.values(one.data)).filter((value) => typeof value === 'number');
      expect(data.every(Number.isFinite)).toBe(true);
      // a leg is planned, or something stops it
      expect(legs.length === 1 || findings.some(({ grade }) => grade === 'stop')).toBe(true);
      seen[legs.length === 1 ? 'planned' : 'stopped'] += 1;
    }),
    { numRuns: 100 },
  );
  expect(seen.planned).toBeGreaterThan(5);
  expect(seen.stopped).toBeGreaterThan(5);
});
