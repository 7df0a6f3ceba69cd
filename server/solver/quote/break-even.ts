import type { SettledJob } from '../../job/job.ts';
import type { Operation } from '../../job/rates.ts';
import type { WayKey } from '../../plan/correction.ts';
import type { Figure, Unit, WorkingInput } from '../../plan/figure.ts';
import type { BreakEven, QuoteLineKey } from '../../plan/quote.ts';
import { figure, input } from '../figure.ts';
import { holdsUpTo, type Range } from './holds-up-to.ts';
import { withJoints } from './more-joints.ts';
import { priceOf, type PricedLines } from './price-of.ts';
import type { PricedLine } from './priced-line.ts';
import type { Quantities } from './quantities.ts';

/** Operations whose hour is varied together: all that a splice is made of. */
const HANDWORK: readonly Operation[] = ['cut', 'fit', 'purge', 'weld', 'finish'];
/** The most of each that is looked at: joints and an hour [minor], our own choice; an offer and frames, as a job may have them. */
const MOST_JOINTS = 200;
const MOST_HOUR = 100_000_000;
const MOST_OFFER = 1_000_000_000;
const MOST_FRAMES = 1000;
/** Costs run straight in money, so that its steps may grow fast; our own choice. */
const MONEY_STEPS = 32;

/** Costs nearer than this are alike [minor]: rounding of the sums. */
const SAME = 1e-6;

const SPLICES: readonly WayKey[] = ['splice-fewest', 'splice-fairest', 'splice-closest', 'splice-own', 'splice-rebend'];

/** A way that is priced, the legs of the job among it. */
type Work = { readonly scope: WayKey; readonly quantities: Quantities };

type Asked = {
  readonly job: SettledJob;
  readonly works: readonly { readonly scope: 'frame' | WayKey; readonly quantities: Quantities }[];
  /** The legs by themselves, which are alike in all of them. */
  readonly legs: Quantities | null;
};

/** What one way is bought and done for where what is looked at is `at`; null while a line stands open. */
type CostAt = (at: number) => number | null;

/** What is varied, in whole numbers, and what both ways come to then. */
type Axis = {
  readonly by: BreakEven['by'];
  readonly unit: Unit;
  readonly range: Range;
  readonly name: string;
  readonly now: Figure;
  readonly costs: readonly [CostAt, CostAt];
};

/**
 * Where the cheapest splice and a new frame cost alike: by the number of its joints, by what an hour of the work on
 * it costs, by what a bender asks for the new frame, and by how many frames there are; and where a rebend and a new frame do,
 * by that offer. Each is looked for with whole prices, all lines made anew, and never by a formula. What is bought and done
 * is compared, before it is rounded: overhead, margin and tax are put on both alike.
 *
 * @returns nothing where one of the two stands open, or there are not two
 */
export function breakEvens(asked: Asked): BreakEven[] {
  const works = asked.works.filter((work): work is Work => work.scope !== 'frame');
  const anew = works.find(({ scope }) => scope === 'new-frame');
  if (anew === undefined) return [];
  const quantity = asked.job.quote.quantities[0] ?? 1;
  const splice = cheapest(
    works.filter(({ scope }) => SPLICES.includes(scope)),
    asked.job,
    quantity,
  );
  const rebend = works.find(({ scope }) => scope === 'rebend');
  const between = (way: Work | null, axes: readonly ((pair: Pair) => Axis | null)[]): BreakEven[] => {
    if (way === null) return [];
    const pair = { ...asked, way, other: anew, quantity };
    const costs = [costOf(way, asked.job, quantity), costOf(anew, asked.job, quantity)];
    if (costs.includes(null)) return [];
    return axes.map((axis) => breakEvenOn(axis(pair), pair)).filter((found) => found !== null);
  };
  return [...between(splice, [byJoints, byLabour, byOffer, byFrames]), ...between(rebend ?? null, [byOffer])];
}

type Pair = Asked & { readonly way: Work; readonly other: Work; readonly quantity: number };

