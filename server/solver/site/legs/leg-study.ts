import type { Leg } from '../../../job/leg.ts';
import type { Finding } from '../../../plan/finding.ts';
import type { LaidFrame, LaidLeg, LaidSite } from '../laid-site.ts';
import type { Pick, SiteStudy } from '../site-study.ts';
import { isSameLeg } from './is-same-leg.ts';
import { legCut, zeroToward, type CutSetting, type LegCut } from './leg-cut.ts';
import { legExtremes, type LegExtremes } from './leg-extremes.ts';
import { adjustStops, endStops, lengthStops, noSaddle } from './leg-stops.ts';
import { traceSaddle } from './saddle-trace.ts';

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
  const seen: CutSetting = {
    foot: leg.foot.end,
    head: leg.head.end,
    gap: source.gap,
    shrinkage: source.shrinkage,
    adds: leg.adjust?.adds ?? 0,
    mainRadius: source.tube.outsideDiameter / 2,
    zeroTo: zeroToward(laid),
    saddle: null,
  };
  const first = legCut(laid, frame, seen);
  const ends = [...endStops(leg, laid, first, source.tube.outsideDiameter), ...adjustStops(leg, laid)];
  if (ends.length > 0 || first === undefined) return { findings: ends };
  const saddle = first.head.end === 'saddle' ? traceSaddle(first.head, first.length) : null;
  if (saddle === undefined) return { findings: [noSaddle(leg, laid)] };
  const setting = { ...seen, saddle };
  const cut = legCut(laid, frame, setting) ?? first;
  const at = legExtremes(cut);
  if (at === undefined) return { findings: [noSaddle(leg, laid)] };
  const lengths = lengthStops(laid, cut, at);
  if (lengths.length > 0) return { findings: lengths };
  return { study: { index, leg, laid, frame, cut, at, pick: picker(index, { laid, frame, cut }, setting) } };
}

/** Cuts of a leg are made once for each site that it is asked of, and not again where it stands as it is typed. */
function picker(
  index: number,
  typed: { readonly laid: LaidLeg; readonly frame: LaidFrame; readonly cut: LegCut },
  setting: CutSetting,
): LegStudy['pick'] {
  const cuts = new Map<LaidSite, LegCut | undefined>();
  const cutOn = ({ legs, frame }: LaidSite): LegCut | undefined => {
    const laid = legs[index] ?? null;
    if (laid === null || frame === null) return undefined;
    return isSameLeg({ laid, frame }, typed) ? typed.cut : legCut(laid, frame, setting);
  };
  return (value) => (site) => {
    if (!cuts.has(site)) cuts.set(site, cutOn(site));
    const cut = cuts.get(site);
    const number = cut === undefined ? undefined : value(cut);
    return number !== undefined && Number.isFinite(number) ? number : undefined;
  };
}
