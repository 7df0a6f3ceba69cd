import type { Kysely, Migration } from 'kysely';

/** The jobs that bars were taken for at once, and the form that a quote was written in. */
export const together: Migration = {
  async up(database: Kysely<unknown>): Promise<void> {
    await database.schema
      .alterTable('takings')
      .addColumn('together', 'text', (column) => column.notNull().defaultTo('[]'))
      .execute();
    await database.schema
      .alterTable('quotes')
      .addColumn('quote_version', 'integer', (column) => column.notNull().defaultTo(1))
      .execute();
  },
};
