import type { Figure } from '../../../plan/figure.ts';
import type { LoadPlan, StrutPlan } from '../../../plan/strength.ts';
import { figure, input } from '../../figure.ts';
import type { LaidSite } from '../laid-site.ts';
import { siteBand, type SiteStudy } from '../site-study.ts';
import { leverOf, reachOf, type Reach } from './leg-force.ts';
import { loadFigure, type PointLoad } from './published-loads.ts';

/** Levers about the hinge on one site: of the load, and of a leg [mm]; undefined where there is no hinge or no lever. */
type Levers = (laid: LaidSite) => { readonly load: number; readonly leg: number } | undefined;

/**
 * Each load of the list with the force along each leg where the load is on the frame's furthest place from its hinge and
 * that leg alone carries it. A load that stands there is taken down, by gravity as the structure lies now; one that can
 * come any way is taken square to the line from the hinge, which is the worst. The force is told as pressing the leg,
 * whichever way it does. Without a hinge nothing says what a leg carries: the list of legs is empty.
 */
export function loadPlans(study: SiteStudy, loads: readonly PointLoad[], struts: readonly StrutPlan[]): LoadPlan[] {
  const reaches = new Map<LaidSite, Reach | undefined>();
  const reachOn = (laid: LaidSite): Reach | undefined => {
    if (!reaches.has(laid)) {
      const hinge = laid.frame?.hinge ?? null;
      reaches.set(laid, laid.frame === null || hinge === null ? undefined : reachOf(laid.frame, hinge, laid.up));
    }
    return reaches.get(laid);
  };
  return loads.map((load) => ({
    key: load.key,
    load: loadFigure(load),
    legs: study.laid.legs.flatMap((leg, index) => {
      if (leg === null) return [];
      const levers: Levers = (laid) => leversOn(laid, index, reachOn(laid)?.[load.way]);
      const force = forceFigure(study, load, levers);
      if (force === null) return [];
      const reduced = struts.find(({ field }) => field === leg.field)?.reduced ?? null;
      return [{ leg: leg.name, force, overReduced: reduced === null ? null : force.value > reduced.value }];
    }),
  }));
}

function leversOn({ frame, legs }: LaidSite, index: number, load: number | undefined): ReturnType<Levers> {
  const leg = legs[index] ?? null;
  const hinge = frame?.hinge ?? null;
  const lever = leg === null || hinge === null ? undefined : leverOf(leg, hinge);
  return lever === undefined || load === undefined ? undefined : { load, leg: lever };
}

function forceFigure(study: SiteStudy, { value, way, source }: PointLoad, levers: Levers): Figure | null {
  const force = (laid: LaidSite): number | undefined => {
    const found = levers(laid);
    return found === undefined ? undefined : (value * found.load) / found.leg;
  };
  const found = levers(study.laid);
  if (found === undefined) return null;
  return figure(
    (value * found.load) / found.leg,
    'N',
    'N = P a/b',
    [
      input('P', 'point-load', value, 'N'),
      input('a', way === 'down' ? 'lever-of-a-load-down' : 'furthest-from-the-hinge', found.load, 'mm'),
      input('b', 'lever-of-the-leg', found.leg, 'mm'),
    ],
    ['leg-alone', source],
    siteBand(study, force),
  );
}
