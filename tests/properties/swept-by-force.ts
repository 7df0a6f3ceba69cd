import type { Obstacle } from '../../server/plan/making.ts';
import { placeAt, type ArcPiece, type Centreline } from '../../server/solver/geometry/centreline.ts';
import { pieceStations } from '../../server/solver/geometry/slice.ts';
import { add, cross, dot, length, rotate, scale, subtract, type Vector3 } from '../../server/solver/geometry/vector.ts';
import type { SweptInput } from '../../server/solver/making/swept-check.ts';

/** The machine in the member's own axes at the start of one bend: where things stand, and along what. */
export type Stand = { start: Vector3; along: Vector3; out: Vector3; up: Vector3; centre: Vector3; normal: Vector3 };

export function standAt(input: SweptInput, index: number): Stand & { arc: ArcPiece; station: number } {
  const bend = input.bends[index]!;
  const arc = input.centreline.pieces[bend.piece] as ArcPiece;
  const inward = cross(arc.normal, arc.direction);
  return {
    arc,
    station: pieceStations(input.centreline)[bend.piece]!,
    start: arc.start,
    along: arc.direction,
    out: scale(inward, -1),
    up: scale(arc.normal, input.side === 'right' ? 1 : -1),
    centre: add(arc.start, scale(inward, bend.dieRadius)),
    normal: arc.normal,
  };
}

/** A point of the bent part where the die has swung by an angle. */
export const swungTo = (point: Vector3, { centre, normal }: Pick<Stand, 'centre' | 'normal'>, swing: number): Vector3 =>
  add(centre, rotate(subtract(point, centre), normal, -swing));

type Block = { along: [number, number]; out: [number, number]; half: number };

/** Distance from a block along the stand's axes, measured from the bend's start; 0 inside. */
function fromBlock(point: Vector3, stand: Stand, block: Block): number {
  const from = subtract(point, stand.start);
  const beyond = (value: number, [low, high]: [number, number]) => Math.max(low - value, 0, value - high);
  return length({
    x: beyond(dot(from, stand.along), block.along),
    y: beyond(dot(from, stand.out), block.out),
    z: beyond(dot(from, stand.up), [-block.half, block.half]),
  });
}

function fromDie(point: Vector3, stand: Stand, die: { radius: number; half: number }): number {
  const from = subtract(point, stand.centre);
  const high = dot(from, stand.normal);
  const off = length(subtract(from, scale(stand.normal, high)));
  return Math.hypot(Math.max(0, off - die.radius), Math.max(0, Math.abs(high) - die.half));
}

/** How much the tube turns between two stations. */
export function turnBetween(line: Centreline, from: number, to: number): number {
  const stations = pieceStations(line);
  return line.pieces.reduce((sum, piece, index) => {
    if (piece.kind === 'straight') return sum;
    const begin = stations[index]!;
    const inside = Math.min(to, begin + piece.length) - Math.max(from, begin);
    return sum + Math.max(0, inside) / piece.radius;
  }, 0);
}

/** Places by this much beyond where the program begins to look [mm, rad]. */
const ROUNDING = 1e-6;

export type Steps = { along: number; swing: number };

/**
 * The smallest clearances of one bend by trying: every station in steps, every swing in steps, each point turned about
 * the die's axis and its distance taken from each body. No closed form of the program is used.
 */
