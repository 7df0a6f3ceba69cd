import fc from 'fast-check';
import { Compile } from 'typebox/compile';
import { describe, expect, it } from 'vitest';
import { newFrame } from '../../server/job/default-frame.ts';
import type { Hoop } from '../../server/job/frame.ts';
import type { Job } from '../../server/job/job.ts';
import { parseJob } from '../../server/job/validate.ts';
import type { FindingCode } from '../../server/plan/finding.ts';
import { Plan } from '../../server/plan/plan.ts';
import { plan } from '../../server/solver/plan.ts';
import { oddJobs } from './odd-jobs.ts';
import { testBend } from '../solver/made-up-shop.ts';
import { firstDifference, jobWith } from './plans-compared.ts';

const published = Compile(Plan);

/** What only odd shops raise: dies, records, wishes that do not fit the frame. */
const SHOP: readonly FindingCode[] = [
  'die-missing',
  'die-for-other-tube',
  'test-bends-too-few',
  'test-bends-one-angle',
  'test-bends-no-fit',
  'test-bends-other-tube',
  'scatter-over-typed',
  'bend-another-way',
  'bend-no-way',
  'bending-member-missing',
  'closing-straight-missing',
  'mandrel-not-on-die',
];

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
    const reached = { frame: 0, correction: 0, stops: 0, fitted: 0, fromFinish: 0, strikes: 0 };
    const told = new Set<FindingCode>();
    fc.assert(
      fc.property(oddJobs, (document) => {
        const made = plan(taken(document));
        expect(notFinite(made)).toBeUndefined();
        expect(published.Check(made)).toBe(true);
        expect(firstDifference(JSON.parse(JSON.stringify(made)), made, 0)).toBeUndefined();
        const stopped = made.findings.some(({ grade }) => grade === 'stop');
        expect(made.frame !== null || stopped).toBe(true);
        if (made.frame !== null) reached.frame += 1;
        if (made.correction !== null) reached.correction += 1;
        if (stopped) reached.stops += 1;
        if (made.springback?.method === 'fitted') reached.fitted += 1;
        if (made.frame?.members.some(({ making }) => making.from === 'finish') === true) reached.fromFinish += 1;
        if (made.findings.some(({ code }) => code === 'tube-strikes')) reached.strikes += 1;
        for (const { code } of made.findings) told.add(code);
      }),
      { numRuns: 600, seed: 3, endOnFailure: true },
    );
    // many of them get past the first stop, and many do not
    expect(reached.frame).toBeGreaterThan(350);
    expect(reached.correction).toBeGreaterThan(110);
    expect(reached.stops).toBeGreaterThan(200);
    expect(reached.fitted).toBeGreaterThan(40);
    expect(reached.fromFinish).toBeGreaterThan(60);
    expect(reached.strikes).toBeGreaterThan(60);
    for (const code of SHOP) expect(told).toContain(code);
  });

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
  const newHoop = () => newFrame('hoop') as Hoop;
  const at = { x: 0, y: 0, z: 0 };
  const chained = (pieces: readonly { radius: number; angle: number; made?: 'die' | 'rolled' }[]): Job =>
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
    expect(frame).not.toBeNull();
    expect(findings).toContainEqual(
      expect.objectContaining({
        code: 'test-bend-impossible',
        field: '/machine/springback/bends/0/measuredRadius',
        data: expect.objectContaining({ value: 1e-300 }) as unknown,
      }),
    );
  });

  it('a bend of kilometres is told in time, not walked along', () => {
    const job = chained([
      { radius: 1_000_000, angle: 3600, made: 'die' },
      { radius: 150, angle: 45, made: 'die' },
    ]);
    expect(plan(job).findings.map(({ code }) => code)).toContain('angle-over-machine');
  }, 3000);

  it('a misread size beyond what a job takes gives no frame to look at', () => {
    const across = { value: 19_990, reference: 'inside' as const };
    const leg = { value: 600, reference: 'outside' as const };
    const job = jobWith({ ...newHoop(), width: across, leftLeg: leg, rightLeg: leg });
    const made = plan(job);
    expect(published.Check(made)).toBe(true);
    const rows = made.frame!.readingCheck!.rows;
    expect(rows.filter(({ readings }) => readings !== null).length).toBeGreaterThan(0);
    for (const { readings } of rows) {
      const cameBack = { tapeAccuracy: 1, angleAccuracy: 0.2, readings };
      if (readings !== null) expect(parseJob({ ...job, cameBack }).ok).toBe(true);
    }
  });

  it('a coil of many turns in one plane runs through itself, and is told at once', () => {
    const { findings } = plan(chained([{ radius: 3000, angle: 3600 }]));
    expect(findings.map(({ code }) => code)).toContain('member-crosses-itself');
  }, 3000);
});
