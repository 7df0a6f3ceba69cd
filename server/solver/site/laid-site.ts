import type { Fixing } from '../../job/fixing.ts';
import type { Site } from '../../job/site.ts';
import type { Tube } from '../../job/tube.ts';
import type { DoubtSource } from '../../plan/leg.ts';
import type { FrameGeometry } from '../frame/frame-geometry.ts';
import type { Centreline } from '../geometry/centreline.ts';
import type { RigidMotion } from '../geometry/rigid-motion.ts';
import type { Vector3 } from '../geometry/vector.ts';
import type { ResolvedGrade } from '../tube/grades.ts';

/**
 * How far a measured value is taken off what was typed, by its Job pointer [mm or degrees]. The site is laid once as
 * typed, and once for each doubtful value with that value off by its accuracy: the band of anything that follows is the
 * root of the sum of the squared changes.
 */
export type Off = (field: string) => number;

/** Everything as typed. */
export const EXACT: Off = () => 0;

/** A measured value: where it is typed and its accuracy, ± [mm or degrees as typed]. */
export type SiteDoubt = {
  readonly field: string;
  readonly plusMinus: number;
  readonly from: DoubtSource;
  /** Of the point or the thing that it belongs to; empty for the others. */
  readonly name: string;
  /** Of its ±; left out: mm. */
  readonly unit?: 'deg';
  /** Job field to go back to, where it is none of its own. */
  readonly goBackTo?: string;
};

/** One tube of the frame as it will be: its centreline in the frame's own axes. */
export type MadeLine = {
  readonly name: string;
  readonly closed: boolean;
  readonly centreline: Centreline;
  /** Of a line that is off: the one that it is off from, in the frame's own axes, on which places are found. */
  readonly offFrom?: Centreline;
};

/** The frame as it will be where one thing that nobody knows of it is off by its ±, laid as the made one is. */
export type MadeVariation = {
  /** Job field of what would tell it: readings of the frame, or the frame that is still to be made. */
  readonly goBackTo: string;
  readonly lines: readonly MadeLine[];
};

/** What the site is worked out from [mm]. */
export type SiteSource = {
  readonly site: Site;
  readonly wanted: FrameGeometry;
  /** The frame as the chosen way leaves it; of the same names as the wanted one, not always of the same pieces. */
  readonly made: readonly MadeLine[];
  /** What is in doubt of `made`, once for each independent thing; left out: nothing. */
  readonly madeOff?: readonly MadeVariation[];
  readonly tube: Tube;
  readonly grade: ResolvedGrade;
  /** Fixing points of the frame, as typed; left out: none. */
  readonly fixing?: Fixing;
  /** Root gap of a weld and what it pulls in. */
  readonly gap: number;
  readonly shrinkage: number;
  readonly paperThickness: number;
  readonly templateStations: 16 | 24;
};

/** Up by gravity as one set of readings has it, a unit vector in the structure's axes. */
export type SolvedLevel = {
  readonly up: Vector3;
  /** Measured less solved, for each reading in order [mm or degrees]. */
  readonly residuals: readonly number[];
};

/** Something of the site in the structure's axes [mm, rad]. Axes and normals are unit vectors. */
export type LaidThing = {
  readonly field: string;
  readonly name: string;
  readonly clearance: number | null;
  readonly body:
    | { readonly shape: 'point'; readonly at: Vector3; readonly radius: number }
    /** Solid behind its normal. */
    | { readonly shape: 'plane'; readonly at: Vector3; readonly normal: Vector3 }
    | {
        readonly shape: 'cylinder';
        readonly at: Vector3;
        readonly axis: Vector3;
        readonly radius: number;
        /** Along the axis from `at`, the first below the second; null: without end. */
        readonly ends: { readonly from: number; readonly to: number } | null;
      };
  readonly swing: {
    readonly about: Vector3;
    readonly axis: Vector3;
    readonly from: number;
    readonly to: number;
  } | null;
};

/** The line that the frame turns about: a point of it and its unit direction, in the structure's axes. */
export type LaidHinge = { readonly at: Vector3; readonly axis: Vector3 };

/** The frame as it stands. */
export type LaidFrame = {
  /** From the frame's axes to the structure's. */
  readonly motion: RigidMotion;
  /** The same as it was placed, before it was turned and lifted to what is asked for. */
  readonly placed: RigidMotion;
  readonly hinge: LaidHinge | null;
  /** Turn from how it was placed to how it stands [rad]: about the hinge, right-handed, or by the least turn. */
  readonly turn: number;
  /** For each pair of a placing by points: how far the place is from its point [mm]. */
  readonly misfits: readonly number[];
  /** `made` in the structure's axes. */
  readonly lines: readonly MadeLine[];
};

/** One leg in the structure's axes [mm]. */
export type LaidLeg = {
  readonly field: string;
  readonly name: string;
  readonly foot: Vector3;
  /** Out of the foot's surface, a unit vector on the leg's side of it. */
  readonly surface: Vector3;
  /** On the tube's centreline. */
  readonly head: Vector3;
  readonly member: string;
  /** On the made line. */
  readonly station: number;
  readonly outsideDiameter: number;
  readonly wall: number;
};

/** The whole site in the structure's axes; what cannot be told is null or not there. */
export type LaidSite = {
  readonly levels: readonly (SolvedLevel | null)[];
  /** Up by the last set that is read, or the structure's own z where it does not tell or none is read. */
  readonly up: Vector3;
  readonly points: ReadonlyMap<string, Vector3>;
  readonly frame: LaidFrame | null;
  readonly things: readonly (LaidThing | null)[];
  readonly legs: readonly (LaidLeg | null)[];
};
