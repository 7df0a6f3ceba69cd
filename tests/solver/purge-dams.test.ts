import { describe, expect, it } from 'vitest';
import { newJob } from '../../server/job/default-job.ts';
import type { Job } from '../../server/job/job.ts';
import type { Chamber } from '../../server/plan/purge.ts';
import {
  airHole,
  holes,
  hoopJob,
  jobOf,
  LEG,
  MAIN,
  member,
  pad,
  purged,
  SPLICE,
  UP,
  withPurge,
} from './purge-frames.ts';

const DAMS = { extent: 'dams', model: 'long-tube' } as const;
const chambersOf = (...made: Parameters<typeof purged>): readonly Chamber[] => purged(...made).purge?.chambers ?? [];
const codes = (...made: Parameters<typeof purged>) => purged(...made).findings.map(({ code }) => code);
const stretches = (made: readonly Chamber[]) =>
  made.map((one) => one.stretches.map(({ member: name, from, to }) => [name, Math.round(from), Math.round(to)]));

describe('pockets between dams', () => {
  it('one for each joint, well mixed only', () => {
    const made = chambersOf(jobOf([MAIN], DAMS), [...SPLICE, { member: 'main', station: 2500 }]);
    expect(stretches(made)).toEqual([[['main', 1350, 1650]], [['main', 2350, 2650]]]);
    expect(made[0]?.dams.map(({ station }) => station)).toEqual([1350, 1650]);
    expect([made[0]?.feed, ...made[0]!.vents].map((one) => [one?.kind, one?.station])).toEqual([
      ['dam', 1350],
      ['dam', 1650],
    ]);
    expect(made[0]?.length.value).toBe(300);
    expect(made[0]?.longTube).toBeNull();
    expect(made[0]?.printed.volumes.value.toFixed(3)).toBe('8.381');
  });

  it('two that overlap are one', () => {
    const cuts = [...SPLICE, { member: 'main', station: 1700 }];
    expect(stretches(chambersOf(jobOf([MAIN], DAMS), cuts))).toEqual([[['main', 1350, 1850]]]);
    const apart = [...SPLICE, { member: 'main', station: 1801 }];
    expect(chambersOf(jobOf([MAIN], DAMS), apart)).toHaveLength(2);
  });

  it('a dam beyond an open end is a plug there', () => {
    const [chamber] = chambersOf(jobOf([MAIN], DAMS), [{ member: 'main', station: 60 }]);
    expect(chamber?.stretches).toEqual([{ member: 'main', from: 0, to: 210 }]);
    expect(chamber?.dams.map(({ station }) => station)).toEqual([210]);
    expect(chamber?.plugs.map(({ end }) => end)).toEqual(['start']);
    expect([chamber?.feed.kind, chamber?.vents[0]?.kind]).toEqual(['end', 'dam']);
  });

  it('the feed is at the lower dam, or on the side that is typed', () => {
    const fed = (change: Partial<Job['purge']>) =>
      chambersOf(jobOf([MAIN], { ...DAMS, ...change }), SPLICE)[0]?.feed.station;
    expect(fed({ up: UP.x })).toBe(1350);
    expect(fed({ up: { x: -1, y: 0, z: 0 } })).toBe(1650);
    expect(fed({ feed: { member: 'main', end: 'finish' } })).toBe(1650);
    expect(fed({ vent: { member: 'main', end: 'start' } })).toBe(1650);
  });

  it('a saddle has a pocket in both bores: at its wall the hose goes through to it', () => {
    const made = chambersOf(jobOf([MAIN, LEG], DAMS));
    expect(stretches(made)).toEqual([[['main', 350, 650]], [['leg', 0, 150]]]);
    expect(made.map(({ welds }) => welds)).toEqual([['S1'], ['S1']]);
    expect([made[1]?.feed.station, made[1]?.vents[0]?.station]).toEqual([150, 150]);
    expect(made[1]?.paths[0]?.stretches).toEqual([{ member: 'leg', from: 0, to: 150 }]);
    expect(codes(jobOf([MAIN, LEG], DAMS))).not.toContain('one-opening');
  });

  it('with a hole under it both are one, and gas goes on through the third dam', () => {
    const [chamber, ...others] = chambersOf(jobOf([MAIN, LEG], { ...DAMS, ...holes({ underSaddles: 'all' }) }));
    expect(others).toEqual([]);
    expect(chamber?.vents).toHaveLength(2);
    expect(chamber?.deadLegs).toEqual([]);
    // the saddle was welded long ago: its hole leads gas out of the pocket of a joint beside it all the same
    const beside = chambersOf(
      jobOf([MAIN, LEG], { ...DAMS, ...holes({ underSaddles: 'all' }) }),
      [{ member: 'main', station: 560 }],
      true,
    );
    expect(stretches(beside)).toEqual([
      [
        ['main', 410, 710],
        ['leg', 0, 150],
      ],
    ]);
  });

  it('a dam that no hose reaches is a wall', () => {
    // the crossbar has no opening: nothing gets to its dams
    const made = chambersOf(hoopJob([300], DAMS));
    expect(made.map(({ vents }) => vents.length)).toEqual([1, 0, 1, 0]);
    expect(codes(hoopJob([300], DAMS))).toContain('closed-chamber');
    const drilled = holes({ toAir: [airHole('crossbar 1', 430)] });
    expect(chambersOf(hoopJob([300], { ...DAMS, ...drilled })).map(({ vents }) => vents.length)).toEqual([1, 1, 1, 1]);
  });

  it('a pocket over the seam of a ring is in two stretches, and dams far apart fill all of it', () => {
    const ring = newJob('ring');
    const length = chambersOf(ring)[0]!.length.value;
    const drilled = { ...holes({ toAir: [airHole('ring', length / 2)] }), extent: 'dams' as const };
    const [chamber] = chambersOf(withPurge(ring, { ...drilled, damDistance: 50 }));
    expect(chamber?.stretches).toEqual([
      { member: 'ring', from: expect.closeTo(length - 50, 6) as number, to: length },
      { member: 'ring', from: 0, to: expect.closeTo(50, 6) as number },
    ]);
    expect(chamber?.length.value).toBeCloseTo(100, 9);
    const [whole] = chambersOf(withPurge(ring, { ...drilled, damDistance: length / 2 }));
    expect(whole?.dams).toEqual([]);
    expect(whole?.length.value).toBeCloseTo(length, 9);
  });

  it('a pad heats its own end', () => {
    const job = jobOf([MAIN], DAMS, { fixing: [pad('main', 'finish', 8)] });
    const [chamber] = chambersOf(job);
    expect(stretches([chamber!])).toEqual([[['main', 2850, 3000]]]);
    expect([chamber?.feed.kind, chamber?.vents[0]?.kind]).toEqual(['plate', 'dam']);
    expect(codes(job)).not.toContain('dam-beyond-end');
  });
});

