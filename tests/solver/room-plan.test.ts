import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { faultsOf } from './figures-in.ts';
import { codes, planned, said, type Room, type Used } from './made-up-room.ts';

describe('a still room', () => {
  it('of 3 m³ is at the alarm after 20.8 min of 10 L/min', () => {
    const { room } = planned({});
    expect((room.alarmStill.value / 60).toFixed(1)).toBe('20.8');
    expect((room.alarmFan!.value / 60).toFixed(1)).toBe('20.8');
    expect(room.oxygenStill.value).toBeCloseTo(20.9 * Math.exp(-0.2), 10);
    expect(room.oxygenFan.value).toBe(room.oxygenStill.value);
    expect(room.recovers).toBeNull();
    expect(room.low).toBeNull();
  });
  it('of 15 m³ holds 15.2 % after a night with the gas left on', () => {
    expect(planned({ volume: 15 }).room.leftOn.value.toFixed(1)).toBe('15.2');
  });
  it('of 30 m³ that a whole bottle comes out in at once: 13.5 %', () => {
    expect(planned({ volume: 30 }).room.bottleOut.value.toFixed(1)).toBe('13.5');
    expect(planned({ volume: 1 }).room.bottleOut.value).toBe(0);
  });
  it('says in numbers what comes of gas that is left on', () => {
    expect(said(planned({}), 'argon-caution')).toMatchObject({
      grade: 'caution',
      field: '/purge/room/volume',
      data: { minutes: 20, night: 4.2, low: 19.5 },
      wayOut: null,
    });
    expect(said(planned({ volume: 0.5 }), 'argon-caution')?.data['minutes']).toBe(3.4);
    // 6.9 min a cubic metre: in 1000 m³ it takes days
    expect(said(planned({ volume: 1000 }), 'argon-caution')?.data).not.toHaveProperty('minutes');
  });
});

describe('with a fan of 200 L/min in 15 m³', () => {
  it.each([
    ['in', 19.905, 0.0005],
    ['out', 19.86, 0.005],
  ] as const)('that goes %s it settles at %d', (fanWay, settled, rounding) => {
    const { room, findings } = planned({ volume: 15, fanFlow: 200, fanWay }, { litres: 60_000, seconds: 360_000 });
    expect(Math.abs(room.oxygenFan.value - settled)).toBeLessThanOrEqual(rounding + 1e-9);
    expect(room.alarmFan).toBeNull();
    expect(room.leftOn.value).toBeGreaterThan(19.8);
    expect(findings.map(({ code }) => code)).toEqual(['bottle-in-room', 'argon-caution']);
  });
  it('recovers once the gas is shut off, which takes as long as the balance of oxygen says', () => {
    const { room } = planned({ volume: 15, fanFlow: 200 });
    const end = room.oxygenFan.value;
    let [oxygen, seconds] = [end, 0];
    for (; oxygen < 20.5; seconds += 1) oxygen += ((200 * (20.9 - oxygen)) / 15_000 / 60) * 1;
    expect(Math.abs(room.recovers!.value - seconds)).toBeLessThan(0.002 * seconds + 1);
  });
  it('never unsafe it need not recover', () => {
    expect(planned({ volume: 15, fanFlow: 200 }, { litres: 1, seconds: 60 }).room.recovers).toBeNull();
  });
  it('as in still air where all comes out at once, or where the fan draws no more than comes in', () => {
    const still = planned({ volume: 15 }).room.oxygenStill.value;
    expect(planned({ volume: 15, fanFlow: 200 }, { seconds: 0 }).room.oxygenFan.value).toBeCloseTo(still, 10);
    expect(planned({ volume: 15, fanFlow: 10, fanWay: 'out' }).room.oxygenFan.value).toBeCloseTo(still, 10);
  });
});

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const rooms = fc.record<Room>({
  volume: fc.oneof(between(Number.MIN_VALUE, 1e6), between(0.1, 50)),
  lowVolume: fc.option(between(Number.MIN_VALUE, 1e6)),
  fanFlow: fc.oneof(fc.constant(0), between(0, 1e6), between(1, 500)),
  fanWay: fc.constantFrom('in', 'out'),
  receives: fc.constantFrom('all', 'torch'),
});
const used = fc
  .record({
    flow: between(0.1, 200),
    share: between(0, 1),
    seconds: fc.oneof(fc.constant(0), between(1e-3, 1e7), between(60, 7200)),
    bottleLitres: between(0, 2e5),
  })
  .map(({ flow, share, seconds, bottleLitres }): Used => {
    return { litres: (share * flow * seconds) / 60, seconds, largestFlow: flow, bottleLitres };
  });

it('is made of every room, in numbers, with ways out that lead out', () => {
  const seen = { low: 0, short: 0, aired: 0, recovers: 0 };
  fc.assert(
    fc.property(rooms, used, (room, work) => {
      const made = planned(room, work);
      const { oxygenStill, oxygenFan, leftOn, bottleOut, alarmFan, alarmStill, recovers } = made.room;
      expect(faultsOf(made.room)).toEqual([]);
      for (const { value } of [oxygenStill, oxygenFan, leftOn, bottleOut]) {
        expect(value).toBeGreaterThanOrEqual(0);
        expect(value).toBeLessThanOrEqual(20.9 + 1e-9);
      }
      // a fan never makes it worse, and the alarm is never sooner with it
      expect(oxygenFan.value).toBeGreaterThanOrEqual(oxygenStill.value - 1e-9);
      if (alarmFan !== null) expect(alarmFan.value).toBeGreaterThanOrEqual(alarmStill.value * (1 - 1e-9));
      for (const { code, wayOut } of made.findings) {
        if (wayOut === null) continue;
        if (code === 'low-space-larger') {
          expect(codes(planned({ ...room, lowVolume: Number(wayOut.value) }, work))).not.toContain(code);
          continue;
        }
        seen[code === 'room-fan-short' ? 'short' : 'low'] += 1;
        expect(wayOut.field).toBe('/purge/room/fanFlow');
        expect(wayOut.value).toBeLessThanOrEqual(1e6);
        const after = planned({ ...room, fanFlow: Number(wayOut.value) }, work);
        expect(codes(after)).not.toContain('room-oxygen-low');
        expect(codes(after)).not.toContain('room-fan-short');
      }
      expect(codes(made).includes('bottle-in-room')).toBe(bottleOut.value < 19.5);
      if (leftOn.value < 19.5) expect(said(made, 'argon-caution')?.grade).toBe('caution');
      if (recovers !== null) seen.recovers += 1;
      if (oxygenFan.value > oxygenStill.value) seen.aired += 1;
    }),
    { numRuns: 800 },
  );
  for (const often of Object.values(seen)) expect(often).toBeGreaterThan(20);
});
