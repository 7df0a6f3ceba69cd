import { pointOn, type MachinePoint, type PlacedPiece } from './bent-part.ts';
import { lookAlong, nothingNear, type Measure, type Nearest } from './nearest-station.ts';

/** The flat end of the tube while it turns is this many points of a rim that stands 2 % off outside it. */
const RIM = 16;
/** Share of the clearance over the bed that may be told less while the tube turns (see slack). */
const BED_SHARE = 1 / 50;
const TURN = 2 * Math.PI;

/** How the tube stands over the bed [mm, rad]. */
export type OverBed = {
  /** Tube axis above the bed. */
  readonly bedBelow: number;
  /** +1 where the bend's normal points up (die on the right), −1 where it points down. */
  readonly up: 1 | -1;
  readonly outsideDiameter: number;
  /** Centreline radius of the die: the tube's axis lies this far off the die's. */
  readonly dieRadius: number;
};

/**
 * Clearance of the bent part over the bed while it swings: heights do not change then. Exact: a straight is lowest at an
 * end, an arc at an end or where it is level; the sawn end is flat, the rest as round as the tube.
 */
export function bedWhileBending(pieces: readonly PlacedPiece[], count: number, bed: OverBed): Nearest {
  const best = nothingNear();
  const { up, outsideDiameter } = bed;
  const radius = outsideDiameter / 2;
  const take = (clearance: number, station: number): void => {
    if (clearance >= best.nearest) return;
    best.nearest = clearance;
    best.station = station;
  };
  const point: MachinePoint = { a: 0, b: 0, z: 0 };
  const look = (piece: PlacedPiece, at: number): void => {
    pointOn(piece, at, point);
    take(bed.bedBelow + up * point.z - radius, piece.station + at);
  };
  for (let index = 0; index < count; index += 1) {
    const piece = pieces[index];
    if (piece === undefined || piece.length <= 0) continue;
    const begin = roundFrom(piece, index, outsideDiameter);
    look(piece, begin);
    look(piece, piece.length);
    if (index === 0 && piece.radius === 0) {
      const slope = Math.sqrt(Math.max(0, 1 - piece.directionZ * piece.directionZ));
      take(bed.bedBelow + up * piece.startZ - radius * slope, piece.station);
    }
    if (piece.radius === 0) continue;
    // dz/dθ = R (cos θ · direction + sin θ · inward) = 0, twice a turn
    const level = Math.atan2(-piece.directionZ, piece.inwardZ);
    for (let turn = level < 0 ? level + Math.PI : level; turn * piece.radius < piece.length; turn += Math.PI) {
      look(piece, turn * piece.radius);
    }
  }
  best.low = best.nearest;
  return best;
}

/** Where the round part of a piece begins: a flat sawn end is left out by half a diameter. */
const roundFrom = (piece: PlacedPiece, index: number, outsideDiameter: number): number =>
  index === 0 && piece.radius === 0 ? Math.min(piece.length, outsideDiameter / 2) : 0;

/**
 * Clearance of the bent part over the bed while the tube is turned about its own axis between two bends.
 *
 * A point at distance m from the tube's axis goes round a circle, so it is lowest at −m where the turn comes by there,
 * else at one end of the turn: closed form. Straights are lowest at an end; arcs are looked along.
 *
 * @param rotation turn of the tube since the bend before, right-handed about the feed direction [rad]
 */
export function bedWhileTurning(
  pieces: readonly PlacedPiece[],
  count: number,
  rotation: number,
  bed: OverBed,
): Nearest {
  const best = nothingNear();
  const { up, outsideDiameter, dieRadius, bedBelow } = bed;
  const point: MachinePoint = { a: 0, b: 0, z: 0 };
  const found = { swing: 0 };
  const radius = outsideDiameter / 2;

  /** Lowest height of `point` over the turn. Before it, the part still lies turned back by the rotation. */
  const lowest = (): number => {
    const across = dieRadius - point.b;
    const off = Math.sqrt(across * across + point.z * point.z);
    // height(σ) = ± (z cos σ + across · sin σ), σ from the rotation (before) to 0 (turned)
    const begins = up * (point.z * Math.cos(rotation) + across * Math.sin(rotation));
    const ends = up * point.z;
    found.swing = begins <= ends ? 0 : rotation;
    const down = Math.atan2(-up * across, -up * point.z);
    const before = rotation >= 0 ? down - TURN * Math.floor(down / TURN) : TURN * Math.ceil(down / TURN) - down;
    if (before > Math.abs(rotation)) return Math.min(begins, ends);
    found.swing = rotation - Math.sign(rotation) * before;
    return -off;
  };
  const measure: Measure = {
    clearance: (piece, at) => {
      pointOn(piece, at, point);
      return bedBelow + lowest() - radius;
    },
    floor: -Infinity,
    share: BED_SHARE,
    byTurn: false,
    found,
  };
  const take = (clearance: number, station: number): void => {
    best.low = Math.min(best.low, clearance);
    if (clearance >= best.nearest) return;
    best.nearest = clearance;
    best.station = station;
    best.swing = found.swing;
  };

  for (let index = 0; index < count; index += 1) {
    const piece = pieces[index];
    if (piece === undefined || piece.length <= 0) continue;
    const begin = roundFrom(piece, index, outsideDiameter);
    take(measure.clearance(piece, begin, 0, Infinity), piece.station + begin);
    take(measure.clearance(piece, piece.length, 0, Infinity), piece.station + piece.length);
    if (index === 0 && piece.radius === 0) rim(piece);
  }
  // the ends are known now: most arcs hold nothing lower than them
  for (let index = 0; index < count; index += 1) {
    const piece = pieces[index];
    if (piece === undefined || piece.radius === 0) continue;
    lookAlong(best, measure, piece, 0, piece.length, outsideDiameter);
  }
  return best;

  /** The rim of the sawn end, drawn round the outside of the tube's own. */
  function rim(piece: PlacedPiece): void {
    const { directionA: a, directionB: b, directionZ: z } = piece;
    // two directions square to the end's own: one level where there is one
    const level = Math.sqrt(a * a + b * b);
    const first = level > 1e-9 ? { a: -b / level, b: a / level, z: 0 } : { a: 1, b: 0, z: 0 };
    const second = { a: b * first.z - z * first.b, b: z * first.a - a * first.z, z: a * first.b - b * first.a };
    const wide = radius / Math.cos(Math.PI / RIM);
    for (let step = 0; step < RIM; step += 1) {
      const cosine = wide * Math.cos((TURN * step) / RIM);
      const sine = wide * Math.sin((TURN * step) / RIM);
      point.a = piece.startA + cosine * first.a + sine * second.a;
      point.b = piece.startB + cosine * first.b + sine * second.b;
      point.z = piece.startZ + cosine * first.z + sine * second.z;
      take(bedBelow + lowest(), piece.station);
    }
  }
}
