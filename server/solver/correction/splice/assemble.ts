import { Matrix, QrDecomposition } from 'ml-matrix';
import type { FrameGeometry } from '../../frame/frame-geometry.ts';
import { placeAt } from '../../geometry/centreline.ts';
import {
  composed,
  inverted,
  moved,
  turnAbout,
  turned,
  UNMOVED,
  type RigidMotion,
} from '../../geometry/rigid-motion.ts';
import { add, AXES, cross, dot, ORIGIN, scale, subtract, type Vector3 } from '../../geometry/vector.ts';
import { tubeStand } from '../../geometry/tube-stand.ts';
import type { SolvedSplice } from './solve-splice.ts';
import { axesOf } from './splice-problem.ts';

/** Faces lie on each other to a tenth of a millimetre and a thousandth of a radian: common practice, no source. */
const FACE_SCALE = 0.1;
const FLUSH_SCALE = 1e-3;
/** What no face decides (a turn about the tube) is set by measuring: it stays as planned [rad]. */
const HELD = 0.01;

/** Nothing is moved further than this for nothing [mm]; keeps what no face decides where it is. */
const FAR = 1000;

/** For each body the first of those that are one tube with it: a bend that was turned joins them. */
function firmGroups(count: number, hinges: SolvedSplice['problem']['hinges']): number[] {
  const groups = Array.from({ length: count }, (_, body) => body);
  for (let grown = true; grown;) {
    grown = false;
    for (const { bodyA, bodyB } of hinges) {
      const [a, b] = [groups[bodyA] ?? bodyA, groups[bodyB] ?? bodyB];
      if (a === b) continue;
      groups[bodyA] = Math.min(a, b);
      groups[bodyB] = Math.min(a, b);
      grown = true;
    }
  }
  return groups;
}

/** One way in which bodies that are one tube can move. */
type Freedom = { readonly group: number; readonly turn: boolean; readonly axis: Vector3 };

/**
 * Puts together frames that are not quite the one which the cuts were planned for: marks, saw settings and let-in pieces
 * are those of the plan, the tube is another. Bodies are laid face on face; where the joints of a loop do not agree, the
 * error is shared. First order in how far the frame is from the planned one.
 *
 * @returns for a frame with the same members and pieces the motions of the bodies, the first held as planned; and where
 * its welds pull in more than planned, by how much each does [mm]
 */
