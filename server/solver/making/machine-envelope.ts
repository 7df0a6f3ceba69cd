import type { Obstacle } from '../../plan/making.ts';

/**
 * The bending machine as a few plain bodies round the tube, as far as anybody can measure them with a tape [mm].
 *
 * A simple envelope of our own, no source: a rotary draw bender whose die turns and draws the tube along. It is there
 * to warn early. Where it says that something comes near, walk the part round the machine before the tube is clamped,
 * and keep hands and people out of the way of the part that swings.
 */
export type MachineEnvelope = {
  readonly outsideDiameter: number;
  /** Whole height of the die block, its groove in the middle. */
  readonly dieHeight: number;
  /**
   * How far the die block reaches beyond the groove's centreline radius: 0 where the groove is half a tube deep (round
   * walls cannot be deeper and still let the tube go), half a tube where its walls are straight from there on.
   */
  readonly dieRim: number;
  /** Along the tube, ahead of the bend's start: the grip. */
  readonly clampLength: number;
  /** How far the clamp and its slide reach out from the tube's centreline, on the side away from the die. */
  readonly clampReach: number;
  readonly clampHeight: number;
  /** Along the tube that is not yet bent, behind the bend's start. */
  readonly pressureDieLength: number;
  readonly pressureDieReach: number;
  readonly pressureDieHeight: number;
  /** The tube's axis above the machine's bed or the floor; null where nobody measured it: then it is not checked. */
  readonly bedBelow: number | null;
};

/** On which side of somebody who stands behind the tube that is not yet bent, looking at the die, the die lies. */
export type Side = 'right' | 'left';

/** A bend on a die: its number among the member's arcs, its piece, and what the machine does [rad, mm]. */
export type DieBend = {
  readonly number: number;
  /** Index of the arc among the pieces of the centreline. */
  readonly piece: number;
  /** Angle that the machine swings to, springback included. */
  readonly command: number;
  /** Centreline radius of the groove of the die that it is bent on. */
  readonly dieRadius: number;
};

/** How near the part comes to one obstacle while one bend is made, or while the tube is turned for it. */
export type Clearance = {
  readonly obstacle: Obstacle;
  readonly while: 'bending' | 'turning';
  /** Smallest distance between surfaces [mm]; zero or less strikes. Never more than there is. */
  readonly clearance: number;
  /** Where on the bent part, from the datum end; below 0 in what is left on there [mm]. */
  readonly station: number;
  /** Swing of the die, or turn of the tube since the bend before, at which it is that near [rad]. */
  readonly swing: number;
};

export type SweptBend = { readonly bend: number; readonly clearances: readonly Clearance[] };
