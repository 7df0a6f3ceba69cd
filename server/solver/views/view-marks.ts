import type { Joint } from '../../plan/joint.ts';
import type { PurgePlan } from '../../plan/purge.ts';
import type { ViewMark } from '../../plan/view.ts';
import type { FrameGeometry, Spot } from '../frame/frame-geometry.ts';
import { placeAt } from '../geometry/centreline.ts';
import { scale, type Vector3 } from '../geometry/vector.ts';
import { project, rounded, type Projection } from './projection.ts';

/** The end that each member's marks count from, where it is free. */
export const endMarks = (frame: FrameGeometry, view: Projection, fromFinish: ReadonlySet<string>): ViewMark[] =>
  frame.feet
    .filter((foot) => foot.station > 0 === fromFinish.has(foot.member))
    .map((foot) => ({
      kind: 'end',
      label: foot.member,
      layer: 'wanted',
      at: rounded(project(view, foot.point)),
      towards: rounded(project(view, outOf(frame, foot))),
    }));

/** Direction out of the tube at a free end, a unit vector. */
function outOf(frame: FrameGeometry, foot: Spot): Vector3 {
  const line = frame.members.find((member) => member.name === foot.member)?.centreline;
  const tangent = line === undefined ? undefined : placeAt(line, foot.station)?.tangent;
  if (line === undefined || tangent === undefined) return { x: 0, y: -1, z: 0 };
  return foot.station > line.length / 2 ? tangent : scale(tangent, -1);
}

/** The joints of a way, numbered, where they stand in the corrected frame. */
export const jointMarks = (joints: readonly Joint[], view: Projection): ViewMark[] =>
  joints.map((joint) => ({
    kind: 'joint',
    label: String(joint.number),
    layer: 'corrected',
    at: rounded(project(view, joint.point)),
    towards: [0, 1],
  }));

/**
 * Feed, vent, dams and plugs of every chamber.
 *
 * @param frame the frame that is purged, and the layer that shows it
 */
export function purgeMarks(
  purge: PurgePlan | null,
  { frame, layer }: { readonly frame: FrameGeometry; readonly layer: ViewMark['layer'] },
  view: Projection,
): ViewMark[] {
  const mark = (kind: ViewMark['kind'], label: string, member: string, station: number): ViewMark[] => {
    const line = frame.members.find((one) => one.name === member)?.centreline;
    const place = line === undefined ? undefined : placeAt(line, station);
    if (line === undefined || place === undefined) return [];
    const sense = station > line.length / 2 ? 1 : -1;
    const [x, y] = project(view, place.tangent);
    return [{ kind, label, layer, at: rounded(project(view, place.point)), towards: [x * sense, y * sense] }];
  };
  return (purge?.chambers ?? []).flatMap((chamber) => [
    ...mark('feed', String(chamber.number), chamber.feed.member, chamber.feed.station),
    ...mark('vent', String(chamber.number), chamber.vent.member, chamber.vent.station),
    ...chamber.dams.flatMap((dam) => mark('dam', String(chamber.number), dam.member, dam.station)),
    ...chamber.plugs.flatMap((plug) => {
      const line = frame.members.find((one) => one.name === plug.member)?.centreline;
      return mark('plug', String(chamber.number), plug.member, plug.end === 'start' ? 0 : (line?.length ?? 0));
    }),
  ]);
}
