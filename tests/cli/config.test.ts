import { createServer } from 'node:net';
import { isAbsolute, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { projectFolder, readConfig } from '../../server/config.ts';
import { freePort, isFree } from '../../server/listen.ts';

describe('the environment', () => {
  it('has a default for everything', () => {
    expect(readConfig({})).toEqual({
      ok: true,
      config: {
        host: '127.0.0.1',
        port: 8080,
        portIsFixed: false,
        databaseFile: join(projectFolder(), 'data', 'hoopwright.sqlite'),
        pageFolder: join(projectFolder(), 'dist', 'web'),
        logLevel: 'warn',
      },
    });
    expect(isAbsolute(projectFolder())).toBe(true);
  });

  it('sets what it says, and nothing where it is empty', () => {
    const set = { HOOPWRIGHT_PORT: '9000', HOOPWRIGHT_DATA: '/var/jobs', HOOPWRIGHT_HOST: '', PORT: '1' };
    expect(readConfig(set)).toMatchObject({
      config: { port: 9000, portIsFixed: true, host: '127.0.0.1', databaseFile: '/var/jobs/hoopwright.sqlite' },
    });
  });

  it.each(['70000', '-1', '80.5', 'http', '1e3'])('HOOPWRIGHT_PORT=%s is refused with its range', (port) => {
    const read = readConfig({ HOOPWRIGHT_PORT: port });
    expect(read).toEqual({ ok: false, messages: [expect.stringMatching(/^HOOPWRIGHT_PORT is .*65535/)] });
  });

  it('a log level that is none is refused with those there are', () => {
    expect(readConfig({ HOOPWRIGHT_LOG: 'loud' })).toEqual({
      ok: false,
      messages: [expect.stringContaining('fatal, error, warn')],
    });
  });
});

describe('a port', () => {
  const taken = createServer();
  let port: number;
  beforeAll(
    () =>
      new Promise<void>((resolve) => {
        taken.listen(0, '127.0.0.1', () => {
          const address = taken.address();
          if (address === null || typeof address === 'string') throw new Error('no address');
          port = address.port;
          resolve();
        });
      }),
  );
  afterAll(() => void taken.close());

  it('that is taken is found out, and a free one after it', async () => {
    expect(await isFree('127.0.0.1', port)).toBe(false);
    const next = await freePort('127.0.0.1', port);
    expect(next).toBeGreaterThan(port);
    expect(await isFree('127.0.0.1', next ?? 0)).toBe(true);
  });
});
