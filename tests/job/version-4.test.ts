import { describe, expect, it } from 'vitest';
import type { Document } from '../../server/job/check-value.ts';
import { newJob } from '../../server/job/default-job.ts';
import { JOB_VERSION, type Job } from '../../server/job/job.ts';
import { upgradeJob } from '../../server/job/upgrade.ts';
import { withDies } from '../../server/job/version-2.ts';
import { withReadings } from '../../server/job/version-3.ts';
import { withWelds } from '../../server/job/version-4.ts';
import { problemsIn, upgraded } from './upgraded.ts';
import { versionOneJob } from './version-1-job.ts';

const at = { member: 'hoop', spot: 'start', number: 1, distance: 0 };
const origin = { x: 0, y: 0, z: 0 };
const FOOT = { fixing: 'foot', name: 'left', at, off: origin, lands: null, tolerance: null };
const PAD = { ...FOOT, fixing: 'pad', name: 'right', at: { ...at, spot: 'finish' }, lands: { x: 1, y: 2, z: 3 } };
const POST = { fixing: 'post', name: 'pile', at: origin, axis: { ...origin, z: 1 }, diameter: 60, clearance: 5 };

/** Every value of version 3 that version 4 has elsewhere or knows more of, each another than a new job's. */
const PURGE = {
  gas: { from: 'certificate', oxygen: 3 },
  prePurgeFlow: 12,
  weldingFlow: 6,
  targetOxygen: 100,
  extent: 'dams',
  damDistance: 120,
  feed: { member: 'hoop', end: 'finish' },
  vent: { member: 'hoop', end: 'start' },
  ventBore: 5,
  ventHoles: 'coped-ends',
  model: 'long-tube',
  hold: 45,
  room: { volume: 12, fanFlow: 300 },
  bottle: { waterVolume: 50, gaugePressure: 180, temperature: 20 },
};
const WELDING = { travelSpeed: 2, torchFlow: 9, postFlow: 11, fillerDiameter: 1.2 };

const third = (more: Document = {}): Document => ({
  ...withReadings(withDies(versionOneJob)),
  version: 3,
  fixing: [FOOT, PAD, POST],
  purge: PURGE,
  welding: WELDING,
  ...more,
});

