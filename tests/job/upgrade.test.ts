import { describe, expect, it } from 'vitest';
import { JOB_VERSION } from '../../server/job/job.ts';
import { upgradeJob, type UpgradeStep } from '../../server/job/upgrade.ts';

const STEPS: UpgradeStep[] = [
  { from: 1, upgrade: (document) => ({ ...document, trail: 'a' }) },
  { from: 2, upgrade: (document) => ({ ...document, trail: `${String(document['trail'])}b` }) },
];

describe('older documents', () => {
  it('pass every step after their version, in order', () => {
    const first = upgradeJob({ format: 'hoopwright-job', version: 1 }, STEPS, 3);
    expect(first).toEqual({ ok: true, document: { format: 'hoopwright-job', version: 3, trail: 'ab' } });
    const second = upgradeJob({ format: 'hoopwright-job', version: 2, trail: '-' }, STEPS, 3);
    expect(second).toEqual({ ok: true, document: { format: 'hoopwright-job', version: 3, trail: '-b' } });
    const third = { format: 'hoopwright-job', version: 3 };
    expect(upgradeJob(third, STEPS, 3)).toEqual({ ok: true, document: third });
  });

  it('are not changed in place', () => {
    const given = Object.freeze({ format: 'hoopwright-job', version: 1 });
    upgradeJob(given, STEPS, 3);
    expect(given).toEqual({ format: 'hoopwright-job', version: 1 });
  });
});

describe('what cannot be read', () => {
  it.each([null, 5, 'job', [], {}, { format: 'drawing', version: 1 }])('%j is not a job', (input) => {
    expect(upgradeJob(input)).toMatchObject({ ok: false, problem: { code: 'not-a-job', field: '' } });
  });

  it.each([0, -1, 1.5, '1', null, undefined])('version %j has never been', (version) => {
    expect(upgradeJob({ format: 'hoopwright-job', version })).toMatchObject({
      ok: false,
      problem: { code: 'not-a-job', field: '/version' },
    });
  });

  it('a newer version is refused with what to do', () => {
    const refused = upgradeJob({ format: 'hoopwright-job', version: JOB_VERSION + 1 });
    expect(refused).toMatchObject({
      ok: false,
      problem: {
        code: 'newer-version',
        field: '/version',
        value: JOB_VERSION + 1,
        allowed: { high: JOB_VERSION },
        message:
          'The job is of version 7; this program reads up to version 6. Open it with a newer version of the program.',
      },
    });
  });
});
