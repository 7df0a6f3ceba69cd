import { placeOn, type Centreline, type Piece } from '../geometry/centreline.ts';
import { add, cross, dot, rotate, scale, subtract, type Vector3 } from '../geometry/vector.ts';
import { arcCentre } from '../geometry/slice.ts';
import { planeOnBend } from './plane-on-bend.ts';

/** The four generators of a tube that a cut is marked on, by their angle from the outside of the curve [degrees]. */
export const GENERATORS = [
  { key: 'outside', angle: 0 },
  { key: 'top', angle: 90 },
  { key: 'inside', angle: 180 },
  { key: 'bottom', angle: 270 },
] as const;

/** A generator: radius of the surface that it lies on [mm], angle from generator 0 [rad], a quarter turn at tangent × outside. */
export type Generator = { readonly radius: number; readonly angle: number };

/** A plane by a point of it and its unit normal [mm]. */
export type Plane = { readonly point: Vector3; readonly normal: Vector3 };

/**
 * How the generators of a tube run on one piece of its centreline. They are carried along without twist: on an arc what
 * they have towards its outside and along its axis stays, so that a bend in another plane turns no generator about the
 * tube (rotation-minimising frame: Bishop 1975, Amer. Math. Monthly 82, 246; on straights and arcs exact).
 */
export type GeneratorRun = {
  readonly piece: Piece;
  /** Station at which the piece begins [mm]. */
  readonly begin: number;
  /** Stations between which it is this piece; ∓Infinity at the ends, where the piece is carried on. */
  readonly from: number;
  readonly to: number;
  /** Generator 0 and the quarter turn at the piece's start, unit vectors. */
  readonly outside: Vector3;
  readonly quarter: Vector3;
  /** Angle of generator 0 from the arc's own outside [rad]; 0 on a straight. */
  readonly lead: number;
};

/**
 * Carries generator 0 from a station over the whole centreline.
 *
 * @param station where `outside` stands [mm]
 * @param outside unit vector square to the centreline there
 */
export function generatorRuns(centreline: Centreline, station: number, outside: Vector3): GeneratorRun[] {
  const { pieces } = centreline;
  const last = pieces.length - 1;
  const begins: number[] = [];
  let length = 0;
  let here = 0;
  for (const [index, piece] of pieces.entries()) {
    begins.push(length);
    if (station > length && index > 0) here = index;
    length += piece.length;
  }
  const runs: GeneratorRun[] = [];
  const place = (index: number, atStart: Vector3): void => {
    const piece = pieces[index];
    const begin = begins[index] ?? 0;
    if (piece === undefined) return;
    const quarter = cross(piece.direction, atStart);
    runs[index] = {
      piece,
      begin,
      from: index === 0 ? -Infinity : begin,
      to: index === last ? Infinity : begin + piece.length,
      outside: atStart,
      quarter,
      // out of the arc is tangent × normal, and tangent × that is −normal
      lead:
        piece.kind === 'arc'
          ? Math.atan2(-dot(atStart, piece.normal), dot(atStart, cross(piece.direction, piece.normal)))
          : 0,
    };
  };
  const first = pieces[here];
  if (first === undefined) return runs;
  const start = turnedBy(first, outside, (begins[here] ?? 0) - station);
  place(here, start);
  let carried = start;
  for (let index = here; index < last; index += 1) {
    const piece = pieces[index];
    if (piece !== undefined) carried = turnedBy(piece, carried, piece.length);
    place(index + 1, carried);
  }
  carried = start;
  for (let index = here - 1; index >= 0; index -= 1) {
    const piece = pieces[index];
    if (piece !== undefined) carried = turnedBy(piece, carried, -piece.length);
    place(index, carried);
  }
  return runs;
}

/** A direction carried along a piece by a length [mm]. */
const turnedBy = (piece: Piece, direction: Vector3, length: number): Vector3 =>
  piece.kind === 'arc' ? rotate(direction, piece.normal, length / piece.radius) : direction;

/** Radius at which a generator runs round an arc [mm]: R + r cos φ, φ from the arc's own outside. */
const generatorRadius = (arc: { radius: number }, { radius, angle }: Generator): number =>
  arc.radius + radius * Math.cos(angle);

