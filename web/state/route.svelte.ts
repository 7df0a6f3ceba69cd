/** Where the person is: a job, the list of jobs, or nowhere yet. Kept in the address, so that it can be sent on. */
export type Place =
  { readonly kind: 'job'; readonly id: string } | { readonly kind: 'jobs' } | { readonly kind: 'first' };

export function placeOf(hash: string): Place {
  const [, kind, id] = hash.split('/');
  if (kind === 'jobs') return { kind };
  return kind === 'job' && id !== undefined && id !== '' ? { kind, id: decodeURIComponent(id) } : { kind: 'first' };
}

export const addressOf = (place: Place): string =>
  place.kind === 'job' ? `#/job/${encodeURIComponent(place.id)}` : place.kind === 'jobs' ? '#/jobs' : '#/';

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
