import type { Way } from '../../plan/correction.ts';
import type { Joint } from '../../plan/joint.ts';
import type { FlatPoint, ViewMark } from '../../plan/view.ts';
import type { Weld } from '../../plan/welding.ts';
import type { FrameGeometry } from '../frame/frame-geometry.ts';
import { placeAt } from '../geometry/centreline.ts';
import { closestStation } from '../geometry/closest-station.ts';
import { scale, type Vector3 } from '../geometry/vector.ts';
import { centrelineOf } from './follow-wanted.ts';
import { hiddenOf } from './hidden.ts';
import { acrossOf } from './outline.ts';
import { project, rounded, unitOnDrawing, type Projection } from './projection.ts';
import { offMiddle } from '../welding/weld-sites.ts';

/** Where a weld is drawn, found once for all views; `beside` and `out` are directions that its sign may stand in. */
export type PlacedWeld = {
  readonly label: string;
  readonly layer: ViewMark['layer'];
  readonly point: Vector3;
  /** Along the tube: the sign stands beside it. */
  readonly beside: Vector3 | null;
  /** Out of an end. */
  readonly out: Vector3 | null;
};

type Welded = {
  readonly frame: FrameGeometry;
  readonly layer: ViewMark['layer'];
  /** The way that puts it right, whose cut joints are drawn where they stand when they are closed. */
  readonly way: Way | undefined;
  readonly outsideDiameter: number;
};

/** Every weld, cut joints where the closed frame has them, all others on the frame that is welded. */
export const placedWelds = (welds: readonly Weld[], welded: Welded): PlacedWeld[] =>
  welds.map((weld) => {
    const joint = weld.joint === 0 ? undefined : welded.way?.joints.find(({ number }) => number === weld.joint);
    return joint === undefined ? onFrame(weld, welded) : closed(weld, joint, welded.way);
  });

/** A weld of a cut joint on the corrected frame; a let-in piece has one at each of its ends. */
function closed(weld: Weld, { point, member, letIn }: Joint, way: Way | undefined): PlacedWeld {
  const placed = { label: weld.name, layer: 'corrected', point, beside: null, out: null } as const;
  const pieces = way?.members.find((one) => one.name === member)?.pieces;
  if (weld.kind !== 'let-in' || pieces === undefined) return placed;
  const line = centrelineOf(pieces);
  const middle = closestStation(line, point)?.station ?? 0;
  return { ...placed, point: placeAt(line, middle + offMiddle(weld, letIn))?.point ?? point };
}

function onFrame(weld: Weld, { frame, layer, outsideDiameter }: Welded): PlacedWeld {
  const placed = { label: weld.name, layer, point: weld.point, beside: null, out: null };
  const member = frame.members.find(({ name }) => name === weld.member);
  if (member === undefined || (weld.kind !== 'saddle' && weld.kind !== 'pad')) return placed;
  const { length } = member.centreline;
  const atStart = weld.station < length / 2;
  const hidden = hiddenOf(member, outsideDiameter);
  // a saddle's own end stands on the axis of the other tube: the weld is where it comes out of it
  const station = atStart ? Math.min(hidden.start, length / 2) : Math.max(length - hidden.finish, length / 2);
  const place = placeAt(member.centreline, station);
  if (place === undefined) return placed;
  const { point, tangent } = place;
  return weld.kind === 'pad'
    ? { ...placed, point, out: atStart ? scale(tangent, -1) : tangent }
    : { ...placed, point, beside: tangent };
}

/** Less than this across or up is none; rounding of unit vectors. */
const ROUNDING = 1e-9;

/** The welds by their names in one view. */
export const weldMarks = (placed: readonly PlacedWeld[], view: Projection): ViewMark[] =>
  placed.map(({ label, layer, point, beside, out }) => ({
    kind: 'joint',
    label,
    layer,
    at: rounded(project(view, point)),
    towards: beside === null ? unitOnDrawing(view, out) : besideTube(view, beside),
  }));

/** Square to a tube on the drawing, upwards or else to the right; up where the tube points at the eye. */
export function besideTube(view: Projection, along: Vector3): FlatPoint {
  const [x, y] = acrossOf(along, view) ?? [0, 1];
  const down = y < -ROUNDING || (y < ROUNDING && x < 0);
  return down ? [-x, -y] : [x, y];
}
