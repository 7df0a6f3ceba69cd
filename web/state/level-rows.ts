import type { LevelRow, SiteResidual } from '../../server/plan/site.ts';

/** Steeper than this a person holds the level upright against it and reads how far off plumb it is [degrees]. */
const STEEP = 45;

export const isSteep = ({ along }: LevelRow): boolean => along.value > STEEP;

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

/** What is off at a field or at a part of it. */
export const residualAt = (residuals: readonly SiteResidual[], pointer: string): SiteResidual | null =>
  residuals.find(({ field }) => field === pointer || field.startsWith(`${pointer}/`)) ?? null;
