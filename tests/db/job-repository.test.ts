import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import SQLite from 'better-sqlite3';
import { sql } from 'kysely';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openDatabase, type Database } from '../../db/database.ts';
import { landingStage } from '../../db/demo/landing-stage.ts';
import { loadDemo } from '../../db/demo/load-demo.ts';
import { jobRepository, type JobRepository } from '../../db/job-repository.ts';
import { newJob } from '../../server/job/default-job.ts';

let folder: string;
let file: string;
let database: Database;
let jobs: JobRepository;

const at = (minute: number) => `2026-01-01T00:${String(minute).padStart(2, '0')}:00.000Z`;
const titled = (title: string, customer = '') => ({ ...newJob('hoop'), title, customer });

beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'hoopwright-db-'));
  file = join(folder, 'made', 'on the way', 'jobs.sqlite');
  database = await openDatabase(file);
  jobs = jobRepository(database);
});

afterEach(async () => {
  await database.destroy();
  rmSync(folder, { recursive: true, force: true });
});

describe('the database file', () => {
  it('keeps what was saved over closing and opening again', async () => {
    await jobs.create('a', titled('First'), at(1));
    await jobs.save('a', titled('Second'), 1, at(2));
    await database.destroy();
    database = await openDatabase(file);
    const again = jobRepository(database);
    expect(await again.list('')).toMatchObject([{ id: 'a', title: 'Second', revision: 2, savedAt: at(2) }]);
    expect((await again.revision('a', 1))?.job.title).toBe('First');
  });

  it('runs with a write-ahead log, full synchronisation and foreign keys', async () => {
    const raw = new SQLite(file, { readonly: true });
    expect(raw.pragma('journal_mode', { simple: true })).toBe('wal');
    raw.close();
    const orphan = { job_id: 'nobody', number: 1, saved_at: at(1), title: '', document: '{}' };
    await expect(database.insertInto('revisions').values(orphan).execute()).rejects.toThrow(/FOREIGN KEY/);
    const { rows } = await sql<{ synchronous: number }>`pragma synchronous`.execute(database);
    expect(rows).toEqual([{ synchronous: 2 }]); // 2 is FULL
  });

  it('says which file it could not open', async () => {
    const raw = new SQLite(join(folder, 'other.sqlite'));
    raw.exec('create table jobs (x)');
    raw.close();
    await expect(openDatabase(join(folder, 'other.sqlite'))).rejects.toThrow(/other\.sqlite could not be/);
  });
});

describe('saving', () => {
  it('numbers every save and keeps them all', async () => {
    await jobs.create('a', titled('One'), at(1));
    for (const number of [1, 2, 3]) await jobs.save('a', titled(`Save ${String(number)}`), number, at(number + 1));
    expect(await jobs.revisions('a')).toEqual([
      { revision: 4, savedAt: at(4), title: 'Save 3' },
      { revision: 3, savedAt: at(3), title: 'Save 2' },
      { revision: 2, savedAt: at(2), title: 'Save 1' },
      { revision: 1, savedAt: at(1), title: 'One' },
    ]);
  });

  it('a save based on an older revision writes nothing and gives both and what they began from', async () => {
    await jobs.create('a', titled('One'), at(1));
    await jobs.save('a', titled('Theirs'), 1, at(2));
    const outcome = await jobs.save('a', titled('Mine'), 1, at(3));
    expect(outcome).toMatchObject({
      kind: 'stale',
      theirs: { revision: 2, job: { title: 'Theirs' } },
      base: { revision: 1, job: { title: 'One' } },
    });
    expect(await jobs.revisions('a')).toHaveLength(2);
    expect(await jobs.save('a', titled('Mine'), 9, at(3))).toMatchObject({ kind: 'stale', base: null });
  });

  it('of two saves at once exactly one wins', async () => {
    await jobs.create('a', titled('One'), at(1));
    const outcomes = await Promise.all(['x', 'y', 'z'].map((title) => jobs.save('a', titled(title), 1, at(2))));
    expect(outcomes.map(({ kind }) => kind).sort()).toEqual(['saved', 'stale', 'stale']);
    expect(await jobs.revisions('a')).toHaveLength(2);
  });

  it('the same document sent again is the revision that it already is', async () => {
    await jobs.create('a', titled('One'), at(1));
    await jobs.save('a', titled('Two'), 1, at(2));
    expect(await jobs.save('a', titled('Two'), 1, at(3))).toMatchObject({ kind: 'saved', saved: { revision: 2 } });
    expect(await jobs.revisions('a')).toHaveLength(2);
  });

  it('knows jobs that never were', async () => {
    expect(await jobs.find('nobody')).toEqual({ kind: 'unknown' });
    expect(await jobs.save('nobody', titled('x'), 1, at(1))).toEqual({ kind: 'unknown' });
    expect(await jobs.remove('nobody', at(1))).toBe(false);
    expect(await jobs.restore('nobody')).toBeNull();
    expect(await jobs.revisions('nobody')).toBeNull();
    expect(await jobs.revision('nobody', 1)).toBeNull();
  });

  it('says which stored document cannot be read', async () => {
    await jobs.create('a', titled('One'), at(1));
    await database.updateTable('revisions').set({ document: '{}' }).execute();
    await expect(jobs.find('a')).rejects.toThrow(/Job a, revision 1 cannot be read/);
  });
});

