import type { Kysely, Migration } from 'kysely';

/** Quotes as they went out: never changed afterwards. */
export const quotes: Migration = {
  async up(database: Kysely<unknown>): Promise<void> {
    await database.schema
      .createTable('quotes')
      .addColumn('job_id', 'text', (column) => column.notNull().references('jobs.id'))
      .addColumn('number', 'integer', (column) => column.notNull())
      .addColumn('job_revision', 'integer', (column) => column.notNull())
      .addColumn('issued_at', 'text', (column) => column.notNull())
      .addColumn('version', 'integer', (column) => column.notNull())
      .addColumn('job', 'text', (column) => column.notNull())
      .addColumn('quote', 'text', (column) => column.notNull())
      .addColumn('reference', 'text', (column) => column.notNull())
      .addColumn('date', 'text', (column) => column.notNull())
      .addColumn('valid_until', 'text', (column) => column.notNull())
      .addColumn('scope', 'text', (column) => column.notNull())
      .addColumn('total', 'integer', (column) => column.notNull())
      .addColumn('currency', 'text', (column) => column.notNull())
      .addColumn('minor_digits', 'integer', (column) => column.notNull())
      .addColumn('open', 'integer', (column) => column.notNull())
      .addColumn('examples', 'integer', (column) => column.notNull())
      .addPrimaryKeyConstraint('quotes_key', ['job_id', 'number'])
      .execute();
  },
};
