import { describe, expect, it } from 'vitest';
import type { Document } from '../../server/job/check-value.ts';
import { newJob } from '../../server/job/default-job.ts';
import { JOB_VERSION, type Job } from '../../server/job/job.ts';
import { upgradeJob } from '../../server/job/upgrade.ts';
import { withSite } from '../../server/job/version-5.ts';
import { plan } from '../../server/solver/plan.ts';
import { jobBeforeQuotes } from './job-before-quotes.ts';
import { problemsIn, upgraded } from './upgraded.ts';

const at = { member: 'hoop', spot: 'start', number: 1, distance: 0 };
const origin = { x: 0, y: 0, z: 0 };
const FOOT = { fixing: 'foot', name: 'left', at, off: origin, lands: null, tolerance: null, plate: null };
const PAD = { ...FOOT, fixing: 'pad', name: 'right', at: { ...at, spot: 'finish' } };
/** Right beside the right leg of a new hoop, and one that leans far off. */
const PILE = {
  fixing: 'post',
  name: 'pile',
  at: { x: 300, y: -200, z: 40 },
  axis: { x: 0, y: 0, z: 2 },
  diameter: 60,
  clearance: 5,
};
const RAKED = { ...PILE, name: 'raked', at: { x: 5000, y: 1, z: 2 }, axis: { x: 1, y: 0, z: 3 }, clearance: 0 };

const fourth = (more: Document = {}): Document => {
  const { site: _site, ...rest } = jobBeforeQuotes('hoop');
  return { ...rest, version: 4, fixing: [FOOT, PILE, PAD, RAKED], ...more };
};

const thingOf = ({ name, at: place, axis, diameter, clearance }: typeof PILE) => ({
  name,
  shape: { shape: 'cylinder', at: place, axis: { by: 'axes', vector: axis }, diameter, ends: null },
  clearance,
  swing: null,
});

describe('a job of version 4', () => {
  const job = upgraded(fourth());

  it('has its posts as things of the site in order, each exactly where it was, and keeps its other fixing points', () => {
    expect(job.site.things).toEqual([PILE, RAKED].map(thingOf));
    expect(job.fixing).toEqual([FOOT, PAD]);
  });

  it('starts the rest of the site as a new job does, the frame in its own axes', () => {
    const { things, placing } = job.site;
    expect(job.site).toEqual({ ...newJob('straight').site, things, placing });
    expect(job.site.placing).toEqual({
      by: 'axes',
      origin,
      x: { ...origin, x: 1 },
      y: { ...origin, y: 1 },
    });
  });

  it('changes nothing else', () => {
    for (const [name, value] of Object.entries(fourth()))
      if (!['version', 'fixing', 'rates'].includes(name)) expect(job[name as keyof Job], name).toEqual(value);
  });

  it('has the same gaps in the axes of the frame: a post stands where it stood', () => {
    const { site, frame } = plan(job);
    const [pile] = site!.gaps;
    expect(pile).toMatchObject({ thing: 'pile', field: '/site/things/0', keptClear: true });
    const place = pile!.rows.find(({ name }) => name === 'hoop')!.onThing;
    expect([place.x, place.y]).toEqual([300, -200]);
    expect(frame).not.toBeNull();
  });

  it('moves every text to where its field is now', () => {
    const asTyped = {
      '/fixing/0/off/x': 'a',
      '/fixing/1/at/x': '300,0',
      '/fixing/1/axis/z': '2.0',
      '/fixing/1/diameter': '60 mm',
      '/fixing/1/clearance': '5 mm',
      '/fixing/1/name': 'n',
      '/fixing/2/at/distance': 'b',
      '/fixing/3/axis/x': '1.0',
      '/tube/wall': '1.65 mm',
      '/fixing': 'x',
      '/fixing/9/at': 'gone',
    };
    expect(upgraded(fourth({ asTyped })).asTyped).toEqual({
      '/fixing/0/off/x': 'a',
      '/site/things/0/shape/at/x': '300,0',
      '/site/things/0/shape/axis/vector/z': '2.0',
      '/site/things/0/shape/diameter': '60 mm',
      '/site/things/0/clearance': '5 mm',
      '/site/things/0/name': 'n',
      '/fixing/1/at/distance': 'b',
      '/site/things/1/shape/axis/vector/x': '1.0',
      '/tube/wall': '1.65 mm',
      '/fixing': 'x',
      '/fixing/9/at': 'gone',
    });
  });

  it('is the same again when it is read as it is written now', () => {
    expect(job.version).toBe(JOB_VERSION);
    const written: unknown = JSON.parse(JSON.stringify(job));
    expect(upgradeJob(written)).toEqual({ ok: true, document: written });
    expect(upgraded(written)).toEqual(job);
  });
});

describe('a damaged document of version 4', () => {
  it.each([
    [{ ...PILE, diameter: 0 }, 'below-range /site/things/0/shape/diameter'],
    [{ ...PILE, diameter: 'thick' }, 'wrong-type /site/things/0/shape/diameter'],
    [{ ...PILE, clearance: -1 }, 'below-range /site/things/0/clearance'],
    [{ ...PILE, axis: { x: 0, y: 0 } }, 'missing-field /site/things/0/shape/axis/vector/z'],
    [{ ...PILE, colour: 'red' }, 'unknown-field /site/things/0/colour'],
    [{ ...FOOT, tolerance: 0 }, 'below-range /fixing/0/tolerance'],
    [5, 'wrong-type /fixing/0'],
  ])('is refused at the field that is wrong, where it stands now', (point, problem) => {
    expect(problemsIn(fourth({ fixing: [point] }))).toEqual([problem]);
  });

  it.each([{ fixing: 'x' }, { fixing: null }, { asTyped: 3 }, { fixing: [{ fixing: 'post' }] }])(
    'is never taken and never throws: %j',
    (damage) => {
      expect(problemsIn(fourth(damage)).length).toBeGreaterThan(0);
      expect(() => withSite({ version: 4, ...damage })).not.toThrow();
    },
  );
});
