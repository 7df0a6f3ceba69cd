/**
 * Something that gas passes between two nodes: Δp = linear q + square q |q| from node `a` to node `b`, with flows in
 * L/min and pressures in Pa. Neither is negative, and not both are 0.
 */
export type Resistance = { readonly a: number; readonly b: number; readonly linear: number; readonly square: number };

/** One turn of gas round a loop: resistances by index, each with the way that it is gone through, 1 or −1. */
type Loop = { readonly edges: number[]; readonly ways: number[] };

/** Newton's steps are done when none is more than this share of the flow; they close in with the square of what is left. */
const SETTLED = 1e-12;
/** A pure q² loop without a flow halves at each step: enough for all digits. */
const MOST_STEPS = 100;
/** A step is never made shorter than this. */
const LEAST_SHARE = 1e-9;
/** A step is too long where the content rises at its end by more than this share of how it fell at its beginning. */
const MOST_RISE = 0.9;
/** What is left of a loop's own slope when the others are taken off is rounding below this share of it. */
const ROUNDING = 1e-15;

/**
 * Steady flow [L/min] through each resistance, positive from a to b. What comes in at one node goes out at another, and
 * pressures add up to nothing round every loop. The unknowns are the turns of gas round the loops of a spanning tree, so
 * that every node balances by itself; with Δp growing with q they are the least of a convex sum (its content, Birkhoff &
 * Diaz 1956, from memory) and damped Newton steps find it. Parts that lead nowhere have exactly no flow.
 */
export function networkFlow(
  nodes: number,
  resistances: readonly Resistance[],
  run: { readonly from: number; readonly to: number; readonly flow: number },
): number[] {
  const tree = spanningTree(nodes, resistances, run.from);
  const flows = resistances.map(() => 0);
  const through: Loop = { edges: [], ways: [] };
  if (run.from === run.to || !walk(tree, run.from, run.to, through)) return flows;
  turn(flows, through, run.flow);
  const loops = resistances.flatMap(({ a, b }, index): Loop[] => {
    if (tree.used.has(index) || a === b || (tree.depth[a] ?? -1) < 0) return [];
    const loop: Loop = { edges: [index], ways: [1] };
    walk(tree, b, a, loop);
    return [loop];
  });
  if (loops.length > 0) settle(flows, resistances, loops, run.flow);
  return flows;
}

type Tree = {
  readonly used: ReadonlySet<number>;
  /** By node: the resistance towards the root, the node there, and how far the root is; −1 where it is not reached. */
  readonly up: readonly number[];
  readonly parent: readonly number[];
  readonly depth: readonly number[];
  readonly resistances: readonly Resistance[];
};

/** A tree of shortest ways from a root, breadth first, so that loops are short. */
function spanningTree(nodes: number, resistances: readonly Resistance[], root: number): Tree {
  const incident = Array.from({ length: nodes }, (): number[] => []);
  for (const [index, { a, b }] of resistances.entries()) {
    incident[a]?.push(index);
    incident[b]?.push(index);
  }
  const used = new Set<number>();
  const up = new Array<number>(nodes).fill(-1);
  const parent = new Array<number>(nodes).fill(-1);
  const depth = new Array<number>(nodes).fill(-1);
  depth[root] = 0;
  const queue = [root];
  for (const node of queue) {
    for (const index of incident[node] ?? []) {
      const edge = resistances[index];
      if (edge === undefined) continue;
      const other = edge.a === node ? edge.b : edge.a;
      if ((depth[other] ?? 0) >= 0) continue;
      depth[other] = (depth[node] ?? 0) + 1;
      up[other] = index;
      parent[other] = node;
      used.add(index);
      queue.push(other);
    }
  }
  return { used, up, parent, depth, resistances };
}

/** Goes from one node to another along the tree and adds the way to a loop; false where they are not connected. */
function walk({ up, parent, depth, resistances }: Tree, from: number, to: number, loop: Loop): boolean {
  if ((depth[from] ?? -1) < 0 || (depth[to] ?? -1) < 0) return false;
  const climb = (node: number, way: 1 | -1): number => {
    const index = up[node] ?? -1;
    loop.edges.push(index);
    loop.ways.push(resistances[index]?.a === node ? way : -way);
    return parent[node] ?? -1;
  };
  let [low, high] = [from, to];
  while (low !== high && low >= 0 && high >= 0) {
    if ((depth[low] ?? 0) >= (depth[high] ?? 0)) low = climb(low, 1);
    else high = climb(high, -1);
  }
  return true;
}

