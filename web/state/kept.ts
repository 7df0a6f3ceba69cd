import type { Job } from '../../server/job/job.ts';
import type { Tube } from '../../server/job/tube.ts';
import type { Kept, KeptDocuments, KeptKind, KeptSize } from '../../server/job/kept.ts';
import { differences } from './pointer.ts';
import { withChoice } from './typed-text.ts';

/** A name as the shop compares it: letters in lower case, without spaces round it. */
export const nameKey = (name: string): string => name.normalize('NFKC').toLowerCase().trim();

/** What the shop keeps under a name; null where it keeps nothing. */
export const keptByName = <Kind extends KeptKind>(kept: readonly Kept<Kind>[], name: string): Kept<Kind> | null =>
  kept.find(({ document }) => nameKey(document.name) === nameKey(name)) ?? null;

export const sizeOf = ({ outsideDiameter, wall, tolerance }: Tube, name: string): KeptSize => ({
  name,
  outsideDiameter,
  wall,
  tolerance,
});

/** The shop's own size that a tube is of: the one with its tolerance, else one of its diameter and wall. */
export function keptSizeOf(kept: readonly Kept<'size'>[], tube: Tube): Kept<'size'> | null {
  const same = kept.filter(
    ({ document }) => document.outsideDiameter === tube.outsideDiameter && document.wall === tube.wall,
  );
  return same.find(({ document }) => differences(document.tolerance, tube.tolerance).length === 0) ?? same[0] ?? null;
}

/** Where a field of what is kept stands in the job. */
const PLACES: { readonly [Kind in KeptKind]: (pointer: string, document: KeptDocuments[Kind]) => string } = {
  machine: (pointer) => `/machine${pointer}`,
  size: (pointer) => `/tube${pointer}`,
  grade: (pointer) => `/tube/grade${pointer}`,
  settings: (pointer, { form }) =>
    pointer === '/form' || pointer.startsWith('/settings')
      ? `/welding/${form}${pointer.replace(/^\/(form|settings)/, '')}`
      : `/tube${pointer}`,
  rates: (pointer) => `/rates${pointer}`,
};

/** Its name finds it again, and which die is set up is for each job to say. */
const NOT_COMPARED: readonly string[] = ['/name', '/die'];

/** Fields of the job, by pointer, in which a document differs from what the shop keeps. */
export const differingFields = <Kind extends KeptKind>(
  kind: Kind,
  kept: KeptDocuments[Kind],
  document: KeptDocuments[Kind],
): string[] =>
  differences(kept, document)
    .filter((pointer) => !NOT_COMPARED.includes(pointer))
    .map((pointer) => PLACES[kind](pointer, document));

/** The job with a size of tube in it; its tolerance too, where the size says one. */
export function withSize(
  job: Job,
  size: Pick<Tube, 'outsideDiameter' | 'wall'> & { tolerance: Tube['tolerance'] | null },
): Job {
  const sized = withChoice(withChoice(job, '/tube/outsideDiameter', size.outsideDiameter), '/tube/wall', size.wall);
  return size.tolerance === null ? sized : withChoice(sized, '/tube/tolerance', size.tolerance);
}
