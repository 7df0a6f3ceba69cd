import type { Said } from '../../plan/readings-fit.ts';
import type { FrameGeometry } from '../frame/frame-geometry.ts';

/** One number that somebody measured on a frame; a point in space is three of them. */
export type SolvedReading = {
  /** JSON pointer: '/cameBack/readings/3', and for a point '/cameBack/readings/3/x'. */
  readonly field: string;
  /** Name of what was measured, as a language key with its data. */
  readonly name: Said;
  readonly unit: 'mm' | 'deg';
  /** As typed, in its own reference [unit]. */
  readonly measured: number;
  /** ± of the reading, its own or that of its kind, never nothing [unit]. */
  readonly accuracy: number;
  /** True for a level and for a point: they say something only of a frame that stands somewhere. */
  readonly posed: boolean;
  /**
   * What would be read on a frame with the same members and pieces [unit]. A reading that is posed is found on the frame
   * as it stands where all posed readings are met best.
   *
   * @returns undefined where the frame has no such place
   */
  readonly predict: (frame: FrameGeometry) => number | undefined;
};

/** All numbers that were measured, in the order of the job. */
export type SolvedReadings = {
  readonly readings: readonly SolvedReading[];
  /** What would be read on a frame, in the order of the readings; the pose is found once for all. */
  readonly predictAll: (frame: FrameGeometry) => (number | undefined)[];
};
