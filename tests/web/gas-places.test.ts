import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { newJob } from '../../server/job/default-job.ts';
import { Job } from '../../server/job/job.ts';
import { Purge as PurgeSchema, type EndOfMember, type GasPlace, type Purge } from '../../server/job/purge.ts';
import { problemsOf } from '../../server/job/validate.ts';
import type { GasSpot } from '../../server/plan/purge.ts';
import { AIR_HOLES, freshAirHole, holeInDeadLeg, withoutAirHole } from '../../web/state/air-holes.ts';
import { gasOptions, gasSpotWords, samePlace, stretchWords, weldNames } from '../../web/state/gas-places.ts';
import { withRunReversed } from '../../web/state/reversed-run.ts';
import { MOST_AIR_HOLES, MOST_METER_READINGS } from '../../web/state/limits.ts';
import { isDrilled, strayExceptions, withDrilled, withHolesUnder } from '../../web/state/saddle-ends.ts';
import type { Tube } from '../../web/state/tubes.ts';
import { upKey, upOf, upOptions } from '../../web/state/up-directions.ts';

const hoop: Tube = { name: 'hoop', closed: false, pieces: [], bends: 2 };
const bar: Tube = { name: 'crossbar 1', closed: false, pieces: [], bends: 0 };
const ring: Tube = { name: 'ring', closed: true, pieces: [], bends: 4 };

const base = newJob('hoop');
const { units } = base;
const withPurge = (change: Partial<Purge>): Job => ({ ...base, purge: { ...base.purge, ...change } });
const holeAt = (distance: number): Purge['holes']['toAir'][number] => ({
  at: { member: 'hoop', spot: 'along', number: 1, distance },
  bore: 6,
});
const withHoles = (count: number, places: Partial<Pick<Purge, 'feed' | 'vent'>> = {}): Job =>
  withPurge({
    ...places,
    holes: { ...base.purge.holes, toAir: Array.from({ length: count }, (_, index) => holeAt(100 * (index + 1))) },
  });

const spot = (kind: GasSpot['kind'], station: number, name = ''): GasSpot => ({
  kind,
  name,
  member: 'hoop',
  station,
  point: { x: 0, y: 0, z: 0 },
  bore: 6,
  height: 0,
});

describe('a place where gas passes', () => {
  it('is called as a person finds it', () => {
    const said = (one: GasSpot): string => gasSpotWords(one, [hoop, bar], units);
    expect(said(spot('end', 0))).toBe('hoop, left foot');
    expect(said(spot('end', 2137.4))).toBe('hoop, right foot');
    expect(said(spot('plate', 0))).toBe('hole in the plate (hoop, left foot)');
    expect(said(spot('gap', 405.5, '1'))).toBe('gap of weld 1 (hoop, 405.5 mm from its datum end)');
    expect(said(spot('hole', 100, '2'))).toBe('vent hole 2 (hoop, 100.0 mm from its datum end)');
    expect(said(spot('dam', 250))).toBe('beside the dam (hoop, 250.0 mm from its datum end)');
    expect(gasSpotWords({ ...spot('end', 0), member: 'crossbar 1' }, [hoop, bar], units)).toBe('crossbar 1, start');
  });

  it('lies along its member whichever way the gas runs', () => {
    expect(stretchWords({ member: 'hoop', from: 400, to: 100 }, units)).toBe('hoop, 100.0 mm to 400.0 mm');
    expect([weldNames(['1']), weldNames(['1', '2A', 'S1'])]).toEqual(['weld 1', 'welds 1, 2A, S1']);
  });

  it('can be an open end or a hole, and stays to be seen where the frame has lost it', () => {
    const { holes } = withHoles(1).purge;
    const words = (chosen: GasPlace | null) => gasOptions([hoop, ring], holes, chosen).map((one) => one.words);
    const known = ['hoop, left foot', 'hoop, right foot', 'vent hole 1'];
    expect(words(null)).toEqual(known);
    expect(words({ member: 'hoop', end: 'finish' })).toEqual(known);
    expect(words({ hole: 3 })).toEqual([...known, 'vent hole 3']);
    expect(words({ member: 'gone', end: 'start' })).toEqual([...known, 'gone, start']);
    expect(samePlace({ hole: 1 }, { member: 'hoop', end: 'start' })).toBe(false);
  });
});

