import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { centrelineFromChain, placeAt, type Centreline, type Link } from '../../server/solver/geometry/centreline.ts';
import { leastGap, type GapSource } from '../../server/solver/geometry/least-gap.ts';
import type { Solid } from '../../server/solver/geometry/solid.ts';
import type { Turning } from '../../server/solver/geometry/turning.ts';
import {
  add,
  cross,
  dot,
  length,
  rotate,
  scale,
  subtract,
  unit,
  type Vector3,
} from '../../server/solver/geometry/vector.ts';

const FINE = 0.002;
const between = (low: number, high: number) => fc.double({ min: low, max: high, noNaN: true });
const vector = (reach: number): fc.Arbitrary<Vector3> =>
  fc.record({ x: between(-reach, reach), y: between(-reach, reach), z: between(-reach, reach) });
const direction = vector(1).map((way) => unit(way) ?? { x: 0, y: 0, z: 1 });

const line: fc.Arbitrary<Centreline> = fc
  .array(
    fc.oneof(
      between(1, 900).map((size): Link => ({ kind: 'straight', length: size })),
      fc
        .tuple(between(60, 400), between(0.1, 3), between(-2, 2))
        .map(([radius, angle, rotation]): Link => ({ kind: 'arc', radius, angle, rotation, made: 'die' })),
    ),
    { minLength: 1, maxLength: 5 },
  )
  .map((links) =>
    centrelineFromChain(
      { point: { x: -400, y: 0, z: 0 }, direction: { x: 1, y: 0, z: 0 }, normal: { x: 0, y: 0, z: 1 } },
      links,
    ),
  );

const solid: fc.Arbitrary<Solid> = fc.oneof(
  fc.record({ shape: fc.constant('point' as const), at: vector(800), radius: between(0, 100) }),
  fc.record({ shape: fc.constant('plane' as const), at: vector(1200), normal: direction }),
  fc.record({
    shape: fc.constant('cylinder' as const),
    at: vector(800),
    axis: direction,
    radius: between(2, 100),
    ends: fc.oneof(fc.constant(null), fc.record({ from: between(-300, 0), to: between(0.1, 300) })),
  }),
);

const turning: fc.Arbitrary<Turning> = fc.record({
  about: vector(600),
  axis: direction,
  from: between(-2, 0),
  to: between(0, 2),
});

/** A second way to say how far a point is off: by the two sizes of a solid of revolution, nothing of slopes in it. */
function off(body: Solid, point: Vector3): number {
  const away = subtract(point, body.at);
  if (body.shape === 'point') return length(away) - body.radius;
  if (body.shape === 'plane') return dot(away, body.normal);
  const [along, out] = [dot(away, body.axis), length(cross(away, body.axis)) - body.radius];
  if (body.ends === null) return out;
  const beyond = Math.max(body.ends.from - along, along - body.ends.to);
  return Math.max(out, beyond) <= 0 ? Math.max(out, beyond) : Math.hypot(Math.max(0, out), Math.max(0, beyond));
}

/** The solid itself is turned here; the search turns the tube back instead. */
function turnedSolid(body: Solid, turns: Turning | null, angle: number): Solid {
  if (turns === null) return body;
  const way = (one: Vector3) => rotate(one, turns.axis, angle);
  const at = add(turns.about, way(subtract(body.at, turns.about)));
  if (body.shape === 'point') return { ...body, at };
  return body.shape === 'plane' ? { ...body, at, normal: way(body.normal) } : { ...body, at, axis: way(body.axis) };
}

type At = readonly [station: number, lineTurn: number, solidTurn: number];

function gapAt(
  { line: tube, solid: body, lineTurns, solidTurns }: GapSource,
  [station, lineTurn, solidTurn]: At,
): number {
  const { point } = placeAt(tube, station)!;
  const here =
    lineTurns === null
      ? point
      : add(lineTurns.about, rotate(subtract(point, lineTurns.about), lineTurns.axis, lineTurn));
  return off(turnedSolid(body, solidTurns, solidTurn), here);
}

/** The least of many places and turns, made less step by step from the best of them. */
function sampled(source: GapSource): number {
  const { line: tube, lineTurns, solidTurns } = source;
  const both = lineTurns !== null && solidTurns !== null;
  const spread = (low: number, high: number, count: number) =>
    Array.from({ length: count + 1 }, (_, index) => low + ((high - low) * index) / count);
  const turnsOf = (turns: Turning | null) => (turns === null ? [0] : spread(turns.from, turns.to, both ? 10 : 60));
  const bounds = [
    [0, tube.length],
    [lineTurns?.from ?? 0, lineTurns?.to ?? 0],
    [solidTurns?.from ?? 0, solidTurns?.to ?? 0],
  ] as const;
  let [best, at]: [number, At] = [Infinity, [0, 0, 0]];
  for (const station of spread(0, tube.length, both ? 50 : 100))
    for (const lineTurn of turnsOf(lineTurns))
      for (const solidTurn of turnsOf(solidTurns)) {
        const gap = gapAt(source, [station, lineTurn, solidTurn]);
        if (gap < best) [best, at] = [gap, [station, lineTurn, solidTurn]];
      }
  for (let step = 0.02; step > 1e-7;) {
    let better = false;
    for (const of of [0, 1, 2])
      for (const way of [-1, 1]) {
        const next = at.map((value, index) => {
          const [low, high] = bounds[index]!;
          return index === of ? Math.min(high, Math.max(low, value + way * step * (high - low))) : value;
        }) as unknown as At;
        const gap = gapAt(source, next);
        if (gap < best) [best, at, better] = [gap, next, true];
      }
    if (!better) step /= 2;
  }
  return best;
}

