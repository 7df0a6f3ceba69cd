import type { Reading } from '../../server/job/came-back.ts';
import type { Job } from '../../server/job/job.ts';
import type { TubePlace } from '../../server/job/tube-place.ts';
import { words } from '../../server/language/words.ts';
import { MOST_READINGS } from './limits.ts';
import { withPasted, type Column, type Table } from './paste.ts';
import { pasteProblemWords } from './paste-words.ts';
import { cellsOf } from './pasted-cells.ts';
import { withValue } from './pointer.ts';
import { READINGS, readingsOf } from './readings.ts';
import { rowsAt } from './rows.ts';
import { samePlace } from './tube-places.ts';

/** What came of pasting points, in words. */
export type PastedPoints =
  { readonly ok: true; readonly job: Job; readonly said: string } | { readonly ok: false; readonly said: string };

const AXES = ['x', 'y', 'z'] as const;
const COLUMNS: readonly Column[] = AXES.map((name) => ({ name, form: { kind: 'length', mayBeEmpty: false } }));

/** What parts three words of a line where nothing else does: spaces alone, as a measuring arm or a person writes them. */
function withTabs(text: string): string {
  const lines = text.split(/\r\n?|\n/).map((line) => line.trim());
  const filled = lines.filter((line) => line !== '');
  const isSpaced = !/[\t;]/.test(text) && filled.every((line) => line.split(/,?\s+/).length === AXES.length);
  return isSpaced ? lines.map((line) => line.replace(/,?\s+/g, '\t')).join('\n') : text;
}

/** The job without its readings, so that pasted lines can be read into a table of their own. */
function withoutReadings(job: Job): Job {
  const asTyped = Object.fromEntries(Object.entries(job.asTyped).filter(([key]) => !key.startsWith(`${READINGS}/`)));
  return { ...withValue(job, READINGS, []), asTyped };
}

/**
 * The job with points put onto places in order. A place that has a point already gets the new one; nothing is put
 * anywhere where a line cannot be read or there are more points than places.
 */
export function pastePoints(job: Job, text: string, places: readonly TubePlace[]): PastedPoints {
  const table: Table = { pointer: READINGS, columns: COLUMNS, least: 1, most: MOST_READINGS, blank: {} };
  const pasted = withPasted(withoutReadings(job), cellsOf(withTabs(text)), table, 'whole');
  if (!pasted.ok) return { ok: false, said: pasteProblemWords(pasted.problem, READINGS) };
  if (pasted.count > places.length)
    return { ok: false, said: words('points.tooMany', { count: pasted.count, most: places.length }) };

  const readings: Reading[] = [...readingsOf(job)];
  const texts = new Map(Object.entries(job.asTyped));
  for (const [row, point] of (rowsAt(pasted.job, READINGS) as readonly Record<'x' | 'y' | 'z', number>[]).entries()) {
    const at = places[row];
    if (at === undefined) continue;
    const stands = readings.findIndex((one) => one.reading === 'point' && samePlace(one.at, at));
    const index = stands < 0 ? readings.length : stands;
    const old = readings[index];
    readings[index] = { reading: 'point', at, x: point.x, y: point.y, z: point.z, accuracy: old?.accuracy ?? null };
    for (const axis of AXES) {
      const typed = pasted.job.asTyped[`${READINGS}/${String(row)}/${axis}`];
      if (typed === undefined) texts.delete(`${READINGS}/${String(index)}/${axis}`);
      else texts.set(`${READINGS}/${String(index)}/${axis}`, typed);
    }
  }
  if (readings.length > MOST_READINGS) return { ok: false, said: words('cameBack.full', { most: MOST_READINGS }) };
  return {
    ok: true,
    job: { ...withValue(job, READINGS, readings), asTyped: Object.fromEntries(texts) },
    said: words('points.done', { count: pasted.count }),
  };
}
