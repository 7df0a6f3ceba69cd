import { performance } from 'node:perf_hooks';
import { correctionTargets } from '../../server/solver/correction/correction-targets.ts';
import { searchSplices, type SpliceTask } from '../../server/solver/correction/splice/search-splices.ts';
import { solveSplice } from '../../server/solver/correction/splice/solve-splice.ts';
import { frameGeometry } from '../../server/solver/frame/expand-frame.ts';
import type { FrameGeometry } from '../../server/solver/frame/frame-geometry.ts';
import type { Job } from '../../server/job/job.ts';
import { plan } from '../../server/solver/plan.ts';
import { fitReadings } from '../../server/solver/returned/fit-readings.ts';
import { searchGlobally } from './global-search.ts';
import { returnedHoop } from './returned-hoops.ts';
import { settledClosing } from '../solver/settled-closing.ts';

const RUNS = 15;

/** How much longer than the solver the global optimiser may look. */
const TIMES = 20;

/** As good as the solver: within a thousandth of its cost. */
const AS_GOOD = 1.001;

/** The middle of some times [ms]. */
function median(count: number, work: () => unknown): number {
  const times = Array.from({ length: count }, () => {
    const start = performance.now();
    work();
    return performance.now() - start;
  }).sort((a, b) => a - b);
  return times[Math.floor(count / 2)] ?? Number.NaN;
}

const row = (name: string, value: number, after: string): void =>
  console.log(`${name.padEnd(44)} ${value.toFixed(2).padStart(9)} ms   ${after}`);

/** What the splices of a job are sought with. */
function taskOf(job: Job): SpliceTask | undefined {
  const { tube, cameBack, machine } = job;
  const { outsideDiameter } = tube;
  const radius = machine.dies[machine.die]?.radius ?? 0;
  const { geometry: wanted } = frameGeometry(job.frame, {
    outsideDiameter,
    cornerRadius: radius,
    root: '/frame',
    closingStraight: () => null,
  });
  if (wanted === null || cameBack === null) return undefined;
  const { angleScatter, planeScatter } = machine.accuracy;
  const { returned } = fitReadings({ wanted, cameBack, outsideDiameter, angleScatter, planeScatter });
  return returned === null ? undefined : splicing(job, wanted, returned.geometry);
}

function splicing({ tube, closing: typed, cameBack }: Job, wanted: FrameGeometry, frame: FrameGeometry): SpliceTask {
  const { outsideDiameter, wall } = tube;
  const closing = settledClosing(typed);
  const { kerf, gap, shrinkage } = closing;
  const tape = cameBack?.tapeAccuracy ?? 1;
  const { targets } = correctionTargets({ fixing: [], wanted, actual: frame, outsideDiameter, tape, tolerance: 3 });
  const sizes = { outsideDiameter, kerf, gap, shrinkage, tape };
  return { frame, targets, planeNormal: wanted.planeNormal, closing, sizes, wall };
}

/** How long a whole comparison takes, and how the search stands beside a global optimiser. */
export function spliceBench(): void {
  for (const [crossbars, goal] of [
    [3, 150],
    [11, 400],
  ] as const) {
    const job = returnedHoop(crossbars);
    const members = String(crossbars + 1);
    const { correction } = plan(job);
    plan(job);
    row(
      `plan(frame of ${members} that came back), median`,
      median(RUNS, () => plan(job)),
      `goal ${String(goal)}`,
    );
    const { layouts, workedOut } = correction?.search ?? { layouts: 0, workedOut: 0 };
    console.log(`  layouts looked at: ${String(layouts)}, worked out to the end: ${String(workedOut)}`);
    console.log(`  recommended: ${correction?.recommended ?? 'nothing'}`);
    const task = taskOf(job);
    if (task !== undefined) besideDirect(members, task);
  }
}

function besideDirect(members: string, task: SpliceTask): void {
  const { best, layouts } = searchSplices(task);
  const problem = best[0]?.candidate.splice.problem;
  const whole = median(RUNS, () => searchSplices(task));
  row(`search of the splices of ${members}, median`, whole, `${String(layouts)} layouts`);
  if (problem === undefined) return;
  const own = solveSplice(problem)?.cost ?? Number.NaN;
  const time = median(RUNS, () => solveSplice(problem));
  row(`  its best layout solved alone, median`, time, `cost ${own.toFixed(3)}`);
  // the optimiser has one layout to solve and more than the time of the whole search for it
  const found = searchGlobally(problem, own * AS_GOOD, TIMES * Math.max(time, whole));
  row(
    `  the same layout by DIRECT`,
    found.time,
    `cost ${found.cost.toFixed(3)}, ${String(found.looks)} looks, the last after ${found.last.toFixed(0)} ms`,
  );
  const better = found.cost <= own * AS_GOOD ? 'as good' : `DIRECT still ${(found.cost / own).toFixed(1)} times worse`;
  console.log(
    `  time of DIRECT / ours: ${(found.time / time).toFixed(0)}, of the whole search: ${(found.time / whole).toFixed(1)}; ${better}`,
  );
}
