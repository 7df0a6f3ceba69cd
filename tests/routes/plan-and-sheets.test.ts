import { Compile } from 'typebox/compile';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { landingStage } from '../../db/demo/landing-stage.ts';
import { SHAPES } from '../../server/job/default-frame.ts';
import { newJob } from '../../server/job/default-job.ts';
import type { Job } from '../../server/job/job.ts';
import { Plan } from '../../server/plan/plan.ts';
import { serverUnderTest, type UnderTest } from './server-under-test.ts';

let server: UnderTest;
beforeAll(async () => void (server = await serverUnderTest()));
afterAll(() => server.close());

const published = Compile(Plan);

const post = (url: string, payload: Job) => server.app.inject({ method: 'POST', url, payload });
const tooThick = (): Job => ({ ...landingStage(), tube: { ...landingStage().tube, wall: 25 } });

describe('the plan of a job', () => {
  it.each(SHAPES)('a %s answers as its schema says, each finding in words', async (shape) => {
    const response = await post('/api/plan', newJob(shape));
    expect(response.statusCode).toBe(200);
    const plan = response.json<Plan>();
    expect([...published.Errors(plan)]).toEqual([]);
    for (const { message } of plan.findings) expect(message).toMatch(/^[A-Z].{10,}\.$/s);
  });

  it('that cannot be made is an answer with a stop, not a refusal', async () => {
    const response = await post('/api/plan', tooThick());
    expect(response.statusCode).toBe(200);
    expect(response.json<Plan>().findings).toContainEqual(
      expect.objectContaining({ grade: 'stop', field: '/tube/wall' }),
    );
  });
});

describe('a sheet', () => {
  it('of a job that is not stored', async () => {
    const response = await post('/api/sheets/bend.pdf', landingStage());
    expect(response.statusCode).toBe(200);
    expect(response.headers['content-type']).toBe('application/pdf');
    expect(response.headers['content-disposition']).toBe('inline; filename="bend.pdf"');
    expect(response.rawPayload.subarray(0, 5).toString()).toBe('%PDF-');
    expect(response.rawPayload.subarray(-7).toString()).toContain('%%EOF');
  });

  it('of a stored job', async () => {
    await server.jobs.create('stage', landingStage(), '2026-01-01T00:00:00.000Z');
    const response = await server.app.inject('/api/jobs/stage/sheets/quote.pdf');
    expect(response.statusCode).toBe(200);
    expect(response.rawPayload.subarray(0, 5).toString()).toBe('%PDF-');
  });

  it('that cannot be made says why', async () => {
    const response = await post('/api/sheets/bend.pdf', tooThick());
    expect(response.statusCode).toBe(422);
    expect(response.json()).toEqual({
      error: { code: 'sheet-not-possible', message: expect.stringMatching(/cannot be made/) as string },
    });
  });
});

describe('the catalogue', () => {
  it('has a new job of every shape, each ready to be planned', async () => {
    const { newJobs } = (await server.app.inject('/api/catalogue')).json<{ newJobs: Record<string, Job> }>();
    expect(Object.keys(newJobs).sort()).toEqual([...SHAPES].sort());
    for (const shape of SHAPES) expect(newJobs[shape]).toEqual(newJob(shape));
  });

  it('has sizes, grades and the sources that figures name', async () => {
    const { sizes, grades, sources } = (await server.app.inject('/api/catalogue')).json<{
      sizes: { outsideDiameter: number; wall: number }[];
      grades: { key: string; sources: Record<string, string> }[];
      sources: Record<string, unknown>;
    }>();
    const near = (a: number, b: number) => Math.abs(a - b) < 1e-9;
    const common = sizes.find(({ outsideDiameter, wall }) => near(outsideDiameter, 38.1) && near(wall, 1.651));
    expect(common).toMatchObject({ family: 'inch', name: '1-1/2' });
    expect(grades.map(({ key }) => key)).toEqual(expect.arrayContaining(['304', '304L', '316', '316L', '321', '2205']));
    for (const grade of grades) for (const key of Object.values(grade.sources)) expect(sources).toHaveProperty(key);
  });
});
