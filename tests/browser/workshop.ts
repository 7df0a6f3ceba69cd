import { chromium, type Browser, type BrowserContext, type Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect } from 'vitest';
import { randomUUID } from 'node:crypto';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { openDatabase } from '../../db/database.ts';
import { landingStage } from '../../db/demo/landing-stage.ts';
import { loadDemo } from '../../db/demo/load-demo.ts';
import { jobRepository } from '../../db/job-repository.ts';
import { quoteRepository } from '../../db/quote-repository.ts';
import { shopRepository } from '../../db/shop-repository.ts';
import { stockRepository } from '../../db/stock-repository.ts';
import { buildApp } from '../../server/app.ts';
import type { Job } from '../../server/job/job.ts';
import { findChromium } from '../../server/setup/find-chromium.mjs';
import { faultsOf } from './faults.ts';

const pageFolder = fileURLToPath(new URL('../../dist/web', import.meta.url));

/** A desktop with a mouse, and a phone that is touched [px]. */
export const SCREENS = {
  desktop: { viewport: { width: 1280, height: 900 } },
  phone: { viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true, deviceScaleFactor: 2 },
} as const;
export type ScreenName = keyof typeof SCREENS;

/** Generous: a busy machine with two cores still gets there; what is there already does not wait. */
const PATIENCE = 20_000;

export type Workshop = {
  readonly address: string;
  /** Everything that went wrong in any page so far: errors of scripts, of the console, answers of 500 and above. */
  readonly faults: readonly string[];
  /** A new visitor: nothing remembered from others. */
  readonly visit: (screen: ScreenName) => Promise<Page>;
  /** A second tab of the same visitor. */
  readonly tab: (page: Page) => Promise<Page>;
  /** A stored job of its own for one test: the made-up example, or a given one; its id. */
  readonly store: (job?: Job) => Promise<string>;
  /** Ends every visit, and says what went wrong in them. */
  readonly leave: () => Promise<readonly string[]>;
  readonly close: () => Promise<void>;
};

function launch(): Promise<Browser> {
  const executablePath = findChromium();
  if (executablePath === undefined) throw new Error('There is no Chromium. Install one, or set CHROMIUM_PATH to it.');
  const args = [
    '--no-sandbox',
    '--disable-background-networking',
    '--disable-component-update',
    '--disable-sync',
    '--disable-gpu',
  ];
  return chromium.launch({ executablePath, args });
}

/** The real server with the built page on a port and a database of its own, and a browser before it. */
export async function openWorkshop(): Promise<Workshop> {
  if (!existsSync(join(pageFolder, 'index.html')))
    throw new Error('The page is not built. npm test builds it; alone: node server/setup/setup.mjs');
  const folder = mkdtempSync(join(tmpdir(), 'hoopwright-browser-'));
  const database = await openDatabase(join(folder, 'jobs.sqlite'));
  const jobs = jobRepository(database);
  const now = (): string => new Date().toISOString();
  await loadDemo(jobs, randomUUID(), now());
  const app = await buildApp({
    jobs,
    shop: shopRepository(database),
    stock: stockRepository(database),
    quotes: quoteRepository(database),
    now,
    newId: randomUUID,
    pageFolder,
    logLevel: 'silent',
  });
  const planned = await app.inject({ method: 'POST', url: '/api/plan', payload: landingStage() });
  if (planned.statusCode !== 200) throw new Error(`The server cannot plan its own example: ${planned.body}`);
  const address = await app.listen({ host: '127.0.0.1', port: 0 });
  const browser = await launch();
  const faults: string[] = [];

  async function newTab(context: BrowserContext): Promise<Page> {
    const page = await context.newPage();
    page.setDefaultTimeout(PATIENCE);
    return page;
  }

  return {
    address,
    faults,
    async visit(screen) {
      const context = await browser.newContext({
        ...SCREENS[screen],
        baseURL: address,
        reducedMotion: 'reduce',
      });
      faultsOf(context, (fault) => faults.push(fault));
      return newTab(context);
    },
    tab: (page) => newTab(page.context()),
    async store(job = landingStage()) {
      const id = randomUUID();
      await jobs.create(id, job, now());
      return id;
    },
    async leave() {
      await Promise.all(browser.contexts().map((context) => context.close()));
      return faults;
    },
    async close() {
      await browser.close();
      await app.close();
      await database.destroy();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** One workshop for all tests of a file: open before the first, closed after the last, nothing gone wrong in any. */
export function workshopOfFile(): Workshop {
  let opened: Workshop | undefined;
  const now = (): Workshop => {
    if (opened === undefined) throw new Error('The workshop opens before the first test of its file.');
    return opened;
  };
  beforeAll(async () => {
    opened = await openWorkshop();
  }, 60_000);
  afterAll(() => opened?.close());
  afterEach(async () => {
    expect(await now().leave()).toEqual([]);
  });
  return {
    get address() {
      return now().address;
    },
    get faults() {
      return now().faults;
    },
    visit: (screen) => now().visit(screen),
    tab: (page) => now().tab(page),
    store: (job) => now().store(job),
    leave: () => now().leave(),
    close: () => now().close(),
  };
}
