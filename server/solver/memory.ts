import type { BentFrame } from './bent-frame.ts';
import type { PlannedSite } from './site/plan-site.ts';

/** Gives what was made for a key, or makes it. What it gives is never changed by anybody. */
type Recall<Thing> = (key: string, make: () => Thing) => Thing;

/** Results of earlier plans that a caller lets the next one use again: the same inputs give the same results. */
export type Memory = { readonly bentFrame: Recall<BentFrame>; readonly site: Recall<PlannedSite> };

/** Remembers nothing: every plan is made from the start. */
export const NO_MEMORY: Memory = { bentFrame: (_key, make) => make(), site: (_key, make) => make() };

/** Remembers the last few of each. */
export const lastFew = (most: number): Memory => ({ bentFrame: recallLast(most), site: recallLast(most) });

function recallLast<Thing>(most: number): Recall<Thing> {
  const kept = new Map<string, { readonly thing: Thing }>();
  return (key, make) => {
    const found = kept.get(key) ?? { thing: make() };
    // what was asked for last stands last, so that the first is the one to forget
    kept.delete(key);
    kept.set(key, found);
    const [oldest] = kept.keys();
    if (kept.size > most && oldest !== undefined) kept.delete(oldest);
    return found.thing;
  };
}
