import { performance } from 'node:perf_hooks';
import { cutBars, type CutBars } from '../../server/nesting/cut-bars.ts';
import type { CuttingTask } from '../../server/nesting/cutting-task.ts';
import { startLinearSolver } from '../../server/nesting/linear-solver.ts';

const PIECES = 200;
const LENGTHS = 12;
const ORDERS = 20;

/** Longest search for one order [s]. */
const SECONDS = 10;

/** Near enough: so much over the bound [percent]. */
const NEAR = 1;

/** Numbers from 0 to 1 that are the same every time (a linear congruential generator, constants from memory). */
function numbers(seed: number): () => number {
  let state = seed;
  return () => (state = (state * 1_664_525 + 1_013_904_223) % 2 ** 32) / 2 ** 32;
}

/** So many pieces of so many lengths, from some bars. */
function order(seed: number, bars: CuttingTask['bars'], shortest: number, longest: number): CuttingTask {
  const next = numbers(seed * 7919);
  const pieces = Array.from({ length: LENGTHS }, () => ({
    length: 100 * shortest + Math.floor(next() * 100 * (longest - shortest)),
    count: 1,
  }));
  for (let more = LENGTHS; more < PIECES; more += 1) {
    const piece = pieces[Math.floor(next() * LENGTHS)];
    if (piece !== undefined) piece.count += 1;
  }
  return { pieces, bars, kerf: 200, endTrim: 1000 };
}

const bought = [{ length: 600_000, count: null, cost: 9000 }];
const twoLengths = [...bought, { length: 400_000, count: null, cost: 6300 }];

/** Bars of two lengths, and thirty remnants of any length. */
function withRemnants(seed: number): CuttingTask['bars'] {
  const next = numbers(seed * 104_729);
  const remnants = Array.from({ length: 30 }, () => ({
    length: 30_000 + Math.floor(next() * 250_000),
    count: 1,
    cost: 0,
  }));
  return [...twoLengths, ...remnants];
}

const overBound = ({ cost, costBound }: CutBars): number =>
  cost === costBound ? 0 : costBound === 0 ? Infinity : (100 * (cost - costBound)) / costBound;

/** How long bars for 200 pieces of 12 lengths take to a proof, or to within 1 % of what none can come below. */
export async function nestingBench(): Promise<void> {
  const started = performance.now();
  const solver = await startLinearSolver();
  console.log(`linear solver started in ${(performance.now() - started).toFixed(0)} ms`);
  const kinds: readonly [name: string, bars: (seed: number) => CuttingTask['bars'], from: number, to: number][] = [
    ['bars of one length', () => bought, 300, 2700],
    ['bars of two lengths', () => twoLengths, 300, 2700],
    ['two lengths and 30 remnants', withRemnants, 300, 2700],
    ['the same, tiny pieces', withRemnants, 40, 300],
  ];
  for (const [name, barsOf, shortest, longest] of kinds) {
    const near: number[] = [];
    const gaps: number[] = [];
    let proven = 0;
    for (let seed = 1; seed <= ORDERS; seed += 1) {
      const begun = performance.now();
      let reached: number | null = null;
      const found = cutBars(order(seed, barsOf(seed), shortest, longest), {
        solver,
        secondsLeft: () => (reached === null ? SECONDS : 2) - (performance.now() - begun) / 1000,
        report: (best) => {
          if (reached === null && overBound(best) <= NEAR) reached = performance.now() - begun;
        },
      });
      if (found === null) continue;
      near.push(overBound(found) <= NEAR ? (reached ?? performance.now() - begun) : Infinity);
      gaps.push(overBound(found));
      if (found.cost === found.costBound) proven += 1;
    }
    near.sort((a, b) => a - b);
    const at = (share: number): string => (near[Math.ceil(share * near.length) - 1] ?? Number.NaN).toFixed(0);
    console.log(
      `${name}: proven or within ${String(NEAR)} % after ${at(0.5)} ms, the slowest ${at(1)} ms (goal 2000); ` +
        `cost proven ${String(proven)} of ${String(ORDERS)}, worst gap ${Math.max(...gaps).toFixed(2)} %`,
    );
  }
}
