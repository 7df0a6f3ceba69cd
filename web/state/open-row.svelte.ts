import { tick } from 'svelte';

/** The one row of a table whose actions stand open, and where the keyboard goes after one of them. */
export class OpenRow {
  /** Index of the row; −1 for none. */
  index = $state(-1);
  readonly #pointer: () => string;
  readonly #first: string;

  /**
   * @param pointer JSON pointer of the rows
   * @param first the field of a fresh row that is typed first
   */
  constructor(pointer: () => string, first: string) {
    this.#pointer = pointer;
    this.#first = first;
  }

  toggle(index: number): void {
    this.index = this.index === index ? -1 : index;
  }

  /** A row that was moved stays open under the same button; a fresh one is typed into; after one is gone comes the next. */
  async after(what: 'moved' | 'added' | 'removed', index: number): Promise<void> {
    const action = document.activeElement?.getAttribute('data-action') ?? '';
    this.index = what === 'moved' ? index : -1;
    await tick();
    const row = `${this.#pointer()}/${String(index)}`;
    if (what === 'added') this.#focus(`[data-field="${row}/${this.#first}"]`);
    else if (what === 'removed') this.#focus(`[data-row="${row}"]`);
    else this.#focus(`[data-actions="${row}"] [data-action="${action}"]:enabled`, `[data-row="${row}"]`);
  }

  #focus(...selectors: string[]): void {
    const found = selectors.map((one) => document.querySelector<HTMLElement>(one)).find((one) => one !== null);
    found?.focus();
  }
}
