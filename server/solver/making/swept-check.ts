import type { ArcPiece, Centreline } from '../geometry/centreline.ts';
import { cross, dot, rotate, type Vector3 } from '../geometry/vector.ts';
import { bedWhileBending, bedWhileTurning, type OverBed } from './bed-clearance.ts';
import { bentPart, place, type MachineAxes, type PlacedPiece } from './bent-part.ts';
import type { Clearance, DieBend, MachineEnvelope, Side, SweptBend } from './machine-envelope.ts';
import { machineMeasures, type MachineMeasures, type Setup } from './machine-measures.ts';
import { lookAlong, nothingNear, type Measure, type Nearest } from './nearest-station.ts';

/** A member and how it is bent: from its datum end, its die bends in order. Lengths [mm], angles [rad]. */
export type SweptInput = {
  readonly centreline: Centreline;
  /** Die bends in the order of their pieces. */
  readonly bends: readonly DieBend[];
  readonly machine: MachineEnvelope;
  readonly side: Side;
  /** Left on at the datum end, and at the far end, and cut off after bending. */
  readonly extraAtStart: number;
  readonly extraAtEnd: number;
  /** A ring: its two ends come together in the last bend. */
  readonly closed: boolean;
};

/** Of a ring, this many diameters by the datum end are not held against the far end that they must meet. */
const CLOSING = 2;

/**
 * How near the tube comes to the machine, to the bed and to itself while a member is bent on a rotary draw bender, its
 * die bends in order from the datum end.
 *
 * At the start S of a bend with tube direction d (towards what is not yet bent), bend normal N and die radius R, the
 * die's axis runs along N through C = S + R (N × d). What is bent already is rigid and swings about it by −t, t from 0
 * to the angle that the machine bends to; what is not yet bent lies straight from S along d and is drawn in. Somebody
 * behind it looks along −d; with N up, N × d is on the right: a die on the right bends with N up, one on the left with N
 * down. The swing changes neither heights nor the distance from the die, and the clamp goes round with the part, so
 * bed, die and clamp are looked at once; pressure die and tube over the whole swing.
 *
 * What must touch is left out: the stretch in the clamp and the straight that it is on, against die and clamp, and
 * behind the clamp's face as far as a bend needs to be clear of it; the same by the pressure die's face for the first
 * half turn; and places of the tube that less than half a turn lies between (see machine-measures.ts for why nothing
 * that strikes is lost). Between two bends the tube is fed, then turned the shorter way round (a half turn: the
 * positive way); only the bed is looked at then. Rolled arcs are taken as rolled in front of the die and as not yet
 * rolled behind it.
 *
 * Never more is told than there is. Less is: a fortieth of the diameter and a twentieth of the clearance; over the bed a
 * fiftieth of it while the tube turns and nothing while it swings; where the part passes beyond the far end another
 * fortieth; and near the datum end up to D/2 but for the bed, because the tube is taken to end round there.
 *
 * @returns for each bend the smallest clearance from each obstacle that anything can come near [mm]; no less than −D/2
 *   against bodies of the machine and −D against the tube: how far its axis is inside a body is not told
 */
export function sweptCheck(input: SweptInput): SweptBend[] {
  const { centreline, machine } = input;
  const { pieces, ahead } = bentPart(centreline, Math.max(0, input.extraAtStart));
  const setup: Setup = { dieRadius: 0, command: 0, tail: 0, drawn: 0, turned: 0 };
  const measures = machineMeasures(machine, setup);
  const last = input.bends.at(-1);
  let before: DieBend | undefined;
  let least = Infinity;
  const results: SweptBend[] = [];
  for (const bend of input.bends) {
    const arc = centreline.pieces[bend.piece];
    const own = pieces[bend.piece + ahead];
    if (arc?.kind !== 'arc' || own === undefined) continue;
    const count = bend.piece + ahead;
    const axes = machineAxes(arc, bend.dieRadius);
    // counted, not iterated: a run of many bends puts every piece into every bend's axes
    for (let index = 0; index < count; index += 1) {
      const piece = pieces[index];
      if (piece !== undefined) place(piece, axes);
    }
    const previous = centreline.pieces[bend.piece - 1];
    if (previous?.kind === 'arc') least = Math.min(least, previous.radius);
    setup.dieRadius = bend.dieRadius;
    setup.command = bend.command;
    setup.tail = centreline.length - own.station + Math.max(0, input.extraAtEnd);
    setup.drawn = arc.length;
    setup.turned = own.turned;
    const clearances: Clearance[] = [];
    if (machine.bedBelow !== null) {
      const bed: OverBed = {
        bedBelow: machine.bedBelow,
        up: input.side === 'right' ? 1 : -1,
        outsideDiameter: machine.outsideDiameter,
        dieRadius: bend.dieRadius,
      };
      if (before !== undefined) {
        const rotation = turnBetween(centreline, before.piece, bend.piece);
        if (rotation !== 0) tell(clearances, 'bed', 'turning', bedWhileTurning(pieces, count, rotation, bed));
      }
      tell(clearances, 'bed', 'bending', bedWhileBending(pieces, count, bed));
    }
    const closing = input.closed && bend === last ? CLOSING * machine.outsideDiameter + input.extraAtEnd : -Infinity;
    const radius = Math.max(least, machine.outsideDiameter / 2);
    againstMachine(clearances, { pieces, count, start: own.station, radius, closing }, machine, measures);
    results.push({ bend: bend.number, clearances });
    before = bend;
    least = Math.min(least, arc.radius);
  }
  return results;
}

