import { describe, expect, it } from 'vitest';
import { newJob } from '../../server/job/default-job.ts';
import type { Chamber } from '../../server/plan/purge.ts';
import { closestStation } from '../../server/solver/geometry/closest-station.ts';
import { airHole, geometryOf, holes, jobOf, member, purged, seat, withPurge } from './purge-frames.ts';

const chambersOf = (...made: Parameters<typeof purged>): readonly Chamber[] => purged(...made).purge?.chambers ?? [];

describe('rings', () => {
  const ringJob = newJob('ring');
  const [top, bottom] = [airHole('ring', 100), airHole('ring', 100)];

  it('gas runs both ways round from a hole to one on the far side, as through half of it at half the flow', () => {
    const length = chambersOf(ringJob)[0]!.length.value;
    const far = { ...bottom, at: { ...bottom.at, distance: 100 + length / 2 } };
    const drilled = withPurge(ringJob, { ...holes({ toAir: [top, far] }), model: 'long-tube' });
    const [chamber] = chambersOf(drilled);
    expect(chamber?.paths.map(({ share }) => share.value)).toEqual(
      [50, 50].map((half) => expect.closeTo(half, 9) as number),
    );
    const half = member('half', [
      [0, 0, 0],
      [length / 2, 0, 0],
    ]);
    const [tube] = chambersOf(jobOf([half], { model: 'long-tube', prePurgeFlow: 5 }), [
      { member: 'half', station: 50 },
    ]);
    expect(chamber?.longTube?.time.value).toBeCloseTo(tube!.longTube!.time.value, 6);
    expect(chamber?.wellMixed.time.value).toBeCloseTo(tube!.wellMixed.time.value, 6);
  });

  it('the closing weld alone opens it: fed there by a lance half round', () => {
    const [chamber] = chambersOf(ringJob);
    expect([chamber?.feed.kind, chamber?.feed.name, chamber?.feed.station]).toEqual(['gap', 'C1', 0]);
    expect(chamber?.paths).toHaveLength(2);
    expect(chamber?.taped).toEqual([]);
  });
});

describe('a ring with a bar across its middle', () => {
  const frame = [
    member(
      'ring',
      [
        [0, 0, 0],
        [1200, 0, 0],
        [1200, 900, 0],
        [0, 900, 0],
      ],
      { closed: true },
    ),
    member(
      'bar',
      [
        [0, 450, 0],
        [1200, 450, 0],
      ],
      { start: seat('ring'), finish: seat('ring') },
    ),
  ];
  const drilled = holes({ underSaddles: 'all' });
  const ring = geometryOf(jobOf(frame)).members[0]!;
  const at = (x: number, y: number) => closestStation(ring.centreline, { x, y, z: 0 })!.station;
  /** Fed below the middle of the bar and vented above it, the feed so far aside [mm]. */
  const made = (aside: number) =>
    chambersOf(
      jobOf(frame, {
        ...holes({ ...drilled.holes, toAir: [airHole('ring', at(600 + aside, 0)), airHole('ring', at(600, 900))] }),
        feed: { hole: 1 },
      }),
      [{ member: 'ring', station: at(1200, 200) }],
      true,
    )[0]!;

  it('where both halves balance, or all but, the bar is a dead leg and not a way that takes days', () => {
    for (const aside of [0, 0.01, 2]) {
      const { paths, deadLegs, wellMixed } = made(aside);
      expect(paths).toHaveLength(2);
      // from the middle to either wall of the ring
      expect(deadLegs.map(({ stretches, length }) => [stretches[0]?.member, length.value])).toEqual([
        ['bar', expect.closeTo(600 - 19.05, 9)],
      ]);
      // and bleeds by a hole of 6 mm at either end: 105.6 ppm each into 10 L/min at first, 48 ppm in all at last
      const freedom = (6 ** 2 / (34.8 ** 2 * (1.65 + 1.5 * Math.PI))) * 1000;
      const number = freedom * 0.58095;
      let mu = 1;
      for (let step = 0; step < 200; step += 1) mu = Math.atan(number / mu);
      const first = (2 * 1.89e-5 * (Math.PI / 4) * 0.0348 ** 2 * freedom * 209_500 * 60_000) / 10;
      const share = (2 * number) / (number ** 2 + number + mu ** 2);
      const seconds = (Math.log((first * share) / 48) * 0.58095 ** 2) / (mu ** 2 * 1.89e-5);
      expect(seconds).toBeGreaterThan(2.5 * 3600);
      expect(wellMixed.time.value / seconds).toBeCloseTo(1, 2);
    }
  });

  it('well aside of it gas goes through the bar', () => {
    const { paths, deadLegs } = made(400);
    expect(deadLegs).toEqual([]);
    expect(paths.some(({ stretches }) => stretches.some((one) => one.member === 'bar'))).toBe(true);
  });
});
