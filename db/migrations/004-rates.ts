import { sql, type Kysely, type Migration } from 'kysely';

/** The shop keeps lists of rates too. SQLite cannot change a check, so that the table is made anew with all its rows. */
export const rates: Migration = {
  async up(database: Kysely<unknown>): Promise<void> {
    const kinds = sql`kind in ('machine', 'size', 'grade', 'settings', 'rates')`;
    await database.schema
      .createTable('kept_anew')
      .addColumn('id', 'text', (column) => column.primaryKey())
      .addColumn('kind', 'text', (column) => column.notNull().check(kinds))
      .addColumn('name', 'text', (column) => column.notNull())
      .addColumn('name_key', 'text', (column) => column.notNull())
      .addColumn('version', 'integer', (column) => column.notNull())
      .addColumn('document', 'text', (column) => column.notNull())
      .addColumn('revision', 'integer', (column) => column.notNull())
      .addColumn('saved_at', 'text', (column) => column.notNull())
      .addColumn('deleted_at', 'text')
      .execute();
    const columns = sql.raw('id, kind, name, name_key, version, document, revision, saved_at, deleted_at');
    await sql`insert into kept_anew (${columns}) select ${columns} from kept`.execute(database);
    await database.schema.dropTable('kept').execute();
    await database.schema.alterTable('kept_anew').renameTo('kept').execute();
    // the index went with the old table; a deleted thing gives its name free
    await database.schema
      .createIndex('kept_name')
      .unique()
      .on('kept')
      .columns(['kind', 'name_key'])
      .where(sql.ref('deleted_at'), 'is', null)
      .execute();
  },
};
