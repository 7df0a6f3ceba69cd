import { LuDecomposition, Matrix } from 'ml-matrix';
import type { MemberGeometry } from '../../server/solver/frame/frame-geometry.ts';
import { placeAt } from '../../server/solver/geometry/centreline.ts';
import { add, cross, scale, subtract, type Vector3 } from '../../server/solver/geometry/vector.ts';
import { beamStiffness, carrying, condensed, type Tube } from './weld-movement-beams.ts';

/** A place of the frame, and a point that it holds. */
export type Held = { readonly member: string; readonly station: number; readonly point: Vector3 };

/** What a weld does to what is beyond it on its member. */
export type Weld = {
  readonly member: string;
  readonly station: number;
  readonly move: Vector3;
  readonly turn: Vector3;
};

/** Longest element of an arc [mm], and the largest turn to the next [rad]; a straight is exact at any length. */
const COARSE = { longest: 100, turn: 0.08 };
const FINE = { longest: 50, turn: 0.04 };

/** Two stations that rounding alone keeps apart [mm]. */
const isSame = (one: number, other: number): boolean => Math.abs(one - other) < 1e-6;

/**
 * A frame of tubes as a space frame of many short straight beams (direct stiffness, Euler and Bernoulli): an
 * independent witness of how it moves when a weld shortens and turns the tube at its place.
 *
 * @returns how the held points move for each weld [mm], all of them with one vertex held fast
 */
export function movedByStiffness(
  members: readonly MemberGeometry[],
  tube: Tube,
  welds: readonly Weld[],
  held: readonly Held[],
): Vector3[][] {
  const [coarse, fine] = [COARSE, FINE].map((mesh) => moved(members, tube, welds, held, mesh));
  // chords err with the square of their length: half of it a quarter as much
  return fine!.map((moves, weld) =>
    moves.map((move, index) => add(move, scale(subtract(move, coarse![weld]![index]!), 1 / 3))),
  );
}

