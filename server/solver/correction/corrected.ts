import type { Check, Spot } from '../frame/frame-geometry.ts';
import type { Centreline } from '../geometry/centreline.ts';
import type { RigidMotion } from '../geometry/rigid-motion.ts';
import type { Solid } from '../geometry/solid.ts';
import type { Vector3 } from '../geometry/vector.ts';

/** A point that a correction must bring somewhere: a foot, a corner, a hole in a pad. */
export type CorrectionTarget = {
  /** Of the frame as it came back. `off` stands off the centreline there, in the frame's axes [mm]. */
  readonly spot: Spot;
  readonly off: Vector3;
  readonly wanted: Vector3;
  /** Direction along which it may slide: a guide follows the wanted centreline across it only. Null: it is a point. */
  readonly along: Vector3 | null;
  /** ± that still counts as right [mm]. */
  readonly tolerance: number;
  /** fixing: a foot or a fixing point; corner; guide: a point of the wanted centreline that is followed where it can be. */
  readonly kind: 'fixing' | 'corner' | 'guide';
  /** The Job's fixing point, or empty. */
  readonly field: string;
  readonly name: string;
  readonly fixing: 'foot' | 'pad' | 'hole';
};

/** A post, a ball or a wall that no tube of the corrected frame may come near [mm], in the frame's axes. */
export type Post = {
  /** The thing of the site; one that swings, or that the frame swings past, stands at several places. */
  readonly field: string;
  readonly name: string;
  readonly solid: Solid;
  /** Between its surface and a tube's centreline, at the least. */
  readonly keep: number;
  /** Where it stands as typed, and not only where it comes nearest. */
  readonly atRest: boolean;
  /** Room that the wanted frame leaves beyond that, where it was measured. */
  readonly spare?: number;
};

/** A frame after a correction, in the axes of the wanted frame but not yet laid on it. */
export type CorrectedFrame = {
  /** How the place at a station of a member of the frame as it came back has moved; the piece that it stands on goes with it. */
  readonly motionAt: (member: string, station: number) => RigidMotion;
  /** Its centrelines, piece by piece where cuts part them. */
  readonly members: readonly { readonly name: string; readonly parts: readonly Centreline[] }[];
  /** Sizes as a tape finds them now, of a frame that was bent again and not cut; left out: their ends moved by motionAt. */
  readonly checks?: readonly Check[];
};
