import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { projectFolder } from '../../server/config.ts';

const data = mkdtempSync(join(tmpdir(), 'hoopwright-start-'));
afterAll(() => rmSync(data, { recursive: true, force: true }));

/** The program as `npm start` runs it, but from its sources. */
function start(port: string, set: Readonly<Record<string, string>> = {}) {
  const environment = { ...process.env, HOOPWRIGHT_PORT: port, HOOPWRIGHT_DATA: data, ...set };
  const child = spawn(process.execPath, ['--import', 'tsx', 'server/main.ts'], {
    cwd: projectFolder(),
    env: environment,
  });
  let said = '';
  const ended = new Promise<number | null>((resolve) => child.once('exit', resolve));
  const heard = (words: RegExp) =>
    new Promise<string>((resolve, reject) => {
      const listen = (chunk: Buffer) => {
        said += chunk.toString();
        const found = words.exec(said);
        if (found !== null) resolve(found[1] ?? '');
      };
      child.stdout.on('data', listen);
      child.stderr.on('data', listen);
      void ended.then((code) => reject(new Error(`ended with ${String(code)}: ${said}`)));
    });
  return { child, ended, heard, said: () => said };
}

it(
  'starts on an empty folder, refuses a taken port, ends when told to, and keeps its jobs',
  { timeout: 90_000 },
  async () => {
    const first = start('0');
    try {
      const address = await first.heard(/runs at (http:\/\/127\.0\.0\.1:\d+)/);
      expect(first.said()).toContain('A new database, with a made-up example job in it.');
      const listed = (await (await fetch(`${address}/api/jobs`)).json()) as { title: string; invented: boolean }[];
      expect(listed).toMatchObject([{ title: 'Landing stage boarding frame', invented: true }]);

      const { port } = new URL(address);
      const second = start(port);
      await second.heard(/Port \d+ is free: (HOOPWRIGHT_PORT=\d+ npm start)/);
      expect(second.said()).toContain(`Port ${port} is taken.`);
      expect(await second.ended).toBe(1);
    } finally {
      first.child.kill('SIGTERM');
    }
    expect(await first.ended).toBe(0);

    expect(existsSync(join(data, 'hoopwright.sqlite'))).toBe(true);
    const again = start('0');
    try {
      const address = await again.heard(/runs at (http:\/\/127\.0\.0\.1:\d+)/);
      expect(again.said()).not.toContain('new database');
      expect(await (await fetch(`${address}/api/jobs`)).json()).toHaveLength(1);
    } finally {
      again.child.kill('SIGTERM');
    }
    expect(await again.ended).toBe(0);
  },
);

it.each([
  [
    'a folder that is a file',
    { HOOPWRIGHT_DATA: join(projectFolder(), 'package.json') },
    /(The database .* cannot be opened)/,
  ],
  ['a host that is none', { HOOPWRIGHT_HOST: '256.0.0.1' }, /(Nothing can listen on 256\.0\.0\.1)/],
])('%s is told in a line, and ends it', { timeout: 60_000 }, async (_what, set, words) => {
  const { ended, heard, said } = start('0', set);
  await heard(words);
  expect(await ended).toBe(1);
  expect(said().trim().split('\n')).toHaveLength(1);
});
