import type { CorrectionPlan, Way } from '../../plan/correction.ts';
import type { Said } from '../../plan/readings-fit.ts';
import type { Figure } from '../../plan/figure.ts';
import { VISIBLE_KINK } from './weld-limits.ts';

/** A kink that the eye does not find [deg]. */
export const HIDDEN_KINK = (VISIBLE_KINK * 180) / Math.PI;

/** Two numbers of a column that differ by less than this count as the same: rounding of the solver, our own choice. */
const SAME = 1e-6;

type Column = (way: Way) => Figure | null;

/** The columns of the comparison; less is better in each, widths and toe whichever way they are off. */
const COLUMNS: readonly Column[] = [
  (way) => way.fixingMisfit,
  (way) => way.cornerMisfit,
  (way) => way.cornerWidth,
  (way) => way.endWidth,
  (way) => way.toe,
  (way) => way.largestKink,
  (way) => way.largestHiLo,
  (way) => way.welds,
  (way) => way.purgeSetups,
  (way) => way.purgeGas,
  (way) => way.minutes,
  (way) => way.cost,
  (way) => way.days,
];

/** What each possible way has in the columns that none of them leaves open, whole numbers of what counts as the same. */
function judged(possible: readonly Way[]): number[][] {
  const columns = COLUMNS.filter((column) => possible.every((way) => column(way) !== null));
  return possible.map((way) => columns.map((column) => Math.round(Math.abs(column(way)?.value ?? 0) / SAME)));
}

/** Nowhere worse and somewhere better. */
const isBetter = (a: readonly number[], b: readonly number[]): boolean =>
  a.every((value, index) => value <= (b[index] ?? 0)) && a.some((value, index) => value < (b[index] ?? 0));

/** Marks every possible way that no other possible way beats: nowhere worse and somewhere better. */
export function markUnbeaten(ways: readonly Way[]): Way[] {
  const possible = ways.filter((way) => way.possible);
  const values = judged(possible);
  const unbeaten = new Set(
    possible.filter((_, index) => !values.some((other) => isBetter(other, values[index] ?? []))),
  );
  return ways.map((way) => ({ ...way, unbeaten: unbeaten.has(way) }));
}

/** What is known of a way's misfits. */
type Placed = Pick<Way, 'fixings' | 'fixingMisfit' | 'cornerMisfit'>;

/** Largest misfit of a way at a fixing point or a corner [mm]. */
export const misfitOf = (way: Way): number => Math.max(way.fixingMisfit.value, way.cornerMisfit.value);

/** How sure that is, ± [mm]. */
export const bandOf = (way: Way): number =>
  Math.max(way.fixingMisfit.band?.plusMinus ?? 0, way.cornerMisfit.band?.plusMinus ?? 0);

/**
 * Room that a way has left [mm], negative where it misses: the least of what each fixing point allows less its misfit,
 * of the frame's tolerance less the misfit of a corner, and of the room left at a post.
 *
 * @param tolerance ± [mm], of the whole frame
 */
export const roomOf = (way: Placed, tolerance: number): number =>
  Math.min(...roomsOf(way, tolerance).map(({ room }) => room));

/**
 * Room that is left at the far end of every band [mm]: each point has its own room and its own band.
 *
 * @param tolerance ± [mm], of the whole frame
 */
export function sureRoomOf(way: Way, tolerance: number): number {
  return Math.min(...roomsOf(way, tolerance).map(({ room, band }) => room - band));
}

/** Room and band of the corners, and of each fixing point or post [mm]. */
export function roomsOf(
  { fixings, fixingMisfit, cornerMisfit }: Placed,
  tolerance: number,
): { readonly room: number; readonly band: number }[] {
  const bandOfFigure = (figure: Way['fixingMisfit']): number => figure.band?.plusMinus ?? 0;
  const told = fixings.some(({ fixing }) => fixing !== 'post');
  return [
    { room: tolerance - cornerMisfit.value, band: bandOfFigure(cornerMisfit) },
    ...(told ? [] : [{ room: tolerance - fixingMisfit.value, band: bandOfFigure(fixingMisfit) }]),
    // the misfit of a post is the room that is left
    ...fixings.map(({ fixing, misfit, allowed }) => ({
      room: fixing === 'post' ? misfit.value : allowed.value - misfit.value,
      band: bandOfFigure(misfit),
    })),
  ];
}

