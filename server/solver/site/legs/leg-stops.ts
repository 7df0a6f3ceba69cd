import type { Leg } from '../../../job/leg.ts';
import type { Finding } from '../../../plan/finding.ts';
import { finding } from '../../finding.ts';
import { DEGREES, RADIANS } from '../../geometry/angle.ts';
import { LEAST_AXIS_ANGLE } from '../../joints/saddle-cut.ts';
import type { LaidLeg } from '../laid-site.ts';
import { lengthAlong, type LegCut } from './leg-cut.ts';
import type { LegExtremes } from './leg-extremes.ts';

/** A foot is not cut flatter along its leg than this [rad]: 10°, our own choice. */
const LEAST_FOOT_ANGLE = 10 * RADIANS;

/**
 * Why the ends of a leg cannot be cut: no bore, a surface or a tube that runs along it, a tube wider than its seat.
 *
 * @param cut undefined where the leg runs along the tube that it is to sit on
 * @param mainDiameter outside diameter of the frame's tube [mm]
 */
export function endStops(leg: Leg, laid: LaidLeg, cut: LegCut | undefined, mainDiameter: number): Finding[] {
  const { field, name, member, outsideDiameter, wall } = laid;
  if (wall >= outsideDiameter / 2) {
    const range = { value: wall, low: 0, high: outsideDiameter / 2 };
    return [finding('wall-over-half-diameter', 'stop', `${field}/tube/wall`, range)];
  }
  const findings: Finding[] = [];
  const foot = Math.PI / 2 - (cut?.foot.tilt ?? 0);
  if (leg.foot.end.end !== 'socket' && foot < LEAST_FOOT_ANGLE) {
    const data = { name, value: foot * DEGREES, low: LEAST_FOOT_ANGLE * DEGREES };
    findings.push(finding('leg-along-surface', 'stop', `${field}/foot/surface`, data));
  }
  if (leg.head.end.end === 'eye') return findings;
  const head = cut?.head.axisAngle ?? 0;
  if (head < LEAST_AXIS_ANGLE) {
    const data = { name, member, value: head * DEGREES, low: LEAST_AXIS_ANGLE * DEGREES };
    findings.push(finding('leg-head-flat', 'stop', `${field}/head`, data));
  } else if (outsideDiameter > mainDiameter) findings.push(tooWide(leg, laid, mainDiameter));
  return findings;
}

function tooWide({ tube }: Leg, { field, name, member, outsideDiameter }: LaidLeg, mainDiameter: number): Finding {
  const data = { name, member, value: outsideDiameter, high: mainDiameter };
  const own = `${field}/tube/outsideDiameter`;
  return tube === null
    ? finding('leg-too-wide', 'stop', `${field}/head`, data)
    : finding('leg-too-wide', 'stop', own, data, { field: own, value: mainDiameter });
}

/** No saddle fits where the head is: the tube bends back into the leg there, or away from it. */
export const noSaddle = (leg: Leg, { field, name, member }: LaidLeg): Finding =>
  finding('leg-no-saddle', 'stop', headField(field, leg), { name, member });

/** The field of the place that a head is at. */
export const headField = (field: string, { head }: Leg): string =>
  'named' in head.at ? `${field}/head/at/named` : `${field}/head/at`;

/** Why an adjustment cannot go as far as is said: it has no more to give in its middle position than it adds there. */
export function adjustStops({ adjust }: Leg, { field, name }: LaidLeg): Finding[] {
  if (adjust === null || adjust.travel <= adjust.adds) return [];
  const [own, high] = [`${field}/adjust/travel`, adjust.adds];
  const data = { name, value: adjust.travel, high };
  return [
    high > 0
      ? finding('leg-adjust-travel', 'stop', own, data, { field: own, value: high })
      : finding('leg-adjust-travel', 'stop', own, data),
  ];
}

/** Why nothing is left of a leg between its cuts, or for its adjustment. */
export function lengthStops({ field, name }: LaidLeg, cut: LegCut, at: LegExtremes): Finding[] {
  const left = lengthAlong(cut, at.shortest) ?? 0;
  if (left > 0) return [];
  const without = left + cut.adds;
  if (without > 0) {
    const data = { name, value: cut.adds, high: without };
    return [finding('leg-adjust-long', 'stop', `${field}/adjust/adds`, data)];
  }
  return [finding('leg-short', 'stop', field, { name, value: without, low: 0 })];
}
