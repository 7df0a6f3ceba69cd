import type { Kysely, Migration } from 'kysely';

/** The bars of the shop, and the book of what was taken of them. */
export const stock: Migration = {
  async up(database: Kysely<unknown>): Promise<void> {
    await database.schema
      .createTable('stock')
      .addColumn('id', 'text', (column) => column.primaryKey())
      .addColumn('name', 'text', (column) => column.notNull())
      .addColumn('version', 'integer', (column) => column.notNull())
      .addColumn('document', 'text', (column) => column.notNull())
      .addColumn('revision', 'integer', (column) => column.notNull())
      .addColumn('saved_at', 'text', (column) => column.notNull())
      .addColumn('deleted_at', 'text')
      .execute();
    await database.schema
      .createTable('takings')
      .addColumn('number', 'integer', (column) => column.primaryKey().autoIncrement())
      .addColumn('key', 'text', (column) => column.notNull().unique())
      .addColumn('taken_at', 'text', (column) => column.notNull())
      .addColumn('job_id', 'text')
      .addColumn('title', 'text', (column) => column.notNull())
      .addColumn('version', 'integer', (column) => column.notNull())
      .addColumn('layout', 'text', (column) => column.notNull())
      .addColumn('taken', 'text', (column) => column.notNull())
      .addColumn('returned', 'text', (column) => column.notNull())
      .addColumn('undone_at', 'text')
      .execute();
  },
};
