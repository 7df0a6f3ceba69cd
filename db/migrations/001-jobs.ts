import type { Kysely, Migration } from 'kysely';

export const jobs: Migration = {
  async up(database: Kysely<unknown>): Promise<void> {
    await database.schema
      .createTable('jobs')
      .addColumn('id', 'text', (column) => column.primaryKey())
      .addColumn('created_at', 'text', (column) => column.notNull())
      .addColumn('deleted_at', 'text')
      .addColumn('revision', 'integer', (column) => column.notNull())
      .addColumn('saved_at', 'text', (column) => column.notNull())
      .addColumn('title', 'text', (column) => column.notNull())
      .addColumn('customer', 'text', (column) => column.notNull())
      .addColumn('drawing_number', 'text', (column) => column.notNull())
      .addColumn('invented', 'integer', (column) => column.notNull())
      .addColumn('search_text', 'text', (column) => column.notNull())
      .execute();
    await database.schema
      .createTable('revisions')
      .addColumn('job_id', 'text', (column) => column.notNull().references('jobs.id'))
      .addColumn('number', 'integer', (column) => column.notNull())
      .addColumn('saved_at', 'text', (column) => column.notNull())
      .addColumn('title', 'text', (column) => column.notNull())
      .addColumn('document', 'text', (column) => column.notNull())
      .addPrimaryKeyConstraint('revisions_key', ['job_id', 'number'])
      .execute();
  },
};