/** Whether every fixing point and corner comes near enough, and no tube too near to a post. */
export const isWithin = (way: Placed, tolerance: number): boolean => roomOf(way, tolerance) >= 0;

/** Whether its kinks stay hidden. */
export const isFair = (way: Way): boolean => way.largestKink.value <= HIDDEN_KINK;

/**
 * The order in which ways that come within are taken: fewest welds, least done, cheapest where costs are known, without the
 * bender, nearest.
 */
const byEffort = (a: Way, b: Way): number =>
  a.welds.value - b.welds.value ||
  Number(b.key === 'leave') - Number(a.key === 'leave') ||
  costOrder(a, b) ||
  Number(a.rebends.length > 0) - Number(b.rebends.length > 0) ||
  misfitOf(a) - misfitOf(b) ||
  a.largestKink.value - b.largestKink.value;

const costOrder = (a: Way, b: Way): number => (a.cost === null || b.cost === null ? 0 : a.cost.value - b.cost.value);

/**
 * The way to take: among those that come within and whose kinks stay hidden the one with the fewest welds, then the
 * cheapest where both costs are known, then the nearest. Joints of one's own only where no other splice or rebend
 * comes within, or where they beat the one that would be taken; a new frame only where nothing else comes within.
 * Where no way does, the possible one with the least misfit.
 *
 * @param tolerance ± [mm]
 * @returns the way, and why: with tolerance, misfit and band [mm], welds, kink [deg], and whether it is still within
 *   at the far end of the misfit's band ('yes', 'no'); `unsure` is that band again where it is the band that decides
 */
export function recommend(ways: readonly Way[], tolerance: number): Pick<CorrectionPlan, 'recommended' | 'reason'> {
  const possible = ways.filter((way) => way.possible);
  const near = possible.filter((way) => isWithin(way, tolerance));
  const pick = taken(near.filter(isFair), possible);
  const say = (way: Way, key: string): Pick<CorrectionPlan, 'recommended' | 'reason'> => ({
    recommended: way.key,
    reason: { key, data: reasonData(way, tolerance) },
  });
  if (pick !== undefined) return say(pick, reasonKey(pick, near));
  const [least] = possible.toSorted((a, b) => misfitOf(a) - misfitOf(b) || byEffort(a, b));
  if (least === undefined) return { recommended: null, reason: { key: 'reason.none', data: { tolerance } } };
  return say(least, near.length > 0 ? 'reason.least-misfit-kink' : 'reason.least-misfit');
}

function taken(right: readonly Way[], possible: readonly Way[]): Way | undefined {
  const repairs = right.filter(({ key }) => key !== 'new-frame');
  const found = repairs.filter(({ key }) => key !== 'splice-own').toSorted(byEffort)[0];
  const own = repairs.find(({ key }) => key === 'splice-own');
  if (found === undefined) return own ?? right.toSorted(byEffort)[0];
  if (own === undefined) return found;
  const values = judged(possible);
  const better = isBetter(values[possible.indexOf(own)] ?? [], values[possible.indexOf(found)] ?? []);
  return better ? own : found;
}

function reasonData(way: Way, tolerance: number): Said['data'] {
  const band = bandOf(way);
  const room = roomOf(way, tolerance);
  const sure = sureRoomOf(way, tolerance) >= 0;
  const data = {
    tolerance,
    misfit: misfitOf(way),
    band,
    welds: way.welds.value,
    kink: way.largestKink.value,
    sure: sure ? 'yes' : 'no',
  };
  // there alone for the words, which say it only where it is so
  return sure || room < 0 ? data : { ...data, unsure: band };
}

function reasonKey({ key, welds }: Way, near: readonly Way[]): string {
  if (key === 'leave') return 'reason.good-enough';
  if (key === 'new-frame') return near.some((way) => way.key !== key) ? 'reason.kinks-show' : 'reason.only-new-frame';
  return welds.value === 0 ? 'reason.no-weld' : 'reason.fewest-welds';
}
