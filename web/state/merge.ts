import type { Job } from '../../server/job/job.ts';
import { differences, valueAt, withValue } from './pointer.ts';

/** Changed values by pointer, without the texts as typed, which follow them. */
export const changedFields = (base: Job, job: Job): string[] =>
  differences(base, job).filter((pointer) => !pointer.startsWith('/asTyped'));

const within = (pointer: string, other: string): boolean =>
  pointer === other || pointer.startsWith(`${other}/`) || other.startsWith(`${pointer}/`);

/**
 * Two people's changes in one job: theirs, with mine on top. Where both changed the same value, mine stands.
 * A change of mine whose place is gone on their side (they chose another shape) takes its whole branch with it.
 */
export function merged(base: Job, mine: Job, theirs: Job): Job {
  let result = theirs;
  for (const pointer of changedFields(base, mine)) {
    let place = pointer;
    const parent = (): string => place.slice(0, place.lastIndexOf('/'));
    while (parent() !== '' && !sameForm(valueAt(mine, parent()), valueAt(result, parent()))) place = parent();
    result = withValue(result, place, valueAt(mine, place));
  }
  return { ...result, asTyped: mergedTexts(base, mine, theirs) };
}

const sameForm = (one: unknown, other: unknown): boolean =>
  typeof one === 'object' &&
  typeof other === 'object' &&
  one !== null &&
  other !== null &&
  Array.isArray(one) === Array.isArray(other) &&
  Object.keys(one).sort().join() === Object.keys(other).sort().join();

/** Texts follow the value that was taken: mine under what I changed, theirs elsewhere. */
function mergedTexts(base: Job, mine: Job, theirs: Job): Job['asTyped'] {
  const changed = changedFields(base, mine);
  const isMine = (pointer: string): boolean =>
    base.asTyped[pointer] !== mine.asTyped[pointer] || changed.some((field) => within(pointer, field));
  const texts: Record<string, string> = {};
  for (const [pointer, text] of Object.entries(theirs.asTyped)) if (!isMine(pointer)) texts[pointer] = text;
  for (const [pointer, text] of Object.entries(mine.asTyped)) if (isMine(pointer)) texts[pointer] = text;
  return texts;
}
