import type { WayKey } from '../../plan/correction.ts';
import type { QuoteOption } from '../../plan/quote.ts';

/** Splices are one sort, however their joints were chosen. */
const SORTS: readonly (readonly WayKey[])[] = [
  ['rebend'],
  ['splice-fewest', 'splice-fairest', 'splice-closest', 'splice-own'],
  ['splice-rebend'],
  ['new-frame'],
];

type PricedScope = Pick<QuoteOption, 'scope' | 'total' | 'open'>;

/**
 * Which options the customer is offered: those that the job names, where they are possible; without any the one that is
 * shown and the cheapest of each other sort, those with fewer lines open first, as what is open is not in their price. A
 * frame that is left as it is, is offered only where it is shown or named.
 */
export function offeredScopes(
  options: readonly PricedScope[],
  { shown, named }: { readonly shown: 'frame' | WayKey; readonly named: readonly WayKey[] },
): ReadonlySet<'frame' | WayKey> {
  const scopes = options.map(({ scope }) => scope);
  const chosen = scopes.filter((scope) => scope !== 'frame' && named.includes(scope));
  if (chosen.length > 0) return new Set(chosen);
  const others = SORTS.filter((sort) => shown === 'frame' || !sort.includes(shown)).flatMap((sort) => {
    const [cheapest] = options
      .filter(({ scope }) => scope !== 'frame' && sort.includes(scope))
      .toSorted((one, other) => one.open.length - other.open.length || one.total - other.total);
    return cheapest === undefined ? [] : [cheapest.scope];
  });
  return new Set([shown, ...others]);
}
