import type { Figure, WorkingInput } from '../../../plan/figure.ts';
import { figure, input } from '../../figure.ts';
import { DEGREES, withinHalfTurn } from '../../geometry/angle.ts';
import { composed, inverted, turnOf } from '../../geometry/rigid-motion.ts';
import { dot, scale, type Vector3 } from '../../geometry/vector.ts';
import { EXACT, type LaidFrame, type LaidHinge } from '../laid-site.ts';
import { ownAxes } from '../level/own-axes.ts';
import { siteBand, type SiteStudy } from '../site-study.ts';
import { sizeBand } from '../size-band.ts';
import { askedHeight } from './asked-height.ts';
import { askedSlopes, type AskedSlope } from './asked-slopes.ts';
import { equationOf, heightEquation } from './hinge-turn.ts';
import type { TurnEquation } from './turn-to.ts';

type TurnWorking = { readonly formula: string; readonly inputs: readonly WorkingInput[] };

/** What the frame was turned by from how it was placed [degrees]: about its hinge, right-handed, or by the least turn. */
export function turnFigure(study: SiteStudy, frame: LaidFrame): Figure {
  const { slopes } = askedSlopes(study.source.site.standing.slopes, frame.placed, study.laid.up);
  const { formula, inputs } =
    frame.hinge === null ? freeWorking(slopes) : hingeWorking(study, frame, { hinge: frame.hinge, slope: slopes[0] });
  const sources = ['standing-turn', ...(asksToLevel(study) ? ownAxes(study) : [])] as const;
  return figure(frame.turn * DEGREES, 'deg', formula, inputs, sources, turnBand(study, frame));
}

/** A turn about a hinge counts on past half a turn, and a turn to any side passes nothing. */
const turnBand = (study: SiteStudy, { turn, hinge }: LaidFrame) =>
  hinge === null
    ? sizeBand(study, ({ frame }) => (frame?.hinge === null ? turnedBy(frame) : undefined))
    : siteBand(study, ({ frame }) => (frame?.hinge ? withinHalfTurn(frame.turn - turn) * DEGREES : undefined));

/** The turn from how a frame was placed to how it stands, as a rotation vector [degrees]. */
const turnedBy = ({ motion, placed }: LaidFrame): Vector3 => scale(turnOf(composed(motion, inverted(placed))), DEGREES);

const asksToLevel = ({ source: { site } }: SiteStudy): boolean =>
  site.standing.slopes.some(({ to }) => to === 'level') || site.standing.height?.to === 'level';

/** Each slope that is asked for, and how far its direction rose as the frame was placed. */
function freeWorking([one, two]: readonly AskedSlope[]): TurnWorking {
  const rise = (symbol: string, of: AskedSlope | undefined) =>
    input(symbol, 'rise-as-it-was-placed', of === undefined ? 0 : dot(of.along, of.up), 'ratio');
  const slope = (symbol: string, of: AskedSlope | undefined) => input(symbol, 'slope', of?.angle ?? 0, 'deg');
  return two === undefined
    ? { formula: 'θ = |a − arcsin(d · v)|', inputs: [slope('a', one), rise('d · v', one)] }
    : {
        formula: 'θ → min, R d₁ · v₁ = sin a₁, R d₂ · v₂ = sin a₂; before d₁ · v₁, d₂ · v₂',
        inputs: [slope('a₁', one), rise('d₁ · v₁', one), slope('a₂', two), rise('d₂ · v₂', two)],
      };
}

/** How what is asked for rises as the frame turns about its hinge, and what it is to come to. */
function hingeWorking(
  { source, laid }: SiteStudy,
  { placed }: LaidFrame,
  { hinge, slope }: { readonly hinge: LaidHinge; readonly slope: AskedSlope | undefined },
): TurnWorking {
  const parts = ({ still, along, across }: TurnEquation, unit: 'ratio' | 'mm') => [
    input('A', 'what-stays', still, unit),
    input('B', 'what-goes-round-along', along, unit),
    input('C', 'what-goes-round-across', across, unit),
  ];
  if (slope !== undefined) {
    const equation = equationOf(hinge.axis, slope.along, slope.up);
    const inputs = [...parts(equation, 'ratio'), input('a', 'slope', slope.angle, 'deg')];
    return { formula: 'A + B cos θ + C sin θ = sin a', inputs };
  }
  const { up, points } = laid;
  const height = askedHeight(source.site.standing.height, source, { up, points, off: EXACT });
  const formula = 'A + B cos θ + C sin θ = h';
  if (height === null || 'findings' in height) return { formula, inputs: [] };
  const equation = heightEquation(hinge, height, placed);
  return { formula, inputs: [...parts(equation, 'mm'), input('h', 'height', height.value, 'mm')] };
}
