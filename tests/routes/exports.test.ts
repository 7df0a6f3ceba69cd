import papaparse from 'papaparse';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { landingStage } from '../../db/demo/landing-stage.ts';
import { EXPORT_NAMES } from '../../server/exports/write-export.ts';
import { newJob } from '../../server/job/default-job.ts';
import type { Job } from '../../server/job/job.ts';
import { serverUnderTest, type UnderTest } from './server-under-test.ts';

let server: UnderTest;
beforeAll(async () => {
  server = await serverUnderTest();
  await server.jobs.create('stage', landingStage(), '2026-01-01T00:00:00.000Z');
});
afterAll(() => server.close());

const post = (name: string, payload: Job) =>
  server.app.inject({ method: 'POST', url: `/api/exports/${name}`, payload });
const get = (name: string) => server.app.inject(`/api/jobs/stage/exports/${name}`);
const refusal = (code: string, words: RegExp) => ({
  error: { code: `export-${code}`, message: expect.stringMatching(words) as string },
});

describe('a file of a job', () => {
  it.each([
    ['bend-table.csv', 'text/csv; charset=utf-8; header=present', /^member,bend,/],
    ['members.csv', 'text/csv; charset=utf-8; header=present', /^member,bends,/],
    ['welds.csv', 'text/csv; charset=utf-8; header=present', /^weld,kind,member,/],
    ['centreline.dxf', 'image/vnd.dxf', /^0\nSECTION\n[^]*\n0\nEOF\n$/],
    ['views.dxf', 'image/vnd.dxf', /^0\nSECTION\n[^]*\n0\nEOF\n$/],
    ['view-face.svg', 'image/svg+xml', /^<\?xml [^]*<\/svg>\n$/],
    ['view-pictorial.svg', 'image/svg+xml', /^<\?xml [^]*<\/svg>\n$/],
    ['solid.step', 'model/step', /^ISO-10303-21;[^]*END-ISO-10303-21;\s*$/],
  ])('%s, stored or not', { timeout: 120_000 }, async (name, type, text) => {
    for (const response of [await get(name), await post(name, landingStage())]) {
      expect(response.statusCode).toBe(200);
      expect(response.headers['content-type']).toBe(type);
      expect(response.headers['content-disposition']).toBe(
        `attachment; filename="landing-stage-boarding-frame-${name}"`,
      );
      expect(response.headers['x-content-type-options']).toBe('nosniff');
      expect(response.headers['content-security-policy']).toContain("default-src 'none'");
      expect(response.body).toMatch(text);
    }
  });

  it('is of one member where one is asked for', async () => {
    const response = await get('members.csv?member=crossbar%201');
    expect(response.headers['content-disposition']).toContain('frame-crossbar-1-members.csv"');
    const { data } = papaparse.parse<{ member: string }>(response.body, { header: true, skipEmptyLines: true });
    expect(data.map(({ member }) => member)).toEqual(['crossbar 1']);
  });

  it('is named in letters that a header can hold', async () => {
    const named = async (title: string) =>
      (await post('members.csv', { ...landingStage(), title })).headers['content-disposition'];
    expect(await named('"; filename=x\r\n../etc\\')).toBe('attachment; filename="filename-x-etc-members.csv"');
    expect(await named('Bügel (neu)')).toBe(
      `attachment; filename="bugel-neu-members.csv"; filename*=UTF-8''b%C3%BCgel-neu-members.csv`,
    );
    expect(await named('架台')).toBe(
      `attachment; filename="members.csv"; filename*=UTF-8''%E6%9E%B6%E5%8F%B0-members.csv`,
    );
    expect(await named('')).toBe('attachment; filename="members.csv"');
  });
});

describe('a file that there is not', () => {
  it.each(EXPORT_NAMES)('%s of a frame that cannot be made says so', async (name) => {
    const response = await post(name, { ...landingStage(), tube: { ...landingStage().tube, wall: 25 } });
    expect(response.statusCode).toBe(422);
    expect(response.headers['content-type']).toContain('application/json');
    expect(response.json()).toEqual(refusal('frame-not-possible', /cannot be made/));
  });

  it.each([
    ['bend-table.csv', 'no-bends', /nothing here is bent/],
    ['welds.csv', 'no-welds', /nothing here is joined/],
    ['view-side.svg', 'no-such-view', /no such view/],
    ['members.csv?member=nobody', 'no-such-member', /called nobody/],
    ['views.dxf?member=nobody', 'no-such-member', /called nobody/],
    ['solid.step?member=nobody', 'no-such-member', /called nobody/],
  ])('%s of a straight tube', async (name, code, words) => {
    const response = await post(name, newJob('straight'));
    expect(response.statusCode).toBe(422);
    expect(response.json()).toEqual(refusal(code, words));
  });

  it('has no name that is known, or no job', async () => {
    expect((await get('frame.doc')).statusCode).toBe(400);
    expect((await get('members.csv?member=')).statusCode).toBe(400);
    expect((await server.app.inject('/api/jobs/none/exports/members.csv')).statusCode).toBe(404);
  });
});

it('only so many solids wait for each other', { timeout: 120_000 }, async () => {
  const answers = await Promise.all(Array.from({ length: 6 }, () => post('solid.step', newJob('straight'))));
  const refused = answers.filter(({ statusCode }) => statusCode === 503);
  expect(answers.filter(({ statusCode }) => statusCode === 200)).toHaveLength(4);
  expect(refused).toHaveLength(2);
  for (const answer of refused) expect(answer.json()).toEqual(refusal('solid-busy', /Ask again/));
});
