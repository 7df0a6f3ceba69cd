import type { LevelRow, PlaneReading, SiteResidual } from '../../server/plan/site.ts';

/** Steeper than this a person holds the level upright against it and reads how far off plumb it is [degrees]. */
const STEEP = 45;

export const isSteep = ({ along }: LevelRow): boolean => along.value > STEEP;

/** The plane that a line lies in most nearly: there a level held in the plane is taken for one laid along the line. */
export const nearestPlane = ({ planes, along }: LevelRow): PlaneReading | undefined =>
  planes.toSorted((a, b) => Math.abs(a.shows.value - along.value) - Math.abs(b.shows.value - along.value))[0];

/** Lines that are asked for and what is to be set up come first; tubes and things as they stand are for a second look. */
export function rowGroups(rows: readonly LevelRow[]): {
  readonly set: readonly LevelRow[];
  readonly asStands: readonly LevelRow[];
} {
  const isSet = ({ of }: LevelRow): boolean => of === 'hinge' || of === 'leg';
  return {
    set: rows.filter(isSet),
    asStands: rows.filter((row) => !isSet(row) && row.of !== 'direction'),
  };
}

/** Below this a residual is rounding [mm or degrees]: as many readings as it takes leave none. */
const NOTHING = 1e-6;

/** Those of readings that are more than it takes; just as many fit by themselves, which says nothing of them. */
export const tellingResiduals = (residuals: readonly SiteResidual[]): readonly SiteResidual[] =>
  residuals.some(({ residual }) => Math.abs(residual.value) > NOTHING) ? residuals : [];

/** What is off at a field or at a part of it. */
export const residualAt = (residuals: readonly SiteResidual[], pointer: string): SiteResidual | null =>
  residuals.find(({ field }) => field === pointer || field.startsWith(`${pointer}/`)) ?? null;
