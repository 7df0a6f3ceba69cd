import type { Job } from '../../server/job/job.ts';
import type { WeldTurn } from '../../server/job/welding.ts';
import type { OrderedWeld } from '../../server/plan/welding.ts';
import { withChoice } from './typed-text.ts';

export const ORDER = '/welding/order';

type Quarter = WeldTurn['first'];

const QUARTERS: readonly Quarter[] = [1, 2, 3, 4];

/** A quarter so many further round; round once is where it was. */
const further = (from: Quarter, by: number): number => ((from - 1 + by) % 4) + 1;

/** How the second and third quarter follow the first, in steps round the tube. */
const STEPS: Readonly<Record<WeldTurn['way'], readonly [number, number]>> = {
  opposed: [2, 1],
  'opposed-back': [2, 3],
  round: [1, 2],
  'round-back': [3, 2],
};

/** The turn that welds the quarters in the order in which the plan has them; round from quarter 1 where it says none. */
export function turnOf({ weld, quarters: [one, second, third] }: OrderedWeld): WeldTurn {
  const first = QUARTERS.find((quarter) => quarter === one) ?? 1;
  const ways = ['opposed', 'opposed-back', 'round', 'round-back'] as const;
  const way = ways.find((each) => {
    const [toSecond, toThird] = STEPS[each];
    return further(first, toSecond) === second && further(first, toThird) === third;
  });
  return { weld, first, way: way ?? 'round' };
}

/** The job with an order of its own, to be changed, which begins as the plan has it. */
export const withOwnOrder = (job: Job, order: readonly OrderedWeld[]): Job => withChoice(job, ORDER, order.map(turnOf));

/** Welds of the plan that an order of one's own leaves out. */
export const leftOut = (own: readonly WeldTurn[], planned: readonly OrderedWeld[]): readonly OrderedWeld[] =>
  planned.filter(({ weld }) => !own.some((turn) => turn.weld === weld));

/** '1 – 3 – 2 – 4' */
export const quarterWords = ({ quarters }: OrderedWeld): string => quarters.join(' – ');
