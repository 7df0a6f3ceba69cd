import type { Purge } from '../../job/purge.ts';
import type { SettledJob } from '../../job/job.ts';
import type { Figure } from '../../plan/figure.ts';
import type { PurgePlan } from '../../plan/purge.ts';
import type { GasChoice } from '../../plan/quote.ts';
import { figure, input } from '../figure.ts';
import { numbered, termsOf } from '../numbered-symbols.ts';
import type { JobWork } from '../pricing.ts';
import { chamberFlows, type ChamberFlow } from '../purge/chamber-flow.ts';
import { FACTOR, floorBand } from '../purge/gas-figures.ts';
import { extentStops } from '../purge/plan-purge.ts';
import type { PurgeContext } from '../purge/purge-context.ts';
import { workOf, type PurgeWork } from '../purge/purge-work.ts';
import { setUpsOf, type SetUp } from '../purge/set-ups.ts';
import { floorTime } from '../welding/operating-factor.ts';
import { addQuantities } from './add-quantities.ts';
import { gasNeed, type GasNeed } from './gas-lines.ts';
import { exactAt, type LineRule } from './line-rule.ts';
import { wholeMinor } from './minor-units.ts';
import { rulesFor } from './price-of.ts';
import type { Quantities } from './quantities.ts';
import { workQuantities } from './work-quantities.ts';

const EXTENTS = ['whole-frame', 'dams'] as const;
const JOINTS = ['together', 'one-by-one'] as const;
type Joints = (typeof JOINTS)[number];

/** What a choice is made for. */
type Asked = {
  readonly job: SettledJob;
  readonly work: JobWork;
  readonly legs: Quantities | null;
  /** How the work is purged as planned, which knows what stops each extent; null where the gas never reaches the target. */
  readonly purge: PurgePlan | null;
};

/**
 * What the gas of one frame comes to: the whole frame or dams, all welds of a set-up in one filling or each in a filling of
 * its own, for which the air comes back in between. Fillings, minutes and stops are those of the frame's own welds; gas,
 * bottles and money have the legs' in them, who are filled one by one in any case.
 *
 * @returns nothing where nothing is welded on the frame
 */
export function gasChoices(asked: Asked): GasChoice[] {
  const context = asked.work.gas;
  return EXTENTS.flatMap((extent): GasChoice[] => {
    const chambers = chamberFlows(context, extent);
    if (chambers.length === 0) return [];
    const planned = asked.purge?.extents.find((one) => one.extent === extent);
    const stops = planned?.stops ?? extentStops(chambers, context);
    return JOINTS.map((joints) => {
      const setUps = joints === 'together' ? setUpsOf(chambers) : oneByOne(chambers);
      return { ...choiceOf({ extent, joints }, setUps, asked), stops };
    });
  });
}

/** Every weld with a filling of its own: all chambers that it heats are filled anew for it. */
function oneByOne(chambers: readonly ChamberFlow[]): SetUp[] {
  const welds = [...new Set(chambers.flatMap((chamber) => chamber.welds))].sort((a, b) => a - b);
  return welds.map((weld, index) => ({
    number: index + 1,
    chambers: chambers.filter((chamber) => chamber.welds.includes(weld)),
    welds: [weld],
  }));
}

/** What is priced: the work with its gas and fillings as this choice has them. */
function quantitiesOf({ job, work, legs }: Asked, purged: PurgeWork): Quantities {
  const own = workQuantities(job, { ...work, purge: purged });
  return legs === null ? own : addQuantities(own, legs);
}

function choiceOf(
  { extent, joints }: { readonly extent: Purge['extent']; readonly joints: Joints },
  setUps: readonly SetUp[],
  asked: Asked,
): Omit<GasChoice, 'stops'> {
  const { job, work } = asked;
  const chosen = extent === job.purge.extent && joints === 'together';
  const purged = chosen ? work.purge : workOf(work.gas, setUps);
  const task = { quantities: quantitiesOf(asked, purged), job };
  const need = gasNeed(task, 1);
  const count = input('n', 'fillings', purged.setups, 'count');
  return {
    extent,
    joints,
    chosen,
    fillings: figure(purged.setups, 'count', 'n', [count], ['geometry']),
    minutes: minutesFigure(work.gas, purged, changesOf(need) ?? 0),
    gas: gasFigure(task.quantities),
    ...bottleFigures(need),
    cost: costFigure(rulesFor(task).rules),
  };
}

