import type { LevelRow } from '../../../plan/site.ts';
import { figure, input } from '../../figure.ts';
import { DEGREES } from '../../geometry/angle.ts';
import { cross, dot, length, scale, type Vector3 } from '../../geometry/vector.ts';
import { EXACT, type LaidSite } from '../laid-site.ts';
import { siteBand, type SiteStudy } from '../site-study.ts';
import { LEVEL_PLANES, planeReading, shownIn } from './plane-reading.ts';
import { rowLines, type RowLine } from './row-lines.ts';

/** Two levels that differ by more are both printed [degrees]: a good level's own accuracy; our own choice. */
const DIFFERS = 0.1;

/** A line on every laying of the site, worked out once. */
type LineStudy = { readonly study: SiteStudy; readonly directionOn: (laid: LaidSite) => Vector3 | undefined };

/**
 * What a level must show now, for every typed direction, leg, round thing, straight tube and the hinge [degrees]: laid
 * along it, and held fore and aft and athwart. Lines that cannot be told are left out.
 */
export const levelRows = (study: SiteStudy): LevelRow[] =>
  rowLines(study.source, study.laid).flatMap((line) => {
    const row = rowOf(line, lineStudy(study, line));
    return row === undefined ? [] : [row];
  });

/** The study with the line's own doubts in it: the site lies the same, the line alone is off. */
function lineStudy({ source, laid, varied }: SiteStudy, line: RowLine): LineStudy {
  const own = line.doubts.map((doubt) => ({ doubt, laid: { ...laid } }));
  const directions = new Map<LaidSite, Vector3 | undefined>();
  for (const { doubt, laid: site } of own)
    directions.set(
      site,
      line.directionOn(site, (field) => (field === doubt.field ? doubt.plusMinus : 0)),
    );
  const directionOn = (site: LaidSite) => {
    if (!directions.has(site)) directions.set(site, line.directionOn(site, EXACT));
    return directions.get(site);
  };
  return { study: { source, laid, varied: [...varied, ...own] }, directionOn };
}

/** A level laid along a line [degrees, 0 to 90]: arcsin|d · u|, by atan2 so that it is good near plumb. */
const laidAlong = (direction: Vector3, up: Vector3): number =>
  Math.atan2(Math.abs(dot(direction, up)), length(cross(direction, up))) * DEGREES;

function rowOf(line: RowLine, { study, directionOn }: LineStudy): LevelRow | undefined {
  const { laid } = study;
  const { up } = laid;
  const found = directionOn(laid);
  if (found === undefined) return undefined;
  const direction = dot(found, up) < 0 ? scale(found, -1) : { ...found };
  const bandOf = (read: (direction: Vector3, up: Vector3) => number | undefined) =>
    siteBand(study, (site) => {
      const off = directionOn(site);
      return off === undefined ? undefined : read(off, site.up);
    });
  const along = laidAlong(direction, up);
  const plusMinus = bandOf(laidAlong);
  const planes = LEVEL_PLANES.flatMap((plane) => {
    const reading = planeReading(plane, { direction, up, bandOf: () => bandOf((d, u) => shownIn(plane, d, u)) });
    return reading === undefined ? [] : [reading];
  });
  return {
    of: line.of,
    name: line.name,
    field: line.field,
    direction,
    along: figure(
      along,
      'deg',
      'α = arcsin(d · u)',
      [input('d · u', 'line-along-up', dot(direction, up), 'ratio')],
      ['level-in-plane'],
      plusMinus,
    ),
    offPlumb: figure(
      90 - along,
      'deg',
      'β = 90 − α',
      [input('α', 'level-laid-along', along, 'deg')],
      ['level-in-plane'],
      plusMinus,
    ),
    planes,
    differs: planes.some(({ shows }) => Math.abs(shows.value - along) > DIFFERS),
  };
}
