/** Which things hang together, by number from 0 (disjoint sets with path halving; Tarjan 1975). */
export class DisjointSets {
  private readonly parents: number[];

  constructor(count = 0) {
    this.parents = Array.from({ length: count }, (_, index) => index);
  }

  get count(): number {
    return this.parents.length;
  }

  added(): number {
    this.parents.push(this.parents.length);
    return this.parents.length - 1;
  }

  /** One and the same number for all that hang together. */
  of(one: number): number {
    let at = one;
    for (let up = this.parents[at] ?? at; up !== at; up = this.parents[at] ?? at) {
      const above = this.parents[up] ?? up;
      this.parents[at] = above;
      at = above;
    }
    return at;
  }

  join(one: number, other: number): void {
    this.parents[this.of(one)] = this.of(other);
  }
}
