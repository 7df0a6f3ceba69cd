import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import SQLite from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openDatabase, type Database } from '../../db/database.ts';
import { jobRepository } from '../../db/job-repository.ts';
import { parseKept } from '../../server/job/kept.ts';
import { shopRepository, type ShopRepository } from '../../db/shop-repository.ts';
import { newJob } from '../../server/job/default-job.ts';
import { at, grade, machine, rates, settings, size } from './kept-things.ts';

let folder: string;
let file: string;
let database: Database;
let shop: ShopRepository;

beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'hoopwright-shop-'));
  file = join(folder, 'jobs.sqlite');
  database = await openDatabase(file);
  shop = shopRepository(database);
});

afterEach(async () => {
  await database.destroy();
  rmSync(folder, { recursive: true, force: true });
});

describe('a new database', () => {
  it('has an empty shop', async () => {
    expect(await shop.all()).toEqual({ machines: [], sizes: [], grades: [], settings: [], rates: [] });
  });

  it('that had only jobs gets the shop and keeps its jobs', async () => {
    await jobRepository(database).create('a', newJob('ring'), at(1));
    await database.destroy();
    const raw = new SQLite(file);
    raw.exec('drop table kept; drop table stock; drop table takings; drop table quotes');
    raw.exec("delete from kysely_migration where name >= '002'");
    raw.close();
    database = await openDatabase(file);
    expect(await shopRepository(database).keep('grade', 'g', grade, at(2))).toMatchObject({ kind: 'saved' });
    expect(await jobRepository(database).find('a')).toMatchObject({ kind: 'found' });
  });
});

describe('what is kept', () => {
  it('is there again after closing and opening, each list by name', async () => {
    await shop.keep('machine', 'm2', machine('zeta'), at(1));
    await shop.keep('machine', 'm1', machine('Alpha'), at(2));
    await shop.keep('size', 's', size('rail'), at(3));
    await shop.keep('grade', 'g', grade, at(4));
    await shop.keep('settings', 'w', settings('rail saddle'), at(5));
    await shop.keep('rates', 'r', rates('This year'), at(6));
    await database.destroy();
    database = await openDatabase(file);
    expect(await shopRepository(database).all()).toEqual({
      machines: [
        { id: 'm1', revision: 1, savedAt: at(2), document: machine('Alpha') },
        { id: 'm2', revision: 1, savedAt: at(1), document: machine('zeta') },
      ],
      sizes: [{ id: 's', revision: 1, savedAt: at(3), document: size('rail') }],
      grades: [{ id: 'g', revision: 1, savedAt: at(4), document: grade }],
      settings: [{ id: 'w', revision: 1, savedAt: at(5), document: settings('rail saddle') }],
      rates: [{ id: 'r', revision: 1, savedAt: at(6), document: rates('This year') }],
    });
  });

  it('has a name of its own within its kind, whatever its capitals and spaces', async () => {
    await shop.keep('machine', 'a', machine('Draw bender'), at(1));
    expect(await shop.keep('machine', 'b', machine('  DRAW bender '), at(2))).toMatchObject({
      kind: 'name-taken',
      other: { id: 'a', document: { name: 'Draw bender' } },
    });
    expect(await shop.keep('size', 'c', size('Draw bender'), at(3))).toMatchObject({ kind: 'saved' });
    await shop.keep('machine', 'd', machine('Roller'), at(4));
    expect(await shop.save('machine', 'd', machine('draw bender'), 1, at(5))).toMatchObject({ kind: 'name-taken' });
    expect((await shop.all()).machines.map(({ document }) => document.name)).toEqual(['Draw bender', 'Roller']);
    expect(await shop.save('machine', 'a', machine('draw bender'), 1, at(6))).toMatchObject({ kind: 'saved' });
  });

  it('is guarded by the database too', async () => {
    await shop.keep('size', 'a', size('rail'), at(1));
    const row = await database.selectFrom('kept').selectAll().executeTakeFirstOrThrow();
    await expect(
      database
        .insertInto('kept')
        .values({ ...row, id: 'b' })
        .execute(),
    ).rejects.toThrow(/UNIQUE/);
  });
});

