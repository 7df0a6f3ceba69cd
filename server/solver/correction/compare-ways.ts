import type { CorrectionPlan, Way, WayKey } from '../../plan/correction.ts';

/** A kink that the eye does not find [deg]: common practice, no source. */
const HIDDEN_KINK = 1;

/** The columns of the comparison; less is better in each. A cost or time that stands open is left out for all. */
function columns(ways: readonly Way[]): ((way: Way) => number)[] {
  const always: ((way: Way) => number)[] = [
    (way) => way.footMisfit.value,
    (way) => way.cornerMisfit.value,
    (way) => Math.abs(way.toe.value),
    (way) => way.largestKink.value,
    (way) => way.largestHiLo.value,
    (way) => way.welds.value,
    (way) => way.purgeSetups.value,
    (way) => way.purgeGas.value,
  ];
  const possible = ways.filter((way) => way.possible);
  if (possible.every((way) => way.minutes !== null)) always.push((way) => way.minutes?.value ?? 0);
  if (possible.every((way) => way.cost !== null)) always.push((way) => way.cost?.value ?? 0);
  return always;
}

/** Marks every possible way that no other possible way beats: nowhere worse and somewhere better. */
export function markUnbeaten(ways: readonly Way[]): Way[] {
  const judged = columns(ways);
  const beats = (a: Way, b: Way) =>
    judged.every((column) => column(a) <= column(b) + 1e-9) && judged.some((column) => column(a) < column(b) - 1e-9);
  return ways.map((way) => ({
    ...way,
    unbeaten: way.possible && !ways.some((other) => other !== way && other.possible && beats(other, way)),
  }));
}

/**
 * The way to take: among those whose feet and corners come within the tolerance and whose kinks stay hidden, the one
 * with the fewest welds, then the cheapest where both costs are known, then the least misfit; a new frame only where
 * nothing else comes within. Where none does, the possible way with the least misfit.
 *
 * @param tolerance ± [mm]
 */
export function recommend(ways: readonly Way[], tolerance: number): Pick<CorrectionPlan, 'recommended' | 'reason'> {
  const possible = ways.filter((way) => way.possible);
  const misfit = (way: Way) => Math.max(way.footMisfit.value, way.cornerMisfit.value);
  const within = possible.filter((way) => misfit(way) <= tolerance && way.largestKink.value <= HIDDEN_KINK);
  const repairs = within.filter((way) => way.key !== 'new-frame');
  const [pick] = [...(repairs.length > 0 ? repairs : within)].sort(
    (a, b) =>
      a.welds.value - b.welds.value ||
      costOrder(a, b) ||
      misfit(a) - misfit(b) ||
      a.largestKink.value - b.largestKink.value,
  );
  const data = (way: Way) => ({ tolerance, misfit: misfit(way), welds: way.welds.value, kink: way.largestKink.value });
  if (pick !== undefined) {
    return { recommended: pick.key, reason: { key: reasonKey(pick.key), data: data(pick) } };
  }
  const [least] = [...possible].sort((a, b) => misfit(a) - misfit(b));
  if (least === undefined) return { recommended: null, reason: { key: 'reason.none', data: { tolerance } } };
  return { recommended: least.key, reason: { key: 'reason.least-misfit', data: data(least) } };
}

const reasonKey = (key: WayKey): string =>
  key === 'new-frame' ? 'reason.only-new-frame' : key === 'leave' ? 'reason.good-enough' : 'reason.fewest-welds';

const costOrder = (a: Way, b: Way): number => (a.cost === null || b.cost === null ? 0 : a.cost.value - b.cost.value);
