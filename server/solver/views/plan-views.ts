import type { CorrectionPlan } from '../../plan/correction.ts';
import type { PurgePlan } from '../../plan/purge.ts';
import type { FlatPoint, View, ViewLayer, ViewMember } from '../../plan/view.ts';
import type { WeldingPlan } from '../../plan/welding.ts';
import type { FrameGeometry } from '../frame/frame-geometry.ts';
import { planPieces } from '../geometry/plan-pieces.ts';
import type { Vector3 } from '../geometry/vector.ts';
import { dimensionLines, type Bounds } from './dimension-lines.ts';
import { gasLines, gasOn, type GasLine } from './gas-lines.ts';
import { hiddenOf } from './hidden.ts';
import { outlineOf, sampledMember, stationsOf, type SampledMember } from './outline.ts';
import { facing, PROJECTIONS, type Projection } from './projection.ts';
import { scrapOutline, scrapsOf, type Scrap } from './scrap.ts';
import { endMarks, purgeMarks } from './view-marks.ts';
import { placedWelds, weldMarks, type PlacedWeld } from './weld-marks.ts';

/** What is drawn: the frame as wanted, as it came back (laid on the wanted one), and after the chosen way. */
export type Drawn = {
  readonly wanted: FrameGeometry;
  readonly cameBack: FrameGeometry | null;
  readonly correction: Pick<CorrectionPlan, 'ways' | 'chosen' | 'differences'> | null;
  readonly purge: Pick<PurgePlan, 'chambers'> | null;
  readonly welding: Pick<WeldingPlan, 'welds'> | null;
  /** Members that are marked and bent from their finish. */
  readonly fromFinish: ReadonlySet<string>;
  readonly outsideDiameter: number;
};

/** Everything drawn, found once for all views. */
type Sampled = {
  readonly wanted: readonly SampledMember[];
  readonly cameBack: readonly SampledMember[];
  /** How far along each member of the frame as it came back its drawn points stand. */
  readonly stations: readonly number[][];
  readonly corrected: readonly SampledMember[];
  readonly scraps: readonly Scrap[];
  readonly welds: readonly PlacedWeld[];
  readonly gas: readonly GasLine[];
};

/**
 * The views of a frame: one square to its plane where it has one, else three along its axes; and a pictorial one.
 * Page and sheets scale and paint them, and compute nothing.
 */
