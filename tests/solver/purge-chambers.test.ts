import { describe, expect, it } from 'vitest';
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
  seat,
  SPLICE,
  UP,
  type Cut,
} from './purge-frames.ts';

const chambersOf = (...made: Parameters<typeof purged>): readonly Chamber[] => purged(...made).purge?.chambers ?? [];
const stations = (spots: readonly { member: string; station: number }[]) =>
  spots.map(({ member: name, station }) => [name, Math.round(station)]);

describe('one tube', () => {
  it('is one chamber with the printed volume and times', () => {
    const [chamber, ...others] = chambersOf(jobOf([MAIN], { prePurgeFlow: 5 }), SPLICE);
    expect(others).toEqual([]);
    // 34.8 mm × 3 m at 5 L/min to 50 ppm, computed beforehand
    expect(chamber?.volume.value.toFixed(4)).toBe('2.8534');
    expect(chamber?.plug.time.value.toFixed(1)).toBe('34.2');
    expect(chamber?.plug.volumes.value).toBeCloseTo(1, 12);
    expect(chamber?.wellMixed.time.value.toFixed(0)).toBe('287');
    expect(chamber?.wellMixed.volumes.value.toFixed(3)).toBe('8.381');
    expect(chamber?.printed).toEqual(chamber?.wellMixed);
    expect(chamber?.welds).toEqual(['1']);
    expect(stations([chamber!.feed, ...chamber!.vents])).toEqual([
      ['main', 0],
      ['main', 3000],
    ]);
    expect(chamber?.plugs.map(({ end }) => end)).toEqual(['start', 'finish']);
    expect(stations(chamber!.taped)).toEqual([['main', 1500]]);
    expect(chamber?.paths.map(({ stretches, share }) => [stretches, share.value])).toEqual([
      [[{ member: 'main', from: 0, to: 3000 }], 100],
    ]);
  });

  it('the long-tube estimate lies between plug and well mixed, and is printed where it is chosen', () => {
    const [chamber] = chambersOf(jobOf([MAIN], { model: 'long-tube' }), SPLICE);
    const [plug, long, mixed] = [chamber?.plug, chamber?.longTube, chamber?.wellMixed].map((one) => one?.time.value);
    expect(plug).toBeLessThan(long!);
    expect(long).toBeLessThan(mixed!);
    // the closed form without the mixed share at the feed: 1.973 volumes
    expect(chamber?.longTube?.volumes.value).toBeGreaterThan(1.973);
    expect(chamber?.printed).toEqual(chamber?.longTube);
  });

  it('is cut into stretches by holes that nobody uses, and takes as long', () => {
    const plain = chambersOf(jobOf([MAIN], { model: 'long-tube' }), SPLICE);
    const drilled = { ...holes({ toAir: [airHole('main', 700), airHole('main', 2200)] }), model: 'long-tube' as const };
    const [chamber] = chambersOf(jobOf([MAIN], drilled), SPLICE);
    expect(chamber?.pluggedHoles).toEqual([1, 2]);
    expect(chamber?.printed.time.value).toBeCloseTo(plain[0]!.printed.time.value, 9);
    expect(chamber?.paths[0]?.stretches).toEqual([{ member: 'main', from: 0, to: 3000 }]);
  });

  it('a turbulent flow has no long-tube estimate and prints well mixed', () => {
    const [chamber] = chambersOf(jobOf([MAIN], { model: 'long-tube', prePurgeFlow: 60 }), SPLICE);
    expect(chamber?.longTube).toBeNull();
    expect(chamber?.printed).toEqual(chamber?.wellMixed);
  });

  it('is fed at its low end and vented at the high one, as held', () => {
    for (const [up, feed, height] of [
      [{ x: 2, y: 0, z: 0 }, 0, 3000],
      [{ x: -0.1, y: 0, z: 0 }, 3000, 3000],
      [{ x: -1, y: 0, z: 1 }, 3000, 3000 / Math.SQRT2],
    ] as const) {
      const [chamber] = chambersOf(jobOf([MAIN], { up }), SPLICE);
      expect(chamber?.feed.station).toBe(feed);
      expect(chamber?.rise.value).toBeCloseTo(height, 9);
      expect(chamber?.feed.height).toBe(0);
    }
  });

  it('takes feed and vent as typed', () => {
    const start = { member: 'main', end: 'start' as const };
    const finish = { member: 'main', end: 'finish' as const };
    const drilled = holes({ toAir: [airHole('main', 3000 - 20)] });
    for (const [typed, feed, vent] of [
      [{ feed: finish }, 3000, 0],
      [{ vent: start }, 3000, 0],
      [{ feed: start, vent: finish }, 0, 3000],
      [{ ...drilled, vent: { hole: 1 } }, 0, 2980],
    ] as const) {
      const [chamber] = chambersOf(jobOf([MAIN], typed), SPLICE);
      expect([chamber?.feed.station, chamber?.vents[0]?.station]).toEqual([feed, vent]);
    }
  });
});

