import { describe, expect, it } from 'vitest';
import type { LevelSet } from '../../server/job/level.ts';
import { parseJob } from '../../server/job/validate.ts';
import { withAngleSide, withAngleSize } from '../../web/state/level-angle.ts';
import {
  alongKey,
  freshReadings,
  freshSet,
  SET_KINDS,
  setAgain,
  untouchedKind,
} from '../../web/state/level-readings.ts';
import { isSetUsed, withoutSet } from '../../web/state/level-sets.ts';
import { FIRST_ANGLE, levelRead, NOON, withSets } from './level-read.ts';
import { withSite } from './made-up-site.ts';

describe('sets of level readings', () => {
  it('begin with the rows that their way of reading takes', () => {
    for (const kind of SET_KINDS) {
      const job = withSets(freshSet(kind, NOON));
      expect(parseJob(job).ok).toBe(true);
      expect(untouchedKind(job, 0)).toBe(kind);
    }
    expect(freshReadings('two-levels').map(({ reading }) => reading)).toEqual(['incline', 'incline']);
    expect(freshReadings('marks-and-level').map(({ reading }) => reading)).toEqual(['height', 'height', 'incline']);
    const marks = freshReadings('three-heights').map((one) => (one.reading === 'height' ? one.at : null)!);
    const [a, b, c] = [marks[0]!, marks[1]!, marks[2]!];
    expect((b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x)).not.toBe(0);
  });

  it('are touched by the first letter, so that no other way of reading takes them away', () => {
    expect(untouchedKind(withAngleSize(levelRead, FIRST_ANGLE, ''), 0)).toBeNull();
    expect(untouchedKind(withAngleSide(levelRead, FIRST_ANGLE, true), 0)).toBeNull();
    expect(untouchedKind(withSets({ ...freshSet('two-levels', NOON), readings: [] }), 0)).toBeNull();
  });

  it('are read again along the same lines with the last numbers, at a new time and without the note', () => {
    const last: LevelSet = { ...freshSet('three-heights', NOON), note: 'at the jetty' };
    expect(setAgain(last, '2026-11-26T15:00')).toEqual({
      taken: '2026-11-26T15:00',
      note: '',
      readings: last.readings,
    });
  });

  it('know the two usual lines from any other', () => {
    expect(alongKey({ x: 2, y: 0, z: 0 })).toBe('ahead');
    expect(alongKey({ x: 0, y: 1, z: 0 })).toBe('port');
    for (const other of [
      { x: -1, y: 0, z: 0 },
      { x: 1, y: 1, z: 0 },
      { x: 1, y: 0, z: 0.1 },
      { x: 0, y: 0, z: 0 },
    ])
      expect(alongKey(other)).toBeNull();
  });

  it('go without a trace, and what was measured while another held goes on naming that one', () => {
    const set = freshSet('two-levels', NOON);
    const lean = (number: number) => ({
      name: `line ${String(number)}`,
      direction: { by: 'plumb' as const, ahead: 1, port: 2, set: number },
    });
    const job = withSite({ directions: [lean(1), lean(3)] }, withSets(set, set, set));
    expect([0, 1, 2].map((index) => isSetUsed(job, index))).toEqual([true, false, true]);
    const left = withoutSet(job, 1);
    expect(left.site.level.sets).toHaveLength(2);
    expect(left.site.directions.map(({ direction }) => 'set' in direction && direction.set)).toEqual([1, 2]);
  });
});
