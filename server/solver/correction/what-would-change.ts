import type { Way, WayKey } from '../../plan/correction.ts';
import type { Said } from '../../plan/readings-fit.ts';
import { isFair, isWithin, misfitOf, roomsOf } from './compare-ways.ts';

/** More than this nobody reads; our own choice. */
const MOST = 3;

/** A tolerance so many times as wide is no answer; our own choice. */
const MOST_TIMES = 20;

/**
 * What would change a recommendation, each with the number at which it does: readings so many times as exact, another
 * tolerance, kinks that may show, another cost, days that count. The first three that apply.
 *
 * @param tolerance ± [mm]
 * @returns sentences by key; tolerance [mm], kink [deg], cost [minor units], days, times as their names say
 */
export function whatWouldChange(ways: readonly Way[], recommended: WayKey | null, tolerance: number): Said[] {
  const taken = ways.find((way) => way.key === recommended);
  if (taken === undefined) return [];
  const others = ways.filter((way) => way.possible && way !== taken);
  const right = others.filter((way) => isWithin(way, tolerance) && isFair(way));
  return [
    readings(taken, tolerance),
    anotherTolerance(taken, others, tolerance),
    anotherKink(taken, others, tolerance),
    anotherCost(taken, right),
    moneyAlone(taken, right),
    fewerDays(taken, right),
  ]
    .filter((said) => said !== null)
    .slice(0, MOST);
}

const say = (key: string, data: Said['data']): Said => ({ key: `change.${key}`, data });

/** Whether a way would be taken before another if both were right: a new frame comes last, else fewer welds come first. */
const isPreferred = (way: Way, taken: Way): boolean =>
  way.key !== 'new-frame' && (taken.key === 'new-frame' || way.welds.value < taken.welds.value);

/** How many times as exact the readings must be for the way to be surely within. */
function readings(taken: Way, tolerance: number): Said | null {
  const all = roomsOf(taken, tolerance);
  const times = Math.max(...all.map(({ room, band }) => (room > 0 ? band / room : 0)));
  const within = all.every(({ room }) => room > 0);
  return within && times > 1 ? say('readings', { times: Math.ceil(10 * times) / 10, tolerance }) : null;
}

/** The least tolerance at which a way that is preferred comes within. */
function anotherTolerance(taken: Way, others: readonly Way[], tolerance: number): Said | null {
  const [way] = others
    .filter((other) => isPreferred(other, taken) && isFair(other) && hangsOnTolerance(other, tolerance))
    .toSorted((a, b) => misfitOf(a) - misfitOf(b));
  if (way === undefined || misfitOf(way) > MOST_TIMES * tolerance) return null;
  const data = { tolerance: misfitOf(way) };
  return way.key === 'leave' ? say('tolerance-leave', data) : say('tolerance', { ...data, way: way.key });
}

/** Whether the frame's tolerance alone keeps a way from being right: no post, and no fixing point with one of its own. */
const hangsOnTolerance = (way: Way, tolerance: number): boolean =>
  misfitOf(way) > tolerance &&
  way.fixings.every(({ fixing, misfit, allowed }) =>
    fixing === 'post' ? misfit.value >= 0 : misfit.value <= allowed.value || allowed.value === tolerance,
  );

/** The least kink that would have to be let show for a way that is preferred. */
function anotherKink(taken: Way, others: readonly Way[], tolerance: number): Said | null {
  const [way] = others
    .filter((other) => isPreferred(other, taken) && !isFair(other) && isWithin(other, tolerance))
    .toSorted((a, b) => a.largestKink.value - b.largestKink.value);
  if (way === undefined) return null;
  const fewer = taken.welds.value - way.welds.value;
  const data = { kink: way.largestKink.value, way: way.key };
  if (fewer < 1 || taken.key === 'new-frame') return say('kink', data);
  return fewer === 1 ? say('kink-one-weld', data) : say('kink-welds', { ...data, welds: fewer });
}

/** By how much the cost of a way with as many welds would have to differ; what is open where it cannot be said. */
function anotherCost(taken: Way, right: readonly Way[]): Said | null {
  if (taken.cost === null || right.some((way) => way.cost === null)) return say('rate-open', {});
  const own = taken.cost.value;
  const [next] = right
    .filter((way) => way.key !== 'new-frame' && taken.key !== 'leave' && way.welds.value === taken.welds.value)
    .map((way) => ({ way: way.key, cost: (way.cost?.value ?? own) - own }))
    .toSorted((a, b) => a.cost - b.cost);
  return next !== undefined && next.cost > 0 ? say('cost', next) : null;
}

/** The way that costs least, where that is another one. */
function moneyAlone(taken: Way, right: readonly Way[]): Said | null {
  const own = taken.cost?.value ?? 0;
  const [cheapest] = right
    .flatMap(({ key, cost }) => (cost === null ? [] : [{ way: key, cost: own - cost.value }]))
    .toSorted((a, b) => b.cost - a.cost);
  return taken.cost !== null && cheapest !== undefined && cheapest.cost > 0 ? say('money', cheapest) : null;
}

/** The way that is done first, where that is another one. */
function fewerDays(taken: Way, right: readonly Way[]): Said | null {
  if (taken.days === null) return null;
  const own = taken.days.value;
  const [first] = right
    .flatMap(({ key, days }) => (days === null ? [] : [{ way: key, days: own - days.value }]))
    .toSorted((a, b) => b.days - a.days);
  return first !== undefined && first.days > 0.05
    ? say('days', { ...first, days: Math.round(10 * first.days) / 10 })
    : null;
}
