import type { KeepOut } from '../../plan/joint.ts';
import type { MemberGeometry } from '../frame/frame-geometry.ts';
import type { Vector3 } from '../geometry/vector.ts';

/** New tube between the two faces of a joint [mm, rad]. Its ends meet the faces with half of what is left of the kink. */
export type LetIn = {
  /** Along its centreline between its finished faces. */
  readonly length: number;
  /** Centreline radius, and the angle it turns; null for a straight one. */
  readonly radius: number | null;
  readonly angle: number;
  /** Kink at its face A and at its face B. */
  readonly kinkA: number;
  readonly kinkB: number;
};

/**
 * A joint as it is to be cut, in the axes of the frame as it came back. Both faces are planes through the member's
 * centreline at a station; after the closing they lie on each other (or on the let-in piece).
 */
export type CutJoint = {
  readonly member: MemberGeometry;
  /** Stations of the finished faces [mm]; gap and shrinkage are shared out already. B is not before A. */
  readonly stationA: number;
  readonly stationB: number;
  /** Stations where the closed centrelines meet [mm], before gap and shrinkage. */
  readonly meetsA: number;
  readonly meetsB: number;
  /** Unit normals of the two planes, each along the tube towards its finish. */
  readonly normalA: Vector3;
  readonly normalB: Vector3;
  /** Angle between the two centrelines [rad, 0 or more], what is left across [mm, 0 or more]. */
  readonly kink: number;
  readonly hiLo: number;
  /** Turn of the second piece about its own tangent, right-handed towards the finish [rad]. */
  readonly twist: number;
  readonly letIn: LetIn | null;
  /** Where the closed joint stands in the corrected frame. */
  readonly point: Vector3;
  /** How far the joint may be moved along the member: of its middle [mm], with the rule that ends it. */
  readonly range: { readonly from: number; readonly to: number };
  readonly bounds: { readonly from: KeepOut; readonly to: KeepOut };
};