export function planViews(drawn: Drawn): View[] {
  const { planeNormal } = drawn.wanted;
  const sampled = sampledOf(drawn);
  if (planeNormal !== null) {
    const face = facing(planeNormal);
    return [viewOf('face', drawn, sampled, face), viewOf('pictorial', drawn, sampled, tilted(face))];
  }
  return (['top', 'face', 'side', 'pictorial'] as const).map((key) => viewOf(key, drawn, sampled, PROJECTIONS[key]));
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

function sampledOf(drawn: Drawn): Sampled {
  const { wanted, cameBack, correction, outsideDiameter } = drawn;
  const chosen = correction?.ways.find((way) => way.key === correction.chosen);
  const asWanted = sampledFrame(wanted, outsideDiameter);
  const returned = cameBack === null ? [] : sampledFrame(cameBack, outsideDiameter);
  const { frame, layer } = weldedFrame(drawn);
  return {
    wanted: asWanted,
    cameBack: returned,
    stations: returned.map(stationsOf),
    corrected:
      chosen === undefined || chosen.key === 'leave'
        ? []
        : chosen.members.map((member) => {
            const geometry = wanted.members.find((one) => one.name === member.name);
            const { name, pieces } = member;
            return sampledMember(
              { name, pieces, closed: geometry?.closed ?? false },
              hiddenOf(geometry, outsideDiameter),
            );
          }),
    scraps: cameBack === null || chosen === undefined ? [] : scrapsOf(chosen.joints, cameBack),
    welds: placedWelds(drawn.welding?.welds ?? [], { frame, layer, way: chosen, outsideDiameter }),
    gas: gasLines(drawn.purge?.chambers ?? [], { frame, sampled: layer === 'wanted' ? asWanted : returned }),
  };
}

/** The frame as it came back, each of its sizes with the field that it was read into; none where nobody measured it. */
function asRead({ cameBack, correction }: Drawn): FrameGeometry | null {
  if (cameBack === null) return null;
  const fieldOf = (key: string, index: number): string =>
    correction?.differences.find((one) => one.key === key && one.index === index)?.field ?? '';
  return {
    ...cameBack,
    checks: cameBack.checks.map((check) => ({ ...check, field: fieldOf(check.key, check.index) })),
  };
}

/** Every frame that there is, with its sizes and marks, in any projection; a pictorial view has no sizes. */
function viewOf(key: View['key'], drawn: Drawn, sampled: Sampled, view: Projection): View {
  const { wanted, outsideDiameter } = drawn;
  const cameBack = asRead(drawn);
  const layers = layersOf(sampled, view, outsideDiameter);
  const bounds = boundsOf(layers.flatMap((layer) => layer.members));
  const dimensions =
    key === 'pictorial'
      ? []
      : [
          ...dimensionLines(wanted, 'wanted', view, bounds),
          ...(cameBack === null ? [] : dimensionLines(cameBack, 'came-back', view, bounds)),
        ];
  return {
    key,
    right: view.right,
    up: view.up,
    bounds: widened(
      bounds,
      dimensions.flatMap((dimension) => dimension.line),
    ),
    layers,
    dimensions,
    marks: [
      ...endMarks(wanted, view, drawn.fromFinish),
      ...weldMarks(sampled.welds, view),
      ...purgeMarks(drawn.purge?.chambers ?? [], weldedFrame(drawn), view),
    ],
    gas: gasOn(sampled.gas, weldedFrame(drawn).layer, view),
  };
}

/** The frame that is welded and purged: a new one, or the one that came back and is put right. */
const weldedFrame = ({ wanted, cameBack, correction }: Drawn) =>
  cameBack === null || (correction?.chosen ?? 'new-frame') === 'new-frame'
    ? ({ frame: wanted, layer: 'wanted' } as const)
    : ({ frame: cameBack, layer: 'came-back' } as const);

function layersOf(sampled: Sampled, view: Projection, outsideDiameter: number): ViewLayer[] {
  const outline = (member: SampledMember): ViewMember => outlineOf(member, view, outsideDiameter);
  const layers: ViewLayer[] = [{ role: 'wanted', members: sampled.wanted.map(outline) }];
  if (sampled.cameBack.length > 0) {
    layers.push({
      role: 'came-back',
      members: sampled.cameBack.map((member, index) => {
        const { member: name, edges, centreline } = outline(member);
        return { member: name, edges, centreline, stations: sampled.stations[index] ?? [] };
      }),
    });
  }
  if (sampled.corrected.length > 0) layers.push({ role: 'corrected', members: sampled.corrected.map(outline) });
  if (sampled.scraps.length > 0) {
    layers.push({ role: 'scrap', members: sampled.scraps.map((one) => scrapOutline(one, view, outsideDiameter)) });
  }
  return layers;
}

const sampledFrame = (frame: FrameGeometry, outsideDiameter: number): SampledMember[] =>
  frame.members.map((member) =>
    sampledMember(
      { name: member.name, pieces: planPieces(member.centreline), closed: member.closed },
      hiddenOf(member, outsideDiameter),
    ),
  );

function boundsOf(members: readonly ViewMember[]): Bounds {
  let bounds: Bounds = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { edges, centreline } of members) {
    for (const line of edges) bounds = widened(bounds, line);
    bounds = widened(bounds, centreline);
  }
  return bounds;
}

/** Bounds that hold some points too. */
export function widened(bounds: Bounds, points: readonly FlatPoint[]): [number, number, number, number] {
  let [left, bottom, right, top] = bounds;
  for (const [x, y] of points) {
    left = Math.min(left, x);
    bottom = Math.min(bottom, y);
    right = Math.max(right, x);
    top = Math.max(top, y);
  }
  return [left, bottom, right, top];
}
