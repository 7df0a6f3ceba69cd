import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import SQLite from 'better-sqlite3';
import { Kysely, Migrator, SqliteDialect } from 'kysely';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { openDatabase } from '../../db/database.ts';
import { MIGRATIONS } from '../../db/migrations/migrations.ts';
import { shopRepository } from '../../db/shop-repository.ts';
import type { Tables } from '../../db/tables/tables.ts';
import { at, grade, rates, settings, size } from './kept-things.ts';

let folder: string;
let file: string;

beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'hoopwright-shop-'));
  file = join(folder, 'jobs.sqlite');
  await databaseOfTwoMigrations();
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

/** The file as it was before weld settings were kept, with a size in the shop and a grade that was deleted. */
async function databaseOfTwoMigrations(): Promise<void> {
  const older = new Kysely<Tables>({ dialect: new SqliteDialect({ database: new SQLite(file) }) });
  const first = Object.fromEntries(Object.entries(MIGRATIONS).filter(([name]) => name < '003'));
  expect(Object.keys(first)).toEqual(['001-jobs', '002-shop']);
  const { error } = await new Migrator({
    db: older,
    provider: { getMigrations: async () => first },
  }).migrateToLatest();
  expect(error).toBeUndefined();
  const row = { version: 3, revision: 4, saved_at: at(2) };
  const kept = { ...row, id: 's', kind: 'size' as const, name: 'rail', name_key: 'rail', deleted_at: null };
  const gone = { ...row, id: 'g', kind: 'grade' as const, name: 'Coil 7', name_key: 'coil 7', deleted_at: at(2) };
  const documents = [
    { ...kept, document: JSON.stringify(size('rail')) },
    { ...gone, document: JSON.stringify(grade) },
  ];
  await older.insertInto('kept').values(documents).execute();
  await older.destroy();
}

it('a shop that kept no settings and no rates yet keeps them too, with everything that it kept before', async () => {
  const database = await openDatabase(file);
  const shop = shopRepository(database);
  expect(await shop.all()).toEqual({
    machines: [],
    sizes: [{ id: 's', revision: 4, savedAt: at(2), document: size('rail') }],
    grades: [],
    settings: [],
    rates: [],
  });
  expect(await shop.keep('settings', 'w', settings('rail'), at(3))).toMatchObject({ kind: 'saved' });
  expect(await shop.keep('rates', 'r', rates('This year'), at(4))).toMatchObject({ kind: 'saved' });
  expect(await shop.restore('grade', 'g')).toMatchObject({ kind: 'saved', saved: { document: grade } });
  await database.destroy();
  const again = await openDatabase(file);
  const all = await shopRepository(again).all();
  expect(all.settings).toMatchObject([{ id: 'w', document: settings('rail') }]);
  expect(all.rates).toMatchObject([{ id: 'r', document: rates('This year') }]);
  await again.destroy();
});

it('its table still guards its names and its kinds', async () => {
  const database = await openDatabase(file);
  const insert = (row: object) =>
    database
      .insertInto('kept')
      .values({ version: 4, document: '{}', revision: 1, saved_at: at(5), deleted_at: null, ...row } as Tables['kept'])
      .execute();
  await expect(insert({ id: 'x', kind: 'lathe', name: 'x', name_key: 'x' })).rejects.toThrow(/CHECK/);
  await expect(insert({ id: 'x', kind: 'size', name: 'Rail', name_key: 'rail' })).rejects.toThrow(/UNIQUE/);
  await expect(insert({ id: 's', kind: 'size', name: 'x', name_key: 'x' })).rejects.toThrow(/UNIQUE/);
  await expect(insert({ id: 'x', kind: 'grade', name: 'Coil 7', name_key: 'coil 7' })).resolves.toHaveLength(1);
  await database.destroy();
});
