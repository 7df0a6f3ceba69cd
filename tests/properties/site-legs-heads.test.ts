// Heads on and beside bends from every side, flat and steep: a leg that is cut has a whole saddle and no metal in the tube;
// one that is not is told of, and never by a tube that should be wider.
import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { LegPlan } from '../../server/plan/leg.ts';
import { placeAt } from '../../server/solver/geometry/centreline.ts';
import { closestStation } from '../../server/solver/geometry/closest-station.ts';
import { add, rotate, scale } from '../../server/solver/geometry/vector.ts';
import { laidWrap } from '../kernel/leg-points.ts';
import { along, frameOf, legOf, planned, RADIANS, sourceOf, tubeOf } from '../solver/site/legs-made-up.ts';
import { number } from './leg-sites.ts';

const MAIN = { outsideDiameter: 38.1, wall: 1.65 };
const WALL = 1.5;
const LONG = 420;

const bent = tubeOf('rail', { x: 0, y: 0, z: 0 }, { x: 1, y: 0, z: 0 }, [
  { kind: 'straight', length: 300 },
  { kind: 'arc', radius: 117.07, angle: Math.PI / 2, rotation: 0, made: 'die' },
  { kind: 'straight', length: 300 },
]);

type Under = { readonly at: number; readonly flat: number; readonly round: number; readonly diameter: number };

/** A leg from a place of the tube, so flat to it [degrees], so far round it from the inner side of the bend. */
function under({ at, flat, round, diameter }: Under) {
  const { point, tangent } = placeAt(bent.centreline, at)!;
  const arc = bent.centreline.pieces[1]!;
  if (arc.kind !== 'arc') throw new Error('the second piece is the bend');
  const inward = rotate(tangent, arc.normal, Math.PI / 2);
  const side = rotate(inward, tangent, round * RADIANS);
  const way = add(scale(tangent, Math.cos(flat * RADIANS)), scale(side, Math.sin(flat * RADIANS)));
  const leg = legOf({
    foot: {
      at: add(point, scale(way, LONG)),
      surface: { by: 'axes', vector: way },
      end: { end: 'square', plate: 0 },
      held: 'pinned',
    },
    head: { at: along('rail', at), end: { end: 'saddle' }, held: 'pinned' },
    tube: { outsideDiameter: diameter, wall: WALL },
  });
  const job = sourceOf(frameOf([bent]), { legs: [leg] });
  return planned({ ...job, tube: { ...job.tube, ...MAIN } });
}

/** How deep the leg's wall lies in the tube [mm], and how far its cut is from it where it is nearest. */
function wallOf(leg: LegPlan): { readonly deepest: number; readonly open: number } {
  const head = leg.templates.find(({ place }) => place === 'finish')!;
  const laid = laidWrap(leg, head);
  const roomAt = (angle: number, ordinate: number, radius: number): number =>
    closestStation(bent.centreline, laid.point(angle * RADIANS, ordinate, radius))!.distance - MAIN.outsideDiameter / 2;
  let [deepest, open] = [0, 0];
  for (const { angle, cut } of head.stations) {
    const radii = [leg.outsideDiameter / 2, leg.outsideDiameter / 2 - WALL];
    open = Math.max(open, Math.min(...radii.map((radius) => roomAt(angle, cut, radius))));
    for (const radius of radii)
      for (let back = 0; back < LONG - 100; back += 4) deepest = Math.max(deepest, -roomAt(angle, cut - back, radius));
  }
  return { deepest, open };
}

it('a leg on a bend has a whole saddle and no metal in the tube, or is told of', () => {
  const seen = { cut: 0, stopped: 0, flatAndCut: 0 };
  fc.assert(
    fc.property(
      fc.record({ at: number(250, 440), flat: number(11, 169), round: number(0, 180), diameter: number(15, 38.1) }),
      (of) => {
        const { legs, codes } = under(of);
        expect(codes).not.toContain('leg-too-wide');
        const [leg] = legs;
        if (leg === undefined) {
          expect(codes).toContain('leg-no-saddle');
          seen.stopped += 1;
          return;
        }
        seen.cut += 1;
        if (Math.sin(of.flat * RADIANS) < Math.sin(Math.PI / 6)) seen.flatAndCut += 1;
        const { deepest, open } = wallOf(leg);
        expect(deepest).toBeLessThan(1e-3);
        expect(open).toBeLessThan(1e-3);
        const { curve } = leg.templates[0]!;
        const steps = curve.slice(1).map(([, ordinate], index) => Math.abs(ordinate - curve[index]![1]));
        // three degrees round the tube: the steepest cut of a straight saddle at 10 degrees goes up by 11.4 mm
        expect(Math.max(...steps)).toBeLessThan(13);
      },
    ),
    { numRuns: 150 },
  );
  expect(seen.cut).toBeGreaterThan(30);
  expect(seen.stopped).toBeGreaterThan(5);
  expect(seen.flatAndCut).toBeGreaterThan(2);
});

it.each([
  { at: 391.9, flat: 12, round: 0, diameter: 20 },
  { at: 391.9, flat: 15, round: 0, diameter: 20 },
  { at: 391.9, flat: 12, round: 0, diameter: 30 },
  { at: 391.9, flat: 30, round: 0, diameter: 30 },
  { at: 391.9, flat: 40, round: 0, diameter: 38.1 },
  { at: 391.9, flat: 16, round: 60, diameter: 38.1 },
  // through the straight beyond the bend
  { at: 250, flat: 45, round: 0, diameter: 25.4 },
])('no saddle fits where a tube bends back into the leg: $diameter at $flat°', (of) => {
  const { legs, codes } = under(of);
  expect(legs).toEqual([]);
  expect(codes).toContain('leg-no-saddle');
});

it.each([
  { at: 391.9, flat: 60, round: 0, diameter: 30 },
  { at: 391.9, flat: 90, round: 0, diameter: 38.1 },
  { at: 391.9, flat: 50, round: 90, diameter: 30 },
  { at: 391.9, flat: 30, round: 180, diameter: 25.4 },
])('a saddle fits at $flat°, $round° round from the inner side: $diameter', (of) => {
  const { legs } = under(of);
  expect(legs).toHaveLength(1);
  expect(legs[0]!.templates.map(({ place }) => place)).toEqual(['finish']);
});
