import fc from 'fast-check';
import { Compile } from 'typebox/compile';
import { describe, expect, it } from 'vitest';
import type { Job } from '../../server/job/job.ts';
import { parseJob } from '../../server/job/validate.ts';
import { Plan } from '../../server/plan/plan.ts';
import { plan } from '../../server/solver/plan.ts';
import { oddJobs } from './odd-jobs.ts';
import { testBend } from '../solver/made-up-shop.ts';
import { jobWith } from './plans-compared.ts';

const published = Compile(Plan);

/** Where a value holds a number that is none: NaN or without end. */
function notFinite(value: unknown, path = ''): string | undefined {
  if (typeof value === 'number') return Number.isFinite(value) ? undefined : `${path} ${String(value)}`;
  if (typeof value !== 'object' || value === null) return undefined;
  for (const [name, one] of Object.entries(value)) {
    const found = notFinite(one, `${path}/${name}`);
    if (found !== undefined) return found;
  }
  return undefined;
}

function taken(document: unknown): Job {
  const parsed = parseJob(document);
  if (!parsed.ok) throw new Error(parsed.problems.map(({ code, field }) => `${code} ${field}`).join(', '));
  return parsed.job;
}

describe('a plan', () => {
  it('is made of every job that is taken: finite, as published, and no frame left away without a stop', () => {
    const reached = { frame: 0, correction: 0, stops: 0 };
    fc.assert(
      fc.property(oddJobs, (document) => {
        const made = plan(taken(document));
        expect(notFinite(made)).toBeUndefined();
        expect(published.Check(made)).toBe(true);
        const stopped = made.findings.some(({ grade }) => grade === 'stop');
        expect(made.frame !== null || stopped).toBe(true);
        if (made.frame !== null) reached.frame += 1;
        if (made.correction !== null) reached.correction += 1;
        if (stopped) reached.stops += 1;
      }),
      { numRuns: 250, seed: 3, endOnFailure: true },
    );
    // many of them get past the first stop, and many do not
    expect(reached.frame).toBeGreaterThan(130);
    expect(reached.correction).toBeGreaterThan(45);
    expect(reached.stops).toBeGreaterThan(65);
  }, 20_000);

  it('is the same plan each time, and leaves the job as it was', () => {
    fc.assert(
      fc.property(oddJobs, (document) => {
        const job = taken(document);
        const before = JSON.stringify(job);
        expect(plan(structuredClone(job))).toEqual(plan(job));
        expect(JSON.stringify(job)).toBe(before);
      }),
      { numRuns: 50, seed: 4, endOnFailure: true },
    );
  });
});

describe('sizes that no shop has', () => {
  const at = { x: 0, y: 0, z: 0 };
  const chained = (pieces: readonly { radius: number; angle: number }[]): Job =>
    jobWith({
      shape: 'members',
      members: [
        {
          name: 'tube',
          path: {
            by: 'chain',
            start: at,
            direction: { ...at, x: 1 },
            normal: { ...at, z: 1 },
            pieces: pieces.map((one) => ({ piece: 'arc', rotation: 0, made: 'rolled', ...one })),
          },
          start: { end: 'free' },
          finish: { end: 'free' },
        },
      ],
    });

  it('a bend radius of next to nothing is told as no radius for this tube', () => {
    const job = chained([
      { radius: Number.MIN_VALUE, angle: 90 },
      { radius: 1000, angle: 90 },
    ]);
    expect(plan(job).findings).toContainEqual(
      expect.objectContaining({ code: 'die-radius-under-tube-radius', grade: 'stop', field: '/frame' }),
    );
  });

  it('a measured radius of next to nothing is told at the test bends', () => {
    const machine = { springback: { method: 'test-bends' as const, bends: [testBend(92, 90, 1e-300)] } };
    const { frame, findings } = plan(jobWith(chained([{ radius: 1000, angle: 90 }]).frame, { machine }));
    expect(frame).toBeNull();
    expect(findings).toContainEqual(
      expect.objectContaining({
        code: 'die-radius-under-tube-radius',
        field: '/machine/springback/bends',
        data: { value: 1e-300, low: 38.1 / 2 },
      }),
    );
  });

  it('a coil of many turns in one plane runs through itself, and is told at once', () => {
    const { findings } = plan(chained([{ radius: 3000, angle: 3600 }]));
    expect(findings.map(({ code }) => code)).toContain('member-crosses-itself');
  }, 3000);
});
