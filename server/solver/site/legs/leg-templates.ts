import type { WrapTemplate } from '../../../plan/frame.ts';
import { saddleWrap } from '../../joints/saddle-wrap.ts';
import { wrapForPlane } from '../../joints/wrap.ts';
import type { SiteSource } from '../laid-site.ts';
import { footStation, footTip } from './leg-cut.ts';
import { SQUARE } from './leg-roll.ts';
import type { LegStudy } from './leg-study.ts';

/**
 * The wraps of a leg, foot and head. Both have generator 0 on their left edge, so that one line scribed along the tube
 * takes both; it is the line that looks up when the leg stands, or ahead on an upright leg. Their rings count from the
 * bar's sawn end at the foot, where the foot is longest, so that both are laid with one tape. What welds pull in and the
 * middle of an adjustment are in the distance between them. An end that is cut square has no wrap.
 */
export function legTemplates({ index, laid, cut }: LegStudy, source: SiteSource): WrapTemplate[] {
  const { foot, head, longSide } = cut;
  const paper = {
    member: laid.name,
    tube: { outsideDiameter: laid.outsideDiameter, wall: laid.wall },
    paperThickness: source.paperThickness,
    stations: source.templateStations,
  };
  const key = `leg ${String(index + 1)}`;
  const sawn = footTip(cut);
  const mitre =
    foot.end === 'mitre' && foot.tilt >= SQUARE && longSide !== undefined
      ? wrapForPlane({
          ...paper,
          key: `${key} start`,
          place: 'start',
          scrap: 'start',
          ringStation: footStation(cut) - sawn,
          tilt: foot.tilt,
          // the largest ordinate is on the short side
          tiltDirection: longSide + Math.PI,
          arc: null,
        })
      : undefined;
  const saddle =
    head.end === 'saddle'
      ? saddleWrap(
          {
            ...paper,
            key: `${key} finish`,
            place: 'finish',
            scrap: 'finish',
            ringStation: cut.length - head.gap + cut.headDraws - cut.adds - sawn,
          },
          head.seat,
        )
      : undefined;
  return [mitre, saddle?.template].filter((template) => template !== undefined);
}