describe('the least gap', () => {
  const cases: readonly (readonly [string, fc.Arbitrary<Turning | null>, fc.Arbitrary<Turning | null>, number])[] = [
    ['at rest', fc.constant(null), fc.constant(null), 150],
    ['while the thing swings', fc.constant(null), turning, 80],
    ['while the frame swings', turning, fc.constant(null), 80],
    ['while both swing', turning, turning, 40],
  ];

  it.each(cases)('%s is one that is there, and no sampled one is less', (_, lineTurns, solidTurns, numRuns) => {
    fc.assert(
      fc.property(fc.record({ line, solid, lineTurns, solidTurns }), (source) => {
        const found = leastGap(source, { fine: FINE, most: 4000 })!;
        const { distance, atLeast, station, lineTurn, solidTurn } = found;
        expect(gapAt(source, [station, lineTurn, solidTurn])).toBeCloseTo(distance, 6);
        expect(atLeast).toBeLessThanOrEqual(distance);
        const least = sampled(source);
        expect(atLeast).toBeLessThanOrEqual(least + 1e-6);
        // where the tube is not in the thing itself, and what stands still always, is told as finely as is asked for
        const isCrossing = source.lineTurns !== null && source.solidTurns !== null && distance < 0;
        if (!isCrossing && distance - atLeast < 2 * FINE) expect(distance).toBeLessThanOrEqual(least + FINE + 1e-6);
      }),
      { numRuns },
    );
  });

  it('told roughly is never told as more than it is, nor further off than a share of it', () => {
    const swings = fc.oneof(fc.constant(null), turning);
    fc.assert(
      fc.property(
        fc.record({ line, solid, lineTurns: fc.constant(null), solidTurns: swings }),
        between(0, 400),
        (source, within) => {
          const least = leastGap(source, { fine: FINE, most: 4000 })!;
          const rough = leastGap(source, { fine: 0.5, share: 0.02 })!;
          expect(rough.atLeast).toBeLessThanOrEqual(least.distance + 1e-9);
          expect(rough.distance).toBeGreaterThanOrEqual(least.atLeast - 1e-9);
          expect(rough.distance - rough.atLeast).toBeLessThanOrEqual(Math.max(0.5, 0.02 * rough.distance) + 1e-9);
          // what is further off than is asked about is known to be so, and what is nearer is found
          const asked = leastGap(source, { fine: FINE, most: 4000, within })!;
          if (least.distance < within) expect(asked.distance).toBeLessThan(least.distance + 2 * FINE);
          else expect(asked.atLeast).toBeGreaterThanOrEqual(Math.min(within, least.atLeast) - 2 * FINE);
        },
      ),
      { numRuns: 80 },
    );
  });

  it('is the same however long what is swung through was cut up, and grows with everything', () => {
    fc.assert(
      fc.property(fc.record({ line, solid, lineTurns: fc.constant(null), solidTurns: turning }), (source) => {
        const { solidTurns } = source;
        const middle = (solidTurns.from + solidTurns.to) / 2;
        const least = (from: number, to: number) =>
          leastGap({ ...source, solidTurns: { ...solidTurns, from, to } }, { fine: FINE })!.distance;
        const parts = Math.min(least(solidTurns.from, middle), least(middle, solidTurns.to));
        expect(Math.abs(least(solidTurns.from, solidTurns.to) - parts)).toBeLessThan(FINE + 1e-9);
      }),
      { numRuns: 40 },
    );
    fc.assert(
      fc.property(line, vector(800), fc.constantFrom(1e-3, 1e3), (tube, at, size) => {
        const larger: Centreline = {
          length: tube.length * size,
          pieces: tube.pieces.map((piece) => {
            const grown = { start: scale(piece.start, size), length: piece.length * size };
            return piece.kind === 'straight'
              ? { ...piece, ...grown }
              : { ...piece, ...grown, radius: piece.radius * size };
          }),
        };
        const still = { lineTurns: null, solidTurns: null };
        const one = leastGap({ line: tube, solid: { shape: 'point', at, radius: 5 }, ...still }, { fine: 1e-6 })!;
        const body = { shape: 'point' as const, at: scale(at, size), radius: 5 * size };
        const other = leastGap({ line: larger, solid: body, ...still }, { fine: 1e-6 * size })!;
        expect(other.distance / size).toBeCloseTo(one.distance, 5);
      }),
      { numRuns: 40 },
    );
  });
});
