import SQLite from 'better-sqlite3';
import { Kysely, Migrator, SqliteDialect } from 'kysely';
import { mkdirSync } from 'node:fs';
import { dirname } from 'node:path';
import { MIGRATIONS } from './migrations/migrations.ts';
import type { Tables } from './tables/tables.ts';

export type Database = Kysely<Tables>;

/** How long a statement waits for another process that writes [ms]; common practice, no source. */
const BUSY_TIMEOUT = 5000;

/**
 * Opens the database file, creating it and its folder where there are none, and brings its tables up to date.
 * Write-ahead log with full synchronisation: a save that has been answered is on the disk even if the power goes.
 *
 * @param file path of the file, or ':memory:'
 */
export async function openDatabase(file: string): Promise<Database> {
  if (file !== ':memory:') mkdirSync(dirname(file), { recursive: true });
  const sqlite = new SQLite(file, { timeout: BUSY_TIMEOUT });
  sqlite.pragma('journal_mode = WAL');
  sqlite.pragma('synchronous = FULL');
  sqlite.pragma('foreign_keys = ON');
  const database = new Kysely<Tables>({ dialect: new SqliteDialect({ database: sqlite }) });
  const migrator = new Migrator({ db: database, provider: { getMigrations: async () => ({ ...MIGRATIONS }) } });
  const { error } = await migrator.migrateToLatest();
  if (error !== undefined) {
    await database.destroy();
    throw new Error(`The database ${file} could not be brought up to date`, { cause: error });
  }
  return database;
}
