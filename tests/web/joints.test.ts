import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { newJob } from '../../server/job/default-job.ts';
import type { ReturnedMember } from '../../server/plan/correction.ts';
import type { View } from '../../server/plan/view.ts';
import { centrelineFromChain, placeAt } from '../../server/solver/geometry/centreline.ts';
import { planPieces } from '../../server/solver/geometry/plan-pieces.ts';
import { outlineOf, sampledMember, stationsOf } from '../../server/solver/views/outline.ts';
import { project, PROJECTIONS } from '../../server/solver/views/projection.ts';
import {
  heldWithin,
  nearestStation,
  onDrawing,
  placeAtStation,
  pointedLine,
  steppedBy,
  stretchesFor,
  type PointedLine,
} from '../../web/state/joint-places.ts';
import { roundedPlace, toldRange } from '../../web/state/placed-joints.ts';
import { onScreen } from '../../web/state/screen.ts';
import { joint } from '../sheets/fixture-joint.ts';

const base = newJob('hoop');

/** A hoop in the plane: leg 500, a bend of radius 114.3, a bar of 800, the other bend and leg. */
const hoop = centrelineFromChain(
  { point: { x: 0, y: 0, z: 0 }, direction: { x: 0, y: 1, z: 0 }, normal: { x: 0, y: 0, z: -1 } },
  [
    { kind: 'straight', length: 500 },
    { kind: 'arc', radius: 114.3, angle: Math.PI / 2, rotation: 0, made: 'die' },
    { kind: 'straight', length: 800 },
    { kind: 'arc', radius: 114.3, angle: Math.PI / 2, rotation: 0, made: 'die' },
    { kind: 'straight', length: 500 },
  ],
);
const sampled = sampledMember({ name: 'hoop', pieces: planPieces(hoop), closed: false });
const drawn = { ...outlineOf(sampled, PROJECTIONS.top, 38.1), stations: stationsOf(sampled) };
const face: View = {
  key: 'face',
  right: { x: 1, y: 0, z: 0 },
  up: { x: 0, y: 1, z: 0 },
  bounds: [-20, 0, 1050, 640],
  layers: [
    { role: 'wanted', members: [] },
    { role: 'came-back', members: [drawn] },
  ],
  dimensions: [],
  marks: [],
  gas: [],
};
function lineOfHoop(): PointedLine {
  const line = pointedLine(face, 'hoop');
  if (line === null) throw new Error('The hoop is not on its own view.');
  return line;
}

describe('a finger on a tube', () => {
  it('finds how far along the member it is, on straights and in bends', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: hoop.length, noNaN: true }), (station) => {
        const place = placeAt(hoop, station);
        if (place === undefined) throw new Error('The hoop has no such place.');
        // a drawn chord is 0.3 mm off its arc at most
        expect(Math.abs(nearestStation(lineOfHoop(), project(PROJECTIONS.top, place.point)) - station)).toBeLessThan(
          0.1,
        );
      }),
    );
  });

  it('finds the nearest place of the tube from beside it, and never one beyond its ends', () => {
    expect(nearestStation(lineOfHoop(), [-60, 300])).toBeCloseTo(300, 6);
    expect(nearestStation(lineOfHoop(), [0, -400])).toBe(0);
    expect(nearestStation(lineOfHoop(), [1028.6, -9])).toBeCloseTo(hoop.length, 1);
  });

  it('shows a station where it is, with the way the tube runs', () => {
    const middle = placeAtStation(lineOfHoop(), 500 + (114.3 * Math.PI) / 2 + 400);
    expect(middle?.at[0]).toBeCloseTo(514.3, 1);
    expect(middle?.at[1]).toBeCloseTo(614.3, 1);
    expect(middle?.along).toEqual([1, 0]);
    expect(placeAtStation(lineOfHoop(), 0)?.at).toEqual([0, 0]);
    expect(placeAtStation(lineOfHoop(), 1e6)?.at[1]).toBeCloseTo(0, 1);
  });

  it('counts what is hidden in another tube', () => {
    const bar = sampledMember({ name: 'bar', pieces: planPieces(hoop), closed: false }, { start: 20, finish: 30 });
    expect(stationsOf(bar)[0]).toBe(20);
    expect(stationsOf(bar).at(-1)).toBeCloseTo(hoop.length - 30, 2);
    expect(stationsOf(bar)).toHaveLength(outlineOf(bar, PROJECTIONS.top, 38.1).centreline.length);
  });

  it('is the same place on the drawing and on the screen', () => {
    const screen = { scale: 0.31, left: 17, top: 420 };
    const [x, y] = onDrawing(onScreen([123.4, -56.7], screen), screen);
    expect([x, y].map((value) => Math.round(value * 1e6) / 1e6)).toEqual([123.4, -56.7]);
  });

  it('has no line where the view does not show the frame as it came back', () => {
    expect(pointedLine({ ...face, layers: [{ role: 'wanted', members: [drawn] }] }, 'hoop')).toBeNull();
    expect(pointedLine(face, 'crossbar 1')).toBeNull();
  });
});

describe('where a joint may stand', () => {
  const stretches = [
    { from: 100, to: 200 },
    { from: 300, to: 350 },
  ];

  it('is held in the nearest stretch', () => {
    expect([50, 150, 240, 260, 900].map((station) => heldWithin(stretches, station))).toEqual([
      100, 150, 200, 300, 350,
    ]);
    expect(heldWithin([], 77)).toBe(77);
  });

  it('is stepped along, to the edge, and on in the next stretch', () => {
    expect(steppedBy(stretches, 150, 10)).toBe(160);
    expect(steppedBy(stretches, 195, 10)).toBe(200);
    expect(steppedBy(stretches, 200, 1)).toBe(300);
    expect(steppedBy(stretches, 300, -10)).toBe(200);
    expect(steppedBy(stretches, 350, 1)).toBe(350);
    expect(steppedBy(stretches, 100, -1)).toBe(100);
    expect(steppedBy([], 40, -1)).toBe(39);
  });

  it('is its own range and the other free stretches of its member', () => {
    const lean = { station: 480, offSquare: 0, longest: 0 };
    const one = joint({ number: 1, member: 'hoop', a: lean, b: { ...lean, station: 520 } }, 38.1);
    const free = [
      { from: 20, to: 60, startRule: 'end', endRule: 'bend' },
      { from: 380, to: 700, startRule: 'bend', endRule: 'bend' },
    ];
    const member = { name: 'hoop', free } as unknown as ReturnedMember;
    expect(stretchesFor(one, member)).toEqual([{ from: 20, to: 60 }, one.range]);
    expect(stretchesFor(one, undefined)).toEqual([one.range]);
  });

  it('is told so that both ends may be typed', () => {
    const inch = { length: 'inch', fraction: 16 } as const;
    const told = toldRange({ from: 10.04, to: 20.06 }, base.units);
    expect([told.from, told.to].map((value) => Number(value.toFixed(6)))).toEqual([10.1, 20]);
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 5000, noNaN: true }),
        fc.double({ min: 2, max: 900, noNaN: true }),
        (from, size) => {
          for (const units of [base.units, inch]) {
            const range = toldRange({ from, to: from + size }, units);
            expect(range.from).toBeGreaterThanOrEqual(from - 1e-5);
            expect(range.to).toBeLessThanOrEqual(from + size + 1e-5);
          }
        },
      ),
    );
    expect(roundedPlace(100.4, base.units)).toBe(100);
    expect(roundedPlace(100.4, inch)).toBeCloseTo(63 * (25.4 / 16), 9);
  });
});
