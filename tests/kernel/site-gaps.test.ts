// The geometry kernel as an independent witness: it measures between the solids themselves.
import { makeCylinder, makeSphere, measureDistanceBetween, type Shape3D } from 'replicad';
import { beforeAll, describe, expect, it } from 'vitest';
import { centrelineFromChain } from '../../server/solver/geometry/centreline.ts';
import { leastGap } from '../../server/solver/geometry/least-gap.ts';
import { planPieces } from '../../server/solver/geometry/plan-pieces.ts';
import type { RoundBar, Solid } from '../../server/solver/geometry/solid.ts';
import type { Turning } from '../../server/solver/geometry/turning.ts';
import { add, rotate, scale, subtract, unit, type Vector3 } from '../../server/solver/geometry/vector.ts';
import { startKernel, sweptRod } from './kernel.ts';

beforeAll(startKernel);

const RADIUS = 19.05;
/** Told apart by the search, and by the kernel with its sweep [mm]. */
const WITHIN = 0.01;

/** Two straights and a crown of a metre with a turned bend after it. */
const line = centrelineFromChain(
  { point: { x: -500, y: 0, z: 0 }, direction: { x: 1, y: 0, z: 0 }, normal: { x: 0, y: 0, z: 1 } },
  [
    { kind: 'straight', length: 400 },
    { kind: 'arc', radius: 1000, angle: 0.6, rotation: 0, made: 'rolled' },
    { kind: 'straight', length: 200 },
    { kind: 'arc', radius: 115, angle: 1.2, rotation: 0.7, made: 'die' },
    { kind: 'straight', length: 300 },
  ],
);

const triple = ({ x, y, z }: Vector3): [number, number, number] => [x, y, z];

/** A bar as the kernel has it; one without ends is long enough. */
function barOf({ at, axis, radius, ends }: RoundBar): Shape3D {
  const { from, to } = ends ?? { from: -3000, to: 3000 };
  return makeCylinder(radius, to - from, triple(add(at, scale(axis, from))), triple(axis));
}

const gapOf = (solid: Solid, solidTurns: Turning | null = null) => {
  const found = leastGap({ line, solid, lineTurns: null, solidTurns }, { fine: 0.001 })!;
  return { ...found, gap: found.distance - RADIUS };
};

const between = (solid: Shape3D): number => measureDistanceBetween(sweptRod(planPieces(line), RADIUS), solid);

describe('a gap between solids', () => {
  it('beside a raked post and the crown', () => {
    const post: RoundBar = {
      shape: 'cylinder',
      at: { x: 250, y: -90, z: 0 },
      axis: unit({ x: 0.2, y: -0.1, z: 1 })!,
      radius: 30.15,
      ends: null,
    };
    const { gap } = gapOf(post);
    expect(gap).toBeGreaterThan(20);
    expect(Math.abs(gap - between(barOf(post)))).toBeLessThan(WITHIN);
  });

  // beside a straight: over the crown the kernel stops at a rim that is not the nearest one
  it('over the rim of a stub that ends, and beside a ball', () => {
    const stub: RoundBar = {
      shape: 'cylinder',
      at: { x: -300, y: -90, z: -300 },
      axis: unit({ x: 0.1, y: 0.3, z: 1 })!,
      radius: 60,
      ends: { from: 0, to: 255 },
    };
    expect(gapOf(stub).gap).toBeGreaterThan(5);
    expect(Math.abs(gapOf(stub).gap - between(barOf(stub)))).toBeLessThan(WITHIN);
    const ball: Solid = { shape: 'point', at: { x: 420, y: 330, z: 60 }, radius: 40 };
    const { gap } = gapOf(ball);
    expect(Math.abs(gap - between(makeSphere(40).translate(triple(ball.at))))).toBeLessThan(WITHIN);
  });

  it('of a rod that swings is there at the turn that is told, and more a little before and after', () => {
    const rod: RoundBar = {
      shape: 'cylinder',
      at: { x: -100, y: -250, z: -150 },
      axis: { x: 0, y: 0, z: 1 },
      radius: 12,
      ends: { from: -40, to: 160 },
    };
    const turns: Turning = {
      about: { x: -150, y: -260, z: -150 },
      axis: unit({ x: -1, y: 0.1, z: 0.2 })!,
      from: -0.2,
      to: 1.4,
    };
    const { gap, solidTurn } = gapOf(rod, turns);
    expect(solidTurn).toBeGreaterThan(0.1);
    expect(solidTurn).toBeLessThan(1.3);
    const at = (turn: number) =>
      between(
        barOf({
          ...rod,
          at: add(turns.about, rotate(subtract(rod.at, turns.about), turns.axis, turn)),
          axis: rotate(rod.axis, turns.axis, turn),
        }),
      );
    expect(Math.abs(gap - at(solidTurn))).toBeLessThan(WITHIN);
    for (const off of [-0.1, 0.1]) expect(at(solidTurn + off)).toBeGreaterThan(gap + 0.1);
  });
});
