/** Oxygen in a room, perfectly mixed: form of oxygen-deficiency models, computed beforehand; fans by numerical integration. */
import { describe, expect, it } from 'vitest';
import * as room from '../../server/solver/purge/room-oxygen.ts';

it.each([
  [3, 19.5, '20.8'],
  [3, 18, '44.8'],
  [0.5, 19.5, '3.5'],
])('10 L/min bring %d m³ to %d %% in %s min', (volume, oxygen, printed) => {
  const release = { volume, release: 10 };
  expect(room.slowReleaseMinutes(release, oxygen).toFixed(1)).toBe(printed);
  expect(room.slowRelease(release, room.slowReleaseMinutes(release, oxygen))).toBeCloseTo(oxygen, 10);
});
it('a cabin of 15 m³ after eight hours: 15.2 %', () => {
  expect(room.slowRelease({ volume: 15, release: 10 }, 480).toFixed(1)).toBe('15.2');
});
it.each([
  [30, 10.67, '14.6', '13.5'],
  [8, 4.27, '12.3', '9.8'], // printed 9.7 from a contents with more digits; from 4.27 it is 9.768
])('a whole bottle into %d m³', (volume, gas, mixed, displaced) => {
  expect(room.mixedRelease({ volume }, gas).toFixed(1)).toBe(mixed);
  expect(room.suddenDisplaced({ volume }, gas).toFixed(1)).toBe(displaced);
});

describe('a fan of 200 L/min in 15 m³ with 10 L/min of argon', () => {
  const aired = { volume: 15, release: 10, fan: 200 };
  it('ends at 19.905 % blowing in and at 19.855 % drawing out', () => {
    expect(room.fanBlowingIn(aired, Infinity).toFixed(3)).toBe('19.905');
    expect(room.fanDrawingOut(aired, Infinity)).toBeCloseTo(19.855, 10); // printed 19.86
  });
  it('begins at 20.9 %', () => {
    expect(room.fanBlowingIn(aired, 0)).toBeCloseTo(20.9, 12);
    expect(room.fanDrawingOut(aired, 0)).toBeCloseTo(20.9, 12);
  });
  it('follows the balance of oxygen, integrated in small steps', () => {
    let blown = 20.9;
    for (let minute = 0; minute < 60; minute += 0.01) blown += ((200 * 20.9 - 210 * blown) / 15_000) * 0.01;
    expect(room.fanBlowingIn(aired, 60)).toBeCloseTo(blown, 3);
  });
  it('never comes to 19.5 %, and with 20 L/min it does', () => {
    expect(room.minutesUntil(aired, 19.5)).toBeNull();
    const weak = { ...aired, fan: 20 };
    expect(room.fanBlowingIn(weak, room.minutesUntil(weak, 19.5) ?? 0)).toBeCloseTo(19.5, 10);
    const still = { volume: 3, release: 10, fan: 0 };
    expect(room.minutesUntil(still, 19.5)).toBeCloseTo(room.slowReleaseMinutes(still, 19.5), 10);
  });
  it('recovers', () => {
    const stopped = { volume: 15, fan: 200, end: 18 };
    expect(room.afterRelease(stopped, 0)).toBeCloseTo(18, 12);
    expect(room.afterRelease(stopped, 75)).toBeCloseTo(20.9 - 2.9 / Math.E, 9);
  });
});

it('19.5 % takes 13.9 times the release in fresh air, 20.5 % 51 times', () => {
  expect(room.airToHold({ release: 1, oxygen: 19.5 }).toFixed(1)).toBe('13.9');
  expect(room.airToHold({ release: 1, oxygen: 20.5 }).toFixed(0)).toBe('51');
});
