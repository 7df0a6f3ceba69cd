import type { SettledJob } from '../../job/job.ts';
import type { WayKey } from '../../plan/correction.ts';
import type { Figure, WorkingInput } from '../../plan/figure.ts';
import type { BreakEven, QuoteOption } from '../../plan/quote.ts';
import { figure, input } from '../figure.ts';
import { byFrames, byJoints, byLabour, byOffer, type Axis, type Pair, type PricedWork } from './break-even-axes.ts';
import { holdsUpTo } from './holds-up-to.ts';
import type { Quantities } from './quantities.ts';
import { workCost } from './work-cost.ts';

/** Costs nearer than this are alike [minor]: rounding of the sums. */
const SAME = 1e-6;

/** An hour that costs so many times what it does now is no price that a shop thinks of: our own choice. */
const UNHEARD_OF = 10;

const SPLICES: readonly WayKey[] = ['splice-fewest', 'splice-fairest', 'splice-closest', 'splice-own', 'splice-rebend'];

type Asked = {
  readonly job: SettledJob;
  readonly works: readonly { readonly scope: 'frame' | WayKey; readonly quantities: Quantities }[];
  /** The legs by themselves, which are alike in all of them. */
  readonly legs: Quantities | null;
  /** What each of them costs as it is quoted: whichever is said to be cheaper is cheaper there. */
  readonly options: readonly Pick<QuoteOption, 'scope' | 'cost'>[];
};

/** A work with its price as it is quoted. */
type Quoted = PricedWork & { readonly quoted: number };

/**
 * Where the cheapest splice and a new frame cost alike: by the number of its joints, by what an hour of the work on
 * it costs, by what a bender asks for the new frame, and by how many frames there are; and where a rebend and a new frame do,
 * by that offer, where a bender does both. Each is looked for with whole prices, all lines made anew, and never by a formula; tube goes by the metre or
 * by first fit in all of them. What is bought and done is compared, before it is rounded: overhead, margin and tax are put on
 * both alike.
 *
 * @returns nothing where one of the two stands open, or there are not two; none whose sentence the prices as quoted belie
 */
export function breakEvens(asked: Asked): BreakEven[] {
  const { job, legs } = asked;
  if (!asked.works.some(({ scope }) => scope === 'new-frame')) return [];
  const quantity = job.quote.quantities[0] ?? 1;
  const works = asked.works.flatMap((work) => pricedWork(work, asked, quantity) ?? []);
  const anew = works.find(({ scope }) => scope === 'new-frame');
  if (anew === undefined) return [];
  const [splice] = works.filter(({ scope }) => SPLICES.includes(scope)).toSorted(byPrice(quantity));
  const rebend = works.find(({ scope }) => scope === 'rebend');
  const between = (way: Quoted | undefined, axes: readonly ((pair: Pair) => Axis | null)[]): BreakEven[] => {
    if (way === undefined) return [];
    const cheaper = byPrice(quantity)(way, anew) <= 0 ? way.scope : anew.scope;
    const known = { cheaper, alike: way.quoted === anew.quoted };
    const pair = { job, legs, quantity, way, other: anew };
    return axes.map((axis) => breakEvenOn(axis(pair), pair, known)).filter((found) => found !== null);
  };
  return [
    ...between(splice, [byJoints, byLabour, byOffer, byFrames]),
    ...between(rebend, job.quote.bending === 'own' ? [] : [byOffer]),
  ];
}

/** null for the frame, and while a line of it stands open. */
function pricedWork(
  { scope, quantities }: Asked['works'][number],
  { job, options }: Asked,
  quantity: number,
): Quoted | null {
  if (scope === 'frame') return null;
  const cost = workCost(quantities, job);
  const now = cost.at(quantity);
  if (now === null) return null;
  const option = options.find((one) => one.scope === scope);
  return { scope, quantities, cost, quoted: option?.cost ?? now };
}

/** Which of two is cheaper as they are quoted, and whether they are alike there. */
type Known = { readonly cheaper: WayKey; readonly alike: boolean };

/** By the price as it is quoted, and where that is the same by what it is before rounding. */
const byPrice =
  (quantity: number) =>
  (one: Quoted, other: Quoted): number =>
    one.quoted - other.quoted || (one.cost.at(quantity) ?? 0) - (other.cost.at(quantity) ?? 0);

/**
 * Where the order of two ways changes: the one that costs no more at the least is cheaper up to there. For an offer the ways
 * stay in their order: there it is the other that is cheaper below.
 */
function breakEvenOn(axis: Axis | null, { job, way, other }: Pair, known: Known): BreakEven | null {
  if (axis === null) return null;
  const { by, range, now } = axis;
  const [own, others] = axis.costs;
  const [least, leastOther] = [own(range.least), others(range.least)];
  if (least === null || leastOther === null) return null;
  const ownFirst = least <= leastOther + SAME;
  const [low, high] = ownFirst ? [own, others] : [others, own];
  const held = holdsUpTo(range, (one) => {
    const [cost, against] = [low(one), high(one)];
    return cost === null || against === null ? null : against - cost + SAME;
  });
  if (held === null) return null;
  const { at, wavers } = held;
  const [first, second] = ownFirst ? [way.scope, other.scope] : [other.scope, way.scope];
  const { cheaper, alike } = known;
  if (!alike && isBelied({ at, wavers, now: now.value }, first, cheaper)) return null;
  const swapped = by === 'offer' && at !== null && !ownFirst;
  const found = {
    by,
    way: swapped ? second : first,
    other: swapped ? first : second,
    at: at === null ? null : atFigure(at, axis, [low(at), high(at)]),
    wavers,
    now,
    cheaper,
  };
  return isIdle(found, job) ? null : found;
}

/**
 * Whether it tells nobody anything: an hour at many times what it costs now, or that no offer of a bender could change it
 * where nobody asks one.
 */
function isIdle({ by, at, now }: Pick<BreakEven, 'by' | 'at' | 'now'>, { quote }: SettledJob): boolean {
  if (by === 'labour') return at !== null && at.value > UNHEARD_OF * now.value;
  return by === 'offer' && at === null && quote.bending === 'own';
}

/** Whether what would be said of how things stand now is not so. Where it goes to and fro nothing is said of it. */
function isBelied(
  { at, wavers, now }: { readonly at: number | null; readonly wavers: boolean; readonly now: number },
  first: WayKey,
  cheaper: WayKey,
): boolean {
  if (at === null || now <= at) return cheaper !== first;
  return !wavers && cheaper === first;
}

function atFigure(at: number, { unit, name }: Axis, costs: readonly [number | null, number | null]): Figure {
  const [cheaper, dearer] = costs;
  const inputs: WorkingInput[] = [
    input('c₁', 'cost-of-the-cheaper-below', cheaper ?? 0, 'minor'),
    input('c₂', 'cost-of-the-cheaper-above', dearer ?? 0, 'minor'),
  ];
  return figure(at, unit, `x: ${name}, greatest with c₁(x) ≤ c₂(x)`, inputs, ['money']);
}