function moved(
  members: readonly MemberGeometry[],
  tube: Tube,
  welds: readonly Weld[],
  held: readonly Held[],
  mesh: typeof FINE,
): Vector3[][] {
  const indexOf = new Map(members.map(({ name }, index) => [name, index]));
  const at = (member: number, station: number): Vector3 => placeAt(members[member]!.centreline, station)!.point;
  // nodes: where members end or carry others, where points are held, and the two sides of each weld
  const links: { node: [number, number]; main: [number, number] }[] = [];
  const stations = members.map(({ centreline, closed }) => (closed ? [0] : [0, centreline.length]));
  for (const [index, member] of members.entries()) {
    for (const [station, end] of [
      [0, member.start],
      [member.centreline.length, member.finish],
    ] as const) {
      if (end.kind !== 'saddle') continue;
      const main = indexOf.get(end.onto)!;
      stations[main]!.push(end.station);
      links.push({ node: [index, station], main: [main, end.station] });
    }
  }
  for (const { member, station } of [...welds, ...held]) stations[indexOf.get(member)!]!.push(station);
  const sorted = stations.map((own) =>
    own.sort((a, b) => a - b).filter((station, index) => index === 0 || !isSame(station, own[index - 1]!)),
  );
  const first: number[] = [];
  let nodes = 0;
  for (const own of sorted) {
    first.push(nodes);
    nodes += own.length;
  }
  const nodeOf = (member: number, station: number) =>
    first[member]! + sorted[member]!.findIndex((one) => isSame(one, station));
  const points = sorted.flatMap((own, member) => own.map((station) => at(member, station)));
  // a seat carries its end rigidly: u_end = u_seat + ω × (end − seat)
  const carrier = points.map((_, node) => node);
  for (const { node, main } of links) carrier[nodeOf(...node)] = nodeOf(...main);
  const rootOf = (node: number): number => (carrier[node] === node ? node : rootOf(carrier[node]!));
  const roots = [...new Set(points.map((_, node) => rootOf(node)))];
  const place = new Map(roots.map((node, index) => [node, index]));
  const carried = points.map((point, node) => carrying(subtract(point, points[rootOf(node)]!)));

  const size = 6 * roots.length;
  const stiffness = Matrix.zeros(size, size);
  const loads = Matrix.zeros(size, welds.length);
  for (const [member, { centreline, closed }] of members.entries()) {
    const own = sorted[member]!;
    for (const [index, from] of own.entries()) {
      if (index === own.length - 1 && !closed) continue;
      const next = index === own.length - 1 ? 0 : index + 1;
      const to = next === 0 ? centreline.length : own[next]!;
      const ends = [first[member]! + index, first[member]! + next];
      const chain = chainStiffness(member, from, to);
      const spread = Matrix.zeros(12, size);
      for (const [end, node] of ends.entries()) {
        const column = 6 * place.get(rootOf(node))!;
        for (let row = 0; row < 6; row += 1)
          for (let j = 0; j < 6; j += 1)
            spread.set(6 * end + row, column + j, spread.get(6 * end + row, column + j) + carried[node]!.get(row, j));
      }
      stiffness.add(spread.transpose().mmul(chain).mmul(spread));
      for (const [weld, one] of welds.entries()) {
        const before = indexOf.get(one.member) === member && isSame(one.station, from);
        const last = isSame(to, centreline.length);
        const atEnd = indexOf.get(one.member) === member && !closed && isSame(one.station, to) && last;
        if (!before && !atEnd) continue;
        // the chain's own end is moved by the weld beyond its node, or by its opposite before it
        const imposed = Matrix.zeros(12, 1);
        const twist = [one.move, one.turn].flatMap(({ x, y, z }) => [x, y, z]);
        for (let row = 0; row < 6; row += 1) imposed.set((before ? 0 : 6) + row, 0, (before ? 1 : -1) * twist[row]!);
        const load = spread.transpose().mmul(chain).mmul(imposed);
        for (let row = 0; row < size; row += 1) loads.set(row, weld, loads.get(row, weld) - load.get(row, 0));
      }
    }
  }
  // a frame that nothing holds: one vertex is held fast, which sets no force free
  const free = Array.from({ length: size - 6 }, (_, index) => index + 6);
  const solved = new LuDecomposition(stiffness.selection(free, free)).solve(
    loads.selection(
      free,
      welds.map((_, weld) => weld),
    ),
  );
  return welds.map((_, weld) =>
    held.map(({ member, station, point }): Vector3 => {
      const node = nodeOf(indexOf.get(member)!, station);
      const root = rootOf(node);
      const row = 6 * place.get(root)! - 6;
      const value = (index: number): number => (row < 0 ? 0 : solved.get(row + index, weld));
      const arm = subtract(point, points[root]!);
      const turn = cross({ x: value(3), y: value(4), z: value(5) }, arm);
      return { x: value(0) + turn.x, y: value(1) + turn.y, z: value(2) + turn.z };
    }),
  );

  /** Stiffness between the two ends of a stretch, its inner nodes eliminated one by one. */
  function chainStiffness(member: number, from: number, to: number): Matrix {
    const { pieces } = members[member]!.centreline;
    const cuts = [from];
    let begin = 0;
    for (const piece of pieces) {
      const [low, high] = [Math.max(from, begin), Math.min(to, begin + piece.length)];
      begin += piece.length;
      if (high - low < 1e-9) continue;
      const turn = piece.kind === 'arc' ? (high - low) / piece.radius : 0;
      const count =
        piece.kind === 'arc'
          ? 2 ** Math.ceil(Math.log2(Math.max((high - low) / mesh.longest, turn / mesh.turn, 1)))
          : 1;
      for (let part = 1; part <= count; part += 1) cuts.push(low + ((high - low) * part) / count);
    }
    // pairs of like stiffness, then pairs of those: adding a short one to a long one would round the long one off
    let parts = cuts.slice(1).map((cut, index) => beamStiffness(at(member, cuts[index]!), at(member, cut), tube));
    while (parts.length > 1)
      parts = parts.flatMap((part, index) => {
        const next = parts[index + 1];
        if (index % 2 === 1) return [];
        return [next === undefined ? part : condensed(part, next)];
      });
    return parts[0]!;
  }
}
