import { words } from '../../server/language/words.ts';
import type { JobSession } from './job-session.svelte.ts';
import type { PastePlace, Table } from './paste.ts';

/** Reads pasted text; the reader is fetched when it is first wanted, so that the page does not wait for it. */
const reader = () => import('./paste-text.ts');

/** What was pasted into one table: kept as text until it stands in the table or is thrown away. */
export class PasteBox {
  open = $state(false);
  text = $state('');
  /** Why nothing was pasted; empty where nothing is wrong. */
  trouble = $state('');
  /** What was pasted; empty where nothing was yet. */
  done = $state('');
  /** The text that was laid over a longer table, to be made the whole of it; empty where there is none. */
  laidOver = $state('');
  /** Row of the pasted text that is in the way, from 1; 0 for none. */
  badRow = $state(0);
  readonly #session: JobSession;
  readonly #table: () => Table;

  constructor(session: JobSession, table: () => Table) {
    this.#session = session;
    this.#table = table;
  }

  /** Pastes a text; where that cannot be, it stays in the box with what is wrong. */
  async take(text: string, place: PastePlace): Promise<boolean> {
    const read = await reader().catch(() => null);
    if (read === null) return this.#keep(text, words('paste.notRead'), 0);
    const table = this.#table();
    const pasted = read.pasteText(this.#session.job, text, table, place);
    if (!pasted.ok) return this.#keep(text, pasted.said, pasted.row);
    this.#session.edit(() => pasted.job, words('paste.done', { count: pasted.count }));
    this.clear();
    this.done = pasted.said;
    this.laidOver = pasted.left > 0 && pasted.count >= table.least ? text : '';
    return true;
  }

  #keep(text: string, trouble: string, badRow: number): false {
    this.clear();
    this.open = true;
    this.text = text;
    this.trouble = trouble;
    this.badRow = badRow;
    return false;
  }

  /** Nothing pasted, nothing kept. */
  clear(): void {
    this.open = false;
    this.text = '';
    this.trouble = '';
    this.done = '';
    this.laidOver = '';
    this.badRow = 0;
  }
}

/** Where a row of a text begins and ends, from 1, so that it can be marked; rows are lines. */
export function lineAt(text: string, row: number): { readonly start: number; readonly end: number } {
  const lines = text.split('\n');
  const start = lines.slice(0, row - 1).reduce((sum, line) => sum + line.length + 1, 0);
  return { start, end: start + (lines[row - 1]?.length ?? 0) };
}
