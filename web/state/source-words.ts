import type { Catalogue } from '../api/client.ts';

/** What a source key stands for, with the place in it; the key's own words where the catalogue has none. */
export function sourceWords({ sources }: Catalogue, key: string): string {
  const source = sources[key];
  if (source === undefined) return key.replaceAll('-', ' ');
  return source.place === '' ? source.title : `${source.title}, ${source.place}`;
}
