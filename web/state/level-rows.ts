import type { LevelRow, PlaneReading, SiteResidual } from '../../server/plan/site.ts';

/** The plane that a line lies in most nearly: there a level held in the plane is taken for one laid along the line. */
export const nearestPlane = ({ planes, along }: LevelRow): PlaneReading | undefined =>
  planes.toSorted((a, b) => Math.abs(a.shows.value - along.value) - Math.abs(b.shows.value - along.value))[0];

/** More legs than this stand folded, each with three lines to read. */
const FEW_LEGS = 3;

/** Lines that are asked for and what is to be set up come first; tubes and things as they stand are for a second look. */
export function rowGroups(rows: readonly LevelRow[]): {
  readonly set: readonly LevelRow[];
  readonly legs: readonly LevelRow[];
  readonly asStands: readonly LevelRow[];
} {
  const isSet = ({ of }: LevelRow): boolean => of === 'hinge' || of === 'leg';
  const legs = rows.filter(({ of }) => of === 'leg');
  const areMany = legs.length > FEW_LEGS;
  return {
    set: rows.filter((row) => isSet(row) && !(areMany && row.of === 'leg')),
    legs: areMany ? legs : [],
    asStands: rows.filter((row) => !isSet(row) && row.of !== 'direction'),
  };
}

/** What is off at a field or at a part of it. */
export const residualAt = (residuals: readonly SiteResidual[], pointer: string): SiteResidual | null =>
  residuals.find(({ field }) => field === pointer || field.startsWith(`${pointer}/`)) ?? null;
