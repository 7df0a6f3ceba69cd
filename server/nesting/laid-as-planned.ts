import type { Aim } from './aim.ts';
import { roomsOf, weightsOf, type Cut, type CuttingTask } from './cutting-task.ts';
import { laidGreedily } from './laid-greedily.ts';
import type { LinearSolver, Row } from './linear-solver.ts';

/** How much more room than the pieces take is planned, from full bars to looser ones; our own choice. */
const ROOMIER = [0, 0.003, 0.006, 0.01, 0.015, 0.02, 0.03, 0.04, 0.06, 0.08, 0.12];

/** The longest for one plan [s]; our own choice. */
const LONGEST = 0.3;

/**
 * Answers where the bars come first: the least of them that have room enough for all pieces together, and the pieces laid
 * into these. Where many short pieces go on a bar this comes close, and does so at once.
 */
export function laidAsPlanned(
  aim: Aim,
  { solver, secondsLeft }: { readonly solver: LinearSolver; readonly secondsLeft: () => number },
): Cut[][] {
  const { task } = aim;
  const weights = weightsOf(task);
  const taken = task.pieces.reduce((sum, { count }, index) => sum + count * (weights[index] ?? 0), 0);
  for (const roomier of ROOMIER) {
    if (secondsLeft() <= 0) break;
    const seconds = Math.min(LONGEST, secondsLeft());
    const counts = plannedBars(aim, taken * (1 + roomier), { solver, seconds });
    if (counts === null) break;
    const planned: CuttingTask = {
      ...task,
      // these are to be filled, whichever is the cheaper
      bars: task.bars.map((bar, index) => ({ ...bar, cost: 0, count: counts[index] ?? 0 })),
    };
    const laid = laidGreedily(planned, () => secondsLeft() <= 0);
    if (laid.length > 0) return laid;
  }
  return [];
}

/** How many bars of each kind come to least and have so much room together; null where none do. */
function plannedBars(
  { task, costs, limit }: Aim,
  room: number,
  { solver, seconds }: { readonly solver: LinearSolver; readonly seconds: number },
): number[] | null {
  // counted in the longest bar, so that the numbers of the program are near to one
  const longest = Math.max(1, ...roomsOf(task));
  const rooms = roomsOf(task).map((one) => one / longest);
  const rows: Row[] = [
    { least: room / longest, most: Infinity },
    { least: -Infinity, most: limit?.most ?? Infinity },
    ...task.bars.map(({ count }) => ({ least: 0, most: count ?? Infinity })),
  ];
  const columns = task.bars.map((_, bar) => ({
    cost: costs[bar] ?? 0,
    rows: [0, 1, 2 + bar],
    gives: [Math.max(0, rooms[bar] ?? 0), limit?.costs[bar] ?? 0, 1],
  }));
  return solver.wholeNumbers({ rows, columns, within: 0.5, seconds, better: () => undefined }).amounts;
}