/**
 * Length of a generator between two stations [mm], negative where the second comes first: on an arc it runs at its own
 * radius, so it is longer outside and shorter inside.
 */
export function lengthAlong(runs: readonly GeneratorRun[], generator: Generator, from: number, to: number): number {
  if (to < from) return -lengthAlong(runs, generator, to, from);
  let length = 0;
  for (const run of runs) {
    const part = Math.min(to, run.to) - Math.max(from, run.from);
    if (part <= 0) continue;
    const { piece, lead } = run;
    length +=
      piece.kind === 'straight'
        ? part
        : (part * generatorRadius(piece, { radius: generator.radius, angle: generator.angle + lead })) / piece.radius;
  }
  return length;
}

/** The point of a generator at a station of the centreline [mm]. */
export function pointOn(runs: readonly GeneratorRun[], generator: Generator, station: number): Vector3 | undefined {
  const run = runs.find(({ to }) => station <= to);
  if (run === undefined) return undefined;
  const along = station - run.begin;
  return add(
    placeOn(run.piece, along).point,
    scale(turnedBy(run.piece, radial(run, generator), along), generator.radius),
  );
}

const radial = ({ outside, quarter }: GeneratorRun, { angle }: Generator): Vector3 =>
  add(scale(outside, Math.cos(angle)), scale(quarter, Math.sin(angle)));

/**
 * Station [mm] at which a plane cuts a generator, the one nearest to `near` where it does so more than once; it may lie
 * on any piece, so that a cut runs out of a bend into the straight beside it and on into the next bend.
 *
 * @returns undefined where the plane misses the generator
 */
export function planeCrossing(
  runs: readonly GeneratorRun[],
  generator: Generator,
  plane: Plane,
  near: number,
): number | undefined {
  // the piece that the face stands on first: where it is cut there, the others lie further off
  const home = runs.find(({ to }) => near <= to);
  let best = home === undefined ? undefined : crossingOn(home, generator, plane, near);
  for (const run of runs) {
    if (run === home) continue;
    const apart = Math.max(run.from - near, near - run.to, 0);
    if (best !== undefined && apart >= Math.abs(best - near)) continue;
    const station = crossingOn(run, generator, plane, near);
    if (station !== undefined && (best === undefined || Math.abs(station - near) < Math.abs(best - near)))
      best = station;
  }
  return best;
}

/** Where a plane cuts a generator on one piece; a cut at a tangent point, give or take rounding, belongs to either. */
function crossingOn(run: GeneratorRun, generator: Generator, plane: Plane, near: number): number | undefined {
  const station =
    run.piece.kind === 'straight' ? onStraight(run, generator, plane) : onArc(run, generator, plane, near);
  return station === undefined || station < run.from - ROUNDING || station > run.to + ROUNDING ? undefined : station;
}

/** Stations nearer than this to a tangent point are at it [mm]. */
const ROUNDING = 1e-10;

function onStraight(run: GeneratorRun, generator: Generator, { point, normal }: Plane): number | undefined {
  const { start, direction } = run.piece;
  const ahead = dot(normal, direction);
  const from = add(subtract(start, point), scale(radial(run, generator), generator.radius));
  const station = run.begin - dot(normal, from) / ahead;
  return Number.isFinite(station) ? station : undefined;
}

/** In the bend's own axes: x out of the arc and y along it at its start, z its axis, against which generators turn. */
function onArc(run: GeneratorRun, generator: Generator, { point, normal }: Plane, near: number): number | undefined {
  const { piece, begin, lead } = run;
  if (piece.kind !== 'arc') return undefined;
  const own = {
    x: dot(normal, cross(piece.direction, piece.normal)),
    y: dot(normal, piece.direction),
    z: dot(normal, piece.normal),
  };
  const distance = dot(normal, subtract(point, arcCentre(piece)));
  const nearest = (Math.min(Math.max(near, run.from), run.to) - begin) / piece.radius;
  const cut = planeOnBend(
    { radius: piece.radius, from: -Infinity, to: Infinity },
    { normal: own, distance },
    { radius: generator.radius, angle: -(generator.angle + lead) },
    nearest,
  );
  return cut?.turn === null || cut === undefined ? undefined : begin + cut.turn * piece.radius;
}
