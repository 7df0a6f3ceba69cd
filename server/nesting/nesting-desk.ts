import { performance } from 'node:perf_hooks';
import type { CutBars } from './cut-bars.ts';
import type { Nesting, NestingResult } from './nesting.ts';
import { startNesting, type Ended } from './nesting-process.ts';
import type { NestingNews, NestingTask } from './nesting-task.ts';

/**
 * How many searches may wait behind the one that runs, how many are remembered, and how long after they have ended [ms].
 * Our own choice.
 */
const LIMITS = { waiting: 3, kept: 20, time: 10 * 60_000 } as const;

/** What is sought, and how it is told. */
export type NestingOrder = {
  readonly task: NestingTask;
  readonly pieces: number;
  /** All sizes together, of answers that each size has one of. */
  readonly sum: (found: readonly CutBars[]) => NonNullable<Nesting['best']>;
  readonly result: (found: readonly CutBars[]) => NestingResult;
  /** In words, why there is no answer: the size that has too few bars, or more of them than a layout holds. */
  readonly trouble: (found: readonly (CutBars | null)[]) => string;
};

type Search = {
  readonly id: string;
  readonly order: NestingOrder;
  readonly found: (CutBars | null)[];
  state: Nesting['state'];
  trouble: string;
  /** Made once, when the search has come to its end. */
  result: NestingResult | null;
  endedAt: number;
  stop: () => void;
};

/** A place in the line, kept while what is to be sought is made ready. */
export type DeskPlace = {
  readonly start: (id: string, order: NestingOrder) => Nesting;
  /** Gives the place up; one that was started keeps it. */
  readonly leave: () => void;
};

/** Searches for bars, one at a time; they are remembered for a while and never stored. */
export type NestingDesk = {
  /** A place for one more search; null where too many wait already. */
  readonly place: () => DeskPlace | null;
  readonly look: (id: string) => Nesting | null;
  /** Ends a search and keeps the best so far; one that has ended stays as it is. False where there is no such search. */
  readonly cancel: (id: string) => boolean;
  /** For the end of the server. */
  readonly stop: () => void;
};

const BROKEN = 'The search for bars has broken off. Start it again.';

/**
 * The one place where searches for bars are started, looked at and ended. A search begins as soon as the one before it has
 * come to its end; its result is made then, once.
 *
 * @param now a clock that only goes on [ms]
 */
export function nestingDesk(now: () => number = () => performance.now()): NestingDesk {
  const searches = new Map<string, Search>();
  /** Places that are kept and not started yet. */
  let kept = 0;
  const inState = (...states: readonly Nesting['state'][]): Search[] =>
    [...searches.values()].filter(({ state }) => states.includes(state));

  const close = (search: Search, state: Nesting['state'], trouble = ''): void => {
    search.stop();
    const { order } = search;
    const answers = state === 'failed' ? null : answersOf(search);
    const result = answers === null || order.trouble(answers) !== '' ? null : order.result(answers);
    Object.assign(search, { state, trouble, result, endedAt: now(), stop: () => undefined });
  };
  const settle = (...closed: Parameters<typeof close>): void => {
    close(...closed);
    runNext();
  };

  const ended = (search: Search, how: Ended): void => {
    const answers = answersOf(search);
    if (answers === null) return settle(search, 'failed', how === 'done' ? search.order.trouble(search.found) : BROKEN);
    const trouble = search.order.trouble(answers);
    if (trouble !== '') return settle(search, 'failed', trouble);
    settle(search, how === 'broken' ? 'failed' : 'done', how === 'broken' ? BROKEN : '');
  };

  const runNext = (): void => {
    const [next] = inState('waiting');
    if (next === undefined || inState('running').length > 0) return;
    next.state = 'running';
    next.stop = startNesting(next.order.task, {
      tell: (news: NestingNews) => {
        if (news.kind === 'best') next.found[news.size] = news.best;
      },
      ended: (how) => ended(next, how),
    });
  };

  const forget = (): void => {
    const over = inState('done', 'cancelled', 'failed').sort((a, b) => b.endedAt - a.endedAt);
    over.forEach(({ id, endedAt }, index) => {
      if (index >= LIMITS.kept || now() - endedAt > LIMITS.time) searches.delete(id);
    });
  };

  return {
    place() {
      forget();
      if (inState('waiting', 'running').length + kept > LIMITS.waiting) return null;
      kept += 1;
      let isKept = true;
      const leave = (): void => {
        if (isKept) kept -= 1;
        isKept = false;
      };
      return {
        leave,
        start(id, order) {
          leave();
          const found = order.task.sizes.map(() => null);
          const stop = (): void => undefined;
          const search: Search = { id, order, found, state: 'waiting', trouble: '', result: null, endedAt: 0, stop };
          searches.set(id, search);
          runNext();
          return told(search);
        },
      };
    },
    look(id) {
      forget();
      const search = searches.get(id);
      return search === undefined ? null : told(search);
    },
    cancel(id) {
      const search = searches.get(id);
      if (search === undefined) return false;
      if (['waiting', 'running'].includes(search.state)) settle(search, 'cancelled');
      return true;
    },
    stop() {
      for (const search of inState('waiting', 'running')) close(search, 'cancelled');
    },
  };
}

/** An answer for every size; null while one has none. */
function answersOf({ found }: Search): CutBars[] | null {
  const answers = found.filter((best) => best !== null);
  return answers.length === found.length ? answers : null;
}

function told(search: Search): Nesting {
  const { id, order, state, result, trouble } = search;
  const answers = answersOf(search);
  const best = answers === null ? null : order.sum(answers);
  return { id, state, pieces: order.pieces, best, result, trouble };
}