/** The machine's axes at the start of a bend. */
export function machineAxes(arc: ArcPiece, dieRadius: number): MachineAxes {
  const outward = cross(arc.direction, arc.normal);
  const { start } = arc;
  const origin: Vector3 = {
    x: start.x - dieRadius * outward.x,
    y: start.y - dieRadius * outward.y,
    z: start.z - dieRadius * outward.z,
  };
  return { origin, along: arc.direction, outward, normal: arc.normal };
}

/** What has been bent so far: how many pieces, the bend's own station, smallest radius, and what a ring leaves out. */
type Part = {
  readonly pieces: readonly PlacedPiece[];
  readonly count: number;
  readonly start: number;
  readonly radius: number;
  readonly closing: number;
};

function againstMachine(
  clearances: Clearance[],
  part: Part,
  machine: MachineEnvelope,
  { die, clamp, pressureDie, pressureDieAgain, tube }: MachineMeasures,
): void {
  const { outsideDiameter, clampLength } = machine;
  const straight = straightBefore(part, outsideDiameter);
  // behind a face that the tube passes through square, a bend of radius r is clear of it from r asin(D/2r) on
  const clear =
    part.radius === Infinity ? outsideDiameter / 2 : part.radius * Math.asin(outsideDiameter / 2 / part.radius);
  const held = Math.max(straight, clampLength);
  const byFace = Math.max(straight, clear);
  tell(clearances, 'die', 'bending', over(part, die, { from: held, to: Infinity }, outsideDiameter));
  const ofClamp = { from: Math.max(straight, clampLength + clear), to: Infinity };
  tell(clearances, 'clamp', 'bending', over(part, clamp, ofClamp, outsideDiameter));
  const nearest = over(part, pressureDie, { from: byFace, to: Infinity }, outsideDiameter);
  over(part, pressureDieAgain, { from: 0, to: byFace }, outsideDiameter, nearest);
  tell(clearances, 'pressure-die', 'bending', nearest);
  tell(clearances, 'tube', 'bending', over(part, tube, { from: 0, to: part.start - part.closing }, outsideDiameter));
}

/**
 * An arc of this many diameters or more lies in clamp and dies like a straight: crowns are rolled; common practice, no
 * source.
 */
const LIKE_STRAIGHT = 10;

/** The straight next to the bend, crowns of large radius with it [mm]. */
function straightBefore({ pieces, count }: Part, outsideDiameter: number): number {
  let length = 0;
  for (let index = count - 1; index >= 0; index -= 1) {
    const piece = pieces[index];
    if (piece === undefined || (piece.radius > 0 && piece.radius < LIKE_STRAIGHT * outsideDiameter)) break;
    length += piece.length;
  }
  return length;
}

/** The nearest place among those `from` to `to` back from the bend's start along the tube [mm]. */
function over(
  { pieces, count, start }: Part,
  measure: Measure,
  back: { from: number; to: number },
  outsideDiameter: number,
  best: Nearest = nothingNear(),
): Nearest {
  const lowest = start - back.to;
  const highest = start - back.from;
  for (let index = count - 1; index >= 0; index -= 1) {
    const piece = pieces[index];
    if (piece === undefined) continue;
    const from = Math.max(0, lowest - piece.station);
    const to = Math.min(piece.length, highest - piece.station);
    if (to - from > 1e-9 * outsideDiameter) lookAlong(best, measure, piece, from, to, outsideDiameter);
  }
  return best;
}

function tell(
  clearances: Clearance[],
  obstacle: Clearance['obstacle'],
  doing: Clearance['while'],
  { nearest, low, station, swing }: Nearest,
): void {
  if (nearest === Infinity) return;
  clearances.push({ obstacle, while: doing, clearance: Math.min(low, nearest), station, swing });
}

/** Below this the tube is not turned [rad]: rounding. */
const NO_TURN = 1e-9;

/** Turn of the tube between two die bends, right-handed about the feed direction [rad], carried over rolled arcs. */
function turnBetween(centreline: Centreline, one: number, other: number): number {
  const first = centreline.pieces[one];
  const second = centreline.pieces[other];
  if (first?.kind !== 'arc' || second?.kind !== 'arc') return 0;
  let { normal } = first;
  for (const piece of centreline.pieces.slice(one + 1, other)) {
    if (piece.kind === 'arc') normal = rotate(normal, piece.normal, piece.angle);
  }
  const turn = Math.atan2(dot(cross(normal, second.normal), second.direction), dot(normal, second.normal));
  if (Math.abs(turn) < NO_TURN) return 0;
  return turn < NO_TURN - Math.PI ? Math.PI : turn;
}