export function assembler(
  splice: SolvedSplice,
  planned: FrameGeometry,
): (frame: FrameGeometry, pulledMore?: number) => RigidMotion[] {
  const { planeNormal, hinges } = splice.problem;
  const shifts = planeNormal === null ? AXES : axesOf(planeNormal);
  const turns = planeNormal === null ? AXES : [planeNormal];
  const groups = firmGroups(splice.motions.length, hinges);
  const freedoms = [...new Set(groups)].flatMap((group): Freedom[] =>
    group === 0
      ? []
      : [
          ...shifts.map((axis) => ({ group, turn: false, axis })),
          ...turns.map((axis) => ({ group, turn: true, axis })),
        ],
  );
  if (freedoms.length === 0) return () => [...splice.motions];
  const cut = splice.joints.map(({ joint, middle, sides }) => {
    const member = joint.place.stretch.member;
    const [stationA, stationB] = [middle - sides.half, middle + sides.half];
    const onA = (vector: Vector3) => carried(member, stationA, planned, splice.motions[joint.bodyA], vector);
    const onB = (vector: Vector3) => carried(member, stationB, planned, splice.motions[joint.bodyB], vector);
    const { along, letIn } = sides;
    return {
      joint,
      member,
      stationA,
      stationB,
      normalA: onA(letIn === null ? along : letIn.atA),
      normalB: onB(letIn === null ? along : letIn.atB),
      // new tube stands on face A as it was sawn: it goes where the old tube points there
      across: letIn === null ? null : onA(subtract(sides.b.point, sides.a.point)),
      aim: letIn === null ? null : onA(letIn.atB),
    };
  });
  const facesOf = (frame: FrameGeometry) =>
    cut.flatMap(({ joint, member, stationA, stationB, ...on }) => {
      const line = frame.members[member]?.centreline;
      const [placeA, placeB] = line === undefined ? [] : [placeAt(line, stationA), placeAt(line, stationB)];
      const [normalA, normalB] = [on.normalA(frame), on.normalB(frame)];
      if (placeA === undefined || placeB === undefined || normalA === undefined || normalB === undefined) return [];
      const across = on.across?.(frame) ?? ORIGIN;
      const aim = on.aim?.(frame) ?? null;
      return [{ ...joint, placeA, placeB, normalA, normalB, across, aim }];
    });
  const motionsAt = (values: readonly number[]): RigidMotion[] => {
    const shift = groups.map(() => ORIGIN);
    const turn = groups.map(() => ORIGIN);
    for (const [column, one] of freedoms.entries()) {
      const list = one.turn ? turn : shift;
      list[one.group] = add(list[one.group] ?? ORIGIN, scale(one.axis, values[column] ?? 0));
    }
    return splice.motions.map((motion, body) => {
      const group = groups[body] ?? body;
      const centre = splice.problem.centres[group] ?? ORIGIN;
      return composed(turnAbout(centre, turn[group] ?? ORIGIN, shift[group] ?? ORIGIN), motion);
    });
  };
  const residuals = (faces: ReturnType<typeof facesOf>, values: readonly number[], pulledMore = 0): number[] => {
    const motions = motionsAt(values);
    const rows: number[] = [];
    for (const face of faces) {
      const [a, b] = [motions[face.bodyA] ?? UNMOVED, motions[face.bodyB] ?? UNMOVED];
      const end = add(moved(a, face.placeA.point), turned(a, face.across));
      // a let-in is welded at both its ends
      const pulled = (face.aim === null ? 1 : 2) * pulledMore;
      const apart = subtract(moved(b, face.placeB.point), end);
      const gap = pulled === 0 ? apart : add(apart, scale(turned(a, face.placeA.tangent), pulled));
      const lean = cross(turned(a, face.aim ?? face.normalA), turned(b, face.normalB));
      rows.push(gap.x / FACE_SCALE, gap.y / FACE_SCALE, gap.z / FACE_SCALE);
      rows.push(lean.x / FLUSH_SCALE, lean.y / FLUSH_SCALE, lean.z / FLUSH_SCALE);
    }
    for (const [column, { turn }] of freedoms.entries()) rows.push((values[column] ?? 0) / (turn ? HELD : FAR));
    return rows;
  };
  const still = freedoms.map(() => 0);
  const asPlanned = facesOf(planned);
  const first = residuals(asPlanned, still);
  // what each freedom does is the same on a frame that is nearly this one
  const slopes = freedoms.map(({ turn }, column) => {
    const step = turn ? TURN_STEP : SHIFT_STEP;
    const moved = residuals(
      asPlanned,
      still.map((_, other) => (other === column ? step : 0)),
    );
    return moved.map((one, row) => (one - (first[row] ?? 0)) / step);
  });
  const solver = new QrDecomposition(new Matrix(slopes).transpose());
  return (frame, pulledMore = 0) => {
    const off = residuals(facesOf(frame), still, pulledMore).map((one, row) => (first[row] ?? 0) - one);
    return motionsAt(solver.solve(Matrix.columnVector(off)).to1DArray());
  };
}

/** Steps of the derivatives [mm, rad]. */
const SHIFT_STEP = 1e-3;
const TURN_STEP = 1e-6;

/** A direction at a place of the closed frame, carried from the frame of the plan to another by the tube's own directions. */
function carried(
  member: number,
  station: number,
  planned: FrameGeometry,
  motion: RigidMotion | undefined,
  direction: Vector3,
): (frame: FrameGeometry) => Vector3 | undefined {
  const own = motion === undefined ? direction : turned(inverted(motion), direction);
  const parts = axesAt(planned, member, station)?.map((axis) => dot(axis, own));
  return (frame) => {
    const axes = axesAt(frame, member, station);
    if (axes === undefined || parts === undefined) return undefined;
    return axes.reduce((sum, axis, index) => add(sum, scale(axis, parts[index] ?? 0)), ORIGIN);
  };
}

/** Tangent, the direction square to it that goes with the tube, and the third. */
function axesAt(frame: FrameGeometry, member: number, station: number): readonly Vector3[] | undefined {
  const line = frame.members[member]?.centreline;
  const stand = line === undefined ? undefined : tubeStand(line, station);
  return stand === undefined ? undefined : [stand.direction, stand.normal, cross(stand.direction, stand.normal)];
}
