import { randomUUID } from 'node:crypto';
import { openDatabase } from '../db/database.ts';
import { loadDemo } from '../db/demo/load-demo.ts';
import { jobRepository } from '../db/job-repository.ts';
import { quoteRepository } from '../db/quote-repository.ts';
import { shopRepository } from '../db/shop-repository.ts';
import { stockRepository } from '../db/stock-repository.ts';
import { buildApp } from './app.ts';
import { readConfig } from './config.ts';
import { newJob } from './job/default-job.ts';
import { freePort } from './listen.ts';
import { planInWords } from './plan-in-words.ts';
import { renderSheet } from './sheets/render-sheet.ts';

const say = (text: string): void => void process.stdout.write(`${text}\n`);

function giveUp(...messages: readonly string[]): never {
  for (const message of messages) process.stderr.write(`${message}\n`);
  process.exit(1);
}

const read = readConfig(process.env);
if (!read.ok) giveUp(...read.messages);
const { host, port: wanted, portIsFixed, databaseFile, pageFolder, logLevel } = read.config;

const because = (what: string) => (error: unknown) =>
  giveUp(`${what}: ${error instanceof Error ? error.message : String(error)}`);

const port = await freePort(host, wanted).catch(because(`Nothing can listen on ${host}`));
if (port === undefined)
  giveUp(`No port from ${String(wanted)} on is free on ${host}. Set HOOPWRIGHT_PORT to a free one.`);
if (port !== wanted && portIsFixed)
  giveUp(`Port ${String(wanted)} is taken. Port ${String(port)} is free: HOOPWRIGHT_PORT=${String(port)} npm start`);
if (port !== wanted) say(`Port ${String(wanted)} is taken, so another one is used.`);

const database = await openDatabase(databaseFile).catch(because(`The database ${databaseFile} cannot be opened`));
const jobs = jobRepository(database);
const now = (): string => new Date().toISOString();
if (await loadDemo(jobs, randomUUID(), now())) say('A new database, with a made-up example job in it.');

const app = await buildApp({
  jobs,
  shop: shopRepository(database),
  stock: stockRepository(database),
  quotes: quoteRepository(database),
  now,
  newId: randomUUID,
  pageFolder,
  logLevel,
});
const address = await app.listen({ host, port });
// the first sheet of a process reads the typeface; nobody should have to wait for that
const first = newJob('hoop');
setImmediate(() => {
  renderSheet('bend', { plan: planInWords(first), job: first, revision: null }).catch((error: unknown) =>
    app.log.error(error),
  );
});
say(`Hoopwright runs at ${address} and keeps its jobs in ${databaseFile}. Ctrl-C ends it.`);

for (const signal of ['SIGINT', 'SIGTERM'] as const)
  process.once(signal, () => {
    void app
      .close()
      .then(() => database.destroy())
      .then(() => process.exit(0));
  });
