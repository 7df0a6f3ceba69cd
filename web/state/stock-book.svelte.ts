import type { StockLayout } from '../../server/job/stock.ts';
import type { ListedTaking, Taking } from '../../server/job/stock-row.ts';
import { api, type BarsToTake } from '../api/client.ts';
import { isTakenIn } from './bars-of-jobs.ts';
import { differences } from './pointer.ts';
import { whyNot } from './stock-list.svelte.ts';
import { isTakenFor, layoutFrom } from './stock-taken.ts';

/** What the book needs from outside, so that it can be tried without a browser. */
export type BookSource = Pick<typeof api, 'takings' | 'taking' | 'take' | 'putBack'> & {
  readonly newKey: () => string;
};

const SOURCE: BookSource = {
  ...api,
  // randomUUID is there on secure pages only, and a workshop's server has no certificate
  newKey: () =>
    Array.from(crypto.getRandomValues(new Uint8Array(16)), (byte) => byte.toString(16).padStart(2, '0')).join(''),
};

/** The book of what was taken from the stock, latest first. */
export class StockBook {
  /** null: not read yet. */
  takings: readonly ListedTaking[] | null = $state.raw(null);
  /** Those that were read with what is cut from each bar. */
  #read: readonly Taking[] = $state.raw([]);
  trouble = $state('');
  busy = $state(false);
  /** The request that was not answered: sent again with the same key it takes nothing twice. */
  #unanswered: BarsToTake | null = null;
  readonly #source: BookSource;

  constructor(source: BookSource = SOURCE) {
    this.#source = source;
  }

  async load(): Promise<void> {
    const answer = await this.#source.takings();
    if (answer.kind === 'done') this.takings = answer.body;
    else this.#fail(answer);
  }

  /** Takes the bars of a layout; null where that was not done. */
  async take(bars: Omit<BarsToTake, 'key'>): Promise<Taking | null> {
    if (this.busy) return null;
    const again = this.#unanswered;
    const isSame = again !== null && differences({ ...again, key: '' }, { ...bars, key: '' }).length === 0;
    const request = isSame ? again : { ...bars, key: this.#source.newKey() };
    this.#begin();
    const answer = await this.#source.take(request);
    this.busy = false;
    this.#unanswered = answer.kind === 'unreachable' ? request : null;
    if (answer.kind !== 'done') {
      this.#fail(answer);
      return null;
    }
    const { body } = answer;
    this.#read = [body, ...this.#read];
    this.takings = [body, ...(this.takings ?? []).filter(({ number }) => number !== body.number)];
    return body;
  }

  /** Puts everything of a taking back; true where that was done. */
  async putBack(number: number): Promise<boolean> {
    if (this.busy) return false;
    this.#begin();
    const answer = await this.#source.putBack(number);
    this.busy = false;
    if (answer.kind === 'done') await this.load();
    else this.#fail(answer);
    return answer.kind === 'done';
  }

  /** Reads what stands in the book for a job with all of its bars, so that its own can be told from others. */
  async readOf(jobId: string): Promise<void> {
    for (const one of this.standingFor(jobId)) {
      if (this.#read.some(({ number }) => number === one.number)) continue;
      const answer = await this.#source.taking(one.number);
      if (answer.kind === 'done') this.#read = [...this.#read, answer.body];
      else this.#fail(answer);
    }
  }

  /** The page of the book on which a layout of a job was taken and not put back; null where none is. */
  takenAs(jobId: string, layout: StockLayout): Taking | null {
    const stands = (number: number): boolean =>
      (this.takings ?? []).some((one) => one.number === number && one.undoneAt === null);
    return this.#read.find((one) => stands(one.number) && isTakenIn(one, jobId, layout)) ?? null;
  }

  /** What was taken for a job and not put back, latest first. */
  standingFor(jobId: string): readonly ListedTaking[] {
    return (this.takings ?? []).filter((one) => one.undoneAt === null && isTakenFor(one, jobId));
  }

  /** The bars of a taking as a job keeps them; null until they have been read. */
  layoutOf(number: number, jobId: string): StockLayout | null {
    const taking = this.#read.find((one) => one.number === number);
    return taking === undefined ? null : layoutFrom(taking, jobId);
  }

  #begin(): void {
    this.trouble = '';
    this.busy = true;
  }

  #fail(answer: Parameters<typeof whyNot>[0]): void {
    this.trouble = whyNot(answer);
  }
}
