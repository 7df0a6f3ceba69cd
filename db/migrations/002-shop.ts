import { sql, type Kysely, type Migration } from 'kysely';

export const shop: Migration = {
  async up(database: Kysely<unknown>): Promise<void> {
    await database.schema
      .createTable('kept')
      .addColumn('id', 'text', (column) => column.primaryKey())
      .addColumn('kind', 'text', (column) => column.notNull().check(sql`kind in ('machine', 'size', 'grade')`))
      .addColumn('name', 'text', (column) => column.notNull())
      .addColumn('name_key', 'text', (column) => column.notNull())
      .addColumn('version', 'integer', (column) => column.notNull())
      .addColumn('document', 'text', (column) => column.notNull())
      .addColumn('revision', 'integer', (column) => column.notNull())
      .addColumn('saved_at', 'text', (column) => column.notNull())
      .addColumn('deleted_at', 'text')
      .execute();
    // a deleted thing gives its name free
    await database.schema
      .createIndex('kept_name')
      .unique()
      .on('kept')
      .columns(['kind', 'name_key'])
      .where(sql.ref('deleted_at'), 'is', null)
      .execute();
  },
};
