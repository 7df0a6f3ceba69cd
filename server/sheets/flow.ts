import { moved, type Item } from './ink.ts';
import type { Draft } from './page.ts';
import { contentOf, type Paper, type Turn } from './paper.ts';
import type { Table } from './table.ts';
import { stacked, type Block } from './text-block.ts';

/** Fills pages from the top; a block that does not fit begins the next page. */
export class Flow {
  private readonly paper: Paper;
  private readonly turn: Turn;
  private readonly pages: { scale: string; items: Item[] }[] = [];
  private used = 0;

  constructor(paper: Paper, turn: Turn) {
    this.paper = paper;
    this.turn = turn;
    this.newPage();
  }

  /** Width that a block may fill [mm]. */
  get width(): number {
    return contentOf(this.paper, this.turn).width;
  }

  /** Height that is left on this page [mm]. */
  get left(): number {
    return contentOf(this.paper, this.turn).height - this.used;
  }

  newPage(): void {
    this.pages.push({ scale: '', items: [] });
    this.used = 0;
  }

  /** Says the scale of what is drawn on this page. */
  sayScale(scale: string): void {
    const page = this.pages.at(-1);
    if (page === undefined || page.scale.split(', ').includes(scale)) return;
    page.scale = page.scale === '' ? scale : `${page.scale}, ${scale}`;
  }

  /** Where the next block's top left corner will be if it fits. */
  add(block: Block): void {
    if (this.used > 0 && block.height > this.left) this.newPage();
    const { left, top } = contentOf(this.paper, this.turn);
    const page = this.pages.at(-1);
    page?.items.push(...block.items.map((item) => moved(item, [left, top + this.used])));
    this.used += block.height;
  }

  /** Rows under their head, which is said again on each page; `before` stays with the first row. */
  addTable(table: Table, before: readonly Block[] = []): void {
    let head: Block = stacked([...before, table.head]);
    for (const row of table.rows) {
      if (head.height === 0 && row.height > this.left) {
        this.newPage();
        head = table.head;
      }
      this.add(head.height === 0 ? row : stacked([head, row]));
      head = { height: 0, items: [] };
    }
    if (table.rows.length === 0) this.add(head);
  }

  drafts(): Draft[] {
    return this.pages
      .filter((page) => page.items.length > 0)
      .map(({ scale, items }) => ({ turn: this.turn, scale, items }));
  }
}
