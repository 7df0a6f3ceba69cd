import { HEIGHTS, moved, type Item } from './ink.ts';
import type { Draft } from './page.ts';
import { contentOf, type Paper, type Turn } from './paper.ts';
import type { Table } from './table.ts';
import { paragraph, stacked, type Block } from './text-block.ts';

/** Fills pages from the top; a block that does not fit begins the next page, under a head that says so where there is one. */
export class Flow {
  private readonly paper: Paper;
  private readonly turn: Turn;
  private readonly pages: { scales: Set<string>; items: Item[]; about: string }[] = [];
  private used = 0;
  private about = '';
  private continued = '';
  private kept: Block | null = null;

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

  /** A block that may stand anywhere: at the foot of the next page that is left with room for it, or where it is asked for. */
  keep(block: Block): void {
    this.kept = block;
  }

  /** Puts the block that was kept, if it has found no place yet. */
  addKept(): void {
    const { kept } = this;
    this.kept = null;
    if (kept !== null) this.add(kept);
  }

  private newPage(): void {
    const { kept } = this;
    if (kept !== null && this.used > 0 && kept.height <= this.left) {
      this.kept = null;
      this.put(kept);
    }
    this.pages.push({ scales: new Set(), items: [], about: this.about });
    this.used = 0;
  }

  /**
   * Begins a page, unless this one is empty; it and those after it say in the title block what they are about. Pages
   * that what follows runs over to have `continued` for their head.
   */
  begin(about: string, continued = ''): void {
    this.about = about;
    this.continued = continued;
    const page = this.pages.at(-1);
    if (page === undefined || this.used > 0) this.newPage();
    else page.about = about;
  }

  /** Goes on on a new page, under the head of pages that are run over to. */
  runOver(): void {
    this.newPage();
    if (this.continued !== '') this.put(paragraph(this.continued, this.width, { height: HEIGHTS.head, weight: 600 }));
  }

  /** Puts a block under the last one, or on a new page where it does not fit. */
  add(block: Block): void {
    if (this.used > 0 && block.height > this.left) this.runOver();
    this.put(block);
  }

  private put(block: Block): void {
    const { left, top } = contentOf(this.paper, this.turn);
    const page = this.pages.at(-1);
    page?.items.push(...block.items.map((item) => moved(item, [left, top + this.used])));
    for (const scale of block.scales ?? []) page?.scales.add(scale);
    this.used += block.height;
  }

  /** Blocks that belong together: on one page where they fill less than half of it. */
  addTogether(blocks: readonly Block[]): void {
    const whole = stacked(blocks);
    if (whole.height <= this.half) this.add(whole);
    else for (const block of blocks) this.add(block);
  }

  private get half(): number {
    return contentOf(this.paper, this.turn).height / 2;
  }

  /**
   * Rows under their head, which is said again on each page; `before` stays with the first row. A table of less than
   * half a page is not parted, unless it may be.
   */
  addTable(table: Table, before: readonly Block[] = [], part = false): void {
    let head: Block = stacked([...before, table.head]);
    const whole = head.height + table.rows.reduce((sum, row) => sum + row.height, 0);
    if (!part && whole > this.left && whole <= this.half) this.runOver();
    for (const row of table.rows) {
      if (head.height === 0 && row.height > this.left) {
        this.runOver();
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
      .map(({ scales, items, about }) => ({
        turn: this.turn,
        scale: [...scales].join(', '),
        items,
        ...(about === '' ? {} : { about }),
      }));
  }
}
