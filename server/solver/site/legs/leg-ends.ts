import type { Figure } from '../../../plan/figure.ts';
import type { LegPlan } from '../../../plan/leg.ts';
import { figure, input } from '../../figure.ts';
import { DEGREES, withinHalfTurn } from '../../geometry/angle.ts';
import { siteBand, type SiteStudy } from '../site-study.ts';
import { takesAt } from './head-cut.ts';
import { mitreLongSide } from './leg-roll.ts';
import type { LegStudy } from './leg-study.ts';

/** The foot of a leg as it is cut; a root gap g stands before each weld. */
export function footPlan(study: SiteStudy, leg: LegStudy, gap: number): LegPlan['foot'] {
  const { cut, pick, laid } = leg;
  const { tilt, reach, end } = cut.foot;
  const { end: typed } = leg.leg.foot;
  return {
    end,
    tilt: figure(
      tilt * DEGREES,
      'deg',
      'τ = arccos(d · n)',
      [input('d · n', 'leg-against-the-way-out-of-the-surface', Math.cos(tilt), 'ratio')],
      ['leg-length'],
      siteBand(
        study,
        pick((one) => one.foot.tilt * DEGREES),
      ),
    ),
    takes: footTakes(study, leg, gap),
    rise:
      end !== 'mitre'
        ? null
        : figure(
            2 * reach,
            'mm',
            'D tan τ',
            [
              input('D', 'outside-diameter', laid.outsideDiameter, 'mm'),
              input('τ', 'tilt-of-the-foot', tilt * DEGREES, 'deg'),
            ],
            ['leg-length'],
            siteBand(
              study,
              pick((one) => 2 * one.foot.reach),
            ),
          ),
    longSide: longSideOf(study, leg),
    plate: typed.end === 'socket' ? 0 : typed.plate,
  };
}

/** Where the mitre is longest, round from the scribed line; the ± is counted on from there, so that it never jumps a turn. */
function longSideOf(study: SiteStudy, { cut, pick }: LegStudy): Figure | null {
  const longSide = mitreLongSide(cut);
  if (longSide === undefined) return null;
  // what rounds to no turn at all is none, instead of a whole one
  const turn = Math.round(longSide * DEGREES * 1e9) / 1e9;
  return figure(
    turn < 0 ? turn + 360 : turn,
    'deg',
    'φ = atan2(n · q, n · z), modulo 360°',
    [
      input('n · q', 'surface-a-quarter-turn-on', Math.sin(longSide) * Math.sin(cut.foot.tilt), 'ratio'),
      input('n · z', 'surface-along-the-line', Math.cos(longSide) * Math.sin(cut.foot.tilt), 'ratio'),
    ],
    ['leg-roll'],
    siteBand(
      study,
      pick((one) => one.longSide && withinHalfTurn(one.longSide - longSide) * DEGREES),
    ),
  );
}

function footTakes(study: SiteStudy, { leg, cut, laid, pick }: LegStudy, gap: number): Figure {
  const { end } = leg.foot;
  const { takes, tilt } = cut.foot;
  if (end.end === 'socket')
    return figure(takes, 'mm', 'f = −e', [input('e', 'depth-of-the-socket', end.depth, 'mm')], ['leg-length', 'typed']);
  const inputs = [
    input('t', 'plate-under-the-foot', end.plate, 'mm'),
    input('τ', 'tilt-of-the-foot', tilt * DEGREES, 'deg'),
    input('g', 'root-gap', gap, 'mm'),
  ];
  const square = end.end === 'square';
  return figure(
    takes,
    'mm',
    square ? 'f = t / cos τ + g + (D / 2) tan τ' : 'f = t / cos τ + g',
    square ? [...inputs, input('D', 'outside-diameter', laid.outsideDiameter, 'mm')] : inputs,
    ['leg-length', 'typed'],
    siteBand(
      study,
      pick((one) => one.foot.takes),
    ),
  );
}

/** The head of a leg as it is cut. */
export function headPlan(study: SiteStudy, leg: LegStudy): LegPlan['head'] {
  const { cut, pick, laid, index } = leg;
  const { end, axisAngle } = cut.head;
  return {
    end,
    member: laid.member,
    station: figure(
      laid.station,
      'mm',
      'S',
      [input('S', 'along-the-tube-from-its-datum-end', laid.station, 'mm')],
      ['geometry'],
      siteBand(study, (site) => site.legs[index]?.station),
    ),
    axisAngle: figure(
      axisAngle * DEGREES,
      'deg',
      'β = arccos |d · t|',
      [input('|d · t|', 'leg-against-the-tube', Math.cos(axisAngle), 'ratio')],
      ['leg-length'],
      siteBand(
        study,
        pick((one) => one.head.axisAngle * DEGREES),
      ),
    ),
    takes: headTakesFigure(study, leg),
  };
}

function headTakesFigure(study: SiteStudy, { cut: { head }, at, pick }: LegStudy): Figure {
  const takes = takesAt(head, at.headTip) ?? 0;
  if (head.end === 'eye')
    return figure(takes, 'mm', 'h = e', [input('e', 'fitting-takes', takes, 'mm')], ['leg-length', 'typed']);
  return figure(
    takes,
    'mm',
    'h = z + g',
    [input('z', 'saddle-throat', takes - head.gap, 'mm'), input('g', 'root-gap', head.gap, 'mm')],
    ['leg-length', 'geometry'],
    siteBand(
      study,
      pick((one) => takesAt(one.head, at.headTip)),
    ),
  );
}