const costOf = ({ quantities }: Pick<Work, 'quantities'>, job: SettledJob, quantity: number): number | null =>
  whole(priceOf({ quantities, job, quantity }));

/** What all lines come to before each is rounded, so that a cost that grows never falls back by a rounding. */
const whole = ({ lines }: PricedLines): number | null =>
  lines.some(({ amount }) => amount === null)
    ? null
    : lines.reduce((sum, line) => (PUT_ON.includes(line.key) ? sum : sum + unrounded(line)), 0);

/** Overhead and what follows is put on both ways alike. */
const PUT_ON: readonly QuoteLineKey[] = ['overhead', 'margin', 'rounding', 'tax'];

const unrounded = ({ quantity, rate, rateUnit }: PricedLine): number =>
  (quantity ?? 0) * (rate === null ? 1 : rateUnit === 'percent' ? rate / 100 : rate);

function cheapest(ways: readonly Work[], job: SettledJob, quantity: number): Work | null {
  const priced = ways.flatMap((work) => {
    const cost = costOf(work, job, quantity);
    return cost === null ? [] : [{ work, cost }];
  });
  return priced.toSorted((a, b) => a.cost - b.cost)[0]?.work ?? null;
}

/** Joints of the splice: its welds without those of pads, which both ways have; a let-in piece takes two for one joint. */
function byJoints({ job, way, other, quantity, legs }: Pair): Axis | null {
  const { counts, pieces } = way.quantities;
  const letIns = pieces.reduce((sum, { kind, count }) => (kind === 'let-in' ? sum + count : sum), 0);
  const pads = job.fixing.filter((point) => point.fixing === 'pad' && point.plate !== null).length;
  const welds = counts.weld - (legs?.counts.weld ?? 0) - pads;
  const joints = welds - letIns;
  if (joints < 1) return null;
  const loose = unlaid(job);
  const alone = costOf(other, loose, quantity);
  const having = (times: number): Quantities => withJoints(way.quantities, { times, welds, pads, legs });
  return {
    by: 'joints',
    unit: 'count',
    range: { least: 1, most: MOST_JOINTS, growth: 2 },
    name: 'joints',
    now: typed(joints, 'count', 'joints', ['geometry']),
    costs: [(at) => costOf({ quantities: having(at / joints) }, loose, quantity), () => alone],
  };
}

/** Bars are laid out for the pieces that there are; other numbers of them go by first fit, so that all of them are alike. */
const unlaid = (job: SettledJob): SettledJob => ({ ...job, stock: { ...job.stock, layout: null } });

/** One rate for an hour of all handwork. */
function byLabour({ job, way, other, quantity }: Pair): Axis {
  const at = (hour: number): SettledJob => {
    const labour = { ...job.rates.labour };
    for (const operation of HANDWORK) {
      const rate = labour[operation];
      labour[operation] = { ...rate, hour: { ...rate.hour, value: hour } };
    }
    return { ...job, rates: { ...job.rates, labour } };
  };
  const lines = priceOf({ quantities: way.quantities, job, quantity }).lines.filter(({ key }) =>
    (HANDWORK as readonly string[]).includes(key),
  );
  const hours = lines.reduce((sum, line) => sum + (line.quantity ?? 0), 0);
  const paid = lines.reduce((sum, line) => sum + (line.amount ?? 0), 0);
  return {
    by: 'labour',
    unit: 'minor',
    range: { least: 0, most: MOST_HOUR, growth: MONEY_STEPS },
    name: 'an-hour-of-handwork',
    now: figure(
      hours > 0 ? paid / hours : 0,
      'minor',
      'r = c/h',
      [input('c', 'handwork-of-the-way', paid, 'minor'), input('h', 'hours-of-it', hours, 'h')],
      ['money', 'typed'],
    ),
    costs: [(hour) => costOf(way, at(hour), quantity), (hour) => costOf(other, at(hour), quantity)],
  };
}

