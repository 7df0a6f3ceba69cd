// Legs cut as the plan says, held against the kernel's own tubes and planes.
import { makePolygon } from 'replicad';
import { afterEach, beforeAll, describe, expect, it } from 'vitest';
import type { LegPlan } from '../../server/plan/leg.ts';
import { planPieces } from '../../server/solver/geometry/plan-pieces.ts';
import { add, rotate, scale, squareTo, unit, type Vector3 } from '../../server/solver/geometry/vector.ts';
import { along, frameOf, legOf, planned, RADIANS, sourceOf, tubeOf } from '../solver/site/legs-made-up.ts';
import { giveBack, tubeAlong } from './cut-tube.ts';
import { startKernel } from './kernel.ts';
import { laidWrap, lineFrom, pointFrom } from './leg-points.ts';

beforeAll(startKernel);
afterEach(giveBack);

const NEAR = 0.01;
const MAIN = { outsideDiameter: 38.1, wall: 1.65 };
const WALL = 1.5;

/** The wall between two generators bulges towards the tube by less than this, where both its surfaces clear it [mm]. */
const BULGE = 0.03;

/** A run with a straight, a bend and a straight; numbers from a seed, Park & Miller's generator. */
function madeUp(seed: number, head: number | 'middle of the bend', diameter: number) {
  let state = seed;
  const between = (low: number, high: number): number => {
    state = (state * 48_271) % 2_147_483_647;
    return low + ((high - low) * state) / 2_147_483_647;
  };
  const towards = { x: between(-1, 1), y: between(-1, 1), z: between(-0.3, 0.3) };
  const rail = tubeOf('rail', { x: between(-300, 300), y: between(-300, 300), z: between(0, 200) }, towards, [
    { kind: 'straight', length: 400 },
    { kind: 'arc', radius: 114.3, angle: between(0.7, 1.4), rotation: between(-3, 3), made: 'die' },
    { kind: 'straight', length: 400 },
  ]);
  const surface = { x: between(-0.3, 0.3), y: between(-0.3, 0.3), z: 1 };
  const gap = between(0, 1.5);
  const at =
    head === 'middle of the bend'
      ? ({ member: 'rail', spot: 'middle', number: 2, distance: 0 } as const)
      : along('rail', head);
  const source = sourceOf(
    frameOf([rail]),
    {
      legs: [
        legOf({
          foot: {
            at: { x: between(-300, 300), y: between(-300, 300), z: -600 },
            surface: { by: 'axes', vector: surface },
            end: { end: 'mitre', plate: between(0, 8) },
            held: 'pinned',
          },
          head: { at, end: { end: 'saddle' }, held: 'pinned' },
          tube: { outsideDiameter: diameter, wall: WALL },
        }),
      ],
    },
    { gap, tube: { ...sourceOf(frameOf([]), {}).tube, ...MAIN } },
  );
  return { source, rail, surface, gap };
}

/** A square sheet through a point, square to a direction. */
function sheet(point: Vector3, normal: Vector3) {
  const one = squareTo(normal);
  const other = rotate(one, normal, Math.PI / 2);
  const at = (a: number, b: number): [number, number, number] => {
    const { x, y, z } = add(point, add(scale(one, 300 * a), scale(other, 300 * b)));
    return [x, y, z];
  };
  return makePolygon([at(-1, -1), at(1, -1), at(1, 1), at(-1, 1)]);
}

const wrapOf = (leg: LegPlan, place: string) => leg.templates.find((template) => template.place === place)!;

describe.each([
  ['straight tube, slender leg', 11, 230, 25.4],
  ['straight tube, leg as wide', 23, 180, 38.1],
  ['straight tube', 37, 200, 33.7],
  ['in the bend', 53, 'middle of the bend', 25.4],
  ['half on a straight, half in the bend', 71, 390, 30],
] as const)('%s', (_, seed, at, diameter) => {
  it('stands on its surface, sits on its tube, and is as long as said', () => {
    const { source, rail, surface, gap } = madeUp(seed, at, diameter);
    const { legs, codes } = planned(source);
    expect(codes.filter((code) => code.startsWith('leg-'))).toEqual([]);
    const leg = legs[0]!;
    const radii = { outer: diameter / 2, inner: diameter / 2 - WALL };

    // the foot: its root gap stands along the leg
    const foot = wrapOf(leg, 'start');
    const footEnd = laidWrap(leg, foot);
    const normal = unit(surface)!;
    const end = source.site.legs[0]!.foot.end;
    const top = sheet(add(leg.footPoint, scale(normal, 'plate' in end ? end.plate : 0)), normal);
    const apart = gap * Math.cos(leg.foot.tilt.value * RADIANS);
    for (const { angle, cut } of foot.stations) {
      const point = footEnd.point(angle * RADIANS, cut, radii.outer);
      expect(Math.abs(pointFrom(point, top) - apart)).toBeLessThan(NEAR);
    }
    expect(Math.abs(footEnd.fromSawn(foot.low))).toBeLessThan(NEAR);

    // the head: closed by its root gap, its wall touches the tube all round, and none of it is in the tube
    const head = wrapOf(leg, 'finish');
    const headEnd = laidWrap(leg, head);
    const tubes = planPieces(rail.centreline).map((piece) => tubeAlong(piece, MAIN));
    for (const { angle, cut } of head.stations) {
      const wall = (ordinate: number) =>
        lineFrom(
          headEnd.point(angle * RADIANS, ordinate, radii.outer),
          headEnd.point(angle * RADIANS, ordinate, radii.inner),
          tubes,
        );
      expect(wall(cut + gap)).toBeLessThan(NEAR);
      expect(wall(cut + gap - BULGE)).toBeGreaterThan(0);
    }
    expect(Math.abs(headEnd.fromSawn(head.high) - leg.cutLength.value)).toBeLessThan(NEAR);
  });
});
