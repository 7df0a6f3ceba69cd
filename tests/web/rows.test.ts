import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { newJob } from '../../server/job/default-job.ts';
import type { Reading } from '../../server/job/came-back.ts';
import type { Member } from '../../server/job/frame.ts';
import type { Job } from '../../server/job/job.ts';
import { problemsOf } from '../../server/job/validate.ts';
import { Job as JobSchema } from '../../server/job/job.ts';
import { plan } from '../../server/solver/plan.ts';
import { freshPoint } from '../../web/state/fresh-point.ts';
import { withRunReversed } from '../../web/state/reversed-run.ts';
import { rowsAt, withoutRow, withRowInserted, withRowsReversed } from '../../web/state/rows.ts';
import { withText, type FieldForm } from '../../web/state/typed-text.ts';

const length: FieldForm = { kind: 'length', mayBeEmpty: false };
const list = '/frame/points';
const run = newJob('run');
const point = (x: number, y: number, z = 0) => ({ x, y, z, radius: null });
const typed = withText(run, `${list}/1/x`, '24 in', length);

describe('a row between others', () => {
  it('moves the texts below it down, and is gone without a trace', () => {
    const added = withRowInserted(typed, list, 1, point(7, 8));
    expect(rowsAt(added, list)[1]).toEqual(point(7, 8));
    expect(added.asTyped).toEqual({ [`${list}/2/x`]: '24 in' });
    expect(withRowInserted(typed, list, 2, point(7, 8)).asTyped).toEqual({ [`${list}/1/x`]: '24 in' });
    fc.assert(
      fc.property(fc.nat(rowsAt(typed, list).length), (at) => {
        expect(withoutRow(withRowInserted(typed, list, at, point(1, 2)), list, at)).toEqual(typed);
      }),
    );
  });
});

describe('a fresh point', () => {
  const points = [point(0, 0), point(300, 400, 100), point(300, 800)];

  it('is half way between its neighbours', () => {
    expect(freshPoint(points, 1)).toEqual(point(150, 200, 50));
    expect(freshPoint(points, 2)).toEqual(point(300, 600, 50));
  });

  it('goes on straight at both ends', () => {
    expect(freshPoint([point(0, 0), point(300, 400)])).toEqual(point(540, 720));
    expect(freshPoint([point(0, 0), point(300, 400)], 0)).toEqual(point(-240, -320));
    expect(freshPoint([point(5, 6)])).toEqual(point(405, 6));
    expect(freshPoint([])).toEqual(point(0, 0));
  });

  it('stands between the last and the first where the run is closed', () => {
    expect(freshPoint(points, 3, true)).toEqual(point(150, 400));
    expect(freshPoint(points, 0, true)).toEqual(point(150, 400));
  });
});

describe('a run from its other end', () => {
  it('takes its texts along and is the same after two turns', () => {
    const count = rowsAt(typed, list).length;
    expect(withRowsReversed(typed, list).asTyped).toEqual({ [`${list}/${String(count - 2)}/x`]: '24 in' });
    expect(withRunReversed(withRunReversed(typed, list), list)).toEqual(typed);
  });

  it('is the same tube, with gas fed where it was', () => {
    const fed: Job = { ...run, purge: { ...run.purge, feed: { member: 'run', end: 'start' } } };
    const turned = withRunReversed(fed, list);
    expect(turned.purge.feed).toEqual({ member: 'run', end: 'finish' });
    const cut = (job: Job) => plan(job).frame?.members[0]?.developedLength.value ?? Number.NaN;
    expect(cut(turned)).toBeCloseTo(cut(fed), 9);
    const start = plan(turned).frame?.members[0]?.start.point;
    const finish = plan(fed).frame?.members[0]?.finish.point;
    for (const axis of ['x', 'y', 'z'] as const) expect(start?.[axis]).toBeCloseTo(finish?.[axis] ?? Number.NaN, 9);
  });

  it('takes the ends of its member, its readings and what it is fastened to along', () => {
    const axes = { x: 0, y: 0, z: 0 };
    const members: Member[] = [
      {
        name: 'rail',
        path: { by: 'points', points: [point(0, 0), point(0, 900)], closed: false },
        start: { end: 'free' },
        finish: { end: 'free' },
      },
      {
        name: 'rung',
        path: { by: 'points', points: [point(0, 400), point(500, 400), point(500, 900)], closed: false },
        start: { end: 'saddle', onto: 'rail' },
        finish: { end: 'free' },
      },
    ];
    const start = { member: 'rung', spot: 'start' as const, number: 1, distance: 0 };
    const readings: Reading[] = [
      { reading: 'point', at: start, x: 1, y: 2, z: 3, accuracy: null },
      {
        reading: 'distance',
        from: { ...start, member: 'rail' },
        to: start,
        reference: 'centre',
        value: 9,
        accuracy: 2,
      },
    ];
    const fixing = [{ fixing: 'pad' as const, name: '', at: start, off: axes, lands: axes, tolerance: 2, plate: null }];
    const fresh = newJob('members');
    const job: Job = {
      ...fresh,
      frame: { shape: 'members', members },
      fixing,
      cameBack: { tapeAccuracy: 1, angleAccuracy: 0.2, readings },
    };
    const turned = withRunReversed(job, '/frame/members/1/path/points');
    expect(problemsOf(JobSchema, turned)).toEqual([]);
    if (turned.frame.shape !== 'members') throw new Error('The shape has changed.');
    expect(turned.frame.members[0]).toEqual(members[0]);
    expect(turned.frame.members[1]).toMatchObject({ start: { end: 'free' }, finish: { end: 'saddle', onto: 'rail' } });
    expect(rowsAt(turned, '/frame/members/1/path/points')[0]).toEqual(point(500, 900));
    expect(turned.fixing[0]).toMatchObject({ at: { ...start, spot: 'finish' } });
    expect(turned.cameBack?.readings[0]).toMatchObject({ at: { ...start, spot: 'finish' }, x: 1 });
    expect(turned.cameBack?.readings[1]).toMatchObject({
      from: { member: 'rail', spot: 'start' },
      to: { spot: 'finish' },
    });
    expect(withRunReversed(turned, '/frame/members/1/path/points')).toEqual(job);
  });

  it('is closed in the same straight, whichever it was', () => {
    const corners = [point(0, 0), point(900, 0), point(900, 700), point(0, 500)];
    const ring: Member = {
      name: 'ring',
      path: { by: 'points', points: corners, closed: true },
      start: { end: 'free' },
      finish: { end: 'free' },
    };
    const fresh = newJob('members');
    for (const closingStraight of [1, 2, 3, 4]) {
      const members = [{ member: 'ring', from: 'start' as const, side: 'usual' as const, closingStraight }];
      const job: Job = {
        ...fresh,
        frame: { shape: 'members', members: [ring] },
        bending: { ...fresh.bending, members },
      };
      const turned = withRunReversed(job, '/frame/members/0/path/points');
      const weld = (of: Job) => plan(of).frame!.members[0]!.start.point;
      for (const axis of ['x', 'y'] as const) expect(weld(turned)[axis]).toBeCloseTo(weld(job)[axis], 6);
    }
  });
});
