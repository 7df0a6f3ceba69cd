import type { Reference } from '../../job/quantities.ts';
import type { Centreline } from '../geometry/centreline.ts';
import type { Closing } from '../geometry/path-through.ts';
import { length, subtract, type Vector3 } from '../geometry/vector.ts';

/**
 * How a member ends. A saddle's member runs to the partner's centreline: its station 0 (or its last) lies where the
 * two axes meet or pass nearest; the cut itself stands off by the saddle's ordinates.
 */
export type EndGeometry =
  | { readonly kind: 'free' }
  | { readonly kind: 'closed' }
  | {
      readonly kind: 'saddle';
      readonly onto: string;
      /** Station on the partner [mm]. */
      readonly station: number;
      /** Angle between the two axes, acute or right [rad]. */
      readonly axisAngle: number;
      /** Distance between the two axes [mm]. */
      readonly offset: number;
    };

export type MemberGeometry = {
  readonly name: string;
  readonly centreline: Centreline;
  readonly closed: boolean;
  /** Where a closed member begins and ends, and where else it could; null for an open one. */
  readonly closing: Closing | null;
  readonly start: EndGeometry;
  readonly finish: EndGeometry;
};

/** A point that belongs to a member at a station, and moves with the piece that the station is on. */
export type Spot = { readonly member: string; readonly station: number; readonly point: Vector3 };

/**
 * A size of the frame: the distance between two spots on the centrelines, and what is added to it over the outside
 * and inside to inside.
 */
export type Check = {
  /** Language key: width-at-corners, width-at-feet, left-leg, right-leg, crossbar-from-foot, width, height, offset, … */
  readonly key: string;
  readonly index: number;
  /** JSON pointer of the typed dimension; empty for one that follows from others. */
  readonly field: string;
  readonly reference: Reference;
  /** Added to the centre size [mm]; the second is negative. */
  readonly outsideExtra: number;
  readonly insideExtra: number;
  /** True where both ends of the size move by half of that, false where only the far one does (a cut end's length). */
  readonly bothEnds: boolean;
  readonly from: Spot;
  readonly to: Spot;
};

/** What a check's reference adds to its centre size [mm]. */
export const extraFor = (check: Check, reference: Reference): number =>
  reference === 'outside' ? check.outsideExtra : reference === 'inside' ? check.insideExtra : 0;

/** Size of a check, centre to centre [mm]; `placed` where its spots have moved. */
export const measureCheck = (check: Check, placed: (spot: Spot) => Vector3 = (spot) => spot.point): number =>
  length(subtract(placed(check.to), placed(check.from)));

/** A whole frame in space, in its own right-handed axes [mm]. */
export type FrameGeometry = {
  readonly members: readonly MemberGeometry[];
  readonly checks: readonly Check[];
  /** Free ends, in the order left to right where the shape knows a left and a right. */
  readonly feet: readonly Spot[];
  /** The apex of each die bend (its middle where the bend has no apex), member by member. */
  readonly corners: readonly Spot[];
  /** Unit normal of the plane that every centreline lies in, or null for a frame in space. */
  readonly planeNormal: Vector3 | null;
};
