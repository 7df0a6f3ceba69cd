import type { Hole, Pipe, SweptNetwork } from './purge-swept-network.ts';

/** Argon in air at 20 °C [m²/s]. */
const DIFFUSIVITY = 1.89e-5;
/** TR-BDF2 (Bank and others 1985): γ = 2 − √2 makes both stages have one matrix; second order, and damps what is stiff. */
const GAMMA = 2 - Math.SQRT2;
const IMPLICIT = GAMMA / 2;
const NEW = 1 / (GAMMA * (2 - GAMMA));
const OLD = (1 - GAMMA) ** 2 / (GAMMA * (2 - GAMMA));
/** Cells of the longest pipe at most, and of any at least. */
const CELLS = { most: 160, least: 6 };

type Run = {
  readonly pipe: Pipe;
  /** Air left in each cell: now, and at the stage before. */
  now: Float64Array;
  before: Float64Array;
  readonly lower: Float64Array;
  readonly pivot: Float64Array;
  /** Share of a step over a cell's length [s/m]. */
  readonly share: number;
  readonly speed: number;
  readonly ahead: number;
  readonly back: number;
  /** What came in when the step began. */
  came: number;
};

/** Pipes in the order in which gas reaches them: each after all that lead to where it begins. */
function inOrder({ pipes, holes, feed }: SweptNetwork): (Pipe | Hole)[] {
  const done = new Set([feed]);
  const left = new Set<Pipe | Hole>([...pipes, ...holes]);
  const order: (Pipe | Hole)[] = [];
  while (left.size > 0) {
    const ready = [...left].filter(({ from }) => done.has(from) && ![...left].some(({ to }) => to === from));
    if (ready.length === 0) throw new Error('gas runs round in a circle, or from nowhere');
    for (const one of ready) {
      left.delete(one);
      order.push(one);
      if (![...left].some(({ to }) => to === one.to)) done.add(one.to);
    }
  }
  return order;
}

/** One pipe cut into cells, its matrix factored once; ends closed to what diffuses (Danckwerts). */
function runOf(
  pipe: Pipe,
  { bore, flow, step }: { bore: number; flow: number; step: number },
  cellLength: number,
): Run {
  const length = Math.abs(pipe.end - pipe.begin) / 1000;
  const count = Math.min(CELLS.most, Math.max(CELLS.least, Math.ceil(length / cellLength)));
  const radius = bore / 2000;
  const speed = (pipe.share * flow) / 60_000 / (Math.PI * radius ** 2);
  const dispersion = DIFFUSIVITY + (speed * radius) ** 2 / (48 * DIFFUSIVITY);
  const cell = length / count;
  const ahead = speed / 2 + dispersion / cell;
  const back = dispersion / cell - speed / 2;
  const share = (IMPLICIT * step) / cell;
  const lower = new Float64Array(count);
  const pivot = new Float64Array(count);
  for (let index = 0; index < count; index += 1) {
    const out = (index === count - 1 ? speed : ahead) + (index === 0 ? 0 : back);
    if (index > 0) lower[index] = (-share * ahead) / pivot[index - 1]!;
    pivot[index] = 1 + share * out + (index === 0 ? 0 : lower[index]! * share * back);
  }
  const full = () => new Float64Array(count).fill(1);
  return { pipe, now: full(), before: full(), lower, pivot, share, speed, ahead, back, came: 0 };
}

/** Solves (1 − θ Δt A) cells = right-hand side, in place. */
function solve({ lower, pivot, share, back }: Run, cells: Float64Array): void {
  const last = cells.length - 1;
  for (let index = 1; index <= last; index += 1) cells[index]! -= lower[index]! * cells[index - 1]!;
  for (let index = last; index >= 0; index -= 1) {
    const after = index === last ? 0 : share * back * cells[index + 1]!;
    cells[index] = (cells[index]! + after) / pivot[index]!;
  }
}

/** First stage of TR-BDF2, by the trapezium over γ of the step: what is left in each cell then. */
function trapezium(run: Run, incoming: number): void {
  const { now, before, share, speed, ahead, back } = run;
  const last = now.length - 1;
  before.set(now);
  for (let index = 0; index <= last; index += 1) {
    const into = index === 0 ? speed * (run.came + incoming) : ahead * before[index - 1]!;
    const from = index === last ? 0 : back * before[index + 1]!;
    const out = (index === last ? speed : ahead) + (index === 0 ? 0 : back);
    now[index] = before[index]! + share * (into + from - out * before[index]!);
  }
  solve(run, now);
}

/** Second stage, by backward differences over the whole step: what oscillates is gone after it. */
function backward(run: Run, incoming: number): void {
  const { now, before, share, speed } = run;
  for (let index = 0; index < now.length; index += 1) now[index] = NEW * now[index]! - OLD * before[index]!;
  now[0]! += share * speed * incoming;
  run.came = incoming;
  solve(run, now);
}

/**
 * Seconds until the air left is no more than a share anywhere in the pipes of a network: what comes in at a place where
 * streams meet mixes there, and goes on in every pipe that begins there. Undefined where it takes longer than `most`.
 */
export function secondsToClear(
  network: SweptNetwork,
  {
    bore,
    flow,
    left,
    most,
  }: { readonly bore: number; readonly flow: number; readonly left: number; readonly most: number },
): number | undefined {
  const area = (Math.PI * bore ** 2) / 4;
  const residence = (pipe: Pipe) => (Math.abs(pipe.end - pipe.begin) * area * 60) / 1e6 / (pipe.share * flow);
  const longest = Math.max(...network.pipes.map((pipe) => Math.abs(pipe.end - pipe.begin)));
  const step = Math.max(Math.max(...network.pipes.map(residence)) / CELLS.most, most / 20_000);
  const order = inOrder(network);
  const runs = order.map((link) =>
    link.member !== undefined ? runOf(link, { bore, flow, step }, longest / 1000 / CELLS.most) : link,
  );
  for (let time = step; time <= most; time += step) {
    passOn(runs, trapezium);
    passOn(runs, backward);
    const worst = Math.max(...runs.map((run) => ('pipe' in run ? Math.max(...run.now) : 0)));
    if (worst <= left) return time;
  }
  return undefined;
}

/** One stage of every pipe in turn; streams that meet mix. */
function passOn(runs: readonly (Run | Hole)[], stage: (run: Run, incoming: number) => void): void {
  const arriving = new Map<string, { air: number; share: number }>();
  for (const run of runs) {
    const link = 'pipe' in run ? run.pipe : run;
    const met = arriving.get(link.from);
    const incoming = met === undefined ? 0 : met.air / met.share;
    if ('pipe' in run) stage(run, incoming);
    const out = 'pipe' in run ? run.now[run.now.length - 1]! : incoming;
    const onward = arriving.get(link.to) ?? { air: 0, share: 0 };
    arriving.set(link.to, { air: onward.air + link.share * out, share: onward.share + link.share });
  }
}
