import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { brotliCompressSync, brotliDecompressSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { serverUnderTest, type UnderTest } from './server-under-test.ts';

const PAGE = '<!doctype html><title>page</title>';
const SCRIPT = 'console.info("page");';
let folder: string;
let server: UnderTest;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'hoopwright-page-'));
  mkdirSync(join(folder, 'assets'));
  writeFileSync(join(folder, 'index.html'), PAGE);
  writeFileSync(join(folder, 'assets', 'page-abc.js'), SCRIPT);
  writeFileSync(join(folder, 'assets', 'page-abc.js.br'), brotliCompressSync(SCRIPT));
  server = await serverUnderTest(folder);
});
afterAll(async () => {
  await server.close();
  rmSync(folder, { recursive: true, force: true });
});

describe('the OpenAPI text', () => {
  type Operation = { summary?: string; responses: Record<string, unknown> };
  type OpenApi = {
    openapi: string;
    paths: Record<string, Record<string, Operation>>;
    components: { schemas: Record<string, { required: string[] }> };
  };

  it('has every route with a summary and its refusals, and the documents once', async () => {
    const response = await server.app.inject('/api/openapi.json');
    const text = response.json<OpenApi>();
    expect(text.openapi).toBe('3.1.0');
    expect(Object.keys(text.paths).sort()).toEqual([
      '/api/catalogue',
      '/api/exports/{name}',
      '/api/jobs',
      '/api/jobs/{id}',
      '/api/jobs/{id}/duplicate',
      '/api/jobs/{id}/exports/{name}',
      '/api/jobs/{id}/quotes',
      '/api/jobs/{id}/quotes/{number}/{file}',
      '/api/jobs/{id}/restore',
      '/api/jobs/{id}/revisions',
      '/api/jobs/{id}/revisions/{revision}',
      '/api/jobs/{id}/sheets/{name}.pdf',
      '/api/nestings',
      '/api/nestings/{id}',
      '/api/plan',
      '/api/sheets/{name}.pdf',
      '/api/shop',
      '/api/shop/grades',
      '/api/shop/grades/{id}',
      '/api/shop/grades/{id}/restore',
      '/api/shop/machines',
      '/api/shop/machines/{id}',
      '/api/shop/machines/{id}/restore',
      '/api/shop/rates',
      '/api/shop/rates/{id}',
      '/api/shop/rates/{id}/restore',
      '/api/shop/settings',
      '/api/shop/settings/{id}',
      '/api/shop/settings/{id}/restore',
      '/api/shop/sizes',
      '/api/shop/sizes/{id}',
      '/api/shop/sizes/{id}/restore',
      '/api/shop/times',
      '/api/stock',
      '/api/stock/takings',
      '/api/stock/takings/{number}',
      '/api/stock/{id}',
      '/api/stock/{id}/restore',
    ]);
    for (const path of Object.values(text.paths))
      for (const operation of Object.values(path)) expect(operation.summary).toMatch(/\w{3}/);
    expect(Object.keys(text.components.schemas).sort()).toEqual([
      'Job',
      'KeptSettings',
      'KeptSize',
      'Machine',
      'OwnGrade',
      'Plan',
      'Rates',
      'StockBar',
      'StockLayout',
    ]);
    expect(text.components.schemas['Job']?.required).toContain('tube');
    expect(response.body).not.toContain('#"');
    expect(response.body).toContain('#/components/schemas/Plan"');
  });

  it('has a page to read it, without scripts from elsewhere', async () => {
    const page = await server.app.inject('/api/docs/');
    expect(page.statusCode).toBe(200);
    expect(page.headers['content-type']).toContain('text/html');
    const policy = String(page.headers['content-security-policy']);
    expect(policy).toContain("script-src 'self'");
    expect(policy).not.toMatch(/unsafe-eval|https:|script-src[^;]*unsafe-inline/);
  });
});

describe('the page', () => {
  it('stands at / under a strict policy', async () => {
    const response = await server.app.inject('/');
    expect(response.body).toBe(PAGE);
    expect(response.headers['cache-control']).toBe('no-cache');
    const policy = String(response.headers['content-security-policy']);
    expect(policy.split(';')).toEqual(
      expect.arrayContaining(["default-src 'self'", "script-src 'self'", "style-src 'self'", "object-src 'none'"]),
    );
    expect(policy).not.toMatch(/unsafe|data:|\*|upgrade/);
    expect(response.headers['x-content-type-options']).toBe('nosniff');
  });

  it('sends its assets compressed and for good', async () => {
    const headers = { 'accept-encoding': 'br' };
    const response = await server.app.inject({ url: '/assets/page-abc.js', headers });
    expect(response.headers['content-encoding']).toBe('br');
    expect(brotliDecompressSync(response.rawPayload).toString()).toBe(SCRIPT);
    expect(response.headers['cache-control']).toContain('immutable');
    expect((await server.app.inject('/assets/page-abc.js')).body).toBe(SCRIPT);
  });

  it('answers for its own addresses, never for the API or a missing file', async () => {
    const headers = { accept: 'text/html,*/*' };
    expect((await server.app.inject({ url: '/jobs/abc', headers })).body).toBe(PAGE);
    expect((await server.app.inject({ url: '/api/abc', headers })).statusCode).toBe(404);
    expect((await server.app.inject('/assets/gone.js')).statusCode).toBe(404);
    expect((await server.app.inject({ url: '/..%2f..%2fetc/passwd' })).statusCode).toBeGreaterThanOrEqual(400);
  });
});
