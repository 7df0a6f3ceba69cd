import type { Band, Figure } from '../../../plan/figure.ts';
import type { LoadPlan, StrutPlan } from '../../../plan/strength.ts';
import { band, figure, input } from '../../figure.ts';
import type { LaidSite } from '../laid-site.ts';
import { siteBand, type SiteStudy } from '../site-study.ts';
import { leverOf } from '../legs/leg-way.ts';
import { reachOf } from './frame-reach.ts';
import { loadFigure, loadInput, type ListedLoad } from './published-loads.ts';

/**
 * Each load of the list with the force along each leg where the load is on the frame's furthest place from its hinge and
 * that leg alone carries it. A load that stands there is taken down, by gravity as the structure lies now; one that can
 * come any way is taken square to the line from the hinge, which is the worst. The force is told as pressing the leg,
 * whichever way it does. Without a hinge nothing says what a leg carries, nor how much of the frame is a rail that is loaded
 * all along: the list of legs is empty then.
 */
export function loadPlans(study: SiteStudy, loads: readonly ListedLoad[], struts: readonly StrutPlan[]): LoadPlan[] {
  const [any, down] = [reachOf(study.laid, 'any'), reachOf(study.laid, 'down')];
  const levers = study.laid.legs.map((_, index) => ({
    any: leversOf(study, index, any),
    down: leversOf(study, index, down),
  }));
  return loads.map((load) => ({
    key: load.key,
    load: loadFigure(load),
    legs: study.laid.legs.flatMap((leg, index) => {
      const found = levers[index]?.[load.way] ?? null;
      if (leg === null || found === null || load.kind === 'along') return [];
      const { name, field } = leg;
      const force = forceFigure(load, found);
      const reduced = struts.find((strut) => strut.field === field)?.reduced ?? null;
      return [{ leg: name, field, force, overReduced: reduced === null ? null : force.value > reduced.value }];
    }),
  }));
}

/** Levers about the hinge [mm], of the load and of a leg, and the ± of the first over the second. */
type Levers = { readonly load: number; readonly leg: number; readonly shareDoubt: Band | null };

/** @returns null where there is no hinge or the leg has no lever about it */
function leversOf(study: SiteStudy, index: number, reachOn: ReturnType<typeof reachOf>): Levers | null {
  const on = (laid: LaidSite): Pick<Levers, 'load' | 'leg'> | undefined => {
    const leg = laid.legs[index] ?? null;
    const hinge = laid.frame?.hinge ?? null;
    const lever = leg === null || hinge === null ? undefined : leverOf(leg, hinge);
    const load = reachOn(laid);
    return lever === undefined || load === undefined ? undefined : { load, leg: Math.abs(lever) };
  };
  const found = on(study.laid);
  if (found === undefined) return null;
  const shareDoubt = siteBand(study, (laid) => {
    const one = on(laid);
    return one && one.load / one.leg;
  });
  return { ...found, shareDoubt };
}

function forceFigure(load: ListedLoad, { load: reach, leg, shareDoubt }: Levers): Figure {
  const { value, way, source } = load;
  return figure(
    (value * reach) / leg,
    'N',
    'N = P a/b',
    [
      loadInput(load),
      input('a', way === 'down' ? 'lever-of-a-load-down' : 'furthest-from-the-hinge', reach, 'mm'),
      input('b', 'lever-of-the-leg', leg, 'mm'),
    ],
    ['leg-alone', source],
    shareDoubt && band(value * shareDoubt.plusMinus, ...shareDoubt.from),
  );
}
