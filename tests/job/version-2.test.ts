import { describe, expect, it } from 'vitest';
import { newJob } from '../../server/job/default-job.ts';
import { JOB_VERSION, type Job } from '../../server/job/job.ts';
import { parseJob } from '../../server/job/validate.ts';
import { versionOneJob } from './version-1-job.ts';

function upgraded(document: unknown): Job {
  const parsed = parseJob(document);
  if (!parsed.ok) throw new Error(parsed.problems.map(({ message }) => message).join(' '));
  return parsed.job;
}

const problemsIn = (document: unknown) => {
  const parsed = parseJob(document);
  return parsed.ok ? [] : parsed.problems.map(({ code, field }) => `${code} ${field}`);
};

describe('a job of version 1', () => {
  const job = upgraded(versionOneJob);
  const fresh = newJob('straight');

  it('gets its die as the first of the machine, for its own tube', () => {
    expect(job.version).toBe(JOB_VERSION);
    expect(job.machine.die).toBe(0);
    expect(job.machine.dies).toEqual([
      {
        name: '',
        tubeDiameter: 38.1,
        radius: 114.3,
        gripLength: 76.2,
        pressureDieLength: fresh.machine.dies[0]!.pressureDieLength,
        largestAngle: 180,
        tooling: 'unknown',
      },
    ]);
    for (const gone of ['dieRadius', 'gripLength', 'largestAngle', 'angleScatter'])
      expect(Object.keys(job.machine)).not.toContain(gone);
  });

  it('keeps its test bends, on the tube and die that it had', () => {
    const bentOn = {
      scribedBefore: null,
      scribedAfter: null,
      tubeDiameter: 38.1,
      wall: 1.65,
      dieRadius: 114.3,
      heat: '',
    };
    expect(job.machine.springback).toEqual({
      method: 'test-bends',
      bends: [
        { commandedAngle: 45, measuredAngle: 43.6, measuredRadius: null, ...bentOn },
        { commandedAngle: 90, measuredAngle: 87.4, measuredRadius: 116.5, ...bentOn },
      ],
    });
  });

  it('starts the rest as a new job does, and keeps its own scatter', () => {
    expect(job.machine.accuracy).toEqual({ ...fresh.machine.accuracy, angleScatter: 0.4 });
    expect(job.machine.surroundings).toEqual(fresh.machine.surroundings);
    expect(job.bending).toEqual(fresh.bending);
    expect(job.tube).toEqual({ ...versionOneJob.tube, heat: '', tolerance: fresh.tube.tolerance });
  });

  it('keeps every text as typed, where its field stands now', () => {
    expect(job.asTyped).toEqual({
      '/tube/outsideDiameter': '1-1/2 in',
      '/machine/dies/0/radius': '4 1/2 in',
      '/machine/dies/0/gripLength': '3 in',
      '/machine/dies/0/largestAngle': '180°',
      '/machine/accuracy/angleScatter': 'half',
      '/machine/leastStraight': '76,2',
      '/machine/springback/bends/1/measuredAngle': '87,4',
      '/frame/width/value': '37 3/8 in',
    });
  });

  it('changes nothing else', () => {
    const moved = [
      'version',
      'machine',
      'tube',
      'bending',
      'asTyped',
      'cameBack',
      'closing',
      'purge',
      'welding',
      'rates',
    ];
    for (const [name, value] of Object.entries(versionOneJob))
      if (!moved.includes(name)) expect(job[name as keyof Job], name).toEqual(value);
    const { name, leastStraight, trimAllowance, stretchPerBend, rotationSign } = versionOneJob.machine;
    expect(job.machine).toMatchObject({ name, leastStraight, trimAllowance, stretchPerBend, rotationSign });
  });

  it('that used theory has an empty record', () => {
    const theory = { ...versionOneJob, machine: { ...versionOneJob.machine, springback: { method: 'theory' } } };
    expect(upgraded(theory).machine.springback).toEqual({ method: 'theory', bends: [] });
  });

  it('is the same again when it is read as it is written now', () => {
    expect(upgraded(JSON.parse(JSON.stringify(job)))).toEqual(job);
  });
});

describe('a damaged document of version 1', () => {
  it('is refused at the fields that are wrong, where they stand now', () => {
    const machine = { ...versionOneJob.machine, dieRadius: -1, springback: { method: 'guess' } };
    expect(problemsIn({ ...versionOneJob, machine })).toEqual([
      'below-range /machine/dies/0/radius',
      'not-one-of /machine/springback/method',
    ]);
    const { dieRadius: _dieRadius, ...without } = versionOneJob.machine;
    expect(problemsIn({ ...versionOneJob, machine: without })).toContain('wrong-type /machine/dies/0/radius');
  });

  it.each([{ machine: null }, { tube: 7 }, { machine: 'bender', tube: [] }, { asTyped: 'x' }])(
    'never throws: %j',
    (damage) => {
      expect(problemsIn({ ...versionOneJob, ...damage }).length).toBeGreaterThan(0);
    },
  );
});