export function byForce(input: SweptInput, index: number, steps: Steps): Map<Obstacle, number> {
  const { machine, centreline } = input;
  const stand = standAt(input, index);
  const { command, dieRadius, piece } = input.bends[index]!;
  const { outsideDiameter: diameter } = machine;
  const least = new Map<Obstacle, number>();
  const take = (obstacle: Obstacle, distance: number) => {
    // the tube that is not yet bent is round as well
    const clearance = distance - (obstacle === 'tube' ? diameter : diameter / 2);
    if (clearance < (least.get(obstacle) ?? Infinity)) least.set(obstacle, clearance);
  };
  const before = centreline.pieces[piece - 1];
  const straight = before?.kind === 'straight' ? before.length + (piece === 1 ? input.extraAtStart : 0) : 0;
  const radii = centreline.pieces.slice(0, piece).flatMap((each) => (each.kind === 'arc' ? [each.radius] : []));
  const clear = radii.length === 0 ? diameter / 2 : Math.min(...radii) * Math.asin(diameter / 2 / Math.min(...radii));
  const clamp: Block = {
    along: [-machine.clampLength, 0],
    out: [0, machine.clampReach],
    half: machine.clampHeight / 2,
  };
  const pressure: Block = {
    along: [0, machine.pressureDieLength],
    out: [0, machine.pressureDieReach],
    half: machine.pressureDieHeight / 2,
  };
  const tail = centreline.length - stand.station + input.extraAtEnd;
  const count = Math.ceil((stand.station + input.extraAtStart) / steps.along);
  for (let step = 0; step <= count; step += 1) {
    const back = ((stand.station + input.extraAtStart) * step) / count;
    const station = stand.station - back;
    const { point } = placeAt(centreline, station)!;
    if (back > Math.max(straight, machine.clampLength) + ROUNDING) {
      take('die', fromDie(point, stand, { radius: dieRadius + machine.dieRim, half: machine.dieHeight / 2 }));
    }
    if (back > Math.max(straight, machine.clampLength + clear) + ROUNDING)
      take('clamp', fromBlock(point, stand, clamp));
    const turned = turnBetween(centreline, station, stand.station);
    const reach = length(subtract(point, stand.centre));
    const swings = Math.max(1, Math.ceil((command * reach) / steps.swing));
    for (let turn = 0; turn <= swings; turn += 1) {
      const swing = (command * turn) / swings;
      const at = swungTo(point, stand, swing);
      if (back > Math.max(straight, clear) + ROUNDING || swing >= Math.PI) {
        take('pressure-die', fromBlock(at, stand, pressure));
      }
      if (turned + swing < Math.PI + ROUNDING) continue;
      const left = Math.max(0, tail - (stand.arc.length * swing) / command);
      take('tube', fromBlock(at, stand, { along: [0, left], out: [0, 0], half: 0 }));
    }
  }
  return least;
}

/**
 * The smallest distance between surfaces of two places of the tube that are not neighbours (so far apart along it that
 * the tightest bend could bring them no nearer than a diameter, or so many times farther), one on the bent part, one on the tube not yet bent.
 */
export function tubeToItself(input: SweptInput, index: number, steps: Steps, farther = 1): number {
  const { machine, centreline } = input;
  const stand = standAt(input, index);
  const { command, dieRadius, piece } = input.bends[index]!;
  const radii = centreline.pieces.slice(0, piece).flatMap((each) => (each.kind === 'arc' ? [each.radius] : []));
  const radius = Math.min(dieRadius, ...radii);
  const neighbours = farther * 2 * radius * Math.asin(machine.outsideDiameter / 2 / radius);
  const count = Math.ceil((stand.station + input.extraAtStart) / steps.along);
  let least = Infinity;
  for (let step = 0; step <= count; step += 1) {
    const back = ((stand.station + input.extraAtStart) * step) / count;
    const { point } = placeAt(centreline, stand.station - back)!;
    const swings = Math.max(1, Math.ceil((command * length(subtract(point, stand.centre))) / steps.swing));
    for (let turn = 0; turn <= swings; turn += 1) {
      const swing = (command * turn) / swings;
      const near = Math.max(0, neighbours - back - dieRadius * swing);
      const far = centreline.length - stand.station + input.extraAtEnd - (stand.arc.length * swing) / command;
      if (far <= near) continue;
      const at = swungTo(point, stand, swing);
      least = Math.min(least, fromBlock(at, stand, { along: [near, far], out: [0, 0], half: 0 }));
    }
  }
  return least - machine.outsideDiameter;
}

/** The lowest point of the bent part over the bed, as discs square to it, over a turn of the tube (0: none). */
export function overBed(input: SweptInput, index: number, rotation: number, steps: Steps): number {
  const stand = standAt(input, index);
  const { outsideDiameter: diameter, bedBelow } = input.machine;
  const begin = -input.extraAtStart;
  const count = Math.ceil((stand.station - begin) / steps.along);
  let least = Infinity;
  for (let step = 0; step <= count; step += 1) {
    const { point, tangent } = placeAt(input.centreline, begin + ((stand.station - begin) * step) / count)!;
    const from = subtract(point, stand.start);
    const turns = Math.max(1, Math.ceil((Math.abs(rotation) * length(from)) / steps.swing));
    for (let turn = 0; turn <= turns; turn += 1) {
      // before the turn the tube stands turned back by the whole rotation, so "up" is turned back in its axes
      const up = rotate(stand.up, stand.along, -rotation * (1 - turn / turns));
      const low = dot(from, up) - (diameter / 2) * Math.sqrt(Math.max(0, 1 - dot(tangent, up) ** 2));
      least = Math.min(least, low);
    }
  }
  return (bedBelow ?? Infinity) + least;
}