/** The first bottle stands there already. */
const changesOf = ({ bottles }: GasNeed): number | null => (bottles === null ? null : Math.max(0, bottles - 1));

/** Waiting, welding, holding, setting up and changing bottles [min]; times that nobody typed are left out. */
function minutesFigure(
  { job }: PurgeContext,
  { wait, arcs, setups, hold, seconds }: PurgeWork,
  changes: number,
): Figure {
  const { purge, bottle } = job.rates.labour;
  const begun = purge.setUp.value ?? 0;
  const each = purge.each.value ?? 0;
  const changing = changes > 0 ? (bottle.setUp.value ?? 0) + changes * (bottle.each.value ?? 0) : 0;
  return figure(
    seconds / 60 + begun + setups * each + changing,
    'min',
    'M = (t + T/f + n h)/60 + t_s + n t_e + t_b',
    [
      input('t', 'wait', wait, 's'),
      input('T', 'arc-time', arcs, 's'),
      FACTOR,
      input('n', 'fillings', setups, 'count'),
      input('h', 'hold', hold, 's'),
      input('t_s', 'set-up-time', begun, 'min'),
      input('t_e', 'time-of-each', each, 'min'),
      input('t_b', 'changing-bottles', changing, 'min'),
    ],
    ['gas-network', 'operating-factor', 'typed'],
    floorBand(floorTime(arcs) / 60),
  );
}

const gasFigure = ({ purgeGas, torchGas }: Quantities): Figure =>
  figure(
    (purgeGas + torchGas) / 1000,
    'm3',
    'V = (V_p + V_t)/1000',
    [input('V_p', 'purge-gas', purgeGas, 'L'), input('V_t', 'torch-gas', torchGas, 'L')],
    ['gas-network', 'geometry'],
  );

function bottleFigures(need: GasNeed): Pick<GasChoice, 'bottles' | 'changes'> {
  const { bottles, litres, usable } = need;
  const changes = changesOf(need);
  if (bottles === null || changes === null) return { bottles: null, changes: null };
  const used = [input('V', 'purge-and-torch-gas', litres, 'L'), input('V_u', 'usable-gas', usable, 'L')];
  const begun = input('n', 'bottles-begun', bottles, 'count');
  return {
    bottles: figure(bottles, 'count', 'n = ⌈V/V_u⌉', used, ['argon-state']),
    changes: figure(changes, 'count', 'max(0, n − 1)', [begun], ['argon-state']),
  };
}

/** Whether a line of a quote is about gas. */
const isGas = ({ key, of }: LineRule): boolean =>
  ['gas', 'bottle-rent', 'purge', 'bottle'].includes(key) || (key === 'machine' && ['purge', 'bottle'].includes(of));

/** What the lines of the gas come to, as the quote has them; null while one of them stands open. */
function costFigure(rules: readonly LineRule[]): Figure | null {
  const amounts: { name: string; amount: number }[] = [];
  for (const rule of rules.filter(isGas)) {
    const exact = exactAt(rule, 1);
    if (exact === undefined) continue;
    const amount = exact === null ? null : wholeMinor(exact);
    if (amount === null) return null;
    amounts.push({ name: rule.of === '' ? rule.key : `${rule.key}-${rule.of}`, amount });
  }
  return figure(
    amounts.reduce((sum, { amount }) => sum + amount, 0),
    'minor',
    `c = ${termsOf('c', amounts.length, ' + ')}`,
    amounts.map(({ name, amount }, index) => input(numbered('c', index + 1), `line-${name}`, amount, 'minor')),
    ['money'],
  );
}
