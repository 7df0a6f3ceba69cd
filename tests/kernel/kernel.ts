import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import {
  assembleWire,
  genericSweep,
  makeCircle,
  makeLine,
  makeThreePointArc,
  measureArea,
  measureVolume,
  setOC,
  type Edge,
  type Shape3D,
} from 'replicad';
import opencascade from 'replicad-opencascadejs';
import type { PlanPiece } from '../../server/plan/frame.ts';
import { add, cross, rotate, subtract, unit, type Vector3 } from '../../server/solver/geometry/vector.ts';

/** Starts the geometry kernel, once for a test file. */
export async function startKernel(): Promise<void> {
  const wasmBinary = readFileSync(fileURLToPath(import.meta.resolve('replicad-opencascadejs/wasm')));
  const start = opencascade as unknown as (options: { wasmBinary: Buffer }) => Promise<Parameters<typeof setOC>[0]>;
  setOC(await start({ wasmBinary }));
}

const triple = (at: Vector3): [number, number, number] => [at.x, at.y, at.z];

/** One piece of a centreline as the kernel's own line or circular arc. */
function edgeOf(piece: PlanPiece): Edge {
  if (piece.kind === 'straight') return makeLine(triple(piece.from), triple(piece.to));
  const half = (piece.angle * Math.PI) / 360;
  const middle = add(piece.centre, rotate(subtract(piece.from, piece.centre), piece.normal, half));
  return makeThreePointArc(triple(piece.from), triple(middle), triple(piece.to));
}

/** Where the kernel's own wire through all pieces ends. */
export function endOfWire(pieces: readonly PlanPiece[]): Vector3 {
  const { x, y, z } = assembleWire(pieces.map(edgeOf)).endPoint;
  return { x, y, z };
}

/** The largest angle between the kernel's tangents where one piece ends and the next begins [rad]. */
export function worstKink(pieces: readonly PlanPiece[]): number {
  const edges = pieces.map(edgeOf);
  return edges.slice(1).reduce((worst, edge, index) => {
    const [out, into] = [edges[index]!.tangentAt(1).normalized(), edge.tangentAt(0).normalized()];
    return Math.max(worst, out.sub(into).Length);
  }, 0);
}

/** Direction in which the first piece sets off. */
function startDirection(piece: PlanPiece): Vector3 {
  const along =
    piece.kind === 'straight'
      ? subtract(piece.to, piece.from)
      : cross(piece.normal, subtract(piece.from, piece.centre));
  const direction = unit(along);
  if (direction === undefined) throw new Error('a piece without length');
  return direction;
}

/** A solid rod of a radius, swept along a member by the kernel. */
export function sweptRod(pieces: readonly PlanPiece[], radius: number): Shape3D {
  const [first] = pieces;
  if (first === undefined) throw new Error('a member without pieces');
  const profile = makeCircle(radius, triple(first.from), triple(startDirection(first)));
  return genericSweep(assembleWire([profile]), assembleWire(pieces.map(edgeOf)), {});
}

/** Length, volume and outside area of a swept tube, measured by the kernel. */
export function measureTube(pieces: readonly PlanPiece[], tube: { outsideDiameter: number; wall: number }) {
  const outer = sweptRod(pieces, tube.outsideDiameter / 2);
  const inner = sweptRod(pieces, tube.outsideDiameter / 2 - tube.wall);
  const length = pieces.reduce((sum, piece) => sum + edgeOf(piece).length, 0);
  return {
    length,
    volume: measureVolume(outer) - measureVolume(inner),
    bore: measureVolume(inner),
    area: measureArea(outer),
  };
}
