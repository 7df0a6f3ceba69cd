import { describe, expect, it } from 'vitest';
import type { Job } from '../../server/job/job.ts';
import type { LevelSet } from '../../server/job/level.ts';
import { parseJob } from '../../server/job/validate.ts';
import { READ_ANGLE, withAngleSide, withAngleSize } from '../../web/state/level-angle.ts';
import {
  alongKey,
  firstToRead,
  freshReadings,
  freshSet,
  isRead,
  LEVEL_SETS,
  SET_KINDS,
  setAgain,
  setInUse,
  untouchedKind,
  withTimeNoted,
} from '../../web/state/level-readings.ts';
import { setWords } from '../../web/state/level-words.ts';
import { withValue } from '../../web/state/pointer.ts';
import { isSetUsed, withoutSet } from '../../web/state/level-sets.ts';
import { FIRST_ANGLE, levelBegun, NOON, readSet, withSets } from './level-read.ts';
import { withSite } from './made-up-site.ts';

describe('sets of level readings', () => {
  it('begin with the rows that their way of reading takes', () => {
    for (const kind of SET_KINDS) {
      const job = withSets(freshSet(kind));
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
    expect(untouchedKind(withAngleSize(levelBegun, FIRST_ANGLE, '', READ_ANGLE), 0)).toBeNull();
    expect(untouchedKind(withAngleSide(levelBegun, FIRST_ANGLE, true, READ_ANGLE), 0)).toBeNull();
    expect(untouchedKind(withSets({ ...freshSet('two-levels'), readings: [] }), 0)).toBeNull();
  });

  it('are read again along the same lines, with no number, no time and no note of before', () => {
    const last: LevelSet = { ...readSet('marks-and-level'), note: 'at the jetty' };
    const again = setAgain(last);
    expect([again.taken, again.note, isRead(last), isRead(again)]).toEqual(['', '', true, false]);
    expect(again.readings).toEqual(freshReadings('marks-and-level'));
    expect([setInUse([last, again]), setInUse([again]), setInUse([last, last])]).toEqual([1, 0, 2]);
    expect([firstToRead(again), firstToRead(freshSet('two-levels'))]).toEqual([
      'readings/0/height',
      'readings/0/angle',
    ]);
    expect([setWords(last, 0), setWords(again, 1)]).toEqual(['Set 1, 12:00 PM', 'Set 2, not read yet']);
  });

  it('note the time with the first number, and never again', () => {
    const typed = (job: Job, text: string): Job =>
      withTimeNoted(job, withAngleSize(job, FIRST_ANGLE, text, READ_ANGLE), 0, NOON);
    const taken = ({ site }: Job): string => site.level.sets[0]!.taken;
    expect(taken(typed(levelBegun, ''))).toBe('');
    expect(taken(typed(levelBegun, 'x'))).toBe('');
    const first = typed(levelBegun, '0');
    expect(taken(first)).toBe(NOON);
    const cleared = withValue(first, `${LEVEL_SETS}/0/taken`, '');
    expect(taken(typed(cleared, '0.8'))).toBe('');
    const pressed = withValue(levelBegun, `${LEVEL_SETS}/0/taken`, '2026-11-26T11:50');
    expect(taken(typed(pressed, '0.8'))).toBe('2026-11-26T11:50');
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
    const set = freshSet('two-levels');
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
