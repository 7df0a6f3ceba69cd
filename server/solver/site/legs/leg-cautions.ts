import type { Finding } from '../../../plan/finding.ts';
import { finding } from '../../finding.ts';
import { placeAt } from '../../geometry/centreline.ts';
import { dot } from '../../geometry/vector.ts';
import { saddleFootprint } from './head-cut.ts';
import { lengthAlong } from './leg-cut.ts';
import { headField } from './leg-stops.ts';
import type { LegStudy } from './leg-study.ts';

/** A square foot that stands off further than this is told of [mm]: our own choice; less is lost in the weld. */
const STANDS_OFF = 0.5;

/** Overhangs below this are rounding [mm]. */
const NOTHING = 1e-6;

/** What to look at before a leg is cut that can be cut. */
export const cutCautions = (leg: LegStudy): Finding[] => [...squareFoot(leg), ...stubbyLeg(leg), ...overEnd(leg)];

/** A square end on a slanting surface: its high side stands off by D sin τ, square out of the surface. */
function squareFoot({ cut: { foot }, laid: { field, name, outsideDiameter } }: LegStudy): Finding[] {
  const value = outsideDiameter * Math.sin(foot.tilt);
  if (foot.end !== 'square' || value <= STANDS_OFF) return [];
  const end = `${field}/foot/end/end`;
  return [
    finding('leg-square-rocks', 'caution', end, { name, value, high: STANDS_OFF }, { field: end, value: 'mitre' }),
  ];
}

/**
 * A leg that is shorter on one side than it is wide is hard to mark and to hold: our own choice. Where it were not without
 * its adjustment, that is named.
 */
function stubbyLeg({ cut, at, laid: { field, name, outsideDiameter: low } }: LegStudy): Finding[] {
  const value = lengthAlong(cut, at.shortest) ?? 0;
  if (value >= low) return [];
  const taken = value + cut.adds >= low;
  const data = { name, value, low, ...(taken ? { adds: cut.adds } : {}) };
  return [finding('leg-stubby', 'caution', taken ? `${field}/adjust/adds` : field, data)];
}

/** A saddle near an open end of its tube hangs over it. */
function overEnd({ cut, laid, frame, leg }: LegStudy): Finding[] {
  const { head } = cut;
  const line = frame.lines.find(({ name }) => name === laid.member);
  if (head.end !== 'saddle' || line === undefined || line.closed) return [];
  const tangent = placeAt(line.centreline, laid.station)?.tangent;
  if (tangent === undefined) return [];
  const { acute, other } = saddleFootprint({
    axisAngle: head.axisAngle,
    radius: head.outer,
    mainRadius: head.seat.mainRadius,
  });
  // the acute side lies back along the leg
  const [towardsStart, towardsFinish] = dot(cut.along, tangent) > 0 ? [acute, other] : [other, acute];
  const value = Math.max(towardsStart - laid.station, towardsFinish - (line.centreline.length - laid.station));
  const { name, member } = laid;
  return value > NOTHING
    ? [finding('leg-over-end', 'caution', headField(laid.field, leg), { name, member, value })]
    : [];
}
