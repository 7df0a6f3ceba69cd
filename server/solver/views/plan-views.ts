import type { CorrectionPlan } from '../../plan/correction.ts';
import type { PlanPiece } from '../../plan/frame.ts';
import type { FlatPoint, View, ViewLayer, ViewMark, ViewMember } from '../../plan/view.ts';
import type { PurgePlan } from '../../plan/purge.ts';
import { layOn, outwardAt } from '../correction/outcome.ts';
import { flatFrame, moveCentreline } from '../correction/flat-frame.ts';
import { movePoint, STILL } from '../correction/plane-motion.ts';
import type { EndGeometry, FrameGeometry, MemberGeometry } from '../frame/frame-geometry.ts';
import { placeAt } from '../geometry/centreline.ts';
import { planPieces } from '../geometry/plan-pieces.ts';
import type { Vector3 } from '../geometry/vector.ts';
import { dimensionLines, type Bounds } from './dimension-lines.ts';
import { outlineOf } from './outline.ts';
import { facing, project, PROJECTIONS, rounded, type Projection } from './projection.ts';
import { scrapOutlines } from './scrap.ts';

/** What is drawn: the frame as wanted, as it came back, and after the chosen way. */
export type Drawn = {
  readonly wanted: FrameGeometry;
  readonly cameBack: FrameGeometry | null;
  readonly correction: CorrectionPlan | null;
  readonly purge: PurgePlan | null;
  /** Members that are marked and bent from their finish. */
  readonly fromFinish: ReadonlySet<string>;
  readonly outsideDiameter: number;
};

/**
 * The views of a frame: one square to its plane where it has one, else three along its axes; and a pictorial one.
 * Page and sheets scale and paint them, and compute nothing.
 */
export function planViews(drawn: Drawn): View[] {
  const { wanted } = drawn;
  const flat = flatFrame(wanted);
  if (flat !== undefined) {
    const normal = wanted.planeNormal;
    const turned = normal === null ? PROJECTIONS.top : facing(normal);
    return [faceView({ ...drawn, wanted: flat }), plainView('pictorial', drawn, tilted(turned))];
  }
  return (['top', 'face', 'side', 'pictorial'] as const).map((key) => plainView(key, drawn, PROJECTIONS[key]));
}

/** Looking down on a flat frame from one corner, whichever way its plane stands. */
function tilted(face: Projection): Projection {
  const mix = (a: number, b: number, c: number): Vector3 => {
    const out = {
      x: face.right.y * face.up.z - face.right.z * face.up.y,
      y: face.right.z * face.up.x - face.right.x * face.up.z,
      z: face.right.x * face.up.y - face.right.y * face.up.x,
    };
    return {
      x: a * face.right.x + b * face.up.x + c * out.x,
      y: a * face.right.y + b * face.up.y + c * out.y,
      z: a * face.right.z + b * face.up.z + c * out.z,
    };
  };
  const { right, up } = PROJECTIONS.pictorial;
  return { right: mix(right.x, right.y, right.z), up: mix(up.x, up.y, up.z) };
}

/** Everything on one plane, the came-back and the corrected frame laid on the wanted one by best fit. */
function faceView(drawn: Drawn): View {
  const { wanted, correction, outsideDiameter } = drawn;
  const view = PROJECTIONS.top;
  const cameBack = drawn.cameBack === null ? undefined : flatFrame(drawn.cameBack);
  const lay =
    cameBack === undefined
      ? STILL
      : layOn(wanted, {
          feet: cameBack.feet.map((spot) => spot.point),
          corners: cameBack.corners.map((spot) => spot.point),
          outward: [],
        });
  const placed = (point: Vector3) => movePoint(lay, point);
  const layers: ViewLayer[] = [{ role: 'wanted', members: outlines(wanted, view, outsideDiameter) }];
  let moved: FrameGeometry | undefined;
  if (cameBack !== undefined) {
    const members = cameBack.members.map((member) => ({
      ...member,
      centreline: moveCentreline(member.centreline, lay),
    }));
    moved = {
      ...cameBack,
      members,
      feet: cameBack.feet.map((spot) => ({ ...spot, point: placed(spot.point) })),
      corners: cameBack.corners.map((spot) => ({ ...spot, point: placed(spot.point) })),
    };
    layers.push({ role: 'came-back', members: outlines(moved, view, outsideDiameter) });
  }
  const chosen = correction?.ways.find((way) => way.key === correction.chosen);
  if (chosen !== undefined && chosen.key !== 'leave') {
    layers.push({
      role: 'corrected',
      members: chosen.members.map((member) => {
        const geometry = wanted.members.find((one) => one.name === member.name);
        return outlineOf(
          { ...member, closed: geometry?.closed ?? false },
          view,
          outsideDiameter,
          hiddenOf(geometry, outsideDiameter),
        );
      }),
    });
  }
  if (moved !== undefined && chosen !== undefined && chosen.joints.length > 0) {
    layers.push({ role: 'scrap', members: scrapOutlines(chosen.joints, moved, outsideDiameter) });
  }
  const bounds = boundsOf(layers.flatMap((layer) => layer.members));
  const dimensions = [
    ...dimensionLines(wanted, 'wanted', view, bounds),
    ...(cameBack === undefined ? [] : dimensionLines(cameBack, 'came-back', view, bounds, placed)),
  ];
  const joints: ViewMark[] = (chosen?.joints ?? []).map((joint) => ({
    kind: 'joint',
    label: String(joint.number),
    layer: 'corrected',
    at: rounded(project(view, joint.point)),
    towards: [0, 1],
  }));
  return {
    key: 'face',
    bounds: widened(
      bounds,
      dimensions.flatMap((dimension) => dimension.line),
    ),
    layers,
    dimensions,
    marks: [
      ...endMarks(wanted, view, drawn.fromFinish),
      ...joints,
      ...purgeMarks(drawn, cameBack ?? wanted, cameBack === undefined ? 'wanted' : 'came-back', view, placed),
    ],
  };
}

