import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { arcsOf } from '../../server/solver/bending/arcs.ts';
import { placeAt } from '../../server/solver/geometry/centreline.ts';
import { dot, length, subtract } from '../../server/solver/geometry/vector.ts';
import { slack } from '../../server/solver/making/nearest-station.ts';
import { sweptCheck, type SweptInput } from '../../server/solver/making/swept-check.ts';
import { anySwept, dieBends, DIAMETER, member, swept } from './bent-members.ts';
import { byForce, overBed, standAt, swungTo, tubeToItself } from './swept-by-force.ts';

const STEPS = { along: 1.5, swing: 1.5 };
/** What lies between two tries, one way along the tube and one way along the swing [mm]. */
const TRIED = STEPS.along / 2 + STEPS.swing / 2;

describe('the swing of the bent part', () => {
  it('by the finished angle gives the finished part', () => {
    fc.assert(
      fc.property(anySwept, (any) => {
        const input = { ...any, bends: dieBends(any.centreline) };
        for (const index of input.bends.keys()) {
          const stand = standAt(input, index);
          const end = placeAt(input.centreline, stand.station + stand.arc.length)!;
          const out = { ...end.point };
          for (const station of [0, stand.station / 3, stand.station]) {
            const { point } = placeAt(input.centreline, station)!;
            const at = subtract(swungTo(point, stand, stand.arc.angle), stand.start);
            const finished = subtract(point, out);
            expect(dot(at, stand.along)).toBeCloseTo(dot(finished, end.tangent), 6);
            expect(dot(at, stand.normal)).toBeCloseTo(dot(finished, stand.normal), 6);
            expect(length(at)).toBeCloseTo(length(finished), 6);
          }
        }
      }),
      { numRuns: 50 },
    );
  });

  it('comes as near to everything as trying every place says, and never less near', { timeout: 240_000 }, () => {
    const seen = new Map<string, number>();
    fc.assert(
      fc.property(anySwept, (input) => {
        for (const [index, { clearances }] of sweptCheck(input).entries()) {
          const tried = byForce(input, index, STEPS);
          for (const { obstacle, clearance } of clearances) {
            if (obstacle === 'bed') continue;
            const found = tried.get(obstacle);
            if (found === undefined) continue;
            seen.set(obstacle, (seen.get(obstacle) ?? 0) + 1);
            expect(clearance).toBeLessThanOrEqual(found + 1e-6);
            // the search may tell slack less, and a fortieth of the diameter more where it passes the far end
            expect(clearance).toBeGreaterThanOrEqual(found - TRIED - slack(found, DIAMETER) - DIAMETER / 40);
          }
          const told = clearances.map(({ obstacle }) => obstacle);
          expect(told).toEqual(expect.arrayContaining([...tried.keys()]));
        }
      }),
      { numRuns: 220 },
    );
    for (const obstacle of ['die', 'clamp', 'pressure-die', 'tube']) expect(seen.get(obstacle)).toBeGreaterThan(60);
  });

  it('hides no place where the tube strikes itself, and tells of none that is not there', { timeout: 240_000 }, () => {
    let struck = 0;
    let clear = 0;
    fc.assert(
      fc.property(anySwept, (input) => {
        for (const [index, { clearances }] of sweptCheck(input).entries()) {
          const told = clearances.find(({ obstacle }) => obstacle === 'tube')?.clearance ?? Infinity;
          const tried = tubeToItself(input, index, STEPS);
          if (tried < -1e-6) {
            struck += 1;
            expect(told).toBeLessThanOrEqual(0);
          }
          if (tubeToItself(input, index, STEPS, 1.5) > TRIED + DIAMETER / 10) {
            clear += 1;
            expect(told).toBeGreaterThan(0);
          }
        }
      }),
      { numRuns: 400 },
    );
    expect(struck).toBeGreaterThan(30);
    expect(clear).toBeGreaterThan(30);
  });

  it('keeps over the bed what trying every place and every turn says', { timeout: 120_000 }, () => {
    fc.assert(
      fc.property(anySwept, (input) => {
        const { arcs } = arcsOf(input.centreline);
        for (const [index, { clearances }] of sweptCheck(input).entries()) {
          const told = (doing: string) =>
            clearances.find((each) => each.obstacle === 'bed' && each.while === doing)?.clearance;
          const bending = overBed(input, index, 0, STEPS);
          // the round end of an arc without a straight before it may stand half a diameter lower than its flat cut
          const round = arcs[0]!.feed + input.extraAtStart < DIAMETER / 2 ? DIAMETER / 2 : 0;
          expect(told('bending')).toBeLessThanOrEqual(bending + 1e-6);
          expect(told('bending')).toBeGreaterThanOrEqual(bending - TRIED - round);
          if (index === 0) continue;
          const turning = overBed(input, index, arcs[index]!.rotation, STEPS);
          if (arcs[index]!.rotation === 0) continue;
          expect(told('turning')).toBeLessThanOrEqual(turning + 1e-6);
          expect(told('turning')).toBeGreaterThanOrEqual(turning - TRIED - round - slack(turning, DIAMETER));
        }
      }),
      { numRuns: 220 },
    );
  });

  it('scales with all lengths', () => {
    const scaled = (input: SweptInput, by: number): SweptInput => {
      const { machine, centreline } = input;
      const sizes = Object.entries(machine).map(([key, value]) => [key, (value ?? 0) * by]);
      const at = (v: { x: number; y: number; z: number }) => ({ x: v.x * by, y: v.y * by, z: v.z * by });
      return {
        ...input,
        machine: Object.fromEntries(sizes) as SweptInput['machine'],
        centreline: {
          length: centreline.length * by,
          pieces: centreline.pieces.map((piece) => {
            const moved = { ...piece, start: at(piece.start), length: piece.length * by };
            return moved.kind === 'arc' ? { ...moved, radius: moved.radius * by } : moved;
          }),
        },
        bends: input.bends.map((bend) => ({ ...bend, dieRadius: bend.dieRadius * by })),
        extraAtStart: input.extraAtStart * by,
        extraAtEnd: input.extraAtEnd * by,
      };
    };
    fc.assert(
      fc.property(anySwept, fc.constantFrom(1e-2, 1e2), (input, by) => {
        const large = sweptCheck(scaled(input, by));
        for (const [index, { clearances }] of sweptCheck(input).entries()) {
          const again = large[index]!.clearances;
          expect(again.map((each) => each.obstacle)).toEqual(clearances.map((each) => each.obstacle));
          for (const [which, { clearance }] of clearances.entries()) {
            expect(Math.abs(again[which]!.clearance / by - clearance)).toBeLessThan(1e-6 * DIAMETER);
          }
        }
      }),
      { numRuns: 100 },
    );
  });

  it('says nothing of the first bend of a long straight but of the bed', () => {
    const [first] = sweptCheck(swept(member([[500, 0, 90]], 500)));
    expect(first!.clearances.map(({ obstacle }) => obstacle)).toEqual(['bed']);
  });
});
