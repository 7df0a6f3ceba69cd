import type { Finding } from '../../plan/finding.ts';
import type { MemberPlan, WrapTemplate } from '../../plan/frame.ts';
import { finding } from '../finding.ts';
import type { EndGeometry, MemberGeometry } from '../frame/frame-geometry.ts';
import { DEGREES } from '../geometry/angle.ts';
import { placeAt } from '../geometry/centreline.ts';
import { middleOf } from '../joints/outside.ts';
import { saddleSeat, saddleWrap } from '../joints/saddle-wrap.ts';
import type { BendContext } from './planned-arc.ts';

/** What the ends of a member are cut with: paper [mm], stations, and the members of the frame by name. */
export type EndContext = BendContext & {
  readonly paperThickness: number;
  readonly templateStations: 16 | 24;
  readonly partners: ReadonlyMap<string, MemberGeometry>;
  /** JSON pointer of the Job field that the member's findings are about. */
  readonly field: string;
};

/** An end as planned: its entry, its wrap, and what the saddle takes off the axis: at its longest and on the mean [mm]. */
export type PlannedEnd = {
  readonly plan: MemberPlan['start'];
  readonly template: WrapTemplate | null;
  readonly throat: number;
  readonly mean: number;
  readonly findings: readonly Finding[];
};

/** The start or the finish of a member, with a saddle's wrap where it sits on another. */
export function planEnd(member: MemberGeometry, end: 'start' | 'finish', context: EndContext): PlannedEnd {
  const seat = member[end];
  const plan = endPlan(member, end, seat);
  const nothing = { plan, template: null, throat: 0, mean: 0 };
  if (seat.kind !== 'saddle') return { ...nothing, findings: [] };
  const partner = context.partners.get(seat.onto);
  if (partner === undefined) {
    const missing = finding('saddle-partner-missing', 'stop', context.field, { onto: seat.onto, member: member.name });
    return { ...nothing, findings: [missing] };
  }
  const read = saddleSeat(member, { end, seat }, partner, middleOf(context.partners.values()));
  const wrap =
    read &&
    saddleWrap(
      {
        key: `${member.name} ${end}`,
        member: member.name,
        place: end,
        tube: context.tube,
        paperThickness: context.paperThickness,
        stations: context.templateStations,
        ringStation: end === 'start' ? 0 : member.centreline.length,
        scrap: end,
      },
      { ...read, end, mainRadius: context.tube.outsideDiameter / 2 },
    );
  if (wrap === undefined) {
    const off = finding('saddle-end-off-partner', 'stop', context.field, {
      onto: seat.onto,
      member: member.name,
      value: seat.offset,
      high: context.tube.wall,
    });
    return { ...nothing, findings: [off] };
  }
  return { plan, ...wrap, findings: [] };
}

function endPlan(member: MemberGeometry, end: 'start' | 'finish', seat: EndGeometry): MemberPlan['start'] {
  const station = end === 'start' ? 0 : member.centreline.length;
  const point = placeAt(member.centreline, station)?.point ?? { x: 0, y: 0, z: 0 };
  const saddle = seat.kind === 'saddle';
  return {
    kind: seat.kind,
    onto: saddle ? seat.onto : null,
    point,
    angle: saddle ? seat.axisAngle * DEGREES : null,
    offset: saddle ? seat.offset : null,
  };
}
