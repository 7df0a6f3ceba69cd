// The workers have to be found by the built server too, which is made of other files than the sources.
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'vite';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { projectFolder } from '../../server/config.ts';
import type { Job } from '../../server/job/job.ts';
import type { Nesting } from '../../server/nesting/nesting.ts';

const root = projectFolder();
/** Inside the project, where its packages are found; beside what `npm start` builds. */
const outDir = join(root, 'dist', 'server-under-test');
const data = mkdtempSync(join(tmpdir(), 'hoopwright-built-'));

beforeAll(async () => {
  await build({ configFile: join(root, 'server/setup/vite.config.ts'), logLevel: 'error', build: { outDir } });
});
afterAll(() => {
  for (const folder of [outDir, data]) rmSync(folder, { recursive: true, force: true });
});

/** How the search for the bars of a stored job came out. */
async function barsSought(address: string, id: string): Promise<Nesting> {
  const { job } = (await (await fetch(`${address}/api/jobs/${id}`)).json()) as { job: Job };
  const started = await fetch(`${address}/api/nestings`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ job, id: null, with: [], quantity: 1, useStock: true, seconds: 30 }),
  });
  let nesting = (await started.json()) as Nesting;
  while (['waiting', 'running'].includes(nesting.state)) {
    await new Promise((resolve) => setTimeout(resolve, 50));
    nesting = (await (await fetch(`${address}/api/nestings/${nesting.id}`)).json()) as Nesting;
  }
  return nesting;
}

it('the built server makes a solid while it answers, seeks bars, logs nothing', { timeout: 120_000 }, async () => {
  const env = { ...process.env, HOOPWRIGHT_PORT: '0', HOOPWRIGHT_DATA: data };
  const child = spawn(process.execPath, [join(outDir, 'main.js')], { env });
  let said = '';
  const ended = new Promise<number | null>((resolve) => child.once('exit', resolve));
  try {
    const address = await new Promise<string>((resolve, reject) => {
      const listen = (chunk: Buffer) => {
        said += chunk.toString();
        const found = /runs at (http:\/\/127\.0\.0\.1:\d+)/.exec(said);
        if (found !== null) resolve(found[1]!);
      };
      child.stdout.on('data', listen);
      child.stderr.on('data', listen);
      void ended.then((code) => reject(new Error(`ended with ${String(code)}: ${said}`)));
    });
    const [first] = (await (await fetch(`${address}/api/jobs`)).json()) as { id: string }[];
    let made = false;
    const solid = fetch(`${address}/api/jobs/${first!.id}/exports/solid.step`).then(async (response) => {
      made = true;
      return { status: response.status, text: await response.text() };
    });
    const meanwhile = await fetch(`${address}/api/jobs/${first!.id}`);
    expect(meanwhile.status).toBe(200);
    expect(made).toBe(false);
    const { status, text } = await solid;
    expect(status).toBe(200);
    expect(text.match(/MANIFOLD_SOLID_BREP/g)).toHaveLength(2);
    expect(await barsSought(address, first!.id)).toMatchObject({
      state: 'done',
      result: { layout: { found: 'proven' } },
    });
    expect(said).not.toMatch(/Statistics|WorkSession/);
  } finally {
    child.kill('SIGTERM');
  }
  expect(await ended).toBe(0);
});
