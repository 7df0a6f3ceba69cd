// Fifty made-up members of straights and arcs in space: the kernel sweeps each as a solid rod inside and outside and
// measures it by itself.
import { beforeAll, describe, expect, it } from 'vitest';
import { centrelineFromChain, placeAt, type Centreline, type Link } from '../../server/solver/geometry/centreline.ts';
import { planPieces } from '../../server/solver/geometry/plan-pieces.ts';
import { length, subtract, unit, type Vector3 } from '../../server/solver/geometry/vector.ts';
import { endOfWire, measureTube, startKernel, worstKink } from './kernel.ts';

beforeAll(startKernel);

const COUNT = 50;
const NEAR = 1e-6;

/** Numbers from 0 to 1, the same every time: Park & Miller's generator, Comm. ACM 31 (1988) 1192. */
function uniform(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}

type Made = { readonly line: Centreline; readonly tube: { readonly outsideDiameter: number; readonly wall: number } };

/** A member of one to four bends in any plane, with a crown in some, laid from anywhere in any direction. */
function madeUp(seed: number): Made {
  const next = uniform(seed);
  const from = (low: number, high: number) => low + (high - low) * next();
  const outsideDiameter = from(12, 61);
  const radius = from(2, 4) * outsideDiameter;
  const bends = 1 + Math.floor(from(0, 3.999));
  const links: Link[] = [{ kind: 'straight', length: from(60, 500) }];
  for (let bend = 0; bend < bends; bend += 1) {
    const crown = next() < 0.2;
    links.push({
      kind: 'arc',
      radius: crown ? from(900, 3000) : radius,
      angle: crown ? from(0.05, 0.3) : from(0.1, 2.2),
      rotation: from(-0.9, 0.9),
      made: crown ? 'rolled' : 'die',
    });
    links.push({ kind: 'straight', length: from(4, 12) * outsideDiameter });
  }
  const some = (): Vector3 => ({ x: from(-1, 1), y: from(-1, 1), z: from(-1, 1) });
  const direction = unit(some())!;
  const aside = some();
  const square = subtract(aside, {
    x: direction.x * (aside.x * direction.x + aside.y * direction.y + aside.z * direction.z),
    y: direction.y * (aside.x * direction.x + aside.y * direction.y + aside.z * direction.z),
    z: direction.z * (aside.x * direction.x + aside.y * direction.y + aside.z * direction.z),
  });
  const point = { x: from(-900, 900), y: from(-900, 900), z: from(-900, 900) };
  const line = centrelineFromChain({ point, direction, normal: unit(square)! }, links);
  return { line, tube: { outsideDiameter, wall: from(0.8, 0.11 * outsideDiameter) } };
}

describe('length, metal, far end and tangents of fifty members in space', () => {
  it.each(Array.from({ length: COUNT }, (_, index) => 20_000 + 37 * index))(
    'number %d',
    (seed) => {
      const { line, tube } = madeUp(seed);
      const pieces = planPieces(line);
      const measured = measureTube(pieces, tube);
      const [outer, inner] = [tube.outsideDiameter / 2, tube.outsideDiameter / 2 - tube.wall];
      const share = (ours: number, theirs: number) => expect(Math.abs(ours / theirs - 1)).toBeLessThan(NEAR);
      share(line.length, measured.length);
      share(Math.PI * (outer ** 2 - inner ** 2) * line.length, measured.volume);
      share(Math.PI * inner ** 2 * line.length, measured.bore);
      const end = placeAt(line, line.length)!.point;
      expect(length(subtract(end, endOfWire(pieces)))).toBeLessThan(NEAR);
      expect(worstKink(pieces)).toBeLessThan(NEAR);
    },
    10_000,
  );
});
