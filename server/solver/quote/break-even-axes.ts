import type { SettledJob } from '../../job/job.ts';
import type { Operation } from '../../job/rates.ts';
import type { WayKey } from '../../plan/correction.ts';
import type { Figure, Unit } from '../../plan/figure.ts';
import type { BreakEven } from '../../plan/quote.ts';
import { figure, input } from '../figure.ts';
import type { Range } from './holds-up-to.ts';
import { exactAt, type LineRule } from './line-rule.ts';
import { withJoints } from './more-joints.ts';
import type { Quantities } from './quantities.ts';
import type { WorkCost } from './work-cost.ts';

/** Operations whose hour is varied together: all handwork from cutting to finishing; bending alone is left as it is. */
const HANDWORK: readonly Operation[] = ['cut', 'fit', 'purge', 'bottle', 'weld', 'finish'];

/** Every number of joints or frames is looked at up to here; our own choice. Above it steps grow by so much. */
const CLOSELY = 60;
const COUNT_STEPS = 1.4;
/** The most joints that are looked at, our own choice; and frames, as a job may have them. */
const JOINTS: Range = { least: 1, closely: CLOSELY, most: 200, growth: COUNT_STEPS };
const FRAMES: Range = { least: 1, closely: CLOSELY, most: 1000, growth: COUNT_STEPS };
/** An hour and an offer [minor] as far as one may be typed. Costs run straight in them, so that steps may grow fast. */
const MONEY_STEPS = 32;
const HOUR: Range = { least: 0, closely: 0, most: 100_000_000, growth: MONEY_STEPS };
const OFFER: Range = { least: 0, closely: 0, most: 1_000_000_000, growth: MONEY_STEPS };

/** What is varied, in whole numbers, and what both ways come to then; null while a line stands open. */
export type Axis = {
  readonly by: BreakEven['by'];
  readonly unit: Unit;
  readonly range: Range;
  readonly name: string;
  readonly now: Figure;
  readonly costs: readonly [CostAt, CostAt];
};
type CostAt = (at: number) => number | null;

/** A way that is priced, the legs of the job among it, and what it costs as it is. */
export type PricedWork = { readonly scope: WayKey; readonly quantities: Quantities; readonly cost: WorkCost };

/** Two ways that are held against each other for so many frames. */
export type Pair = {
  readonly job: SettledJob;
  readonly way: PricedWork;
  readonly other: PricedWork;
  readonly quantity: number;
  /** The legs by themselves, which are alike in both. */
  readonly legs: Quantities | null;
};

/** Joints of the splice: its welds without those of pads, which both ways have; a let-in piece takes two for one joint. */
export function byJoints({ job, way, other, quantity, legs }: Pair): Axis | null {
  const { counts, pieces } = way.quantities;
  const letIns = pieces.reduce((sum, { kind, count }) => (kind === 'let-in' ? sum + count : sum), 0);
  const pads = job.fixing.filter((point) => point.fixing === 'pad' && point.plate !== null).length;
  const welds = counts.weld - (legs?.counts.weld ?? 0) - pads;
  const joints = welds - letIns;
  if (joints < 1) return null;
  const alone = other.cost.at(quantity);
  const having = (times: number): Quantities => withJoints(way.quantities, { times, welds, pads, legs });
  return {
    by: 'joints',
    unit: 'count',
    range: JOINTS,
    name: 'joints',
    now: typed(joints, 'joints', ['geometry']),
    costs: [(at) => way.cost.taking(having(at / joints)).at(quantity), () => alone],
  };
}

/** One rate for an hour of all handwork, against what an hour of it costs on the mean now. */
export function byLabour({ job, way, other, quantity }: Pair): Axis {
  const at = (hour: number): SettledJob => {
    const labour = { ...job.rates.labour };
    for (const operation of HANDWORK) {
      const rate = labour[operation];
      labour[operation] = { ...rate, hour: { ...rate.hour, value: hour } };
    }
    return { ...job, rates: { ...job.rates, labour } };
  };
  const handwork = way.cost.rules.rules.filter(({ key }) => (HANDWORK as readonly string[]).includes(key));
  const hours = total(handwork, (rule) => rule.taken(quantity));
  const paid = total(handwork, (rule) => exactAt(rule, quantity));
  return {
    by: 'labour',
    unit: 'minor',
    range: HOUR,
    name: 'an-hour-of-handwork',
    now: figure(
      hours > 0 ? paid / hours : 0,
      'minor',
      'r = c/h',
      [input('c', 'handwork-of-the-way', paid, 'minor'), input('h', 'hours-of-it', hours, 'h')],
      ['money', 'typed'],
    ),
    costs: [(hour) => way.cost.priced(at(hour)).at(quantity), (hour) => other.cost.priced(at(hour)).at(quantity)],
  };
}

/** What a bender outside asks for one new frame. Only where that has bends. */
export function byOffer({ job, way, other, quantity }: Pair): Axis | null {
  if (other.quantities.counts.bend === 0) return null;
  const at = (bendersOffer: number): SettledJob => ({
    ...job,
    quote: { ...job.quote, bending: 'outside', bendersOffer },
  });
  const bending = other.cost.rules.rules.filter(
    ({ key, of }) => key === 'bend' || key === 'outside-bending' || (key === 'machine' && of === 'bend'),
  );
  const paid = total(bending, (rule) => exactAt(rule, quantity));
  const alone = way.cost.at(quantity);
  return {
    by: 'offer',
    unit: 'minor',
    range: OFFER,
    name: 'offer-for-a-frame',
    now: figure(
      paid / quantity,
      'minor',
      'o = c/n',
      [input('c', 'bending-of-new-frames', paid, 'minor'), input('n', 'frames', quantity, 'count')],
      ['money', 'typed'],
    ),
    costs: [() => alone, (offer) => other.cost.priced(at(offer)).at(quantity)],
  };
}

export const byFrames = ({ way, other, quantity }: Pair): Axis => ({
  by: 'frames',
  unit: 'count',
  range: FRAMES,
  name: 'frames',
  now: typed(quantity, 'frames', ['typed']),
  costs: [way.cost.at, other.cost.at],
});

const total = (rules: readonly LineRule[], of: (rule: LineRule) => number | null | undefined): number =>
  rules.reduce((sum, rule) => sum + (of(rule) ?? 0), 0);

const typed = (value: number, name: string, sources: Parameters<typeof figure>[4]): Figure =>
  figure(value, 'count', 'n', [input('n', name, value, 'count')], sources);
