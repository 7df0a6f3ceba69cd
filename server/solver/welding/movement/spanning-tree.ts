import type { TubeGraph } from './tube-graph.ts';

/** How a vertex is reached: over a stretch from its parent, along the stretch (1) or against it (−1). */
export type Branch = {
  readonly vertex: number;
  readonly parent: number;
  readonly stretch: number;
  readonly sign: 1 | -1;
};

/** A closed loop of tube: its stretches, with the way that it goes through each. */
export type Loop = readonly { readonly stretch: number; readonly sign: 1 | -1 }[];

export type SpanningTree = {
  /** Parents come before their children. */
  readonly branches: readonly Branch[];
  readonly loops: readonly Loop[];
  /** Which connected part of the frame a vertex belongs to. */
  readonly bodyOf: readonly number[];
};

/** A tree over the graph, breadth first; every stretch that is left over closes one loop. */
export function spanningTree({ stretches, vertices }: TubeGraph): SpanningTree {
  const reaching = Array.from({ length: vertices }, (): { stretch: number; other: number; sign: 1 | -1 }[] => []);
  for (const [stretch, { start, finish }] of stretches.entries()) {
    reaching[start]?.push({ stretch, other: finish, sign: 1 });
    reaching[finish]?.push({ stretch, other: start, sign: -1 });
  }
  const bodyOf = new Array<number>(vertices).fill(-1);
  const above = new Array<Branch | undefined>(vertices).fill(undefined);
  const branches: Branch[] = [];
  const inTree = new Set<number>();
  let bodies = 0;
  for (let root = 0; root < vertices; root += 1) {
    if (bodyOf[root] !== -1) continue;
    bodyOf[root] = bodies;
    const queue = [root];
    for (let parent = queue.shift(); parent !== undefined; parent = queue.shift()) {
      for (const { stretch, other, sign } of reaching[parent] ?? []) {
        if (bodyOf[other] !== -1) continue;
        bodyOf[other] = bodies;
        const branch = { vertex: other, parent, stretch, sign };
        branches.push(branch);
        above[other] = branch;
        inTree.add(stretch);
        queue.push(other);
      }
    }
    bodies += 1;
  }
  const pathFrom = (vertex: number): Branch[] => {
    const path: Branch[] = [];
    for (let branch = above[vertex]; branch !== undefined; branch = above[branch.parent]) path.push(branch);
    return path;
  };
  const loops = stretches.flatMap(({ start, finish }, stretch): Loop[] => {
    if (inTree.has(stretch)) return [];
    // along the stretch from its start to its finish, then through the tree back to its start
    const [up, down] = [pathFrom(finish), pathFrom(start)];
    while (up.length > 0 && up.at(-1) === down.at(-1)) {
      up.pop();
      down.pop();
    }
    const back = up.map((branch) => ({
      stretch: branch.stretch,
      sign: branch.sign === 1 ? (-1 as const) : (1 as const),
    }));
    return [[{ stretch, sign: 1 }, ...back, ...down.map((branch) => ({ stretch: branch.stretch, sign: branch.sign }))]];
  });
  return { branches, loops, bodyOf };
}
