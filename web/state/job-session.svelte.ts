import { getContext, setContext, untrack } from 'svelte';
import { SvelteMap } from 'svelte/reactivity';
import type { Job } from '../../server/job/job.ts';
import type { Figure } from '../../server/plan/figure.ts';
import type { Finding } from '../../server/plan/finding.ts';
import type { JobProblem } from '../../server/job/problem.ts';
import type { SavedJob } from '../../server/job/saved-job.ts';
import { words } from '../../server/language/words.ts';
import { api, type Catalogue } from '../api/client.ts';
import { forgetDraft, keepDraft, readDraft } from './drafts.ts';
import { JobHistory } from './job-history.svelte.ts';
import { JobSaver } from './job-saver.svelte.ts';
import { PlanKeeper } from './plan-keeper.svelte.ts';
import { valueAt, withValue } from './pointer.ts';
import { ownOf, todayHere, withMarks, withMinorDigits } from './rates.ts';
import { fieldAndWhole, findingsByField } from './stages.ts';
import { readText, withChoice, withText, type FieldForm } from './typed-text.ts';

/** The same for every field that has none, so that nothing is painted anew there. */
const NONE: readonly Finding[] = [];

/** One open job: its history, its plan, its saving, and what the person is looking at. */
export class JobSession {
  readonly id: string;
  readonly history: JobHistory;
  readonly keeper: PlanKeeper;
  readonly saver: JobSaver;
  readonly catalogue: Catalogue;
  /** What the server could not take, by pointer: the text stays in its field, marked. */
  readonly refusals = new SvelteMap<string, string>();
  /** Fields that are on the page now, with how many times; findings of others are listed at their stage. */
  readonly shown = new SvelteMap<string, number>();
  /** The field that is being typed in; the same one is thick on the drawing. */
  focused = $state('');
  /** The number whose working stands open, with its name; null where none does. */
  opened: { readonly id: string; readonly name: string; readonly figure: Figure } | null = $state.raw(null);
  /** One sentence about what was just done; empty where there is nothing to say. */
  notice = $state('');
  readonly #findingsByField = $derived(findingsByField(this.findings));
  /** The last job that the server could plan: where a refused value goes back to. */
  #accepted: Job;

  constructor(stored: SavedJob, catalogue: Catalogue) {
    this.id = stored.id;
    this.catalogue = catalogue;
    this.#accepted = stored.job;
    this.history = new JobHistory(stored.job, () => {
      this.#afterChange();
    });
    this.keeper = new PlanKeeper({
      ask: api.plan,
      later: (work) => {
        queueMicrotask(work);
      },
      again: (work) => setTimeout(work, 5000),
      refused: (job, problems) => {
        this.#refuse(job, problems);
      },
      accepted: (job) => {
        this.#accepted = job;
      },
    });
    const left = readDraft(this.id);
    this.saver = new JobSaver(
      stored,
      {
        save: (job, basedOn) => api.save(this.id, job, basedOn),
        later: (work, milliseconds) => setTimeout(work, milliseconds),
        keepDraft: (draft) => {
          if (draft === null) forgetDraft(this.id);
          else keepDraft(this.id, draft);
        },
        now: () => this.history.job,
      },
      left,
    );
    this.keeper.request(stored.job);
    if (left !== null) this.history.change(left.job);
  }

  get job(): Job {
    return this.history.job;
  }

