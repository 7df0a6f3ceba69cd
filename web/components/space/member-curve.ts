import { Curve, Vector3 } from 'three';
import type { PlanPiece } from '../../../server/plan/frame.ts';

/**
 * From one ring of a drawn arc to the next: the largest turn [rad], and how far the chord may lie off the arc [mm].
 * No corner is seen on a tight bend nor on a long crown; our own choice.
 */
const STEP = { turn: (7.5 * Math.PI) / 180, off: 0.1 };
/** Rings of one arc at most, for a tube that is wound many times round. */
const MOST_RINGS = 720;

/** Into how many chords an arc is parted. The chord of a turn a lies r (1 − cos a/2) off its arc. */
function chordsOf(radius: number, angle: number): number {
  const turn = Math.min(STEP.turn, 2 * Math.acos(Math.max(0, 1 - STEP.off / radius)));
  return Math.min(MOST_RINGS, Math.max(1, Math.ceil(angle / turn)));
}

/** A piece where it lies, with the vectors that its points are made of. */
type Laid = {
  /** Station of its start [mm]. */
  readonly start: number;
  readonly length: number;
  readonly from: Vector3;
  /** From start to end of a straight; of an arc, from its centre to its start. */
  readonly arm: Vector3;
  /** Axis of an arc, its centre and its angle [rad]; null for a straight. */
  readonly arc: { readonly axis: Vector3; readonly centre: Vector3; readonly angle: number } | null;
};

const vector = ({ x, y, z }: { x: number; y: number; z: number }): Vector3 => new Vector3(x, y, z);

function laidAt(start: number, piece: PlanPiece): Laid {
  const from = vector(piece.from);
  if (piece.kind === 'straight')
    return { start, length: piece.length, from, arm: vector(piece.to).sub(from), arc: null };
  const centre = vector(piece.centre);
  const arc = { axis: vector(piece.normal).normalize(), centre, angle: (piece.angle * Math.PI) / 180 };
  return { start, length: piece.length, from, arm: from.clone().sub(centre), arc };
}

/**
 * The centreline of a member, exactly: straights and arcs one after the other. The parameter t is the share of the
 * whole length, so that t × length is the station from the datum end. Only the drawing takes samples of it.
 */
export class MemberCurve extends Curve<Vector3> {
  readonly length: number;
  readonly #laid: readonly Laid[];

  constructor(pieces: readonly PlanPiece[]) {
    super();
    const laid: Laid[] = [];
    let length = 0;
    for (const piece of pieces) {
      if (piece.length <= 0) continue;
      laid.push(laidAt(length, piece));
      length += piece.length;
    }
    this.#laid = laid;
    this.length = length;
  }

  /** The piece at a share of the length, by halving; and the share of that piece. */
  #at(t: number): { piece: Laid; share: number } {
    const station = Math.min(1, Math.max(0, t)) * this.length;
    let [low, high] = [0, this.#laid.length - 1];
    while (low < high) {
      const middle = Math.ceil((low + high) / 2);
      if ((this.#laid[middle]?.start ?? 0) <= station) low = middle;
      else high = middle - 1;
    }
    const piece = this.#laid[low];
    if (piece === undefined) throw new Error('A member without pieces has no points.');
    return { piece, share: Math.min(1, (station - piece.start) / piece.length) };
  }

  /** The point at a share of the length [mm]. */
  override getPoint(t: number, target = new Vector3()): Vector3 {
    const { piece, share } = this.#at(t);
    if (piece.arc === null) return target.copy(piece.arm).multiplyScalar(share).add(piece.from);
    return target
      .copy(piece.arm)
      .applyAxisAngle(piece.arc.axis, share * piece.arc.angle)
      .add(piece.arc.centre);
  }

  /** The direction at a share of the length, a unit vector towards the far end. */
  override getTangent(t: number, target = new Vector3()): Vector3 {
    const { piece, share } = this.#at(t);
    target.copy(piece.arm);
    if (piece.arc !== null)
      target
        .applyAxisAngle(piece.arc.axis, share * piece.arc.angle)
        .cross(piece.arc.axis)
        .negate();
    return target.normalize();
  }

  /** Its parameter already is the length's share. */
  override getPointAt(u: number, target = new Vector3()): Vector3 {
    return this.getPoint(u, target);
  }

  override getTangentAt(u: number, target = new Vector3()): Vector3 {
    return this.getTangent(u, target);
  }

  override getLength(): number {
    return this.length;
  }

  /** Shares of the length that a drawing needs: both ends of every piece, and the ends of an arc's chords. */
  samples(): readonly number[] {
    const shares = [0];
    for (const { start, length, arm, arc } of this.#laid) {
      const steps = arc === null ? 1 : chordsOf(arm.length(), Math.abs(arc.angle));
      for (let step = 1; step <= steps; step += 1)
        shares.push(Math.min(1, (start + (step / steps) * length) / this.length));
    }
    return shares;
  }

  /** The middle of every bend with the way out of it, in the order of the bend table. */
  bends(): readonly { readonly middle: Vector3; readonly outward: Vector3 }[] {
    return this.#laid.flatMap(({ start, length, arc }) => {
      if (arc === null) return [];
      const middle = this.getPoint((start + length / 2) / this.length);
      return [{ middle, outward: middle.clone().sub(arc.centre).normalize() }];
    });
  }
}
