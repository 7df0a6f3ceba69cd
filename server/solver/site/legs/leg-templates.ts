import type { WrapTemplate } from '../../../plan/frame.ts';
import { saddleWrap } from '../../joints/saddle-wrap.ts';
import { wrapForPlane } from '../../joints/wrap.ts';
import type { SiteSource } from '../laid-site.ts';
import { takesAt } from './head-cut.ts';
import { cutLength, footStation, footTip } from './leg-cut.ts';
import { mitreLongSide } from './leg-roll.ts';
import type { LegStudy } from './leg-study.ts';

/**
 * The wraps of a leg, foot and head. Both have generator 0 on their left edge, so that one line scribed along the tube
 * takes both; it is the line that looks up when the leg stands, or ahead on an upright leg. The ring of each lies on a sawn
 * end of the bar, and every ordinate is measured back from it: at the foot from 0 up, at the head from 0 down. Rings count
 * from the sawn end at the foot; where a leg is in two bars for an adjustment, from that end to the end of the other bar as
 * if they met. An end that is cut square has no wrap.
 */
export function legTemplates({ index, laid, cut, at }: LegStudy, source: SiteSource): WrapTemplate[] {
  const { head } = cut;
  const paper = {
    member: laid.name,
    tube: { outsideDiameter: laid.outsideDiameter, wall: laid.wall },
    paperThickness: source.paperThickness,
    stations: source.templateStations,
  };
  const key = `leg ${String(index + 1)}`;
  const longSide = mitreLongSide(cut);
  const mitre =
    longSide === undefined
      ? undefined
      : wrapForPlane({
          ...paper,
          key: `${key} start`,
          place: 'start',
          scrap: 'start',
          ringStation: 0,
          tilt: cut.foot.tilt,
          // the largest ordinate is on the short side
          tiltDirection: longSide + Math.PI,
          arc: null,
        });
  const saddle =
    head.end === 'saddle'
      ? saddleWrap(
          {
            ...paper,
            key: `${key} finish`,
            place: 'finish',
            scrap: 'finish',
            ringStation: cutLength(cut, at.headTip) ?? 0,
          },
          head.seat,
        )
      : undefined;
  // a wrap counts from where the two axes meet, less the gap: that is so far beyond the end of the sawn bar
  const beyond = head.end === 'saddle' ? (takesAt(head, at.headTip) ?? head.gap) - head.gap : 0;
  return [mitre && movedBy(mitre, footStation(cut) - footTip(cut)), saddle && movedBy(saddle.template, beyond)].filter(
    (template) => template !== undefined,
  );
}

/** A wrap with every ordinate so much further towards the far end [mm]: its ring moves the other way. */
function movedBy(template: WrapTemplate, by: number): WrapTemplate {
  const curve = (points: readonly [number, number][]): [number, number][] =>
    points.map(([girth, ordinate]) => [girth, ordinate + by]);
  return {
    ...template,
    low: template.low + by,
    high: template.high + by,
    stations: template.stations.map((one) => ({
      ...one,
      outer: one.outer + by,
      inner: one.inner + by,
      cut: one.cut + by,
      second: one.second === null ? null : one.second + by,
    })),
    curve: curve(template.curve),
    second: template.second === null ? null : curve(template.second),
  };
}