describe('the list', () => {
  beforeEach(async () => {
    await jobs.create('a', titled('Boarding frame', 'Äußere Werft'), at(1));
    await jobs.create('b', { ...titled('Rail 100%'), note: 'for the quay' }, at(2));
    await jobs.create('c', { ...titled('Step'), drawingNumber: 'Q-7' }, at(3));
  });
  const found = async (search: string) => (await jobs.list(search)).map(({ id }) => id);

  it('has the last saved first', async () => {
    expect(await found('')).toEqual(['c', 'b', 'a']);
    await jobs.save('a', titled('Boarding frame'), 1, at(4));
    expect(await found('')).toEqual(['a', 'c', 'b']);
  });

  it.each([
    ['BOARDING', ['a']],
    ['äußere', ['a']],
    ['frame werft', ['a']],
    ['q-7', ['c']],
    ['quay', ['b']],
    ['%', ['b']],
    ['_', []],
    ["'; drop table jobs; --", []],
    ['nothing', []],
  ])('search for %j finds %j', async (search, ids) => {
    expect(await found(search)).toEqual(ids);
  });

  it('hides what was deleted until it is restored, with all its revisions', async () => {
    await jobs.save('b', titled('Rail two'), 1, at(5));
    expect(await jobs.remove('b', at(6))).toBe(true);
    expect(await jobs.remove('b', at(7))).toBe(true);
    expect(await found('')).toEqual(['c', 'a']);
    expect(await jobs.find('b')).toEqual({ kind: 'deleted' });
    expect(await jobs.save('b', titled('x'), 2, at(8))).toEqual({ kind: 'deleted' });
    expect(await jobs.restore('b')).toMatchObject({ revision: 2, job: { title: 'Rail two' } });
    expect(await found('')).toEqual(['b', 'c', 'a']);
    expect(await jobs.revisions('b')).toHaveLength(2);
  });
});

describe('times taken', () => {
  const entry = (minutes: number) => ({
    operation: 'weld' as const,
    date: '2026-11-26',
    count: 2,
    setUp: 5,
    minutes,
    planned: 30,
    process: 10,
  });
  const logged = (...minutes: number[]) => ({ ...titled('x'), log: minutes.map(entry) });

  it('are those of the latest saves, of jobs that stand in the list and are not made up', async () => {
    expect(await jobs.times()).toEqual([]);
    await jobs.create('b', logged(9), at(2));
    await jobs.create('a', logged(1, 2), at(1));
    await jobs.save('b', logged(3, 4), 1, at(3));
    await jobs.create('none', titled('nothing noted'), at(4));
    await jobs.create('made-up', { ...logged(5), invented: true }, at(5));
    await jobs.create('gone', logged(6), at(6));
    await jobs.remove('gone', at(7));
    expect(await jobs.times()).toEqual([1, 2, 3, 4].map(entry));
    await jobs.restore('gone');
    expect((await jobs.times()).at(-1)).toEqual(entry(6));
  });

  it('are none in a document from before they were noted', async () => {
    await jobs.create('a', logged(1), at(1));
    const { log: _log, ...older } = logged(1);
    await database
      .updateTable('revisions')
      .set({ document: JSON.stringify({ ...older, version: 5 }) })
      .execute();
    expect(await jobs.times()).toEqual([]);
  });
});

describe('the demo', () => {
  it('is loaded once, and not again after it was deleted', async () => {
    expect(await loadDemo(jobs, 'demo', at(1))).toBe(true);
    expect(await jobs.find('demo')).toMatchObject({ kind: 'found', saved: { job: landingStage() } });
    expect(await loadDemo(jobs, 'demo', at(2))).toBe(false);
    await jobs.remove('demo', at(3));
    expect(await loadDemo(jobs, 'other', at(4))).toBe(false);
    expect(await jobs.list('')).toEqual([]);
  });
});
