import type { Finding } from '../../plan/finding.ts';
import { finding } from '../finding.ts';
import { once } from '../once.ts';
import type { LaidSite, Off, SiteDoubt } from './laid-site.ts';
import type { OffSite, VariedSite } from './site-study.ts';

/** A site as it was laid, and what was found on the way. */
type Laying = { readonly laid: LaidSite; readonly findings: readonly Finding[] };

/**
 * The site once for each doubtful value, with that value off by its accuracy: upwards, or downwards where upwards it is
 * not the same site any more, because a frame cannot come to its slope, say, and stays as it was placed. Where neither
 * way gives the same site the value is left out, and a finding says so.
 *
 * @param lay lays the site with values off
 * @param exact the site as typed
 */
export function variedSites(
  lay: (off: Off) => Laying,
  doubts: readonly SiteDoubt[],
  exact: Laying,
): { varied: VariedSite[]; findings: Finding[] } {
  const told = toldOf(exact);
  const leftOut: SiteDoubt[] = [];
  const varied = doubts.flatMap((doubt): VariedSite[] => {
    const by = (off: number): OffSite | null => {
      const laying = lay((field) => (field === doubt.field ? off : 0));
      return toldOf(laying) === told ? { off, laid: laying.laid } : null;
    };
    const first = by(doubt.plusMinus);
    if (first !== null) return [{ doubt, ...first, otherWay: once(() => by(-doubt.plusMinus)) }];
    const other = by(-doubt.plusMinus);
    if (other !== null) return [{ doubt, ...other, otherWay: () => null }];
    leftOut.push(doubt);
    return [];
  });
  const [field] = leftOut.map((doubt) => doubt.field);
  const said = field === undefined ? [] : [finding('band-left-out', 'caution', field, { value: leftOut.length })];
  return { varied, findings: said };
}

/** What could be told of a site, and what stopped the rest: sites that differ in it do not pass into one another. */
const toldOf = ({ laid: { levels, points, frame, things, legs }, findings }: Laying): string =>
  [
    points.size,
    [...levels, frame, ...things, ...legs].filter((part) => part !== null).length,
    ...findings.filter(isTurningPoint).map(({ code, field }) => `${code} ${field}`),
  ].join('\n');

/** A stop; and a frame that may turn either way, which is not turned the same way just beside that. */
const isTurningPoint = ({ code, grade }: Finding): boolean => grade === 'stop' || code === 'standing-either-way';
