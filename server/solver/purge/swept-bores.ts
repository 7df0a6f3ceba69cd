type Edge = { readonly a: number; readonly b: number };

/**
 * Which edges lie on some way from one node to another that passes no node twice: those in one block (2-connected part)
 * with an edge that joins the two, by Tarjan's depth-first search. Gas can flow through these; the others are dead ends.
 */
export function onSomeWay(nodes: number, edges: readonly Edge[], from: number, to: number): boolean[] {
  const all: readonly Edge[] = [...edges, { a: from, b: to }];
  const joining = edges.length;
  const incident = Array.from({ length: nodes }, (): number[] => []);
  for (const [index, { a, b }] of all.entries()) {
    if (a === b) continue;
    incident[a]?.push(index);
    incident[b]?.push(index);
  }
  const order = new Array<number>(nodes).fill(0);
  const stack: number[] = [];
  const swept = edges.map(() => false);
  let count = 0;
  /** The lowest order that can be reached from a node and what hangs on it, without the edge that led there. */
  const visit = (node: number, by: number): number => {
    count += 1;
    order[node] = count;
    let low = count;
    for (const index of incident[node] ?? []) {
      if (index === by) continue;
      const edge = all[index];
      if (edge === undefined) continue;
      const other = edge.a === node ? edge.b : edge.a;
      const seen = order[other] ?? 0;
      if (seen > 0) {
        if (seen < (order[node] ?? 0)) stack.push(index);
        low = Math.min(low, seen);
        continue;
      }
      const bottom = stack.length;
      stack.push(index);
      const reached = visit(other, index);
      low = Math.min(low, reached);
      if (reached < (order[node] ?? 0)) continue;
      const block = stack.splice(bottom);
      if (block.includes(joining)) for (const one of block) if (one !== joining) swept[one] = true;
    }
    return low;
  };
  if (from !== to) visit(from, -1);
  return swept;
}
