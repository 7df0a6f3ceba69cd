import type { FixingPoint } from '../../server/job/fixing.ts';
import type { Tube } from './tubes.ts';
import { firstPlace, placeWords } from './tube-places.ts';

export const FIXING = '/fixing';

/** As long as the name of a fixing point may be [letters]. */
const LONGEST_NAME = 40;

const origin = { x: 0, y: 0, z: 0 };

/** A foot at an end that has none yet, on its centreline and where the wanted frame has it; null without a frame. */
export function freshFixing(tubes: readonly Tube[], fixing: readonly FixingPoint[]): FixingPoint | null {
  const [tube] = tubes;
  if (tube === undefined) return null;
  const isTaken = (member: string, spot: string): boolean =>
    fixing.some((one) => one.at.member === member && one.at.spot === spot);
  const ends = tubes.flatMap(({ name, closed }) =>
    closed ? [] : (['start', 'finish'] as const).map((spot) => ({ member: name, spot, number: 1, distance: 0 })),
  );
  const at = ends.find(({ member, spot }) => !isTaken(member, spot)) ?? firstPlace(tube);
  const named = placeWords(
    at,
    tubes.find(({ name }) => name === at.member),
  );
  const name = tubes.length > 1 ? `${at.member}, ${named}`.slice(0, LONGEST_NAME) : named;
  return { fixing: 'foot', name, at, off: origin, lands: null, tolerance: null, plate: null };
}

/** A plate of 6 mm with a hole that gas passes through: a place to type over (our own choice). */
export const freshPlate: NonNullable<FixingPoint['plate']> = { thickness: 6, hole: 6 };
