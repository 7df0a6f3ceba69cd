import type { StockBar } from '../../server/job/stock.ts';
import { words } from '../../server/language/words.ts';
import type { StockRow } from '../../server/job/stock-row.ts';
import { api, type Answer } from '../api/client.ts';
import { sortedStock } from './stock-sizes.ts';

/** What the list needs from outside, so that it can be tried without a browser. */
export type StockSource = Pick<typeof api, 'stock' | 'addBar' | 'saveBar' | 'removeBar' | 'restoreBar'>;

type Outcome = Answer<StockRow, StockRow>;

/** The bars and remnants of the shop, and what was just done to them. */
export class StockList {
  /** null: not read yet. */
  bars: readonly StockRow[] | null = $state.raw(null);
  /** Why the last thing asked of the list was not done; empty where it was. */
  trouble = $state('');
  /** What was just taken out, so that it can come back. */
  removed: StockRow | null = $state.raw(null);
  /** What somebody else saved of the row that was being changed. Nothing has been overwritten. */
  theirs: StockRow | null = $state.raw(null);
  readonly #source: StockSource;

  constructor(source: StockSource = api) {
    this.#source = source;
  }

  async load(): Promise<void> {
    const answer = await this.#source.stock();
    if (answer.kind === 'done') {
      this.bars = sortedStock(answer.body);
      this.trouble = '';
    } else this.trouble = whyNot(answer);
  }

  /** A fresh row; the answer says how it went, so that the fields can be marked. */
  async add(document: StockBar): Promise<Outcome> {
    return this.#taken(await this.#source.addBar(document));
  }

  /** Saves over what the page knows of; where somebody else saved meanwhile, theirs is held instead. */
  async save({ id, revision }: StockRow, document: StockBar): Promise<Outcome> {
    return this.#taken(await this.#source.saveBar(id, document, revision));
  }

  async remove(bar: StockRow): Promise<void> {
    this.#begin();
    const answer = await this.#source.removeBar(bar.id);
    if (answer.kind === 'done') {
      this.bars = (this.bars ?? []).filter(({ id }) => id !== bar.id);
      this.removed = bar;
    } else this.trouble = whyNot(answer);
  }

  async restore(): Promise<void> {
    const { removed } = this;
    if (removed === null) return;
    const answer = this.#taken(await this.#source.restoreBar(removed.id));
    if (answer.kind !== 'done') this.removed = removed;
  }

  #begin(): void {
    this.trouble = '';
    this.removed = null;
    this.theirs = null;
  }

  #taken(answer: Outcome): Outcome {
    this.#begin();
    if (answer.kind === 'done' || answer.kind === 'conflict') {
      const stands = answer.kind === 'done' ? answer.body : answer.theirs;
      this.bars = sortedStock([...(this.bars ?? []).filter(({ id }) => id !== stands.id), stands]);
    }
    if (answer.kind === 'conflict') this.theirs = answer.theirs;
    // what is wrong with a field stands at the field
    else if (answer.kind === 'unreachable' || (answer.kind === 'refused' && answer.problems.length === 0))
      this.trouble = whyNot(answer);
    return answer;
  }
}

/** Why something was not done, as a person reads it; empty where it was. */
export function whyNot(answer: Answer<unknown, unknown>): string {
  if (answer.kind === 'unreachable') return words('stock.noAnswer', { reason: answer.reason });
  return answer.kind === 'refused' ? answer.reason : '';
}
