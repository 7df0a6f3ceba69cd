// What must not change where a whole site is mirrored, turned or scaled.
import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { Leg } from '../../server/job/leg.ts';
import type { LegPlan } from '../../server/plan/leg.ts';
import { rotate, type Vector3 } from '../../server/solver/geometry/vector.ts';
import type { SiteSource } from '../../server/solver/site/laid-site.ts';
import { along, frameOf, planned, sourceOf, tubeOf } from '../solver/site/legs-made-up.ts';
import { movedSource, number, sites, type Move } from './leg-sites.ts';

/** Numbers of a leg that belong to it alone, wherever it stands. */
const ownNumbers = (leg: LegPlan): number[] => [
  leg.centreLength.value,
  leg.cutLength.value,
  leg.middleLength.value,
  leg.shortest.value,
  leg.longest.value,
  leg.foot.tilt.value,
  leg.foot.takes.value,
  leg.head.axisAngle.value,
  leg.head.station.value,
  leg.mass.value,
  leg.perDegree?.value ?? 0,
  leg.rollRound === null ? 0 : Math.abs(leg.rollRound.value),
];

function expectAlike(one: readonly number[], other: readonly number[], digits: number): void {
  expect(one).toHaveLength(other.length);
  for (const [index, value] of one.entries()) expect(value).toBeCloseTo(other[index]!, digits);
}

/** Between two turns that mean the same where they are half a turn apart [degrees]: a saddle at right angles has two sides. */
const turnedApart = (one: number, other: number): number =>
  Math.abs(Math.sin((one - other) * (Math.PI / 180))) * (180 / Math.PI);

/** Legs of a site that can be cut; some of the drawn ones cannot, and say so. */
const legsOf = (source: SiteSource): readonly LegPlan[] => planned(source).legs;

/** Most drawn sites have a leg that can be cut: fewer would mean that nothing was held against anything. */
const LEAST_SEEN = 40;

it('a mirrored site has the same legs, their roll the other way round', () => {
  let seen = 0;
  const mirror: Move = {
    point: ({ x, y, z }) => ({ x, y: -y, z }),
    axis: ({ x, y, z }) => ({ x: -x, y, z: -z }),
  };
  fc.assert(
    fc.property(sites, (source) => {
      const [here, there] = [legsOf(source), legsOf(movedSource(source, mirror))];
      expect(there.map(({ order }) => order)).toEqual(here.map(({ order }) => order));
      for (const [index, leg] of here.entries()) {
        const other = there[index]!;
        seen += 1;
        expectAlike(ownNumbers(other), ownNumbers(leg), 6);
        // a value that is off to the other side does the same, but for what is not straight in it
        const share = other.cutLength.band!.plusMinus / leg.cutLength.band!.plusMinus;
        expect(Math.abs(share - 1)).toBeLessThan(0.01);
        expect(Math.abs(other.bandThen.value / leg.bandThen.value - 1)).toBeLessThan(0.02);
        expect(other.side).toBe({ port: 'starboard', starboard: 'port', middle: 'middle' }[leg.side]);
        if (leg.roll !== null) expect(turnedApart(other.roll!.value, -leg.roll.value)).toBeLessThan(1e-5);
      }
    }),
    { numRuns: 40 },
  );
  expect(seen).toBeGreaterThanOrEqual(LEAST_SEEN);
});

it('a site that is turned altogether has the same legs', () => {
  let seen = 0;
  fc.assert(
    fc.property(sites, number(-3, 3), number(-0.3, 0.3), number(-0.3, 0.3), (source, yaw, pitch, heel) => {
      const turn = (a: Vector3): Vector3 =>
        rotate(rotate(rotate(a, { x: 0, y: 0, z: 1 }, yaw), { x: 0, y: 1, z: 0 }, pitch), { x: 1, y: 0, z: 0 }, heel);
      const [here, there] = [legsOf(source), legsOf(movedSource(source, { point: turn, axis: turn }))];
      expect(there).toHaveLength(here.length);
      for (const [index, leg] of here.entries()) {
        const other = there[index]!;
        seen += 1;
        // the level is solved to a billionth of a turn
        expectAlike(ownNumbers(other), ownNumbers(leg), 4);
        if (leg.roll !== null) expect(turnedApart(other.roll!.value, leg.roll.value)).toBeLessThan(1e-4);
      }
    }),
    { numRuns: 40 },
  );
  expect(seen).toBeGreaterThanOrEqual(LEAST_SEEN);
});

it('a site a thousand times as large or as small has legs of that size', () => {
  let seen = 0;
  fc.assert(
    fc.property(sites, fc.constantFrom(1e-3, 1e3), (source, factor) => {
      const size = ({ x, y, z }: Vector3): Vector3 => ({ x: x * factor, y: y * factor, z: z * factor });
      const straight = (of: SiteSource, by: number): SiteSource => {
        const rail = tubeOf('rail', { x: -500 * by, y: -420 * by, z: -20 * by }, { x: 0, y: 1, z: 0 }, [
          { kind: 'straight', length: 900 * by },
        ]);
        const hinge = tubeOf('hinge', { x: 0, y: -1500 * by, z: 0 }, { x: 0, y: 1, z: 0 }, [
          // no hinge is shorter than a millimetre
          { kind: 'straight', length: 3000 * by },
        ]);
        const wanted = frameOf([hinge, rail]);
        const legs = of.site.legs.map((leg): Leg => {
          const { end } = leg.foot;
          if (!('spot' in leg.head.at) || end.end === 'socket' || leg.tube === null || 'named' in leg.foot.at)
            throw new Error('legs of these sites are typed');
          return {
            ...leg,
            foot: {
              ...leg.foot,
              at: by === 1 ? leg.foot.at : size(leg.foot.at),
              end: { ...end, plate: end.plate * by },
            },
            head: { ...leg.head, at: along('rail', leg.head.at.distance * by) },
            tube: { outsideDiameter: leg.tube.outsideDiameter * by, wall: leg.tube.wall * by },
          };
        });
        const tube = { ...of.tube, outsideDiameter: 38.1 * by, wall: 1.65 * by };
        const made = sourceOf(wanted, {}).made;
        const site = { ...of.site, legs, tapeAccuracy: of.site.tapeAccuracy * by };
        return { ...of, wanted, made, site, tube, gap: of.gap * by, shrinkage: of.shrinkage * by };
      };
      const [here, there] = [legsOf(straight(source, 1)), legsOf(straight(source, factor))];
      expect(there).toHaveLength(here.length);
      for (const [index, leg] of here.entries()) {
        const other = there[index]!;
        seen += 1;
        for (const key of ['centreLength', 'cutLength', 'middleLength', 'shortest', 'longest'] as const)
          expect(other[key].value / factor).toBeCloseTo(leg[key].value, 5);
        if (leg.roll !== null) expect(turnedApart(other.roll!.value, leg.roll.value)).toBeLessThan(1e-4);
        expect(other.centreLength.band!.plusMinus / factor).toBeCloseTo(leg.centreLength.band!.plusMinus, 5);
      }
    }),
    { numRuns: 40 },
  );
  expect(seen).toBeGreaterThanOrEqual(LEAST_SEEN);
});