  #afterChange(): void {
    this.keeper.request(this.job);
    this.saver.changed();
  }

  #refuse(job: Job, problems: readonly JobProblem[]): void {
    let next = this.job;
    for (const { field, message } of problems) {
      this.refusals.set(field, message);
      const good = valueAt(this.#accepted, field);
      const unchanged = Object.is(valueAt(next, field), valueAt(job, field));
      if (good === undefined || !unchanged || Object.is(good, valueAt(next, field))) continue;
      // an example that nobody could replace is one again
      const own = ownOf(field);
      next = own === '' ? withValue(next, field, good) : withValue(next, own, valueAt(this.#accepted, own));
    }
    this.history.amend(next);
  }

  /** A text typed in a field; letters that follow each other are one step of undo. */
  type(pointer: string, text: string, form: FieldForm): void {
    this.refusals.delete(pointer);
    this.notice = '';
    const typed = withText(this.job, pointer, text, form);
    const isRead = readText(form, text, this.job).ok;
    this.history.change(isRead ? withMarks(this.job, typed, pointer, todayHere()) : typed, `type ${pointer}`);
  }

  /** A plain text (title, note) as it is typed. */
  write(pointer: string, text: string): void {
    this.refusals.delete(pointer);
    this.history.change(withValue(this.job, pointer, text), `type ${pointer}`);
  }

  /** A value that was chosen, or that a finding offers. */
  choose(pointer: string, value: unknown): void {
    for (const field of this.refusals.keys()) {
      if (field === pointer || field.startsWith(`${pointer}/`)) this.refusals.delete(field);
    }
    this.notice = '';
    this.history.change(this.#chosen(pointer, value));
  }

  /** With what follows from it; what already stood there was not chosen anew. */
  #chosen(pointer: string, value: unknown): Job {
    if (pointer === '/rates/minorDigits' && typeof value === 'number') return withMinorDigits(this.job, value);
    const next = withChoice(this.job, pointer, value);
    return Object.is(valueAt(this.job, pointer), value) ? next : withMarks(this.job, next, pointer, todayHere());
  }

  /** Any other change, one step of undo. */
  edit(change: (job: Job) => Job, notice = ''): void {
    this.notice = notice;
    this.history.change(change(this.job));
  }

  /** Ends a conflict of two saves; what was chosen is a step that can be undone. */
  settle(how: 'both' | 'mine' | 'theirs'): void {
    const next = this.saver.settle(how);
    this.notice = how === 'theirs' ? words('save.theirsTaken') : '';
    if (next === this.job) this.saver.changed();
    else this.history.change(next);
  }

  get findings(): readonly Finding[] {
    return this.keeper.plan?.findings ?? [];
  }

  /** Findings of a field, and of the whole that it stands for. */
  findingsAt(pointer: string): readonly Finding[] {
    const [own = NONE, whole = NONE] = fieldAndWhole(pointer).map((place) => this.#findingsByField.get(place) ?? NONE);
    return whole.length === 0 ? own : [...own, ...whole];
  }

  /** Says that fields are on the page; the answer says that they are gone. */
  show(fields: readonly string[]): () => void {
    const count = (field: string): number => untrack(() => this.shown.get(field)) ?? 0;
    for (const field of fields) this.shown.set(field, count(field) + 1);
    return () => {
      for (const field of fields) {
        if (count(field) > 1) this.shown.set(field, count(field) - 1);
        else this.shown.delete(field);
      }
    };
  }

  /** The person has left a field: the next letter is a new step of undo. */
  leave(pointer: string): void {
    this.history.pause();
    if (this.focused === pointer) this.focused = '';
  }

  #fieldOnPage(pointer: string): HTMLElement | undefined {
    return (
      [pointer, `${pointer}/value`, `${pointer}/shape`]
        .map((target) => document.querySelector<HTMLElement>(`[data-field="${CSS.escape(target)}"]`))
        .find((element) => element !== null) ?? undefined
    );
  }

  /** Shows a field beside the drawing while its size is typed on the drawing. */
  bringIntoSight(pointer: string): void {
    this.#fieldOnPage(pointer)?.scrollIntoView({ block: 'center', behavior: 'instant' });
  }

  /** Shows the block of a leg, a point or a thing; the keyboard stands at what opens its fields, and nothing is typed yet. */
  goToBlock(pointer: string): void {
    const name = this.#fieldOnPage(`${pointer}/name`);
    const [block, fold] = [name?.closest('li'), name?.closest('details')];
    for (let outer = block?.closest('details'); outer; outer = outer.parentElement?.closest('details'))
      outer.open = true;
    fold?.querySelector('summary')?.focus({ preventScroll: true });
    block?.scrollIntoView({ block: 'start', behavior: 'instant' });
  }

  /** Puts the caret into a field wherever it is on the page. */
  goTo(pointer: string): void {
    const field = this.#fieldOnPage(pointer);
    // a fold may stand within another
    for (let fold = field?.closest('details'); fold; fold = fold.parentElement?.closest('details')) fold.open = true;
    field?.focus();
    field?.scrollIntoView({ block: 'center', behavior: 'instant' });
  }
}

const KEY = Symbol('job session');

export const provideSession = (session: JobSession): JobSession => setContext(KEY, session);
export const useSession = (): JobSession => getContext<JobSession>(KEY);
