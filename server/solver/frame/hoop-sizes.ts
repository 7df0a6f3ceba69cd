import type { Hoop } from '../../job/frame.ts';
import { RADIANS } from '../geometry/angle.ts';
import { solveLean } from './hoop-lean.ts';
import { centreSize } from './reference.ts';

/** Why a hoop cannot be drawn. Sizes centre to centre [mm]; `field` below the frame's own pointer. */
export type HoopFailure = {
  readonly failure:
    | 'width-under-tube'
    | 'leg-short-for-bend'
    | 'width-short-for-bends'
    | 'crown-radius-too-small'
    | 'crossbar-outside-legs'
    | 'path-not-possible';
  readonly field: string;
  readonly value: number;
  readonly low?: number;
  readonly high?: number;
  /** What else keeps it from being drawn. */
  readonly also?: readonly HoopFailure[];
};

/** Several failures as one: the first, with the others beside it; undefined for none. */
export function together(failures: readonly HoopFailure[]): HoopFailure | undefined {
  const [first, ...also] = failures;
  return first === undefined || also.length === 0 ? first : { ...first, also };
}

/** The left half of a hoop about its axis of symmetry, with the tangent point's height taken as 0 [mm, rad]. */
export type Half = {
  /** How far the leg leans outwards on its way up. */
  readonly lean: number;
  readonly bendAngle: number;
  /** From the tangent point on along the leg's line to the corner. */
  readonly setback: number;
  /** The same for the outer and the inner line, less the centreline's: what a typed leg is longer by. */
  readonly outerExtra: number;
  readonly innerExtra: number;
  /** Half of the crossbar between the bends, along the centreline. */
  readonly halfCrossbar: number;
};

/** A corner of less than this is none [rad]: 0.01°, as for every bend; common practice, no source. */
const LEAST_CORNER = 0.01 * RADIANS;

function halfHoop(
  shape: { width: number; radius: number; crown: number | null; diameter: number },
  lean: number,
): Half | undefined {
  const { width, radius, crown, diameter } = shape;
  const bendCentre = { x: -width / 2 + radius * Math.cos(lean), y: radius * Math.sin(lean) };
  const beta = crown === null ? 0 : Math.asin(-bendCentre.x / (crown - radius));
  // the bends must not meet before the middle, nor turn past the crown's end
  if (bendCentre.x > 0 || (crown !== null && -bendCentre.x >= crown - radius)) return undefined;
  const crownCentreY = crown === null ? 0 : bendCentre.y - (crown - radius) * Math.cos(beta);
  // distance along a line beside the leg, `off` to the outside, to the crossbar's line or circle `off` outside
  const toCrossbar = (off: number) => {
    const x = -width / 2 - off * Math.cos(lean);
    const y = -off * Math.sin(lean);
    if (crown === null) return (bendCentre.y + radius + off - y) / Math.cos(lean);
    const along = x * Math.sin(lean) - (y - crownCentreY) * Math.cos(lean);
    const apart = x ** 2 + (y - crownCentreY) ** 2 - (crown + off) ** 2;
    return along + Math.sqrt(along ** 2 - apart);
  };
  const setback = toCrossbar(0);
  const bendAngle = Math.PI / 2 + lean - beta;
  const outerExtra = toCrossbar(diameter / 2) - setback;
  const innerExtra = toCrossbar(-diameter / 2) - setback;
  // where a leg's line passes beside the crown there is no corner
  if (bendAngle < LEAST_CORNER || !(setback >= 0 && Number.isFinite(outerExtra + innerExtra))) return undefined;
  return {
    lean,
    bendAngle,
    setback,
    outerExtra,
    innerExtra,
    halfCrossbar: crown === null ? -bendCentre.x : crown * beta,
  };
}

/** Every size of a hoop, centre to centre. */
export type HoopSizes = {
  readonly width: number;
  readonly left: number;
  readonly right: number;
  readonly half: Half;
};

/**
 * Turns the typed sizes of a hoop into centre-to-centre ones. Splayed legs are solved for their lean, since the corner
 * moves with it.
 */
export function hoopSizes(
  hoop: Hoop,
  context: { outsideDiameter: number; cornerRadius: number },
): HoopSizes | HoopFailure {
  const { outsideDiameter: diameter, cornerRadius: radius } = context;
  const acrossTubes = { outsideDiameter: diameter, overlap: 1 } as const;
  const width = centreSize(hoop.width, acrossTubes);
  const feet = hoop.widthAtFeet === null ? width : centreSize(hoop.widthAtFeet, acrossTubes);
  if (width <= diameter) return { failure: 'width-under-tube', field: 'width/value', value: width, low: diameter };
  if (feet <= diameter) return { failure: 'width-under-tube', field: 'widthAtFeet/value', value: feet, low: diameter };
  if (width < 2 * radius) {
    return { failure: 'width-short-for-bends', field: 'width/value', value: width, low: 2 * radius };
  }
  const crown = hoop.crossbar.form === 'crowned' ? hoop.crossbar.radius : null;
  // the crown must reach from bend to bend: half its chord lies inside its radius, and it is wider than the bend
  const least = Math.max(width / 2, radius) + diameter;
  if (crown !== null && crown < least) {
    return { failure: 'crown-radius-too-small', field: 'crossbar/radius', value: crown, low: least };
  }
  const shape = { width, radius, crown, diameter };
  const legsAt = (lean: number): HoopSizes | undefined => {
    const half = halfHoop(shape, lean);
    return half && { width, half, left: centreLeg(hoop.leftLeg, half), right: centreLeg(hoop.rightLeg, half) };
  };
  const upright = legsAt(0);
  if (upright === undefined) return { failure: 'path-not-possible', field: 'width/value', value: width };
  if (hoop.widthAtFeet === null || feet === width) return shortLeg(upright) ?? upright;
  const solved = solveLean(feet, (lean) => {
    const at = legsAt(lean);
    const lever = at === undefined ? -1 : leastStraight(at);
    return lever < 0 ? undefined : width - 2 * lever * Math.sin(lean);
  });
  const splayed = 'lean' in solved ? legsAt(solved.lean) : undefined;
  if (splayed !== undefined) return splayed;
  const short = shortLeg(upright);
  if (short !== undefined) return short;
  const reachable = 'reachable' in solved ? solved.reachable : null;
  const low = reachable === null ? width : Math.max(reachable.low, diameter);
  const high = reachable?.high ?? width;
  return { failure: 'path-not-possible', field: 'widthAtFeet/value', value: feet, low, high };
}

/** A typed leg on the centrelines [mm]. */
const centreLeg = (leg: Hoop['leftLeg'], half: Half): number =>
  leg.value - (leg.reference === 'outside' ? half.outerExtra : leg.reference === 'inside' ? half.innerExtra : 0);

/** Straight of the shorter leg, from its foot to where the bend begins [mm]. */
const leastStraight = (sizes: HoopSizes): number => Math.min(sizes.left, sizes.right) - sizes.half.setback;

/** The legs that have no straight left before their bend. */
function shortLeg({ half, left, right }: HoopSizes): HoopFailure | undefined {
  const low = half.setback;
  const short = (field: string, value: number): HoopFailure[] =>
    value <= low ? [{ failure: 'leg-short-for-bend', field, value, low }] : [];
  return together([...short('leftLeg/value', left), ...short('rightLeg/value', right)]);
}