/** What a bender outside asks for one new frame. Only where that has bends. */
function byOffer({ job, way, other, quantity }: Pair): Axis | null {
  if (other.quantities.counts.bend === 0) return null;
  const at = (bendersOffer: number): SettledJob => ({
    ...job,
    quote: { ...job.quote, bending: 'outside', bendersOffer },
  });
  const bending = priceOf({ quantities: other.quantities, job, quantity }).lines.filter(
    ({ key, of }) => key === 'bend' || key === 'outside-bending' || (key === 'machine' && of === 'bend'),
  );
  const paid = bending.reduce((sum, { amount }) => sum + (amount ?? 0), 0);
  const alone = costOf(way, job, quantity);
  return {
    by: 'offer',
    unit: 'minor',
    range: { least: 0, most: MOST_OFFER, growth: MONEY_STEPS },
    name: 'offer-for-a-frame',
    now: figure(
      paid / quantity,
      'minor',
      'o = c/n',
      [input('c', 'bending-of-new-frames', paid, 'minor'), input('n', 'frames', quantity, 'count')],
      ['money', 'typed'],
    ),
    costs: [() => alone, (offer) => costOf(other, at(offer), quantity)],
  };
}

function byFrames({ job, way, other, quantity }: Pair): Axis {
  const loose = unlaid(job);
  return {
    by: 'frames',
    unit: 'count',
    range: { least: 1, most: MOST_FRAMES, growth: 2 },
    name: 'frames',
    now: typed(quantity, 'count', 'frames', ['typed']),
    costs: [(frames) => costOf(way, loose, frames), (frames) => costOf(other, loose, frames)],
  };
}

const typed = (value: number, unit: Unit, name: string, sources: Parameters<typeof figure>[4]): Figure =>
  figure(value, unit, 'n', [input('n', name, value, unit)], sources);

/**
 * Where the order of two ways changes: the one that costs no more at the least is cheaper up to there. For an offer the ways
 * stay in their order: there it is the other that is cheaper below.
 */
function breakEvenOn(axis: Axis | null, { way, other, job, quantity }: Pair): BreakEven | null {
  if (axis === null) return null;
  const { by, unit, range, name, now } = axis;
  const [own, others] = axis.costs;
  const [least, leastOther] = [own(range.least), others(range.least)];
  if (least === null || leastOther === null) return null;
  const ownFirst = least <= leastOther + SAME;
  const [low, high] = ownFirst ? [own, others] : [others, own];
  const found = holdsUpTo(range, (one) => {
    const [cost, against] = [low(one), high(one)];
    return cost === null || against === null ? null : against - cost + SAME;
  });
  if (found === 'open') return null;
  const at = found === 'always' ? null : found;
  const [first, second] =
    ownFirst || (by === 'offer' && at !== null) ? [way.scope, other.scope] : [other.scope, way.scope];
  return {
    by,
    way: first,
    other: second,
    at: at === null ? null : atFigure(at, { unit, name, costs: [low(at), high(at)] }),
    now,
    cheaper: at === null ? first : cheaperNow([way, other], job, quantity),
  };
}

function cheaperNow([way, other]: readonly [Work, Work], job: SettledJob, quantity: number): WayKey {
  const [cost, against] = [costOf(way, job, quantity) ?? 0, costOf(other, job, quantity) ?? 0];
  return cost <= against + SAME ? way.scope : other.scope;
}

function atFigure(
  at: number,
  { unit, name, costs }: { unit: Unit; name: string; costs: readonly [number | null, number | null] },
): Figure {
  const [cheaper, dearer] = costs;
  const inputs: WorkingInput[] = [
    input('c₁', 'cost-of-the-cheaper-below', cheaper ?? 0, 'minor'),
    input('c₂', 'cost-of-the-cheaper-above', dearer ?? 0, 'minor'),
  ];
  return figure(at, unit, `x: ${name}, greatest with c₁(x) ≤ c₂(x)`, inputs, ['money']);
}
