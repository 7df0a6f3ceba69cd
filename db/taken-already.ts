import type { LaidBar } from '../server/job/stock.ts';
import type { Taking } from '../server/job/stock-row.ts';
import type { Database } from './database.ts';
import { taking } from './stored-stock.ts';

type Bars = Pick<Taking, 'jobId' | 'together' | 'layout'>;

/** What the pieces of a job are called in a layout; undefined: nothing of it is cut there. */
function nameIn({ jobId, together }: Bars, id: string): string | undefined {
  if (together.length === 0) return jobId === id ? '' : undefined;
  return together.find((one) => one.id === id)?.name;
}

const jobsOf = ({ jobId, together }: Bars): string[] =>
  together.length > 0 ? together.map(({ id }) => id) : jobId === null ? [] : [jobId];

/** The bars that a job has pieces on, as it sees them, each kind with how often it is cut. */
function barsOf({ layout }: Bars, name: string): Map<string, number> {
  const counts = new Map<string, number>();
  for (const bar of layout.bars) {
    if (!bar.pieces.some(({ job }) => job === name)) continue;
    const key = keyOf(bar, name);
    counts.set(key, (counts.get(key) ?? 0) + bar.times);
  }
  return counts;
}

/** Its name and price may have been typed anew since; what is cut from which row may not. */
const keyOf = ({ stock, outsideDiameter, wall, grade, length, heat, pieces }: LaidBar, own: string): string =>
  JSON.stringify([
    [stock, outsideDiameter, wall, grade, length, heat],
    pieces.map((piece) => [piece.name, piece.length, piece.job === own ? '' : piece.job]),
  ]);

const isSame = (one: Map<string, number>, other: Map<string, number>): boolean =>
  one.size > 0 && one.size === other.size && [...one].every(([key, count]) => other.get(key) === count);

/** The taking that stands of the same bars for the same job, whoever asked for it; undefined: there is none. */
export async function takenAlready(within: Database, asked: Bars): Promise<Taking | undefined> {
  const ids = jobsOf(asked);
  if (ids.length === 0) return undefined;
  const rows = await within
    .selectFrom('takings')
    .selectAll()
    .where('undone_at', 'is', null)
    .where((one) => one.or([one('job_id', 'in', ids), one('together', '<>', '[]')]))
    .orderBy('number', 'desc')
    .execute();
  return rows.map(taking).find((stands) =>
    ids.some((id) => {
      const [own, theirs] = [nameIn(asked, id), nameIn(stands, id)];
      return own !== undefined && theirs !== undefined && isSame(barsOf(asked, own), barsOf(stands, theirs));
    }),
  );
}
