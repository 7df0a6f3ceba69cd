import type { WeldForm } from '../../job/welding.ts';
import type { WeldPosition } from '../../plan/welding.ts';
import { figure, input } from '../figure.ts';
import { DEGREES, RADIANS } from '../geometry/angle.ts';
import { dot, type Vector3 } from '../geometry/vector.ts';

/** A tube this far off level is welded as a level one, and from there on as an upright one [rad]; our own boundaries. */
const LEVEL = 22.5 * RADIANS;
const UPRIGHT = 67.5 * RADIANS;
/** A branch this far off level is welded as an upright one [rad]; our own boundary, halfway. */
const BRANCH_UPRIGHT = 45 * RADIANS;

type Code = Pick<WeldPosition, 'code' | 'american'>;

/** A butt in a tube that is held still: ISO 6947 with the American code beside it. Steep is off level [rad]. */
export function buttPosition(steep: number): Code {
  if (steep <= LEVEL) return { code: 'PH', american: '5G' };
  return steep < UPRIGHT ? { code: 'H-L045', american: '6G' } : { code: 'PC', american: '2G' };
}

/** A fillet round a branch: it stands on what it is welded to, hangs from it, or lies level. Rise is off level [rad]. */
export function filletPosition(rise: number): Code {
  if (rise >= BRANCH_UPRIGHT) return { code: 'PB', american: '2F' };
  return rise <= -BRANCH_UPRIGHT ? { code: 'PD', american: '4F' } : { code: 'PH', american: '5F' };
}

/**
 * The position that a weld is made in, on a frame that is held still and never turned.
 *
 * @param away a unit vector along the tube; of a branch or a tube on a plate, away from what it is welded to
 * @param up a unit vector
 */
export function weldPosition(form: WeldForm, away: Vector3, up: Vector3): WeldPosition {
  const climb = Math.min(1, Math.max(-1, dot(away, up)));
  const rise = Math.asin(climb);
  const steep = Math.abs(rise);
  return {
    ...(form === 'butt' ? buttPosition(steep) : filletPosition(rise)),
    steep: figure(
      steep * DEGREES,
      'deg',
      's = |asin c|',
      [input('c', 'rise-along-tube', climb, 'ratio')],
      ['geometry', 'iso-6947'],
    ),
  };
}