describe('dams and bends', () => {
  /** Straights of 485 mm, bends of 115 mm radius: bent tube with welds near its bends. */
  const bent = member('bent', [
    [0, 0, 0],
    [600, 0, 0],
    [600, 600, 0],
    [0, 600, 0],
  ]);
  const wayOut = (damDistance: number, stations: readonly number[]) =>
    purged(
      jobOf([bent], { extent: 'dams', damDistance }),
      stations.map((station) => ({ member: 'bent', station })),
    ).findings.find(({ code }) => code === 'dam-in-bend')?.wayOut;

  it('a bend bars the distances between its ends, from each weld and to both sides', () => {
    const turn = (Math.PI / 2) * 115;
    // the first bend from 485 to 665.6; a weld at 300 reaches it from 185 to 365.6 mm
    for (const [distance, value] of [
      [184, undefined],
      [200, 185],
      [270, 185],
      [360, Math.ceil(185 + turn)],
      [366, undefined],
    ] as const)
      expect(wayOut(distance, [300])).toEqual(value === undefined ? undefined : { field: '/purge/damDistance', value });
    // a weld at 900 reaches the second bend from 135.6 mm on, so that 185 is barred as well
    expect(wayOut(200, [300, 900])).toEqual({ field: '/purge/damDistance', value: 135 });
  });

  it('nearer than 100 mm is no way out', () => {
    // at 60 mm before the bend: clear under 60 mm and beyond it
    expect(wayOut(100, [425])).toEqual({ field: '/purge/damDistance', value: Math.ceil(60 + (Math.PI / 2) * 115) });
  });

  it('dams stay inside where there is no open end to draw them out of', () => {
    const job = hoopJob([300], { extent: 'dams' });
    const named = purged(job).findings.flatMap(({ code, data }) =>
      code === 'dam-stays-inside' ? [data['member']] : [],
    );
    expect(named).toEqual(['crossbar 1']);
  });
});
