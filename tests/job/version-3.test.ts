import { describe, expect, it } from 'vitest';
import { newJob } from '../../server/job/default-job.ts';
import type { Reading } from '../../server/job/came-back.ts';
import { JOB_VERSION, type Job } from '../../server/job/job.ts';
import { parseJob } from '../../server/job/validate.ts';
import { withReadings } from '../../server/job/version-3.ts';
import { plan } from '../../server/solver/plan.ts';
import { jobBeforeQuotes } from './job-before-quotes.ts';
import { upgraded } from './upgraded.ts';
import { versionOneJob } from './version-1-job.ts';

const outside = (value: number) => ({ value, reference: 'outside' });
const { closing, purge, welding } = versionOneJob;

/** A job of version 2 with a frame that came back. */
function versionTwo(frame: Readonly<Record<string, unknown>>, more: Readonly<Record<string, unknown>> = {}): object {
  const { fixing: _fixing, finish: _finish, ...fresh } = jobBeforeQuotes('hoop');
  return { ...fresh, version: 2, frame, closing, purge, welding, cameBack: { tapeAccuracy: 1.5, frame }, ...more };
}

const short = (reading: Reading): string =>
  reading.reading === 'size'
    ? `${reading.check} ${String(reading.index)} ${String(reading.value)} ${reading.reference}`
    : reading.reading === 'point'
      ? `${reading.at.spot} ${String(reading.at.number)} ${String(reading.x)} ${String(reading.y)} ${String(reading.z)}`
      : reading.reading === 'piece' || reading.reading === 'turn'
        ? `${reading.what} ${String(reading.piece)} ${String(reading.value)}`
        : reading.reading;

const readingsOf = (job: Job) => job.cameBack!.readings.map(short);

const hoop = {
  shape: 'hoop',
  width: outside(983),
  widthAtFeet: null,
  leftLeg: outside(701),
  rightLeg: outside(614),
  crossbar: { form: 'crowned', radius: 2400 },
  innerCrossbars: [{ fromFoot: { value: 351, reference: 'centre' } }],
};

describe('a frame of version 2 that came back', () => {
  it('gives a reading for each of its sizes, with the accuracy of its tape', () => {
    const job = upgraded(versionTwo(hoop));
    expect(job.version).toBe(JOB_VERSION);
    expect(job.cameBack!.tapeAccuracy).toBe(1.5);
    expect(readingsOf(job)).toEqual([
      'width-at-corners 0 983 outside',
      'width-at-feet 0 983 outside',
      'left-leg 0 701 outside',
      'right-leg 0 614 outside',
      'crossbar-from-foot 1 351 centre',
    ]);
  });

  it('gives a reading of its crown only where that is another than wanted', () => {
    const flatter = { ...hoop, crossbar: { form: 'crowned', radius: 2600 } };
    const job = upgraded(versionTwo(hoop, { cameBack: { tapeAccuracy: 1, frame: flatter } }));
    expect(readingsOf(job).at(-1)).toBe('radius 3 2600');
  });

  it.each([
    [{ shape: 'ring', width: outside(800), height: outside(500) }, ['width 0 800 outside', 'height 0 500 outside']],
    [
      { shape: 'offset', across: outside(200), angle: 40, first: outside(300), last: outside(310) },
      ['offset 0 200 outside', 'first-length 0 300 outside', 'last-length 0 310 outside', 'angle 2 40', 'angle 4 40'],
    ],
    [{ shape: 'straight', length: 900 }, ['length 0 900 centre']],
    [
      {
        shape: 'run',
        points: [
          { x: 0, y: 0, z: 0, radius: null },
          { x: 600, y: 0, z: 0, radius: null },
          { x: 600, y: 500, z: 10, radius: null },
        ],
      },
      ['start 1 0 0 0', 'corner 1 600 0 0', 'finish 1 600 500 10'],
    ],
  ] as const)('of any shape: %o', (frame, readings) => {
    const job = upgraded(versionTwo(frame));
    expect(readingsOf(job)).toEqual(readings);
    // what was typed as a frame is read back from the frame as it was wanted: it fits itself
    const { correction } = plan(job);
    expect(correction!.fit.misfit.value).toBeLessThan(0.01);
  });

  it('of members: chains piece by piece, paths by their points', () => {
    const axis = { x: 0, y: 0, z: 0 };
    const member = (name: string, path: object) => ({ name, path, start: { end: 'free' }, finish: { end: 'free' } });
    const chain = {
      by: 'chain',
      start: axis,
      direction: { ...axis, x: 1 },
      normal: { ...axis, z: 1 },
      pieces: [
        { piece: 'straight', length: 400 },
        { piece: 'arc', angle: 60, radius: null, rotation: 0, made: 'die' },
        { piece: 'straight', length: 300 },
        { piece: 'arc', angle: 30, radius: null, rotation: 20, made: 'die' },
        { piece: 'straight', length: 350 },
      ],
    };
    const at = (x: number, y: number) => ({ x, y, z: 900, radius: null });
    const path = { by: 'points', closed: false, points: [at(0, 0), at(500, 0)] };
    const job = upgraded(versionTwo({ shape: 'members', members: [member('a', chain), member('b', path)] }));
    expect(readingsOf(job)).toEqual([
      'length 1 400',
      'angle 2 60',
      'length 3 300',
      'angle 4 30',
      'rotation 4 20',
      'length 5 350',
      'start 1 0 0 900',
      'finish 1 500 0 900',
    ]);
  });

  it('that never came back stays so', () => {
    expect(upgraded(versionTwo(hoop, { cameBack: null })).cameBack).toBeNull();
  });
});

describe('the closing of version 2', () => {
  it.each([
    ['one', 1],
    ['two', 2],
    ['best', 2],
  ])('with %s joints a member: at most %i', (joints, most) => {
    const job = upgraded(versionTwo(hoop, { closing: { ...closing, joints } }));
    expect(job.closing).toEqual({
      ...newJob('hoop').closing,
      gap: closing.gap,
      kerf: closing.kerf,
      shrinkage: closing.shrinkage,
      mostJoints: most,
    });
  });

  it.each([
    ['splice-one', 'splice-fewest'],
    ['splice-two', 'splice-fairest'],
    ['splice-turned', 'splice-closest'],
    ['rebend', 'rebend'],
  ])('its way %s is now %s', (way, now) => {
    expect(upgraded(versionTwo(hoop, { closing: { ...closing, way } })).closing.way).toBe(now);
  });

  it('lets go of texts of fields that are no more, and of no others', () => {
    const asTyped = { '/cameBack/frame/width/value': '38 3/4', '/closing/spread': '13 in', '/closing/kerf': '1,2' };
    expect(upgraded(versionTwo(hoop, { asTyped })).asTyped).toEqual({ '/closing/kerf': '1,2' });
  });

  it('a way that never was is refused, not mended', () => {
    const parsed = parseJob(versionTwo(hoop, { closing: { ...closing, way: 'guess' } }));
    expect(parsed.ok ? [] : parsed.problems.map(({ field }) => field)).toEqual(['/closing/way']);
  });
});

it('damage is handed on to the check of the whole, never thrown', () => {
  for (const cameBack of [7, 'x', [], { frame: 3 }, { frame: { shape: 'hoop', width: 4, innerCrossbars: 'no' } }])
    expect(() => withReadings({ version: 2, cameBack, closing: [], asTyped: 3 })).not.toThrow();
});
