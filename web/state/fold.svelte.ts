import { getContext, setContext } from 'svelte';

/** Whether a folded part of the page is open; what is folded away counts as not on the page. */
export class Fold {
  open = $state(false);
}

const KEY = Symbol('fold');

export const provideFold = (): Fold => setContext(KEY, new Fold());
export const enclosingFold = (): Fold | undefined => getContext<Fold | undefined>(KEY);
