import type { Frame } from '../../job/frame.ts';
import type { Dimension } from '../../job/quantities.ts';
import type { Check } from '../frame/frame-geometry.ts';
import { extraFor } from './measured-frame.ts';

/** A tape shows no more than this [mm]. */
const TAPE = 0.1;

/** What a job takes for a size [mm]. */
const LEAST = 0.001;
const MOST = 20_000;

/**
 * The frame that would come back, with its sizes as a tape would find them in the references of the sketch, so that the
 * ways of putting it right can be computed before anything is bent.
 *
 * @param sizes centre to centre [mm], in the order of the checks
 * @returns null for a shape without such sizes, or where one cannot be found or typed
 */
export function misreadFrame(
  frame: Frame,
  checks: readonly Check[],
  sizes: readonly (number | undefined)[],
): Frame | null {
  let possible = true;
  const found = (key: string, like: Dimension): Dimension => {
    const place = checks.findIndex((check) => check.key === key);
    const [check, size] = [checks[place], sizes[place]];
    if (check === undefined || size === undefined) {
      possible = false;
      return like;
    }
    const { reference } = like;
    const value = Math.round((size + extraFor(check, reference)) / TAPE) / (1 / TAPE);
    if (!(value >= LEAST && value <= MOST)) possible = false;
    return { value, reference };
  };
  const read = asRead(frame, found);
  return possible ? read : null;
}

function asRead(frame: Frame, found: (key: string, like: Dimension) => Dimension): Frame | null {
  switch (frame.shape) {
    case 'hoop':
      return {
        ...frame,
        width: found('width-at-corners', frame.width),
        widthAtFeet: found('width-at-feet', frame.widthAtFeet ?? frame.width),
        leftLeg: found('left-leg', frame.leftLeg),
        rightLeg: found('right-leg', frame.rightLeg),
      };
    case 'ring':
      return { ...frame, width: found('width', frame.width), height: found('height', frame.height) };
    case 'offset':
      return {
        ...frame,
        across: found('offset', frame.across),
        first: found('first-length', frame.first),
        last: found('last-length', frame.last),
      };
    case 'straight':
    case 'run':
    case 'members':
      return null;
  }
}
