/** Oxygen in a room, perfectly mixed: form of oxygen-deficiency models, computed beforehand; fans by numerical integration. */
import { describe, expect, it } from 'vitest';
import * as room from '../../server/solver/purge/room-oxygen.ts';

it.each([
  [3, 19.5, '20.8'],
  [3, 18, '44.8'],
  [0.5, 19.5, '3.5'],
])('10 L/min bring %d m³ to %d percent in %s min', (volume, oxygen, printed) => {
  const release = { volume, release: 10 };
  expect(room.slowReleaseMinutes(release, oxygen).toFixed(1)).toBe(printed);
  expect(room.slowRelease(release, room.slowReleaseMinutes(release, oxygen))).toBeCloseTo(oxygen, 10);
});
it('a cabin of 15 m³ after eight hours: 15.2 %', () => {
  expect(room.slowRelease({ volume: 15, release: 10 }, 480).toFixed(1)).toBe('15.2');
});
it.each([
  [30, 10.67, '14.6', '13.5'],
  [8, 4.27, '12.3', '9.7'],
])('into %d m³ a whole bottle of %d m³', (volume, gas, mixed, displaced) => {
  expect(room.mixedRelease({ volume }, gas).toFixed(1)).toBe(mixed);
  expect(room.suddenDisplaced({ volume }, gas).toFixed(1)).toBe(displaced);
});

describe('a fan of 200 L/min in 15 m³ with 10 L/min of argon', () => {
  const aired = { volume: 15, release: 10, fan: 200 };
  const blown = { ...aired, way: 'in' as const };
  const drawn = { ...aired, way: 'out' as const };
  it('ends at 19.905 % blowing in and at 19.86 % drawing out', () => {
    expect(room.oxygenAfter(blown, Infinity).toFixed(3)).toBe('19.905');
    expect(room.oxygenAfter(drawn, Infinity)).toBeCloseTo(19.855, 10); // 19.86
  });
  it('begins at 20.9 %', () => {
    expect(room.oxygenAfter(blown, 0)).toBeCloseTo(20.9, 12);
    expect(room.oxygenAfter(drawn, 0)).toBeCloseTo(20.9, 12);
  });
  it('follows the balance of oxygen, integrated in small steps', () => {
    // in: fresh air comes at the fan's flow, mixed air leaves with both; out: what the fan draws beyond the argon is fresh
    let [within, without] = [20.9, 20.9];
    for (let minute = 0; minute < 60; minute += 0.01) {
      within += ((200 * 20.9 - 210 * within) / 15_000) * 0.01;
      without += ((190 * 20.9 - 200 * without) / 15_000) * 0.01;
    }
    expect(room.oxygenAfter(blown, 60)).toBeCloseTo(within, 3);
    expect(room.oxygenAfter(drawn, 60)).toBeCloseTo(without, 3);
  });
  it('never comes to 19.5 %, and with 20 L/min it does', () => {
    for (const strong of [blown, drawn]) {
      expect(room.minutesUntil(strong, 19.5)).toBeNull();
      const weak = { ...strong, fan: 20 };
      expect(room.oxygenAfter(weak, room.minutesUntil(weak, 19.5) ?? 0)).toBeCloseTo(19.5, 10);
    }
  });
  it('without a fan, and with one that draws out no more than comes in, the room is still', () => {
    const still = { volume: 3, release: 10, fan: 0, way: 'in' as const };
    const short = { ...still, fan: 10, way: 'out' as const };
    for (const one of [still, short]) {
      expect(room.minutesUntil(one, 19.5)).toBeCloseTo(room.slowReleaseMinutes(still, 19.5), 10);
      expect(room.oxygenAfter(one, 60)).toBeCloseTo(room.slowRelease(still, 60), 10);
    }
    // just over the release it is hardly better
    expect(room.oxygenAfter({ ...short, fan: 10.0001 }, 60)).toBeCloseTo(room.slowRelease(still, 60), 4);
  });
  it('recovers', () => {
    const stopped = { volume: 15, fan: 200, end: 18 };
    expect(room.recoveryMinutes(stopped, 18)).toBeCloseTo(0, 12);
    // the fan blows the room's air out once in 75 min
    expect(room.recoveryMinutes(stopped, 20.9 - 2.9 / Math.E)).toBeCloseTo(75, 9);
    expect(20.9 - 2.9 * Math.exp(-room.recoveryMinutes(stopped, 20.5) / 75)).toBeCloseTo(20.5, 9);
  });
});

it('19.5 % takes 13.9 times the release in fresh air, 20.5 % 51 times', () => {
  expect(room.airToHold({ release: 1, oxygen: 19.5 }).toFixed(1)).toBe('13.9');
  expect(room.airToHold({ release: 1, oxygen: 20.5 }).toFixed(0)).toBe('51');
});
it.each(['in', 'out'] as const)('and held for ever by a fan that goes %s it is 20.5 percent', (way) => {
  const fan = room.airToHold({ release: 10, oxygen: 20.5 }, way);
  expect(room.oxygenAfter({ volume: 3, release: 10, fan, way }, Infinity)).toBeCloseTo(20.5, 10);
});
