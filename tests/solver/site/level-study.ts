import { newJob } from '../../../server/job/default-job.ts';
import type { Level, LevelReading } from '../../../server/job/level.ts';
import type { Site } from '../../../server/job/site.ts';
import { EXACT, type LaidSite, type Off, type SiteSource } from '../../../server/solver/site/laid-site.ts';
import type { DirectionContext } from '../../../server/solver/site/level/directions.ts';
import { levelDoubts } from '../../../server/solver/site/level/level-doubts.ts';
import { setInUse } from '../../../server/solver/site/level/sets-read.ts';
import { solveLevels } from '../../../server/solver/site/level/solve-levels.ts';
import type { SiteStudy } from '../../../server/solver/site/site-study.ts';
import { variedSites } from '../../../server/solver/site/varied-sites.ts';
import type { Vector3 } from '../../../server/solver/geometry/vector.ts';

export const X: Vector3 = { x: 1, y: 0, z: 0 };
export const Y: Vector3 = { x: 0, y: 1, z: 0 };
export const Z: Vector3 = { x: 0, y: 0, z: 1 };

export const radians = (angle: number): number => (angle * Math.PI) / 180;
export const degrees = (angle: number): number => (angle * 180) / Math.PI;

export const incline = (along: Vector3, angle: number, accuracy: number | null = null): LevelReading => ({
  reading: 'incline',
  along: { ...along },
  angle,
  accuracy,
});

export const height = (at: Vector3, value: number, accuracy: number | null = null): LevelReading => ({
  reading: 'height',
  at: { ...at },
  height: value,
  accuracy,
});

/** A level with these sets, each taken at a time. */
export const levelOf = (...sets: LevelReading[][]): Level => ({
  ...newJob('hoop').site.level,
  sets: sets.map((readings) => ({ taken: '2026-05-04T09:40', note: '', readings })),
});

/** Bow 0.8 down, port side 1.7 up. */
export const lyingBoat = levelOf([incline(X, -0.8), incline(Y, 1.7)]);

/** The one set's up, which must be told. */
export const upOf = (level: Level, off: Off = EXACT): Vector3 => solveLevels(level, off).levels[0]!.up;

/** A site where only levels move what is laid, with everything else standing as given. */
export function levelStudy(changes: Partial<Site> = {}, standing: Partial<LaidSite> = {}): SiteStudy {
  const job = newJob('hoop');
  const site = { ...job.site, ...changes };
  const source: SiteSource = {
    site,
    wanted: { members: [], checks: [], feet: [], corners: [], planeNormal: null },
    made: [],
    tube: job.tube,
    grade: undefined as never, // levels never look at it
    gap: 0,
    shrinkage: 0,
    paperThickness: 0,
    templateStations: 16,
  };
  const lay = (off: Off): LaidSite => {
    const { levels } = solveLevels(site.level, off);
    const up = levels[setInUse(site.level)]?.up ?? Z;
    return { levels, up, points: new Map(), frame: null, things: [], legs: [], ...standing };
  };
  const lying = (off: Off) => ({ laid: lay(off), findings: solveLevels(site.level, off).findings });
  const { varied } = variedSites(lying, levelDoubts(site), lying(EXACT));
  return { source, laid: lay(EXACT), varied };
}

/** Directions of a structure that lies as these levels say, with nothing in it. */
export const contextOf = (level: Level, changes: Partial<DirectionContext> = {}): DirectionContext => ({
  levels: solveLevels(level, EXACT).levels,
  points: new Map(),
  frame: null,
  placeOnFrame: () => undefined,
  alongOf: () => undefined,
  off: EXACT,
  ...changes,
});
