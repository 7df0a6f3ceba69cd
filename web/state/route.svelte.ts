/** Where the person is: a job, the list of jobs, the stock of the shop, or nowhere yet. Kept in the address, so that it can be sent on. */
export type Place = { readonly kind: 'job'; readonly id: string } | { readonly kind: 'jobs' | 'stock' | 'first' };

export function placeOf(hash: string): Place {
  const [, kind, id] = hash.split('/');
  if (kind === 'jobs' || kind === 'stock') return { kind };
  return kind === 'job' && id !== undefined && id !== '' ? { kind, id: decodeURIComponent(id) } : { kind: 'first' };
}

export function addressOf(place: Place): string {
  if (place.kind === 'job') return `#/job/${encodeURIComponent(place.id)}`;
  return place.kind === 'first' ? '#/' : `#/${place.kind}`;
}

/** Follows the address bar. */
export class Route {
  place: Place = $state.raw({ kind: 'first' });

  constructor() {
    this.place = placeOf(location.hash);
    addEventListener('hashchange', () => {
      this.place = placeOf(location.hash);
      // another place begins at its top
      scrollTo(0, 0);
    });
  }

  go(place: Place): void {
    location.hash = addressOf(place);
  }

  /** Goes there without leaving a step behind: the way back does not end up here again. */
  replace(place: Place): void {
    location.replace(addressOf(place));
  }
}
