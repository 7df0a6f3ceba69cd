import type { FrameGeometry } from '../../frame/frame-geometry.ts';
import { arcPiece, placeOn, straightPiece, type Centreline } from '../../geometry/centreline.ts';
import { UNMOVED, type RigidMotion } from '../../geometry/rigid-motion.ts';
import { sliceCentreline } from '../../geometry/slice.ts';
import { add, angleBetween, cross, length, scale, unit } from '../../geometry/vector.ts';
import type { CorrectedFrame } from '../corrected.ts';
import { movedLine } from '../../geometry/moved-centreline.ts';
import { bodiesAfter, type Bodies, type FrameGraph } from './frame-graph.ts';
import type { Hinge } from './hinges.ts';
import { letInRadius, type ClosedSides } from './joint-closing.ts';
import type { SolvedSplice } from './solve-splice.ts';

/** The bodies that joints and turned bends really leave: middles may have wandered. */
export function bodiesOf(splice: SolvedSplice, graph: FrameGraph): Bodies {
  return bodiesAfter(graph, [
    ...splice.joints.map(({ joint, middle }) => ({ member: joint.place.stretch.member, station: middle })),
    ...splice.problem.hinges.map(({ hinge }) => hinge),
  ]);
}

/** Where a member is parted: the old tube before it ends at `to`, that behind it begins at `from` [mm]. */
type Parting = {
  readonly to: number;
  readonly from: number;
  /** Just behind it: which body that is. */
  readonly behind: number;
  /** Tube between the two, after the body before it has moved, or of the body behind before it moves. */
  readonly between: Centreline | null;
  readonly before: Centreline | null;
};

/**
 * The frame with its joints closed: every body where its motion takes it, with what was let in between. Members end at
 * their feet, which may have been cut back.
 *
 * @param motions of the bodies, where they are not those of the splice itself
 */
export function splicedFrame(
  splice: SolvedSplice,
  frame: FrameGeometry,
  graph: FrameGraph,
  motions: readonly RigidMotion[] = splice.motions,
): CorrectedFrame {
  const bodies = bodiesOf(splice, graph);
  const indexOf = new Map(frame.members.map(({ name }, index) => [name, index]));
  const motionOf = (member: number, station: number): RigidMotion => motions[bodies.at(member, station)] ?? UNMOVED;
  let members: CorrectedFrame['members'] | undefined;
  return {
    motionAt: (member, station) => {
      const index = indexOf.get(member);
      return index === undefined ? UNMOVED : motionOf(index, station);
    },
    // cut and laid only for those who look at it: a variation of the frame is judged by its points
    get members() {
      members ??= laidMembers();
      return members;
    },
  };

  function laidMembers(): CorrectedFrame['members'] {
    return frame.members.map(({ name, centreline, closed }, member) => {
      const partings = partingsOf(splice, member);
      const { low, high } = feetOf(frame, name, centreline.length);
      const starts = [{ from: low, behind: low, before: null }, ...partings];
      const parts = starts.flatMap(({ from, behind, before }, index): Centreline[] => {
        const next = partings[index];
        const to = next === undefined ? high : next.to;
        // a closed member's first and last part are one body, joined over the datum
        const motion = motionOf(member, index === 0 && closed && next !== undefined ? centreline.length : behind);
        const own = [
          ...(before === null ? [] : [before]),
          ...(to > from ? [sliceCentreline(centreline, from, to)] : []),
        ];
        const moved = own.map((line) => movedLine(motion, line));
        return next === undefined || next.between === null ? moved : [...moved, next.between];
      });
      return { name, parts };
    });
  }

  /** Joints and turned bends of a member in order. */
  function partingsOf({ joints, problem, turns }: SolvedSplice, member: number): Parting[] {
    const cut = joints.flatMap(({ joint, middle, sides }): Parting[] =>
      joint.place.stretch.member === member
        ? [
            {
              to: middle - sides.half,
              from: middle + sides.half,
              behind: middle + HAIR,
              between: letInLine(sides),
              before: null,
            },
          ]
        : [],
    );
    const bent = problem.hinges.flatMap(({ hinge }, index): Parting[] =>
      hinge.member === member ? [bentOn(hinge, turns[index] ?? 0, motionOf(member, hinge.station - HAIR))] : [],
    );
    return [...cut, ...bent].sort((a, b) => a.behind - b.behind);
  }
}

/** Enough to stand on one side of a place [mm]. */
const HAIR = 1e-6;

/**
 * A bend that is turned further goes on on its die and takes that much of the straight behind; one that is opened gives
 * it back.
 */
function bentOn({ arc, station }: Hinge, turn: number, motion: RigidMotion): Parting {
  const drawn = arc.radius * turn;
  const end = placeOn(arc, arc.length);
  const at = { behind: station + HAIR, between: null, before: null };
  if (turn >= 0) {
    const more = arcPiece({ ...arc, start: end.point, direction: end.tangent, angle: turn });
    const between = turn > 0 ? movedLine(motion, { pieces: [more], length: more.length }) : null;
    return { ...at, to: station, from: station + drawn, between };
  }
  const start = add(end.point, scale(end.tangent, drawn));
  const back = straightPiece({ start, direction: end.tangent, length: -drawn });
  return { ...at, to: station + drawn, from: station, before: { pieces: [back], length: back.length } };
}

/** Where a member begins and ends: at its feet, where it has some. */
export function feetOf(frame: FrameGeometry, member: string, whole: number): { low: number; high: number } {
  const feet = frame.feet.flatMap((foot) => (foot.member === member ? [foot.station] : []));
  return {
    low: Math.max(0, ...feet.filter((at) => at <= whole / 2)),
    high: Math.min(whole, ...feet.filter((at) => at > whole / 2)),
  };
}

/** The centreline of new tube between two sides. */
function letInLine({ a, gap, letIn }: ClosedSides): Centreline | null {
  if (letIn === null) return null;
  const radius = letInRadius(a);
  const angle = angleBetween(letIn.atA, letIn.atB);
  const normal = unit(cross(letIn.atA, letIn.atB));
  const size = length(gap);
  if (radius === null || normal === undefined || angle === 0)
    return { pieces: [straightPiece({ start: a.point, direction: letIn.atA, length: size })], length: size };
  const piece = arcPiece({ start: a.point, direction: letIn.atA, normal, radius, angle, made: 'rolled' });
  return { pieces: [piece], length: piece.length };
}