function turn(flows: number[], { edges, ways }: Loop, by: number): void {
  for (const [at, edge] of edges.entries()) flows[edge] = (flows[edge] ?? 0) + (ways[at] ?? 0) * by;
}

/** Pressure that a loop lacks [Pa]: the sum of Δp round it. */
function lacking({ edges, ways }: Loop, flows: readonly number[], resistances: readonly Resistance[]): number {
  let sum = 0;
  for (const [at, edge] of edges.entries()) {
    const { linear, square } = resistances[edge] ?? { linear: 0, square: 0 };
    const flow = flows[edge] ?? 0;
    sum += (ways[at] ?? 0) * flow * (linear + square * Math.abs(flow));
  }
  return sum;
}

/** Turns gas round the loops until pressures add up to nothing round each. */
function settle(flows: number[], resistances: readonly Resistance[], loops: readonly Loop[], scale: number): void {
  const count = loops.length;
  const sharing = resistances.map((): { loop: number; way: number }[] => []);
  for (const [loop, { edges, ways }] of loops.entries())
    for (const [at, edge] of edges.entries()) sharing[edge]?.push({ loop, way: ways[at] ?? 0 });
  for (let step = 0; step < MOST_STEPS; step += 1) {
    const before = loops.map((loop) => lacking(loop, flows, resistances));
    const slopes = new Float64Array(count * count);
    for (const [edge, passing] of sharing.entries()) {
      const { linear, square } = resistances[edge] ?? { linear: 0, square: 0 };
      const slope = linear + 2 * square * Math.abs(flows[edge] ?? 0);
      for (const one of passing)
        for (const other of passing) {
          const at = one.loop * count + other.loop;
          slopes[at] = (slopes[at] ?? 0) + one.way * other.way * slope;
        }
    }
    const turns = solved(slopes, before);
    const downhill = turns.reduce((sum, by, loop) => sum + by * (before[loop] ?? 0), 0);
    const go = (share: number): void => {
      for (const [index, loop] of loops.entries()) turn(flows, loop, share * (turns[index] ?? 0));
    };
    go(1);
    // the content falls along the step; beyond its least it would rise again
    for (let share = 0.5; share > LEAST_SHARE; share /= 2) {
      const rise = loops.reduce((sum, loop, index) => sum + (turns[index] ?? 0) * lacking(loop, flows, resistances), 0);
      if (rise <= MOST_RISE * Math.abs(downhill)) break;
      go(-share);
    }
    if (turns.every((by) => Math.abs(by) <= SETTLED * scale)) break;
  }
}

/**
 * The turns that take away what is lacking to first order: −slopes⁻¹ lacking, by Cholesky. A loop that nothing resists
 * any more is left as it is.
 */
function solved(slopes: Float64Array, lacking: readonly number[]): number[] {
  const count = lacking.length;
  const at = (row: number, column: number): number => slopes[row * count + column] ?? 0;
  const turns = lacking.map((one) => -one);
  for (let row = 0; row < count; row += 1) {
    const whole = at(row, row);
    let pivot = whole;
    for (let column = 0; column < row; column += 1) {
      let sum = at(row, column);
      for (let k = 0; k < column; k += 1) sum -= at(row, k) * at(column, k);
      const share = at(column, column) > 0 ? sum / at(column, column) : 0;
      slopes[row * count + column] = share;
      pivot -= share * share;
      turns[row] = (turns[row] ?? 0) - share * (turns[column] ?? 0);
    }
    const root = pivot > ROUNDING * whole ? Math.sqrt(pivot) : 0;
    slopes[row * count + row] = root;
    turns[row] = root > 0 ? (turns[row] ?? 0) / root : 0;
  }
  for (let row = count - 1; row >= 0; row -= 1) {
    let sum = turns[row] ?? 0;
    for (let below = row + 1; below < count; below += 1) sum -= at(below, row) * (turns[below] ?? 0);
    turns[row] = at(row, row) > 0 ? sum / at(row, row) : 0;
  }
  return turns;
}
