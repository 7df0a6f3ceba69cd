/** A heap: things by a number, the one with the lowest number taken first. */
export class Lowest<Thing> {
  readonly #items: { readonly low: number; readonly thing: Thing }[] = [];

  add(low: number, thing: Thing): void {
    const items = this.#items;
    const item = { low, thing };
    let index = items.length;
    items.push(item);
    while (index > 0) {
      const above = (index - 1) >> 1;
      const parent = items[above];
      if (parent === undefined || parent.low <= low) break;
      items[index] = parent;
      index = above;
    }
    items[index] = item;
  }

  take(): { readonly low: number; readonly thing: Thing } | undefined {
    const items = this.#items;
    const [first] = items;
    const last = items.pop();
    if (last === undefined || items.length === 0) return first;
    let index = 0;
    for (;;) {
      const [left, right] = [items[2 * index + 1], items[2 * index + 2]];
      if (left === undefined) break;
      const isRight = right !== undefined && right.low < left.low;
      const child = isRight ? right : left;
      if (child.low >= last.low) break;
      items[index] = child;
      index = 2 * index + (isRight ? 2 : 1);
    }
    items[index] = last;
    return first;
  }
}
