import { describe, expect, it } from 'vitest';
import { findingsRoom } from '../../server/language/en/findings-room.ts';
import { roomWords } from '../../server/language/en/room.ts';
import { FINDING_CODES } from '../../server/plan/finding-codes.ts';
import { codes, planned, said, type Room, type Used } from './made-up-room.ts';

describe('air that is dangerous', () => {
  it.each(['in', 'out'] as const)('is a stop, and the fan that is offered clears it, going %s', (fanWay) => {
    const made = planned({ fanFlow: 20, fanWay });
    const low = said(made, 'room-oxygen-low');
    expect(low).toMatchObject({
      grade: 'stop',
      field: '/purge/room/fanFlow',
      data: { value: made.room.oxygenFan.value, low: 19.5 },
    });
    // 51.25 times 10 L/min blown in, 52.25 times drawn out
    expect(low?.wayOut).toEqual({ field: '/purge/room/fanFlow', value: fanWay === 'in' ? 513 : 523 });
    const aired = planned({ fanFlow: Number(low?.wayOut?.value), fanWay });
    expect(codes(aired)).toEqual(['argon-caution', 'bottle-in-room']);
    expect(aired.room.oxygenFan.value).toBeGreaterThanOrEqual(20.5);
    expect(aired.room.leftOn.value).toBeGreaterThanOrEqual(20.5 - 1e-9);
    expect(aired.room.airToStaySafe.value).toBeLessThanOrEqual(Number(low?.wayOut?.value));
  });
  it('has no way out where all of the gas comes at once', () => {
    expect(said(planned({}, { seconds: 0 }), 'room-oxygen-low')?.wayOut).toBeNull();
  });
  it('is not said where the room is large', () => {
    expect(codes(planned({ volume: 30 }))).toEqual(['argon-caution', 'bottle-in-room']);
  });
});

describe('a fan that draws out less than comes in', () => {
  it('brings no air in, and a stronger one does', () => {
    const made = planned({ volume: 30, fanFlow: 10, fanWay: 'out' });
    const short = said(made, 'room-fan-short');
    expect(short).toMatchObject({
      grade: 'caution',
      field: '/purge/room/fanFlow',
      data: { value: 10, low: 10 },
      wayOut: { field: '/purge/room/fanFlow', value: 523 },
    });
    expect(codes(planned({ volume: 30, fanFlow: 523, fanWay: 'out' }))).toEqual(['argon-caution', 'bottle-in-room']);
  });
  it.each([
    [{ fanFlow: 10.1, fanWay: 'out' }],
    [{ fanFlow: 5, fanWay: 'in' }],
    [{ fanFlow: 0, fanWay: 'out' }],
  ] as const)('is not said of %j', (room) => {
    expect(said(planned({ volume: 30, ...room }), 'room-fan-short')).toBeUndefined();
  });
});

describe('a low space', () => {
  it('of 0.5 m³ is at the alarm after 3.5 min of 10 L/min, whatever the fan does', () => {
    const made = planned({ volume: 1000, lowVolume: 0.5, fanFlow: 10_000 });
    expect((made.room.low!.alarm.value / 60).toFixed(1)).toBe('3.5');
    expect(made.room.low?.oxygen.value).toBeCloseTo(20.9 * Math.exp(-1.2), 10);
    expect(said(made, 'low-space-fills')).toMatchObject({
      grade: 'stop',
      field: '/purge/room/lowVolume',
      data: { value: made.room.low?.alarm.value, oxygen: 6.2 },
      wayOut: null,
    });
  });
  it('is said where the work lasts longer than the alarm takes, and not where it is done before', () => {
    const fills = (minutes: number) =>
      said(planned({ volume: 30, lowVolume: 0.5 }, { litres: 10 * minutes, seconds: 60 * minutes }), 'low-space-fills');
    expect(fills(3.4)).toBeUndefined();
    expect(fills(3.5)).toBeDefined();
  });
});

