import type { Figure } from '../../../plan/figure.ts';
import type { LegPlan } from '../../../plan/leg.ts';
import { figure, input } from '../../figure.ts';
import { DEGREES } from '../../geometry/angle.ts';
import { subtract } from '../../geometry/vector.ts';
import { massPerMetre } from '../../tube/section.ts';
import { bandOfParts, siteBand, type DoubtPart, type SiteStudy } from '../site-study.ts';
import { lengthParts } from './leg-band.ts';
import { takesAt } from './head-cut.ts';
import { cutLength, footStation, headStation, headTip, lengthAlong, type LegCut } from './leg-cut.ts';
import type { LegStudy } from './leg-study.ts';

type Lengths = Pick<LegPlan, 'centreLength' | 'cutLength' | 'middleLength' | 'shortest' | 'longest' | 'mass'>;

/**
 * Every length of a leg. What is sawn off the bar is the centre length, less what foot and head take, with the long side of
 * a mitre, longer by what each weld pulls in, less the middle of an adjustment.
 *
 * @param parts what the cut length is doubtful by
 */
export function legLengths(study: SiteStudy, leg: LegStudy, parts: readonly DoubtPart[]): Lengths {
  const { cut, at, laid, pick } = leg;
  const whole = cutLength(cut, at.headTip) ?? 0;
  const middle = (one: LegCut): number | undefined => {
    const head = headTip(one, at.headTip);
    return head === undefined ? undefined : head - footStation(one);
  };
  const taken = takenOff(leg);
  const apart = subtract(laid.head, laid.foot);
  const sources = ['leg-length', 'leg-saw'] as const;
  return {
    centreLength: figure(
      cut.length,
      'mm',
      'L = √(Δx² + Δy² + Δz²)',
      (['x', 'y', 'z'] as const).map((axis) => input(`Δ${axis}`, `head-from-foot-along-${axis}`, apart[axis], 'mm')),
      ['leg-length'],
      siteBand(
        study,
        pick((one) => one.length),
      ),
    ),
    cutLength: figure(
      whole,
      'mm',
      'B = L − f + l − h + s − a',
      [...taken, input('l', 'long-side-beyond-the-middle', cut.foot.reach, 'mm')],
      sources,
      bandOfParts(parts),
    ),
    middleLength: figure(
      middle(cut) ?? 0,
      'mm',
      'L − f − h + s − a',
      taken,
      sources,
      bandOfParts(lengthParts(study, pick(middle), cut)),
    ),
    shortest: along(study, leg, at.shortest),
    longest: along(study, leg, at.longest),
    mass: massOf(study, leg),
  };
}

/** L, f, h, s and a of a cut length. */
const takenOff = ({ cut, at }: LegStudy) => [
  input('L', 'centre-length', cut.length, 'mm'),
  input('f', 'taken-by-the-foot', cut.foot.takes, 'mm'),
  input('h', 'taken-by-the-head', takesAt(cut.head, at.headTip) ?? 0, 'mm'),
  input('s', 'pulled-in-by-its-welds', cut.footDraws + cut.headDraws, 'mm'),
  input('a', 'adjustment-in-its-middle', cut.adds, 'mm'),
];

/** One generator from cut to cut. */
function along(study: SiteStudy, { cut, pick }: LegStudy, generator: number): Figure {
  const turn = generator * DEGREES;
  return figure(
    lengthAlong(cut, generator) ?? 0,
    'mm',
    'l(φ) = s₂ − s₁',
    [
      input('φ', 'round-from-the-line', turn - 360 * Math.floor(turn / 360), 'deg'),
      input('s₂', 'head-from-the-foot-point', headStation(cut, generator) ?? 0, 'mm'),
      input('s₁', 'foot-from-the-foot-point', footStation(cut, generator), 'mm'),
    ],
    ['leg-length', 'leg-saw'],
    bandOfParts(
      lengthParts(
        study,
        pick((one) => lengthAlong(one, generator)),
        cut,
      ),
    ),
  );
}

/** Tube of the leg as cut, without plate, fitting and adjustment. */
function massOf({ source: { grade } }: SiteStudy, { at: { mean }, laid }: LegStudy): Figure {
  const perMetre = massPerMetre({ ...laid, density: grade.density });
  return figure(
    (perMetre * mean) / 1000,
    'kg',
    'M = m l / 1000',
    [input('m', 'mass-per-metre', perMetre, 'kg/m'), input('l', 'mean-length', mean, 'mm')],
    ['leg-length', grade.sources.density],
  );
}