describe('saving', () => {
  it('numbers each save, and a stale one writes nothing and gives what stands', async () => {
    await shop.keep('machine', 'a', machine('Bender'), at(1));
    expect(await shop.save('machine', 'a', machine('Bender', 80), 1, at(2))).toMatchObject({
      kind: 'saved',
      saved: { revision: 2, savedAt: at(2), document: { leastStraight: 80 } },
    });
    expect(await shop.save('machine', 'a', machine('Bender', 90), 1, at(3))).toEqual({
      kind: 'stale',
      theirs: { id: 'a', revision: 2, savedAt: at(2), document: machine('Bender', 80) },
    });
    expect((await shop.all()).machines).toMatchObject([{ revision: 2, document: { leastStraight: 80 } }]);
  });

  it('of two at once lets one win, and knows the same document again', async () => {
    await shop.keep('size', 'a', size('rail'), at(1));
    const outcomes = await Promise.all([2.6, 3.2].map((wall) => shop.save('size', 'a', size('rail', wall), 1, at(2))));
    expect(outcomes.map(({ kind }) => kind).sort()).toEqual(['saved', 'stale']);
    const { sizes } = await shop.all();
    expect(await shop.save('size', 'a', sizes[0]!.document, 1, at(3))).toEqual({ kind: 'saved', saved: sizes[0] });
  });

  it('knows what never was, and what is of another kind', async () => {
    await shop.keep('grade', 'g', grade, at(1));
    expect(await shop.save('machine', 'g', machine('x'), 1, at(2))).toEqual({ kind: 'unknown' });
    expect(await shop.remove('size', 'g', at(2))).toBe(false);
    expect(await shop.restore('grade', 'nobody')).toEqual({ kind: 'unknown' });
    expect(await shop.save('settings', 'g', settings('x'), 1, at(2))).toEqual({ kind: 'unknown' });
  });

  it('takes no document that does not fit its kind', async () => {
    const wrong = { ...machine('Bender'), dies: [] };
    await expect(shop.keep('machine', 'a', wrong, at(1))).rejects.toThrow(/This machine cannot be kept: Dies/);
    expect((await shop.all()).machines).toEqual([]);
    await expect(shop.keep('settings', 'b', settings('x', 0), at(1))).rejects.toThrow(
      /This set of weld settings cannot be kept: Current is 0/,
    );
  });
});

describe('taking out', () => {
  it('can be undone, unless somebody else has the name by then', async () => {
    await shop.keep('grade', 'g', grade, at(1));
    expect(await shop.remove('grade', 'g', at(2))).toBe(true);
    expect((await shop.all()).grades).toEqual([]);
    expect(await shop.save('grade', 'g', grade, 1, at(3))).toEqual({ kind: 'deleted' });
    expect(await shop.restore('grade', 'g')).toMatchObject({ kind: 'saved', saved: { document: grade } });
    await shop.remove('grade', 'g', at(4));
    await shop.keep('grade', 'h', { ...grade, elongation: 50 }, at(5));
    expect(await shop.restore('grade', 'g')).toMatchObject({ kind: 'name-taken', other: { id: 'h' } });
  });
});

describe('a document of another version', () => {
  const old = { outsideDiameter: 42.4, wall: 2, name: 'rail' };

  it('is upgraded on the way out', async () => {
    await shop.keep('size', 'a', size('rail'), at(1));
    await database
      .updateTable('kept')
      .set({ version: 1, document: JSON.stringify(old) })
      .execute();
    const { sizes } = await shop.all();
    expect(sizes[0]?.document).toEqual({ ...old, tolerance: newJob('hoop').tube.tolerance });
  });

  it('a machine of version 1 becomes one with dies, and says which tube its die lacks', () => {
    const { dies, die, springback: _springback, ...rest } = machine('Old');
    const { radius: dieRadius, gripLength, largestAngle } = dies[die]!;
    const first = { ...rest, dieRadius, gripLength, largestAngle, angleScatter: 0.7, springback: { method: 'theory' } };
    const parsed = parseKept('machine', first, 1);
    expect(parsed).toMatchObject({ ok: false, problems: [{ field: '/dies/0/tubeDiameter', code: 'wrong-type' }] });
    expect(parsed.ok ? [] : parsed.problems).toHaveLength(1);
  });

  it('that is of weld settings is never older than they are', () => {
    expect(parseKept('settings', settings('rail'), 4)).toEqual({ ok: true, document: settings('rail') });
    const older = parseKept('settings', settings('rail'), 3);
    expect(older).toMatchObject({ ok: false, problems: [{ code: 'below-range', field: '/version', value: 3 }] });
    expect(parseKept('settings', { ...settings('rail'), form: 'patch' })).toMatchObject({
      ok: false,
      problems: [{ code: 'not-one-of', field: '/form', value: 'patch' }],
    });
  });

  it('that is of rates is never older than they are', () => {
    expect(parseKept('rates', rates('This year'), 6)).toEqual({ ok: true, document: rates('This year') });
    expect(parseKept('rates', rates('This year'), 5)).toMatchObject({
      ok: false,
      problems: [{ code: 'below-range', field: '/version', value: 5 }],
    });
  });

  it('is refused where it is newer, and named where it cannot be read', async () => {
    expect(parseKept('grade', grade, 99)).toMatchObject({ ok: false, problems: [{ code: 'newer-version' }] });
    await shop.keep('grade', 'g', grade, at(1));
    await database.updateTable('kept').set({ document: '{}' }).execute();
    await expect(shop.all()).rejects.toThrow(/The kept grade g cannot be read/);
  });
});
