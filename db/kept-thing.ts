import type { Selectable } from 'kysely';
import { JOB_VERSION } from '../server/job/job.ts';
import { KEPT_NAMES, parseKept, type Kept, type KeptDocuments, type KeptKind } from '../server/job/kept.ts';
import { searchText } from './stored-job.ts';
import type { KeptTable } from './tables/tables.ts';

/** A name as it is compared: letters in lower case, without spaces round it. */
export const nameKey = (name: string): string => searchText(name).trim();

/** A stored thing; one that was written by an older version is upgraded on the way out. */
export function keptThing<Kind extends KeptKind>(kind: Kind, row: Selectable<KeptTable>): Kept<Kind> {
  const parsed = parseKept(kind, JSON.parse(row.document), row.version);
  if (!parsed.ok) {
    const [problem] = parsed.problems;
    throw new Error(`The kept ${KEPT_NAMES[kind]} ${row.id} cannot be read: ${problem?.message ?? ''}`);
  }
  return { id: row.id, revision: row.revision, savedAt: row.saved_at, document: parsed.document };
}

/** The columns of a kept thing that follow from its document; one that does not fit its kind is a fault. */
export function keptColumns<Kind extends KeptKind>(kind: Kind, document: KeptDocuments[Kind]) {
  const parsed = parseKept(kind, document);
  if (!parsed.ok) throw new Error(`This ${KEPT_NAMES[kind]} cannot be kept: ${parsed.problems[0]?.message ?? ''}`);
  const { name } = parsed.document;
  return { kind, name, name_key: nameKey(name), version: JOB_VERSION, document: JSON.stringify(parsed.document) };
}
