import type { Leg } from '../../../job/leg.ts';
import type { Finding } from '../../../plan/finding.ts';
import type { LaidFrame, LaidLeg, LaidSite } from '../laid-site.ts';
import type { Pick, SiteStudy } from '../site-study.ts';
import { legCut, zeroToward, type CutSetting, type LegCut } from './leg-cut.ts';
import { legExtremes, type LegExtremes } from './leg-extremes.ts';
import { endStops, lengthStops } from './leg-stops.ts';

/** One leg that can be cut, as typed, with a way to ask the same of it with each doubtful value off. */
export type LegStudy = {
  readonly index: number;
  readonly leg: Leg;
  readonly laid: LaidLeg;
  readonly frame: LaidFrame;
  readonly cut: LegCut;
  readonly at: LegExtremes;
  /** A number of the leg's cut, as a number of the whole site. */
  readonly pick: (value: (cut: LegCut) => number | undefined) => Pick;
};

/**
 * @returns undefined where the leg is not laid, which was told; findings that stop it where it cannot be cut
 */
export function studyLeg(
  { source, laid: site }: SiteStudy,
  index: number,
): { readonly study: LegStudy } | { readonly findings: Finding[] } | undefined {
  const leg = source.site.legs[index];
  const laid = site.legs[index];
  const { frame } = site;
  if (leg === undefined || laid === undefined || laid === null || frame === null) return undefined;
  const setting: CutSetting = {
    foot: leg.foot.end,
    head: leg.head.end,
    gap: source.gap,
    shrinkage: source.shrinkage,
    adds: leg.adjust?.adds ?? 0,
    mainRadius: source.tube.outsideDiameter / 2,
    zeroTo: zeroToward(laid),
  };
  const cut = legCut(laid, frame, setting);
  const ends = endStops(leg, laid, cut, source.tube.outsideDiameter);
  if (ends.length > 0 || cut === undefined) return { findings: ends };
  const at = legExtremes(cut);
  const lengths = lengthStops(leg, laid, cut, at, source.tube.outsideDiameter);
  if (lengths.length > 0 || at === undefined) return { findings: lengths };
  return { study: { index, leg, laid, frame, cut, at, pick: picker(index, setting) } };
}

/** Cuts of a leg are made once for each site that it is asked of. */
function picker(index: number, setting: CutSetting): LegStudy['pick'] {
  const cuts = new Map<LaidSite, LegCut | undefined>();
  const cutOn = (site: LaidSite): LegCut | undefined => {
    const leg = site.legs[index];
    if (!cuts.has(site)) {
      const laid = leg !== undefined && leg !== null && site.frame !== null;
      cuts.set(site, laid ? legCut(leg, site.frame, setting) : undefined);
    }
    return cuts.get(site);
  };
  return (value) => (site) => {
    const cut = cutOn(site);
    const number = cut === undefined ? undefined : value(cut);
    return number !== undefined && Number.isFinite(number) ? number : undefined;
  };
}
