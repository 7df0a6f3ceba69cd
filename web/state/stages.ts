import type { Job } from '../../server/job/job.ts';
import { figureParts, formatMoney } from '../../server/language/quantity-format.ts';
import { closeParts, fixed } from '../../server/language/length-format.ts';
import { words, wordsOf } from '../../server/language/words.ts';
import type { Difference } from '../../server/plan/readings-fit.ts';
import type { Figure } from '../../server/plan/figure.ts';
import type { Finding } from '../../server/plan/finding.ts';
import type { Plan } from '../../server/plan/plan.ts';
import type { QuotePlan } from '../../server/plan/quote.ts';
import type { SitePlan } from '../../server/plan/site.ts';
import type { StockPlan } from '../../server/plan/stock.ts';
import { barsTogether } from './stock-picture.ts';

export const STAGES = ['what', 'wanted', 'cameBack', 'ways', 'purge', 'level', 'stock', 'price', 'sheets'] as const;
export type StageKey = (typeof STAGES)[number];

/** Which stage a field belongs to, by the start of its pointer. */
const PLACES: readonly (readonly [string, StageKey])[] = [
  ['/frame', 'wanted'],
  ['/bending', 'wanted'],
  ['/cameBack', 'cameBack'],
  // what the frame is fastened to is asked for where a wrong frame is measured
  ['/fixing', 'cameBack'],
  ['/closing', 'ways'],
  ['/purge', 'purge'],
  ['/welding', 'purge'],
  ['/finish', 'purge'],
  ['/site', 'level'],
  ['/stock', 'stock'],
  ['/rates', 'price'],
  ['/quote', 'price'],
  ['/log', 'price'],
  ['/print', 'sheets'],
];

export const stageOf = (pointer: string): StageKey =>
  PLACES.find(([start]) => pointer === start || pointer.startsWith(`${start}/`))?.[1] ?? 'what';

/** A value stands for its dimension, a method for its springback, a key for its grade, a shape for its frame. */
export function fieldAndWhole(pointer: string): readonly string[] {
  const whole =
    /^(.+)\/(?:value|method|shape)$/.exec(pointer) ??
    /^(\/tube\/grade)\/(?:key|from)$/.exec(pointer) ??
    /^(\/tube\/tolerance)\/by$/.exec(pointer);
  const at = whole?.[1];
  return at === undefined ? [pointer] : [pointer, at];
}

/** What is said of welding although the field that causes it is typed with the cuts or the fixing points. */
const OF_WELDING: readonly Finding['code'][] = [
  'gap-for-wall',
  'shrinkage-differs',
  'pad-not-an-end',
  'saddle-acute',
  // a plate without a hole, or with a small one, is typed with the fixing points
  'closed-chamber',
  'closed-by-weld',
  'vent-pressure-high',
];

/** What is said of bars although it is the frame that is too long for them. */
const OF_STOCK: readonly Finding['code'][] = ['piece-too-long'];

/** Whether a finding is told with the bars, whatever field it speaks of. */
export const isOfStock = ({ code }: Finding): boolean => OF_STOCK.includes(code);

/** Findings by the field that they stand at: a long table asks for those of each of its fields. */
export function findingsByField(findings: readonly Finding[]): ReadonlyMap<string, readonly Finding[]> {
  const groups = new Map<string, Finding[]>();
  for (const finding of findings)
    if (!isOfStock(finding)) groups.set(finding.field, [...(groups.get(finding.field) ?? []), finding]);
  return groups;
}

function stageOfFinding(finding: Finding): StageKey {
  if (OF_WELDING.includes(finding.code)) return 'purge';
  return isOfStock(finding) ? 'stock' : stageOf(finding.field);
}

export const findingsOf = (stage: StageKey, findings: readonly Finding[]): readonly Finding[] =>
  findings.filter((finding) => stageOfFinding(finding) === stage);

/** The one most important figure of a stage, short enough for the index; empty where there is none. */
export function stageFigure(stage: StageKey, job: Job, plan: Plan | null): string {
  const { units } = job;
  if (stage === 'what') {
    const { outsideDiameter, wall } = job.tube;
    return `${closeParts(outsideDiameter, units).number} × ${closeParts(wall, units).number}`;
  }
  if (plan === null) return '';
  if (stage === 'wanted') {
    const first = plan.frame?.members[0];
    return first === undefined ? '' : joined(figureParts(first.cutLength, units));
  }
  if (stage === 'cameBack') {
    const off = mainDifference(plan.correction?.differences ?? []);
    if (off === undefined) return '';
    return (off.value > 0 ? '+' : '') + joined(figureParts(off, units));
  }
  if (stage === 'ways') {
    const way = plan.correction?.chosen;
    return way === null || way === undefined ? '' : wordsOf('wayShort', way);
  }
  if (stage === 'purge') {
    if (findingsOf(stage, plan.findings).some(({ grade }) => grade === 'stop')) return words('grade.stop');
    const longest = plan.purge?.setups.map(({ wait }) => wait).sort((a, b) => b.value - a.value)[0];
    return longest === undefined ? '' : joined(figureParts(longest, units));
  }
  if (stage === 'level') return plan.site === null ? '' : siteFigure(plan.site, job);
  if (stage === 'stock') return plan.stock === null ? '' : barsFigure(plan.stock);
  return stage === 'price' && plan.quote !== null ? priceFigure(plan.quote) : '';
}

/** How many bars are cut up. */
function barsFigure({ sizes }: StockPlan): string {
  const count = sizes.reduce((sum, { bars }) => sum + barsTogether(bars), 0);
  if (count === 0) return '';
  return count === 1 ? words('stock.oneBar') : words('stock.barCount', { count });
}

/** What one frame costs with tax, or that its lines stand open. */
function priceFigure({ scope, options, currency, minorDigits }: QuotePlan): string {
  const shown = options.find((option) => option.scope === scope);
  if (shown === undefined) return '';
  const each = shown.breaks[0]?.totalEach ?? shown.total;
  if (each === 0 && shown.open.length > 0) return words('stage.open', { count: shown.open.length });
  return formatMoney(each, currency, minorDigits);
}

/** What is sawn first; where there is no leg, how the structure lies: lengthwise / sideways. */
function siteFigure({ legs, level }: SitePlan, { units, site }: Job): string {
  const leg = legs.find(({ order }) => order === 1) ?? legs[0];
  if (leg !== undefined) return joined(figureParts(leg.cutLength, units));
  if (!level.known) return site.level.sets.length > 0 ? words('level.notRead') : '';
  // both stand in the width of one figure: the stage itself says them closer
  return `${fixed(level.trim.value, 1)} / ${fixed(level.list.value, 1)}°`;
}

/** What came back wrong: the width, which is what most frames are asked for by; where a frame has none, the largest. */
function mainDifference(rows: readonly Difference[]): Figure | undefined {
  const width = rows.find(({ key }) => key === 'width-at-corners' || key === 'width');
  const [largest] = rows.toSorted((a, b) => Math.abs(b.difference.value) - Math.abs(a.difference.value));
  return (width ?? largest)?.difference;
}

const joined = ({ number, unit }: { number: string; unit: string }): string => `${number} ${unit}`.trim();