describe('vent holes to the air', () => {
  it('begin as values that the job takes, each where none is yet', () => {
    const piece = { kind: 'straight', number: 1, length: 900, radius: 0, angle: 0 } as const;
    const placed = (tube: Tube): readonly number[] => {
      let holes = base.purge.holes;
      for (let count = 0; count < 3; count += 1) {
        const fresh = freshAirHole([{ ...tube, pieces: [piece] }, hoop], holes);
        holes = { ...holes, toAir: [...holes.toAir, fresh!] };
      }
      expect(problemsOf(Job, withPurge({ holes }))).toEqual([]);
      return holes.toAir.map(({ at }) => at.distance);
    };
    expect(placed(bar)).toEqual([100, 800, 450]);
    expect(placed(ring)).toEqual([450, 100, 800]);
    expect(freshAirHole([], base.purge.holes)).toBeNull();
  });

  it('open a dead leg near its far end, whichever way it lies', () => {
    const along = (from: number, to: number) =>
      holeInDeadLeg(
        {
          stretches: [
            { member: 'hoop', from: 0, to: 350 },
            { member: 'bar', from, to },
          ],
        },
        6,
      );
    expect(along(300, 500)).toMatchObject({ at: { member: 'bar', spot: 'along', distance: 475 }, bore: 6 });
    expect(along(500, 0)).toMatchObject({ at: { distance: 25 } });
    expect(along(0, 20)).toMatchObject({ at: { distance: 10 } });
    expect(holeInDeadLeg({ stretches: [] }, 6)).toBeNull();
  });

  it('are as many as the job takes, and so are meter readings', () => {
    expect(PurgeSchema.properties.holes.properties.toAir).toMatchObject({ maxItems: MOST_AIR_HOLES });
    expect(PurgeSchema.properties.meter).toMatchObject({ maxItems: MOST_METER_READINGS });
  });

  it('take feed and vent along when one of them is taken out', () => {
    const number = fc.integer({ min: 1, max: 6 });
    fc.assert(
      fc.property(number, number, fc.integer({ min: 0, max: 5 }), (feed, vent, index) => {
        const job = withHoles(6, { feed: { hole: feed }, vent: { hole: vent } });
        const left = withoutAirHole(job, index).purge;
        const distance = (place: GasPlace | null, of: Purge): number | null =>
          place !== null && 'hole' in place ? (of.holes.toAir[place.hole - 1]?.at.distance ?? Number.NaN) : null;
        const gone = 100 * (index + 1);
        for (const side of ['feed', 'vent'] as const) {
          const before = distance(job.purge[side], job.purge);
          expect(distance(left[side], left)).toBe(before === gone ? null : before);
        }
        expect(left.holes.toAir.map(({ at }) => at.distance)).not.toContain(gone);
      }),
    );
  });

  it('leave an end where gas is fed, and take their texts along', () => {
    const feed = { member: 'hoop', end: 'start' } as const;
    const job = { ...withHoles(2, { feed }), asTyped: { [`${AIR_HOLES}/1/bore`]: '1/4 in' } };
    const left = withoutAirHole(job, 0);
    expect(left.purge.feed).toEqual(feed);
    expect(left.asTyped).toEqual({ [`${AIR_HOLES}/0/bore`]: '1/4 in' });
  });
});

describe('holes under saddle ends', () => {
  const end = fc.record<EndOfMember>({
    member: fc.constantFrom('crossbar 1', 'crossbar 2', 'crossbar 3'),
    end: fc.constantFrom('start', 'finish'),
  });
  const all = fc.constantFrom<'none' | 'all'>('none', 'all');

  it('are as they were ticked, whatever was ticked before', () => {
    fc.assert(
      fc.property(all, fc.array(fc.tuple(end, fc.boolean()), { maxLength: 12 }), (underSaddles, ticks) => {
        const last = new Map<string, { one: EndOfMember; drilled: boolean }>();
        let job = withHolesUnder(base, underSaddles);
        for (const [one, drilled] of ticks) {
          job = withDrilled(job, one, drilled);
          last.set(one.member + one.end, { one, drilled });
        }
        const { holes } = job.purge;
        for (const { one, drilled } of last.values()) expect(isDrilled(holes, one)).toBe(drilled);
        expect(isDrilled(holes, { member: 'untouched', end: 'start' })).toBe(underSaddles === 'all');
        expect(new Set(holes.except.map(({ member, end: side }) => member + side)).size).toBe(holes.except.length);
      }),
    );
  });

  it('are all alike again once all or none is chosen', () => {
    const job = withDrilled(base, { member: 'crossbar 1', end: 'start' }, true);
    expect(job.purge.holes.except).toEqual([{ member: 'crossbar 1', end: 'start' }]);
    expect(withHolesUnder(job, 'all').purge.holes).toMatchObject({ underSaddles: 'all', except: [] });
  });

  it('tell which exceptions are of no saddle', () => {
    const job = withDrilled(base, { member: 'gone', end: 'finish' }, true);
    const known = { member: 'crossbar 1', end: 'start', onto: 'hoop' } as const;
    expect(strayExceptions(withDrilled(job, known, true).purge.holes, [known])).toEqual([
      { end: { member: 'gone', end: 'finish' }, index: 0 },
    ]);
  });
});

describe('gas in a run that is typed from its other end', () => {
  it('goes in and out where it did, and the same holes are drilled', () => {
    const end = { member: 'run', end: 'start' } as const;
    const at = { member: 'run', spot: 'start', number: 1, distance: 0 } as const;
    const run = newJob('run');
    const holes = { ...run.purge.holes, except: [end], toAir: [{ at, bore: 6 }] };
    const job = { ...run, purge: { ...run.purge, feed: end, vent: { hole: 1 }, holes } };
    const { purge } = withRunReversed(job, '/frame/points');
    expect([purge.feed, purge.vent]).toEqual([{ member: 'run', end: 'finish' }, { hole: 1 }]);
    expect(purge.holes.except).toEqual([{ member: 'run', end: 'finish' }]);
    expect(purge.holes.toAir).toEqual([{ at: { ...at, spot: 'finish' }, bore: 6 }]);
    expect(withRunReversed(withRunReversed(job, '/frame/points'), '/frame/points')).toEqual(job);
  });
});

describe('the side that is up', () => {
  it('is one of six, however long the direction is, or none of them', () => {
    for (const { value } of upOptions('ring')) {
      const { x, y, z } = upOf(value);
      expect(upKey({ x: 7 * x, y: 7 * y, z: 7 * z })).toBe(value);
    }
    expect([upKey({ x: 0, y: 0, z: 0 }), upKey({ x: 1, y: 1, z: 0 })]).toEqual([null, null]);
  });

  it('speaks of feet and crossbar where a frame has them', () => {
    const words = (shape: 'hoop' | 'ring') => upOptions(shape).find(({ value }) => value === 'y')?.words;
    expect(words('hoop')).toContain('feet');
    expect(words('ring')).not.toContain('feet');
  });
});
