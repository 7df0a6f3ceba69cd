import type { Nesting, NestingRequest } from '../../server/nesting/nesting.ts';
import { words } from '../../server/language/words.ts';
import { api } from '../api/client.ts';
import { whyNot } from './stock-list.svelte.ts';

/** What a run needs from outside, so that it can be tried without a browser. */
export type NestingSource = Pick<typeof api, 'nest' | 'nesting' | 'cancelNesting'> & {
  readonly wait: (milliseconds: number) => Promise<void>;
};

const SOURCE: NestingSource = { ...api, wait: (milliseconds) => new Promise((done) => setTimeout(done, milliseconds)) };

/** How often the server is asked how far it is, and how often in vain before that is told as lost [ms, times]; our own choice. */
const PAUSE = 350;
const PATIENCE = 20;

const isOver = ({ state }: Nesting): boolean => state !== 'waiting' && state !== 'running';

/** One search for bars: asked for, watched, ended or given up. */
export class NestingRun {
  /** How it stands now; null where none was asked for. */
  nesting: Nesting | null = $state.raw(null);
  /** What was asked, so that the answer can be told from another's. */
  asked: NestingRequest | null = $state.raw(null);
  /** Why there is no answer; empty where there is one, or where it is still looked for. */
  trouble = $state('');
  /** True between the touch and the first answer. */
  starting = $state(false);
  /** True while the server does not answer, and is asked again. */
  unheard = $state(false);
  #turn = 0;
  readonly #source: NestingSource;

  constructor(source: NestingSource = SOURCE) {
    this.#source = source;
  }

  get running(): boolean {
    return this.starting || (this.nesting !== null && !isOver(this.nesting));
  }

  async start(request: NestingRequest): Promise<void> {
    const turn = ++this.#turn;
    this.clear();
    this.starting = true;
    this.asked = request;
    const answer = await this.#source.nest(request);
    if (turn !== this.#turn) return;
    this.starting = false;
    if (answer.kind !== 'done') {
      this.trouble = whyNot(answer);
      return;
    }
    this.#show(answer.body);
    await this.#watch(turn, answer.body.id);
  }

  async #watch(turn: number, id: string): Promise<void> {
    let inVain = 0;
    while (turn === this.#turn && this.running) {
      await this.#source.wait(PAUSE);
      if (turn !== this.#turn) return;
      const answer = await this.#source.nesting(id);
      if (turn !== this.#turn) return;
      this.unheard = answer.kind === 'unreachable';
      inVain = this.unheard ? inVain + 1 : 0;
      if (answer.kind === 'done') this.#show(answer.body);
      else if (!this.unheard || inVain >= PATIENCE) {
        this.#lose(whyNot(answer));
        return;
      }
    }
  }

  #show(nesting: Nesting): void {
    this.nesting = nesting;
    if (nesting.state === 'failed') this.trouble = nesting.trouble;
  }

  #lose(reason: string): void {
    this.nesting = null;
    this.unheard = false;
    this.trouble = words('nesting.lost', { reason });
  }

  /** Ends the search; what it has found so far is shown. */
  async stop(): Promise<void> {
    const id = this.nesting?.id;
    const turn = ++this.#turn;
    this.starting = false;
    if (id === undefined) {
      this.clear();
      return;
    }
    await this.#source.cancelNesting(id);
    const answer = await this.#source.nesting(id);
    if (turn !== this.#turn) return;
    if (answer.kind === 'done' && answer.body.result !== null) this.#show(answer.body);
    else this.clear();
    // what nobody answers for is not left as if it were still looked for
    this.trouble = whyNot(answer);
  }

  /** Puts a result away. */
  clear(): void {
    this.nesting = null;
    this.asked = null;
    this.trouble = '';
    this.starting = false;
    this.unheard = false;
  }
}
