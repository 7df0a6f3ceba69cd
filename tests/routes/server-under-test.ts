import { afterEach, beforeEach } from 'vitest';
import { openDatabase, type Database } from '../../db/database.ts';
import { jobRepository, type JobRepository } from '../../db/job-repository.ts';
import { quoteRepository } from '../../db/quote-repository.ts';
import { shopRepository } from '../../db/shop-repository.ts';
import { stockRepository } from '../../db/stock-repository.ts';
import { buildApp } from '../../server/app.ts';
import type { App } from '../../server/routes/app-type.ts';

export type UnderTest = {
  readonly app: App;
  readonly jobs: JobRepository;
  readonly database: Database;
  readonly close: () => Promise<void>;
};

/** The whole server on a database in memory; its clock ticks a second a call, its ids are job-1, job-2 … */
export async function serverUnderTest(pageFolder: string | null = null): Promise<UnderTest> {
  const database = await openDatabase(':memory:');
  const jobs = jobRepository(database);
  let seconds = 0;
  let ids = 0;
  const app = await buildApp({
    jobs,
    shop: shopRepository(database),
    stock: stockRepository(database),
    quotes: quoteRepository(database),
    now: () => new Date(Date.UTC(2026, 0, 1) + 1000 * (seconds += 1)).toISOString(),
    newId: () => `job-${String((ids += 1))}`,
    pageFolder,
    logLevel: 'silent',
  });
  const close = async () => {
    await app.close();
    await database.destroy();
  };
  return { app, jobs, database, close };
}

/** A server of its own for each test of a file, and the way to ask it and to read what it answers. */
export function serverOfEachTest() {
  let opened: UnderTest | undefined;
  const now = (): UnderTest => {
    if (opened === undefined) throw new Error('The server starts before each test of its file.');
    return opened;
  };
  beforeEach(async () => void (opened = await serverUnderTest()));
  afterEach(() => now().close());
  return {
    get app() {
      return now().app;
    },
    get database() {
      return now().database;
    },
    ask: async (method: 'GET' | 'POST' | 'PUT' | 'DELETE', url: string, payload?: object) => {
      const response = await now().app.inject({ method, url, ...(payload === undefined ? {} : { payload }) });
      const body: unknown = response.body === '' ? null : response.json();
      return { status: response.statusCode, body };
    },
  };
}
