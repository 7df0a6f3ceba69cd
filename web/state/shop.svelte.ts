import { getContext, setContext } from 'svelte';
import { words } from '../../server/language/words.ts';
import type { Kept, KeptDocuments, KeptKind } from '../../server/job/kept.ts';
import { api, type Answer, type Shop } from '../api/client.ts';

/** What the shop needs from outside, so that it can be tried without a browser. */
export type ShopSource = Pick<typeof api, 'shop' | 'keep' | 'saveKept' | 'removeKept' | 'restoreKept'>;

const byName = new Intl.Collator(undefined, { numeric: true, sensitivity: 'base' });

/** Everything of one kind that the shop keeps, and what was just done to it. */
export class KeptList<Kind extends KeptKind> {
  kept: readonly Kept<Kind>[] = $state.raw([]);
  /** Why the last thing asked of the shop was not done; empty where it was. */
  trouble = $state('');
  /** What was just deleted, so that it can come back. */
  deleted: Kept<Kind> | null = $state.raw(null);
  /** What somebody else saved while this page was being worked on. Nothing has been overwritten. */
  theirs: Kept<Kind> | null = $state.raw(null);
  readonly kind: Kind;
  readonly #source: ShopSource;

  constructor(kind: Kind, source: ShopSource) {
    this.kind = kind;
    this.#source = source;
  }

  /** Takes over the list as the shop has it now. */
  show(kept: readonly Kept<Kind>[]): void {
    this.kept = [...kept].sort((one, other) => byName.compare(one.document.name, other.document.name));
  }

  /** Keeps a new thing; true where the shop has it. */
  async keep(document: KeptDocuments[Kind]): Promise<boolean> {
    return this.#take(await this.#source.keep(this.kind, document));
  }

  /** Saves over what the page knows of; where somebody else saved meanwhile, theirs is held instead. */
  async save({ id, revision }: Kept<Kind>, document: KeptDocuments[Kind]): Promise<boolean> {
    return this.#take(await this.#source.saveKept(this.kind, id, document, revision));
  }

  async remove(kept: Kept<Kind>): Promise<void> {
    this.#begin();
    const answer = await this.#source.removeKept(this.kind, kept.id);
    if (answer.kind === 'done') {
      this.show(this.kept.filter(({ id }) => id !== kept.id));
      this.deleted = kept;
    } else this.#fail(answer);
  }

  async restore(): Promise<void> {
    const { deleted } = this;
    if (deleted !== null && !this.#take(await this.#source.restoreKept(this.kind, deleted.id))) this.deleted = deleted;
  }

  /** Ends a conflict with what stands in the shop; the page goes on from there. */
  acceptTheirs(): void {
    this.theirs = null;
  }

  #begin(): void {
    this.trouble = '';
    this.deleted = null;
    this.theirs = null;
  }

  #take(answer: Answer<Kept<Kind>, Kept<Kind>>): boolean {
    this.#begin();
    if (answer.kind === 'done' || answer.kind === 'conflict') {
      const stands = answer.kind === 'done' ? answer.body : answer.theirs;
      this.show([...this.kept.filter(({ id }) => id !== stands.id), stands]);
    }
    if (answer.kind === 'conflict') this.theirs = answer.theirs;
    else if (answer.kind !== 'done') this.#fail(answer);
    return answer.kind === 'done';
  }

  #fail(answer: Answer<unknown, unknown>): void {
    if (answer.kind === 'unreachable') this.trouble = words('shop.failed', { reason: answer.reason });
    else if (answer.kind === 'refused') this.trouble = answer.reason;
  }
}

/** The shop's machines, sizes, grades, weld settings and lists of rates. */
export class ShopKeeper {
  readonly machines: KeptList<'machine'>;
  readonly sizes: KeptList<'size'>;
  readonly grades: KeptList<'grade'>;
  readonly settings: KeptList<'settings'>;
  readonly rates: KeptList<'rates'>;
  trouble = $state('');
  readonly #source: ShopSource;

  constructor(source: ShopSource = api) {
    this.#source = source;
    this.machines = new KeptList('machine', source);
    this.sizes = new KeptList('size', source);
    this.grades = new KeptList('grade', source);
    this.settings = new KeptList('settings', source);
    this.rates = new KeptList('rates', source);
  }

  /** Reads the lists anew: when the page opens, and when somebody comes back to it. */
  async load(): Promise<void> {
    const answer: Answer<Shop> = await this.#source.shop();
    this.trouble = answer.kind === 'unreachable' ? words('shop.failed', { reason: answer.reason }) : '';
    if (answer.kind !== 'done') return;
    this.machines.show(answer.body.machines);
    this.sizes.show(answer.body.sizes);
    this.grades.show(answer.body.grades);
    this.settings.show(answer.body.settings);
    this.rates.show(answer.body.rates);
  }
}

const KEY = Symbol('shop');

export const provideShop = (shop: ShopKeeper): ShopKeeper => setContext(KEY, shop);
export const useShop = (): ShopKeeper => getContext<ShopKeeper>(KEY);
