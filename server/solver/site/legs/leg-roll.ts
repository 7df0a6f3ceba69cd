import type { Figure } from '../../../plan/figure.ts';
import { figure, input } from '../../figure.ts';
import { DEGREES, RADIANS } from '../../geometry/angle.ts';
import { siteBand, type SiteStudy } from '../site-study.ts';
import type { LegCut } from './leg-cut.ts';
import type { LegStudy } from './leg-study.ts';

/** Nearer to square than this an end has no direction [rad]: 0.05°, our own choice; a saw is not set closer. */
const SQUARE = 0.05 * RADIANS;

/** Turns below this are rounding [rad]: an end that is in line is not told to be turned, nor half a turn twice. */
const NO_TURN = 1e-9;

/** The long side of a leg's mitre, from generator 0 [rad]; undefined where the foot has none. */
export const mitreLongSide = ({ foot, longSide }: LegCut): number | undefined =>
  foot.end !== 'mitre' || foot.tilt < SQUARE ? undefined : longSide;

/**
 * From the long side of the foot's mitre round to the acute side of the head's saddle, right-handed about the leg seen
 * from its foot, −180 to 180°. A saddle at right angles is the same on both sides: the nearer one is meant, −90 to 90°.
 *
 * @returns null where an end has no direction: a foot that is cut square, a fitting
 */
export function rollOf(
  study: SiteStudy,
  { cut, pick, laid }: LegStudy,
): { readonly roll: Figure; readonly rollRound: Figure } | null {
  const { head } = cut;
  const longSide = mitreLongSide(cut);
  if (longSide === undefined || head.end !== 'saddle') return null;
  const round = Math.PI / 2 - head.axisAngle < SQUARE ? Math.PI : 2 * Math.PI;
  const exact = turnOf(cut) ?? 0;
  const turn = within(exact, round);
  const roll = figure(
    turn * DEGREES,
    'deg',
    round === Math.PI ? 'ρ = φ₂ − φ₁, modulo 180°' : 'ρ = φ₂ − φ₁, modulo 360°',
    [
      input('φ₁', 'long-side-of-the-foot-from-the-line', longSide * DEGREES, 'deg'),
      input('φ₂', 'acute-side-of-the-saddle-from-the-line', head.seat.acute * DEGREES, 'deg'),
    ],
    ['leg-roll'],
    // counted on from the exact one, so that a doubtful value never jumps a whole turn
    siteBand(
      study,
      pick((other) => {
        const varied = turnOf(other);
        return varied === undefined ? undefined : (turn + within(varied - exact, round)) * DEGREES;
      }),
    ),
  );
  return {
    roll,
    rollRound: figure(
      (Math.PI * laid.outsideDiameter * roll.value) / 360,
      'mm',
      'π D ρ / 360',
      [input('D', 'outside-diameter', laid.outsideDiameter, 'mm'), input('ρ', 'roll', roll.value, 'deg')],
      ['leg-roll'],
    ),
  };
}

const turnOf = ({ head, longSide }: LegCut): number | undefined =>
  head.end !== 'saddle' || longSide === undefined ? undefined : head.seat.acute - longSide;

/** An angle brought to within half a round either way of 0, the upper end with it. */
function within(angle: number, round: number): number {
  const turn = angle - round * Math.ceil((angle - NO_TURN) / round - 0.5);
  return Math.abs(turn) < NO_TURN ? 0 : turn;
}
