import type { Direction } from '../../../job/direction.ts';
import type { TubePlace } from '../../../job/tube-place.ts';
import type { Finding } from '../../../plan/finding.ts';
import { finding } from '../../finding.ts';
import { DEGREES, RADIANS } from '../../geometry/angle.ts';
import { sineAndCosine, subtract, unit, type Vector3 } from '../../geometry/vector.ts';
import type { LaidFrame, Off, SolvedLevel } from '../laid-site.ts';
import { placeMissing } from '../standing/place-missing.ts';

/** What a direction may be told by. */
export type DirectionContext = {
  readonly levels: readonly (SolvedLevel | null)[];
  readonly points: ReadonlyMap<string, Vector3>;
  readonly frame: LaidFrame | null;
  /** A place of the frame as it stands, in the structure's axes. */
  readonly placeOnFrame: (at: TubePlace) => { readonly point: Vector3; readonly tangent: Vector3 } | undefined;
  /** Axis of a cylinder or normal of a plane, by the thing's name. */
  readonly alongOf: (thing: string) => Vector3 | undefined;
  readonly off: Off;
};

type Told = { readonly direction: Vector3 } | { readonly finding: Finding };

/** A quarter turn, and what is rounding beside it [rad]. */
const QUARTER = Math.PI / 2;
const ROUNDING = 1e-9;

const stopped = (...of: [Finding['code'], string, Finding['data']?]): Told => {
  const [code, field, data = {}] = of;
  return { finding: finding(code, 'stop', field, data) };
};

const toldBy = (vector: Vector3, field: string): Told => {
  const direction = unit(vector);
  return direction === undefined ? stopped('direction-none', field) : { direction };
};

/**
 * A typed direction as a unit vector in the structure's axes (x ahead, y to port, z up). A lean 10 back and 0 to port is
 * (−sin 10°, 0, cos 10°); so is 10.8 back off plumb in a boat whose bow is 0.8 down.
 *
 * @param field pointer of the direction
 * @returns direction-none, direction-too-flat, level-set-missing, site-name-missing or site-place-missing where it is none
 */
export function directionOf(direction: Direction, field: string, context: DirectionContext): Told {
  switch (direction.by) {
    case 'axes':
      return toldBy(direction.vector, `${field}/vector`);
    case 'lean':
      return leaning({ ahead: direction.ahead * RADIANS, port: direction.port * RADIANS }, field);
    case 'plumb':
      return offPlumb(direction, field, context);
    case 'tube':
      return alongTube(direction.at, field, context);
    case 'thing': {
      const along = context.alongOf(direction.thing);
      const missing = stopped('site-name-missing', `${field}/thing`, { name: direction.thing });
      return along === undefined ? missing : toldBy(along, `${field}/thing`);
    }
    case 'points':
      return betweenPoints(direction, field, context.points);
  }
}

/**
 * A line that leans by these angles off z, as seen square to the x-z and the y-z plane [rad]: d ∝ (tan a, tan b, 1), here
 * times cos a cos b, so that it holds up to a right angle.
 */
function leaning({ ahead, port }: { ahead: number; port: number }, field: string): Told {
  for (const [name, angle] of Object.entries({ ahead, port })) {
    if (Math.abs(angle) < QUARTER - ROUNDING) continue;
    return stopped('direction-too-flat', `${field}/${name}`, { value: angle * DEGREES });
  }
  const [a, b] = [sineAndCosine(ahead), sineAndCosine(port)];
  return toldBy({ x: a.sine * b.cosine, y: b.sine * a.cosine, z: a.cosine * b.cosine }, field);
}

/** Plumb runs (uₓ, u_z) in the x-z plane and (u_y, u_z) in the y-z plane; the line is off that by what a level showed. */
function offPlumb(
  direction: Extract<Direction, { by: 'plumb' }>,
  field: string,
  { levels, off }: DirectionContext,
): Told {
  const level = levels[direction.set - 1];
  if (level === undefined || level === null)
    return stopped('level-set-missing', `${field}/set`, { value: direction.set });
  const { up } = level;
  return leaning(
    {
      ahead: Math.atan2(up.x, up.z) + (direction.ahead + off(`${field}/ahead`)) * RADIANS,
      port: Math.atan2(up.y, up.z) + (direction.port + off(`${field}/port`)) * RADIANS,
    },
    field,
  );
}

function alongTube(at: TubePlace, field: string, { frame, placeOnFrame }: DirectionContext): Told {
  const place = placeOnFrame(at);
  if (place !== undefined) return toldBy(place.tangent, `${field}/at`);
  // a frame that is not placed has no place at all, whichever is asked for
  return frame === null ? stopped('site-place-missing', `${field}/at`) : { finding: placeMissing(at, `${field}/at`) };
}

function betweenPoints(
  { from, to }: Extract<Direction, { by: 'points' }>,
  field: string,
  points: ReadonlyMap<string, Vector3>,
): Told {
  const [start, end] = [points.get(from), points.get(to)];
  if (start === undefined) return stopped('site-name-missing', `${field}/from`, { name: from });
  if (end === undefined) return stopped('site-name-missing', `${field}/to`, { name: to });
  return toldBy(subtract(end, start), `${field}/to`);
}

/** What is doubtful of a direction by itself: only one that a level read off plumb [± degrees]. */
export const directionDoubts = (
  direction: Direction,
  field: string,
  angleAccuracy: number,
): { field: string; plusMinus: number; unit: 'deg' }[] =>
  direction.by === 'plumb'
    ? [`${field}/ahead`, `${field}/port`].map((pointer) => ({ field: pointer, plusMinus: angleAccuracy, unit: 'deg' }))
    : [];