describe('a low space that is larger than its room', () => {
  it('is told, and reckoned as large as the room', () => {
    const made = planned({ volume: 3, lowVolume: 8 });
    const field = '/purge/room/lowVolume';
    expect(said(made, 'low-space-larger')).toEqual({
      code: 'low-space-larger',
      grade: 'caution',
      field,
      data: { value: 8, high: 3 },
      wayOut: { field, value: 3 },
    });
    const after = planned({ volume: 3, lowVolume: 3 });
    expect(codes(after)).not.toContain('low-space-larger');
    expect(made.room.low?.oxygen.value).toBe(after.room.low?.oxygen.value);
    expect(made.room.low?.oxygen.value).toBeCloseTo(made.room.oxygenStill.value, 10);
  });
});

describe('what would kill is no mere note', () => {
  // two vent holes welded up in a locker: a few litres, a few minutes
  const locker = planned({ volume: 1.5 }, { litres: 60, seconds: 240, bottleLitres: 4270 });
  it('a locker that one bottle empties of air, and a night does too', () => {
    expect(locker.room.oxygenFan.value).toBeGreaterThan(19.5);
    expect(locker.room.bottleOut.value).toBe(0);
    expect(said(locker, 'bottle-in-room')).toEqual({
      code: 'bottle-in-room',
      grade: 'caution',
      field: '/purge/room/volume',
      data: { value: 0, low: 19.5 },
      wayOut: null,
    });
    expect(said(locker, 'argon-caution')).toMatchObject({ grade: 'caution', data: { night: 0.8 } });
  });
  it('a cabin of 8 m³ with a bottle of 20 L at 200 bar', () => {
    const value = planned({ volume: 8 }, { bottleLitres: 4270 }).room.bottleOut.value;
    expect(value.toFixed(1)).toBe('9.7');
    expect(said(planned({ volume: 8 }, { bottleLitres: 4270 }), 'bottle-in-room')?.data).toEqual({ value, low: 19.5 });
  });
  it('a bottle may be in a room that is large for it', () => {
    // 4.27 m³ are 1.4 of 20.9 parts of 63.7 m³
    expect(said(planned({ volume: 63.8 }, { bottleLitres: 4270 }), 'bottle-in-room')).toBeUndefined();
    expect(said(planned({ volume: 63.7 }, { bottleLitres: 4270 }), 'bottle-in-room')).toBeDefined();
  });
  const grade = (room: Partial<Room>, work: Partial<Used> = {}) => said(planned(room, work), 'argon-caution')?.grade;
  it('gas left on for a night, in still air or with too weak a fan', () => {
    // 10 L/min for 8 h are 4.8 m³: 69.2 m³ come to 19.5 %
    expect([grade({ volume: 69 }), grade({ volume: 70 })]).toEqual(['caution', 'note']);
    const brief = { litres: 10, seconds: 60 };
    expect([grade({ fanFlow: 138 }, brief), grade({ fanFlow: 140 }, brief)]).toEqual(['caution', 'note']);
  });
  it('work that lasts longer than still air does, for a fan may stop', () => {
    const lasting = (minutes: number) => grade({ fanFlow: 1000 }, { litres: 10 * minutes, seconds: 60 * minutes });
    expect([lasting(20), lasting(21)]).toEqual(['note', 'caution']);
  });
  it('a low space that fills in a night, however large and aired the room is', () => {
    const large = { volume: 10_000, fanFlow: 10_000 };
    expect(grade(large)).toBe('note');
    expect(grade({ ...large, lowVolume: 60 })).toBe('caution');
    expect(grade({ ...large, lowVolume: 80 })).toBe('note');
    expect(said(planned({ ...large, lowVolume: 60 }), 'argon-caution')?.data['lowMinutes']).toBe(416);
  });
});

it('says what goes wrong in words that let nobody in', () => {
  const own = FINDING_CODES.filter((code) => /^(bottle|room|low-space|argon)-/.test(code));
  expect(Object.keys(findingsRoom).sort()).toEqual([...own].sort());
  const told = [...Object.values(findingsRoom).flatMap(({ text, out }) => [text, out]), ...Object.values(roomWords)];
  for (const words of told) expect(words).not.toMatch(/safe to (enter|go in|work)/i);
  for (const code of ['room-oxygen-low', 'low-space-fills', 'argon-caution', 'bottle-in-room'] as const)
    expect(findingsRoom[code].out).toMatch(/[Ll]ocal rules and qualified people decide/);
});
