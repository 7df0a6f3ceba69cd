import type { LevelSet } from '../../server/job/level.ts';
import type { Site } from '../../server/job/site.ts';
import { formatQuantity } from '../../server/language/quantity-format.ts';
import { words } from '../../server/language/words.ts';
import type { Units } from '../../server/job/job.ts';
import type { Figure } from '../../server/plan/figure.ts';
import type { LevelRow, PlaneReading, Side } from '../../server/plan/site.ts';
import { clock } from './clock.ts';
import { isRead } from './level-readings.ts';
import { nameAtField } from './site-names.ts';

type Sides = Site['sides'];
type Plane = PlaneReading['plane'];

export const PLANES = ['fore-and-aft', 'athwart'] as const satisfies readonly Plane[];

export const sideUp = (sides: Sides, side: Side): string =>
  words('level.sideUp', { side: words(`side.${sides}.${side}`) });

export const planeWords = (sides: Sides, plane: Plane): string => words(`plane.${sides}.${plane}`);

/** The two ends of a line along or across the structure; what is typed positive first. */
export const endsOf = (plane: Plane): readonly [Side, Side] =>
  plane === 'fore-and-aft' ? ['ahead', 'back'] : ['port', 'starboard'];

/** 'Set 2, 09:40', with its day where that is not today; without a time where none was noted, and whether it is read. */
export function setWords(set: LevelSet, index: number): string {
  const number = index + 1;
  if (!isRead(set)) return words('level.setNotRead', { number });
  return set.taken === ''
    ? words('level.set', { number })
    : words('level.setTaken', { number, time: clock(set.taken) });
}

/** 'held fore and aft' */
export const heldWords = (sides: Sides, { plane }: Pick<PlaneReading, 'plane'>): string =>
  words('must.held', { plane: planeWords(sides, plane) });

/** Which side is higher, or for a steep line which side its upper end leans to. */
export function wayWords(sides: Sides, { rises, leans }: PlaneReading, steep: boolean): string {
  if (steep)
    return leans === null ? words('must.plumb') : words('must.leans', { towards: words(`towards.${sides}.${leans}`) });
  return rises === null ? words('must.level') : sideUp(sides, rises);
}

/** A row by the name of what it is for. */
export function rowName(site: Site, { of, name, field }: Pick<LevelRow, 'of' | 'name' | 'field'>): string {
  if (of === 'hinge') return words('must.of.hinge');
  return of === 'member' ? words('must.of.member', { name }) : nameAtField(site, field) || name;
}

/** A signed figure as a size and the side that is up; the side is null where the size is shown as nothing. */
export function sided(
  figure: Figure,
  plane: Plane,
  units: Units,
): { readonly size: Figure; readonly side: Side | null } {
  const size = { ...figure, value: Math.abs(figure.value) };
  const [up, down] = endsOf(plane);
  const isNothing = !/[1-9]/.test(formatQuantity(size.value, size.unit, units));
  return { size, side: isNothing ? null : figure.value > 0 ? up : down };
}