describe('bores that connect', () => {
  it('a saddle without a hole connects none, and heats both', () => {
    const made = chambersOf(hoopJob([300]));
    expect(made.map(({ stretches, welds }) => [stretches[0]?.member, welds])).toEqual([
      ['hoop', ['S1', 'S2']],
      ['crossbar 1', ['S1', 'S2']],
    ]);
    expect(made[1]?.vents).toEqual([]);
    expect(made[1]?.paths).toEqual([]);
  });

  it('with holes they are one chamber, and the wait is that of the slowest way', () => {
    const [chamber, ...others] = chambersOf(hoopJob([300], holes({ underSaddles: 'all' })));
    expect(others).toEqual([]);
    expect(chamber?.welds).toEqual(['S1', 'S2']);
    const [round, across] = chamber!.paths;
    expect(across?.stretches.map((one) => one.member)).toEqual(['hoop', 'crossbar 1', 'hoop']);
    expect(round!.share.value + across!.share.value).toBeCloseTo(100, 9);
    // 34.8 mm × 861.9 mm at the flow across, and twice 300 mm at all of it
    const litres = (length: number) => (Math.PI * 34.8 ** 2 * length) / 4e6;
    const flow = across!.share.value / 10;
    const seconds = 60 * (litres(861.9) / flow + litres(600) / 10);
    expect(chamber?.plug.time.value).toBeCloseTo(seconds, 6);
    expect(chamber?.wellMixed.time.value).toBeCloseTo(seconds * Math.log(209_498 / 48), 6);
  });

  it('a member that no weld heats is not filled, unless it is open to one that is', () => {
    const cut: Cut[] = [{ member: 'hoop', station: 150 }];
    const names = (made: readonly Chamber[]) => made.map(({ stretches }) => stretches.map((one) => one.member));
    expect(names(chambersOf(hoopJob([300]), cut, true))).toEqual([['hoop']]);
    expect(names(chambersOf(hoopJob([300], holes({ underSaddles: 'all' })), cut, true))).toEqual([
      ['hoop', 'crossbar 1'],
    ]);
  });

  it('an end that would be a dead leg vents too, and one that would not is plugged', () => {
    const open = holes({ underSaddles: 'all' });
    const [chamber] = chambersOf(jobOf([MAIN, LEG], open));
    // of three ends that are level those with the longest way between them: 2500 mm and 600 mm
    expect(stations([chamber!.feed, ...chamber!.vents])).toEqual([
      ['main', 3000],
      ['leg', 600],
      ['main', 0],
    ]);
    expect(chamber?.deadLegs).toEqual([]);
    // fed at the leg, both ends of the main tube are needed; a hole between two of them is not
    const [fed] = chambersOf(jobOf([MAIN, LEG], { ...open, feed: { member: 'leg', end: 'finish' } }));
    expect(stations(fed!.vents)).toEqual([
      ['main', 3000],
      ['main', 0],
    ]);
    const drilled = holes({ underSaddles: 'all', toAir: [airHole('main', 2000)] });
    const [beside] = chambersOf(jobOf([MAIN, LEG], drilled));
    expect(beside?.pluggedHoles).toEqual([1]);
    expect(beside?.vents).toHaveLength(2);
  });

  it('a bore that ends blind is a dead leg; the numbers of diffusion are the printed ones', () => {
    for (const [length, printed] of [
      [100, '31 min'],
      [200, '2.0 h'],
      [300, '4.6 h'],
    ] as const) {
      const stub = member(
        'stub',
        [
          [500, 0, 0],
          [500, 19.05 + length, 0],
        ],
        { start: seat('main') },
      );
      const job = jobOf(
        [MAIN, stub],
        { ...holes({ underSaddles: 'all' }), up: UP.y },
        { fixing: [pad('stub', 'finish')] },
      );
      const [chamber] = chambersOf(job);
      const [leg] = chamber!.deadLegs;
      expect(leg?.stretches).toEqual([{ member: 'stub', from: 0, to: 19.05 + length }]);
      // counted from the wall of the main tube: 19.05 mm of it lie inside
      expect(leg?.length.value).toBeCloseTo(length, 9);
      expect(leg?.points).toBe('up');
      expect(leg?.welds).toEqual(['S1', 'P1']);
      const minutes = leg!.clears.value / 60;
      expect(minutes < 60 ? `${minutes.toFixed(0)} min` : `${(minutes / 60).toFixed(1)} h`).toBe(printed);
    }
  });

  it('a tube with one open end is fed by a lance to its far end', () => {
    const [, chamber] = chambersOf(jobOf([MAIN, LEG], { model: 'long-tube' }));
    expect(stations([chamber!.feed, ...chamber!.vents])).toEqual([
      ['leg', 600],
      ['leg', 600],
    ]);
    expect(chamber?.paths[0]?.stretches).toEqual([{ member: 'leg', from: 0, to: 600 }]);
    expect(chamber?.longTube).toBeNull();
    expect(chamber?.wellMixed.volumes.value.toFixed(3)).toBe('8.381');
  });

  it('a pad with a hole is an opening, one without is a wall', () => {
    const [open] = chambersOf(jobOf([MAIN], {}, { fixing: [pad('main', 'start', 8), pad('main', 'finish')] }), SPLICE);
    expect([open?.feed, ...open!.vents].map((one) => [one?.kind, one?.bore])).toEqual([
      ['plate', 8],
      ['plate', 8],
    ]);
    const [shut] = chambersOf(jobOf([MAIN], {}, { fixing: [pad('main', 'start'), pad('main', 'finish')] }));
    expect(shut?.vents).toEqual([]);
  });
});

it('nothing to weld is nothing to fill', () => {
  expect(purged(hoopJob([300]), [], true)).toEqual({ purge: null, findings: [] });
});