/** The wanted frame alone, in any projection. */
function plainView(key: View['key'], drawn: Drawn, view: Projection): View {
  const layers: ViewLayer[] = [{ role: 'wanted', members: outlines(drawn.wanted, view, drawn.outsideDiameter) }];
  const bounds = boundsOf(layers.flatMap((layer) => layer.members));
  const dimensions = key === 'pictorial' ? [] : dimensionLines(drawn.wanted, 'wanted', view, bounds);
  const marks = [
    ...endMarks(drawn.wanted, view, drawn.fromFinish),
    ...purgeMarks(drawn, drawn.wanted, 'wanted', view, (point) => point),
  ];
  return {
    key,
    bounds: widened(
      bounds,
      dimensions.flatMap((dimension) => dimension.line),
    ),
    layers,
    dimensions,
    marks: drawn.cameBack === null ? marks : endMarks(drawn.wanted, view, drawn.fromFinish),
  };
}

/** How much of each end disappears in its partner. */
function hiddenOf(member: MemberGeometry | undefined, outsideDiameter: number) {
  const hide = (end: EndGeometry | undefined) =>
    end?.kind === 'saddle' ? outsideDiameter / 2 / Math.max(Math.sin(end.axisAngle), 0.2) : 0;
  return { start: hide(member?.start), finish: hide(member?.finish) };
}

const outlines = (frame: FrameGeometry, view: Projection, outsideDiameter: number): ViewMember[] =>
  frame.members.map((member) => {
    const pieces: PlanPiece[] = planPieces(member.centreline);
    const drawnMember = { name: member.name, pieces, closed: member.closed };
    return outlineOf(drawnMember, view, outsideDiameter, hiddenOf(member, outsideDiameter));
  });

function boundsOf(members: readonly ViewMember[]): Bounds {
  let bounds: Bounds = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { edges, centreline } of members) {
    for (const line of edges) bounds = widened(bounds, line);
    bounds = widened(bounds, centreline);
  }
  return bounds;
}

function widened(bounds: Bounds, points: readonly FlatPoint[]): [number, number, number, number] {
  let [left, bottom, right, top] = bounds;
  for (const [x, y] of points) {
    left = Math.min(left, x);
    bottom = Math.min(bottom, y);
    right = Math.max(right, x);
    top = Math.max(top, y);
  }
  return [left, bottom, right, top];
}

/** The end that each member's marks count from, where it is free. */
const endMarks = (frame: FrameGeometry, view: Projection, fromFinish: ReadonlySet<string>): ViewMark[] =>
  frame.feet
    .filter((foot) => foot.station > 0 === fromFinish.has(foot.member))
    .map((foot) => ({
      kind: 'end',
      label: foot.member,
      layer: 'wanted',
      at: rounded(project(view, foot.point)),
      towards: rounded(project(view, outwardAt(frame, foot))),
    }));

/** Feed, vent, dams and plugs of every chamber. */
function purgeMarks(
  drawn: Drawn,
  frame: FrameGeometry,
  layer: ViewMark['layer'],
  view: Projection,
  placed: (point: Vector3) => Vector3,
): ViewMark[] {
  const mark = (kind: ViewMark['kind'], label: string, member: string, station: number): ViewMark[] => {
    const line = frame.members.find((one) => one.name === member)?.centreline;
    const place = line === undefined ? undefined : placeAt(line, station);
    if (line === undefined || place === undefined) return [];
    const sense = station > line.length / 2 ? 1 : -1;
    const [x, y] = project(view, place.tangent);
    return [{ kind, label, layer, at: rounded(project(view, placed(place.point))), towards: [x * sense, y * sense] }];
  };
  return (drawn.purge?.chambers ?? []).flatMap((chamber) => [
    ...mark('feed', String(chamber.number), chamber.feed.member, chamber.feed.station),
    ...mark('vent', String(chamber.number), chamber.vent.member, chamber.vent.station),
    ...chamber.dams.flatMap((dam) => mark('dam', String(chamber.number), dam.member, dam.station)),
    ...chamber.plugs.flatMap((plug) => {
      const line = frame.members.find((one) => one.name === plug.member)?.centreline;
      return mark('plug', String(chamber.number), plug.member, plug.end === 'start' ? 0 : (line?.length ?? 0));
    }),
  ]);
}
