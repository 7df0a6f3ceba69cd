import { afterEach, describe, expect, it, vi } from 'vitest';
import { api } from '../../web/api/client.ts';

/** What the page asks, answered by a test. */
const answering = (answer: () => Promise<Response>) => vi.stubGlobal('fetch', vi.fn(answer));
const said = (status: number, body: string, type = 'application/json') =>
  answering(async () => new Response(body, { status, headers: { 'content-type': type } }));

afterEach(() => vi.unstubAllGlobals());

describe('an answer that does not come', () => {
  it('is told in our own words, whatever the browser says of it', async () => {
    answering(() => Promise.reject(new TypeError('Failed to fetch')));
    expect(await api.jobs('')).toEqual({ kind: 'unreachable', reason: 'There is no connection. Try again.' });
    const broken = new ReadableStream({ start: (controller) => controller.error(new TypeError('network error')) });
    answering(async () => new Response(broken, { status: 200 }));
    expect(await api.jobs('')).toEqual({ kind: 'unreachable', reason: 'There is no connection. Try again.' });
  });

  it('is a fault of the program where the server has one, or something else answers for it', async () => {
    const fault = { kind: 'unreachable', reason: 'The program failed. Nothing was lost.' };
    said(500, '{"error":{"code":"fault","message":"It has been logged."}}');
    expect(await api.jobs('')).toEqual(fault);
    said(502, '<html>Bad gateway</html>', 'text/html');
    expect(await api.jobs('')).toEqual(fault);
    said(200, '<html>Sign in to this network</html>', 'text/html');
    expect(await api.jobs('')).toEqual(fault);
  });

  it('is the sentence of a server that is there and refuses, or is busy', async () => {
    for (const status of [400, 409, 503]) {
      said(status, '{"error":{"code":"no","message":"Not now."}}');
      expect(await api.jobs('')).toEqual({ kind: 'refused', problems: [], reason: 'Not now.' });
    }
    said(409, '{"error":{"code":"no","message":"Not now."},"theirs":{"revision":2}}');
    expect(await api.jobs('')).toEqual({ kind: 'conflict', theirs: { revision: 2 } });
  });

  it('is no trouble where there is nothing to say', async () => {
    answering(async () => new Response(null, { status: 204 }));
    expect(await api.remove('a')).toEqual({ kind: 'done', body: undefined });
  });
});
