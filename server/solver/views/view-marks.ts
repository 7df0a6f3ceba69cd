import type { Chamber, GasSpot } from '../../plan/purge.ts';
import type { ViewMark } from '../../plan/view.ts';
import type { FrameGeometry, Spot } from '../frame/frame-geometry.ts';
import { placeAt } from '../geometry/centreline.ts';
import { scale, type Vector3 } from '../geometry/vector.ts';
import { project, rounded, unitOnDrawing, type Projection } from './projection.ts';
import { besideTube } from './weld-marks.ts';

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

/**
 * Feed, every vent, dams and plugs of every chamber.
 *
 * @param frame the frame that is purged, and the layer that shows it
 */
export function purgeMarks(
  chambers: readonly Pick<Chamber, 'number' | 'feed' | 'vents' | 'dams' | 'plugs'>[],
  { frame, layer }: { readonly frame: FrameGeometry; readonly layer: ViewMark['layer'] },
  view: Projection,
): ViewMark[] {
  return chambers.flatMap(({ number, feed, vents, dams, plugs }) => {
    const label = String(number);
    const mark = (kind: ViewMark['kind'], member: string, station: number, opening?: GasSpot['kind']): ViewMark[] => {
      const line = frame.members.find((one) => one.name === member)?.centreline;
      const place = line === undefined ? undefined : placeAt(line, station);
      if (line === undefined || place === undefined) return [];
      const { point, tangent } = place;
      // gas passes through the wall or round a joint beside the tube, through an end along it
      const aside = opening === 'hole' || opening === 'gap';
      const towards = aside
        ? besideTube(view, tangent)
        : unitOnDrawing(view, station > line.length / 2 ? tangent : scale(tangent, -1));
      return [{ kind, label, layer, at: rounded(project(view, point)), towards }];
    };
    const endOf = (member: string, end: 'start' | 'finish'): number =>
      end === 'start' ? 0 : (frame.members.find(({ name }) => name === member)?.centreline.length ?? 0);
    return [
      ...mark('feed', feed.member, feed.station, feed.kind),
      ...vents.flatMap((vent) => mark('vent', vent.member, vent.station, vent.kind)),
      ...dams.flatMap((dam) => mark('dam', dam.member, dam.station)),
      ...plugs.flatMap(({ member, end }) => mark('plug', member, endOf(member, end))),
    ];
  });
}