describe('a job of version 3', () => {
  const job = upgraded(third());
  const fresh = newJob('straight');

  it('keeps everything that it says of the gas, and starts the rest as a new job does', () => {
    const { ventHoles: _, room, bottle, ...kept } = PURGE;
    const { up, holes, meter } = fresh.purge;
    expect(job.purge).toEqual({
      ...kept,
      up,
      holes: { ...holes, underSaddles: 'all' },
      meter,
      room: { lowVolume: null, fanWay: 'in', receives: 'all', ...room },
      bottle: { reserve: fresh.purge.bottle.reserve, gaugeNow: null, ...bottle },
    });
  });

  it.each([
    ['none', 'none'],
    ['coped-ends', 'all'],
  ])('with vent holes %s has %s under saddle ends', (ventHoles, under) => {
    expect(upgraded(third({ purge: { ...PURGE, ventHoles } })).purge.holes.underSaddles).toBe(under);
  });

  it('has its torch settings for every kind of weld, not proved on anything', () => {
    for (const form of ['butt', 'saddle', 'pad'] as const)
      expect(job.welding[form]).toEqual({ ...fresh.welding[form], ...WELDING });
    const { butt: _butt, saddle: _saddle, pad: _pad, ...rest } = job.welding;
    expect(rest).toEqual(expect.objectContaining({ backing: 'purge', order: [], pull: fresh.welding.pull }));
    expect(job.welding.butt).toMatchObject({ provedOn: '', process: null, current: null });
  });

  it('without filler is welded without, by its process', () => {
    const { butt, saddle } = upgraded(third({ welding: { ...WELDING, fillerDiameter: 0 } })).welding;
    for (const settings of [butt, saddle]) expect(settings).toMatchObject({ process: '142', fillerDiameter: null });
  });

  it.each([
    ['travelSpeed', 1e-6, 50],
    ['torchFlow', 1e-6, 100],
    ['postFlow', 0, 300],
    ['fillerDiameter', 0.1, 10],
  ] as const)('with any %s that version 3 took can be read', (setting, least, most) => {
    const butt = (value: number) => upgraded(third({ welding: { ...WELDING, [setting]: value } })).welding.butt;
    expect(butt(most)[setting]).toBe(most);
    expect(butt(least)[setting]).toBe(setting === 'postFlow' ? 0 : null);
  });

  it('has no plate on any pad, foot or hole yet, and a post has none', () => {
    expect(job.fixing).toEqual([
      { ...FOOT, plate: null },
      { ...PAD, plate: null },
    ]);
    expect(withWelds(third())['fixing']).toEqual([{ ...FOOT, plate: null }, { ...PAD, plate: null }, POST]);
  });

  it('keeps the shrinkage that was typed, and gets a finish to look at', () => {
    expect(job.closing.shrinkage).toBe(versionOneJob.closing.shrinkage);
    expect(job.finish).toEqual(fresh.finish);
  });

  it('keeps every text as typed; those of the torch stand at the butt', () => {
    const asTyped = {
      '/welding/travelSpeed': '2,0',
      '/welding/postFlow': 'eleven',
      '/purge/hold': '45',
      '/tube/wall': '1.65 mm',
      '/welding': 'x',
    };
    expect(upgraded(third({ asTyped })).asTyped).toEqual({
      '/welding/butt/travelSpeed': '2,0',
      '/welding/butt/postFlow': 'eleven',
      '/purge/hold': '45',
      '/tube/wall': '1.65 mm',
      '/welding': 'x',
    });
    const none = third({ asTyped: { '/welding/fillerDiameter': '0' }, welding: { ...WELDING, fillerDiameter: 0 } });
    expect(upgraded(none).asTyped).toEqual({});
  });

  it('changes nothing else', () => {
    const changed = ['version', 'fixing', 'purge', 'welding', 'finish', 'rates', 'asTyped'];
    for (const [name, value] of Object.entries(third()))
      if (!changed.includes(name)) expect(job[name as keyof Job], name).toEqual(value);
  });

  it('is the same again when it is read as it is written now', () => {
    expect(job.version).toBe(JOB_VERSION);
    const written: unknown = JSON.parse(JSON.stringify(job));
    expect(upgradeJob(written)).toEqual({ ok: true, document: written });
    expect(upgraded(written)).toEqual(job);
  });
});

it('documents of every older version come up to this one, valid and as they would step by step', () => {
  const first: Document = versionOneJob;
  const second = { ...withDies(first), version: 2 };
  const documents = [first, second, { ...withReadings(second), version: 3 }];
  const jobs = documents.map(upgraded);
  expect(documents.map(({ version }) => version)).toEqual([1, 2, 3]);
  for (const job of jobs) expect(job).toEqual(jobs[0]);
  expect(jobs[0]!.welding.butt).toMatchObject(versionOneJob.welding);
});

describe('a damaged document of version 3', () => {
  it('is refused at the fields that are wrong, where they stand now', () => {
    expect(problemsIn(third({ welding: { ...WELDING, travelSpeed: 'fast', torchFlow: -1 } }))).toEqual(
      ['butt', 'saddle', 'pad'].flatMap((form) => [
        `wrong-type /welding/${form}/travelSpeed`,
        `below-range /welding/${form}/torchFlow`,
      ]),
    );
    expect(problemsIn(third({ purge: { ...PURGE, ventHoles: 'some' } }))).toEqual([
      'not-one-of /purge/holes/underSaddles',
    ]);
    const { room: _, ...roomless } = PURGE;
    expect(problemsIn(third({ purge: roomless }))).toEqual(['wrong-type /purge/room']);
    expect(problemsIn(third({ welding: { ...WELDING, colour: 'blue' } }))).toEqual(['unknown-field /welding/colour']);
  });

  it.each([{ purge: null }, { purge: { ...PURGE, room: 3 } }, { welding: 7 }, { fixing: 'x' }, { asTyped: 3 }])(
    'is never taken and never throws: %j',
    (damage) => {
      expect(problemsIn(third(damage)).length).toBeGreaterThan(0);
      expect(() => withWelds({ version: 3, ...damage })).not.toThrow();
    },
  );

  it('with a fixing that is none keeps it for the check to refuse', () => {
    expect(problemsIn(third({ fixing: [5] }))).toEqual(['wrong-type /fixing/0']);
  });
});
