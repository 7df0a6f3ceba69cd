import { nameKey } from '../../db/kept-thing.ts';
import { KEPT_NAMES, parseKept, type KeptDocuments, type KeptKind } from '../job/kept.ts';
import { RequestError } from './request-error.ts';

/** What the shop is to keep, out of a request: upgraded, held against its schema, and with a name. */
export function readKept<Kind extends KeptKind>(
  kind: Kind,
  input: unknown,
  version: number | undefined,
): KeptDocuments[Kind] {
  const parsed = parseKept(kind, input, version);
  if (!parsed.ok) {
    const { problems } = parsed;
    const count = problems.length === 1 ? 'one value' : `${String(problems.length)} values`;
    const message = `This ${KEPT_NAMES[kind]} has ${count} that cannot be taken. ${problems[0]?.message ?? ''}`;
    throw new RequestError(422, 'kept-not-valid', message, { problems });
  }
  if (nameKey(parsed.document.name) === '')
    throw new RequestError(422, 'name-missing', `A ${KEPT_NAMES[kind]} is kept by its name. Give it one.`);
  return parsed.document;
}
