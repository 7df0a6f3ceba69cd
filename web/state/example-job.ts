import type { Job } from '../../server/job/job.ts';
import { words } from '../../server/language/words.ts';
import { api } from '../api/client.ts';

type Example = { readonly ok: true; readonly job: Job } | { readonly ok: false; readonly reason: string };

/** The job that a new one takes its settings from: the made-up example, else the last one saved. */
export async function exampleJob(): Promise<Example> {
  const list = await api.jobs('');
  if (list.kind !== 'done') return { ok: false, reason: list.kind === 'conflict' ? '' : list.reason };
  const found = list.body.find(({ invented }) => invented) ?? list.body[0];
  if (found === undefined) return { ok: false, reason: words('start.noExample') };
  const stored = await api.open(found.id);
  if (stored.kind === 'done') return { ok: true, job: stored.body.job };
  return { ok: false, reason: stored.kind === 'conflict' ? '' : stored.reason };
}
