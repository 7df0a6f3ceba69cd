import type { LevelRow } from '../../../plan/site.ts';
import { figure, input } from '../../figure.ts';
import { DEGREES, withinHalfTurn } from '../../geometry/angle.ts';
import { dot, scale, type Vector3 } from '../../geometry/vector.ts';
import { EXACT, type LaidSite } from '../laid-site.ts';
import { riseBand, riseOf } from '../rise.ts';
import { siteBand, type Read, type SiteStudy, type VariedSite } from '../site-study.ts';
import { ownAxes } from './own-axes.ts';
import { LEVEL_PLANES, planeReading, turnInPlane } from './plane-reading.ts';
import { rowLines, type RowLine } from './row-lines.ts';

/** Two levels that differ by more are both printed [degrees]: a good level's own accuracy; our own choice. */
const DIFFERS = 0.1;

/** A line on every laying of the site, worked out once. */
type LineStudy = { readonly study: SiteStudy; readonly directionOn: Read<Vector3> };

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
  const own = line.doubts.map((doubt): VariedSite => ({ doubt, off: doubt.plusMinus, laid: { ...laid } }));
  const owned = new Set(own.map((one) => one.laid));
  const directions = new Map<LaidSite, Vector3 | undefined>();
  const directionOn: LineStudy['directionOn'] = (site, off) => {
    if (!directions.has(site)) directions.set(site, line.directionOn(site, owned.has(site) ? off : EXACT));
    return directions.get(site);
  };
  return { study: { source, laid, varied: [...varied, ...own] }, directionOn };
}

function rowOf(line: RowLine, { study, directionOn }: LineStudy): LevelRow | undefined {
  const { laid } = study;
  const { up } = laid;
  const found = directionOn(laid, EXACT);
  if (found === undefined) return undefined;
  const direction = dot(found, up) < 0 ? scale(found, -1) : { ...found };
  const along = riseOf(direction, up) * DEGREES;
  const plusMinus = riseBand(study, (site, off) => {
    const one = directionOn(site, off);
    return one && { direction: one, up: site.up };
  });
  const sources = ['level-in-plane', ...ownAxes(study)] as const;
  const planes = LEVEL_PLANES.flatMap((plane) => {
    const exact = turnInPlane(plane, found, up);
    const bandOf = () =>
      siteBand(study, (site, off) => {
        const one = directionOn(site, off);
        const turn = one && turnInPlane(plane, one, site.up);
        // counted on from the exact one: past level and past plumb the ± goes on
        return turn === undefined || exact === undefined ? undefined : withinHalfTurn(turn - exact) * DEGREES;
      });
    const reading = planeReading(plane, { direction, up, sources, bandOf });
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
      sources,
      plusMinus,
    ),
    offPlumb: figure(
      90 - along,
      'deg',
      'β = 90 − α',
      [input('α', 'level-laid-along', along, 'deg')],
      sources,
      plusMinus,
    ),
    planes,
    differs: planes.some(({ shows }) => Math.abs(shows.value - along) > DIFFERS),
  };
}
