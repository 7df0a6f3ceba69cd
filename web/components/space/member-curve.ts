import { Curve, Vector3 } from 'three';
import type { PlanPiece } from '../../../server/plan/frame.ts';

/** Largest turn from one ring of a drawn bend to the next [degrees]: no corner is seen; our own choice. */
const FINEST = 5;
/** Rings of one arc at most, for a tube that is wound many times round. */
const MOST_RINGS = 720;

type Laid = { readonly piece: PlanPiece; readonly from: number };

const vector = ({ x, y, z }: { x: number; y: number; z: number }): Vector3 => new Vector3(x, y, z);

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
      laid.push({ piece, from: length });
      length += piece.length;
    }
    this.#laid = laid;
    this.length = length;
  }

  #at(t: number): { piece: PlanPiece; share: number } {
    const station = Math.min(1, Math.max(0, t)) * this.length;
    const found = this.#laid.findLast(({ from }) => from <= station) ?? this.#laid[0];
    if (found === undefined) throw new Error('A member without pieces has no points.');
    return { piece: found.piece, share: Math.min(1, (station - found.from) / found.piece.length) };
  }

  /** The point at a share of the length [mm]. */
  override getPoint(t: number, target = new Vector3()): Vector3 {
    const { piece, share } = this.#at(t);
    if (piece.kind === 'straight') return target.copy(vector(piece.from)).lerp(vector(piece.to), share);
    const turn = (share * piece.angle * Math.PI) / 180;
    return target
      .copy(vector(piece.from))
      .sub(vector(piece.centre))
      .applyAxisAngle(vector(piece.normal), turn)
      .add(vector(piece.centre));
  }

  /** The direction at a share of the length, a unit vector towards the far end. */
  override getTangent(t: number, target = new Vector3()): Vector3 {
    const { piece, share } = this.#at(t);
    if (piece.kind === 'straight') return target.copy(vector(piece.to)).sub(vector(piece.from)).normalize();
    const turn = (share * piece.angle * Math.PI) / 180;
    const outward = vector(piece.from).sub(vector(piece.centre)).applyAxisAngle(vector(piece.normal), turn);
    return target.copy(vector(piece.normal)).cross(outward).normalize();
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

  /** Shares of the length that a drawing needs: both ends of every piece, and an arc every few degrees. */
  samples(): readonly number[] {
    const shares = [0];
    for (const { piece, from } of this.#laid) {
      const steps = piece.kind === 'straight' ? 1 : Math.min(MOST_RINGS, Math.ceil(piece.angle / FINEST));
      for (let step = 1; step <= steps; step += 1) {
        shares.push(Math.min(1, (from + (step / steps) * piece.length) / this.length));
      }
    }
    return shares;
  }

  /** The middle of every bend with the way out of it, in the order of the bend table. */
  bends(): readonly { readonly middle: Vector3; readonly outward: Vector3 }[] {
    return this.#laid.flatMap(({ piece, from }) => {
      if (piece.kind === 'straight') return [];
      const middle = this.getPoint((from + piece.length / 2) / this.length);
      return [{ middle, outward: middle.clone().sub(vector(piece.centre)).normalize() }];
    });
  }
}
