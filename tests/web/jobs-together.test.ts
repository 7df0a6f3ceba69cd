import { describe, expect, it } from 'vitest';
import { newJob } from '../../server/job/default-job.ts';
import type { Job } from '../../server/job/job.ts';
import type { SavedJob } from '../../server/job/saved-job.ts';
import type { LaidBar, StockLayout } from '../../server/job/stock.ts';
import type { Answer } from '../../web/api/client.ts';
import { areSameBars, isTakenIn } from '../../web/state/bars-of-jobs.ts';
import { jobsTogether, keepIn, markedAs, readToKeep, type JobsSource } from '../../web/state/jobs-together.ts';
import { layout as layoutOf } from '../db/made-up-takings.ts';
import { rackBar } from './made-up-stock.ts';

/** A bar by the jobs that its pieces are for. */
const bar = (times: number, ...jobs: string[]): LaidBar => {
  const { count: _count, currency: _currency, minorDigits: _digits, ...rest } = rackBar();
  return { ...rest, stock: 'a', times, pieces: jobs.map((job) => ({ name: 'hoop', length: 1500, job })) };
};
const jobOf = (title: string, layout: StockLayout | null): Job => {
  const job = newJob('hoop');
  return { ...job, title, stock: { ...job.stock, layout } };
};

/** Rail and Gate share a bar, Gate and Yard another; each has one of its own. */
const layouts = {
  rail: layoutOf(bar(2, '', ''), bar(1, '', 'Gate')),
  gate: layoutOf(bar(1, 'Rail', ''), bar(3, ''), bar(1, '', 'Yard (yard-123)')),
  yard: layoutOf(bar(1, 'Gate', ''), bar(1, '', '', '')),
};
const shop = (): Record<string, { job: Job; revision: number }> => ({
  'rail-1234567': { job: jobOf('Rail', layouts.rail), revision: 4 },
  'twin-1234567': { job: jobOf('Gate', layoutOf(bar(1, 'Rail', '', ''))), revision: 1 },
  'gate-1234567': { job: jobOf('Gate', layouts.gate), revision: 2 },
  'yard-1234567': { job: jobOf('Yard', layouts.yard), revision: 7 },
});

/** A server with some jobs; it says what it was asked. */
function sourceOf(jobs: ReturnType<typeof shop>) {
  const asked: string[] = [];
  const savedOf = (id: string): SavedJob => ({ id, savedAt: 'then', ...jobs[id]! });
  const source: JobsSource = {
    jobs: () => {
      asked.push('list');
      const listed = Object.entries(jobs).map(([id, { job }]) => ({ id, title: job.title }));
      return Promise.resolve({ kind: 'done', body: listed } as never);
    },
    open: (id) => {
      asked.push(`open ${id}`);
      return Promise.resolve({ kind: 'done', body: savedOf(id) });
    },
    save: (id, job, basedOn): Promise<Answer<SavedJob>> => {
      asked.push(`save ${id}`);
      const stands = jobs[id]!;
      if (stands.revision !== basedOn) return Promise.resolve({ kind: 'conflict', theirs: savedOf(id) });
      jobs[id] = { job, revision: basedOn + 1 };
      return Promise.resolve({ kind: 'done', body: savedOf(id) });
    },
  };
  return { source, asked };
}
const rail = { id: 'rail-1234567', title: 'Rail', layout: layouts.rail };

describe('the bars of jobs that are cut together', () => {
  it('are all there once, from whichever of the jobs they are asked for, with few requests', async () => {
    const { source, asked } = sourceOf(shop());
    const found = await jobsTogether(rail, source);
    if ('trouble' in found) throw new Error(found.trouble);
    const { whole, names, others } = found.together;
    expect(names).toEqual([
      { id: 'rail-1234567', name: 'Rail' },
      { id: 'gate-1234567', name: 'Gate' },
      { id: 'yard-1234567', name: 'Yard (yard-123)' },
    ]);
    expect(others.map(({ id }) => id)).toEqual(['gate-1234567', 'yard-1234567']);
    const yard = 'Yard (yard-123)';
    const all = [
      bar(2, 'Rail', 'Rail'),
      bar(1, 'Rail', 'Gate'),
      bar(3, 'Gate'),
      bar(1, 'Gate', yard),
      bar(1, yard, yard, yard),
    ];
    expect(areSameBars(whole.bars, all)).toBe(true);
    expect(asked).toEqual(['list', 'open twin-1234567', 'open gate-1234567', 'open yard-1234567']);
    const seen = await jobsTogether({ id: 'yard-1234567', title: 'Yard', layout: layouts.yard }, source);
    expect('together' in seen && areSameBars(seen.together.whole.bars, all)).toBe(true);
    const taking = { jobId: rail.id, together: names, layout: whole } as never;
    for (const [id, layout] of Object.entries(layouts)) expect(isTakenIn(taking, `${id}-1234567`, layout)).toBe(true);
    expect(isTakenIn(taking, 'gate-1234567', layouts.rail)).toBe(false);
  });

  it('cannot be had where one of the jobs keeps other bars by now', async () => {
    const jobs = shop();
    jobs['gate-1234567']!.job = jobOf('Gate', layoutOf(bar(2, 'Rail', '')));
    expect(await jobsTogether(rail, sourceOf(jobs).source)).toEqual({
      trouble: expect.stringContaining('Gate is cut from some of these bars') as string,
    });
  });
});

describe('bars that other jobs keep too', () => {
  const toKeep = [
    { id: 'gate-1234567', title: 'Gate', layout: layouts.gate },
    { id: 'yard-1234567', title: 'Yard', layout: layouts.yard },
  ];

  it('are saved on top of what was read; somebody else’s save is left as it is, and told', async () => {
    const jobs = shop();
    const { source } = sourceOf(jobs);
    const { saved, troubles } = await readToKeep(toKeep, source);
    expect(troubles).toEqual([]);
    const theirs = { job: jobOf('Gate', null), revision: 3 };
    jobs['gate-1234567'] = theirs;
    const said = await keepIn(saved, (job) => markedAs(job, 12), source);
    expect(said).toEqual(['Gate was saved by somebody else meanwhile. It was left as it is.']);
    expect(jobs['gate-1234567']).toBe(theirs);
    expect(jobs['yard-1234567']).toMatchObject({ revision: 8, job: { stock: { layout: { taken: 12 } } } });
  });

  it('do not take the place of bars that were taken', async () => {
    const jobs = shop();
    jobs['yard-1234567']!.job = jobOf('Yard', { ...layouts.yard, taken: 3 });
    const { saved, troubles } = await readToKeep(toKeep, sourceOf(jobs).source);
    expect(saved.map(({ id }) => id)).toEqual(['gate-1234567']);
    expect(troubles).toEqual(['Yard keeps bars that have been taken. Put them back first.']);
  });
});
