import { describe, expect, it } from 'vitest';
import { MAIN, CROSSBAR, purged, SPLICE } from './purge-frames.ts';

const said = (made: ReturnType<typeof purged>, code: string) => made.findings.find((one) => one.code === code);
const start = { member: 'main', end: 'start' as const };
const finish = { member: 'main', end: 'finish' as const };

describe('feed and vent', () => {
  it.each([
    [{ feed: finish }, 3000, 0],
    [{ vent: start }, 3000, 0],
    [{ feed: start, vent: finish }, 0, 3000],
  ])('as typed: %j', (typed, feed, vent) => {
    const [chamber] = purged([MAIN], SPLICE, typed).purge?.chambers ?? [];
    expect([chamber?.feed.station, chamber?.vent.station]).toEqual([feed, vent]);
  });
  it('the same end cannot be both', () => {
    const made = purged([MAIN], SPLICE, { feed: start, vent: start });
    expect(said(made, 'feed-is-vent')).toMatchObject({
      grade: 'stop',
      field: '/purge/vent',
      wayOut: { field: '/purge/vent', value: null },
    });
    expect(said(purged([MAIN], SPLICE, { feed: start, vent: null }), 'feed-is-vent')).toBeUndefined();
  });
  it('there is no such member', () => {
    const made = purged([MAIN], SPLICE, { vent: { member: 'mian', end: 'finish' } });
    expect(said(made, 'feed-not-an-end')).toMatchObject({ field: '/purge/vent/member', wayOut: { value: 'main' } });
    expect(made.purge?.chambers[0]?.vent.station).toBe(3000);
  });
  it('a saddle lets no gas through', () => {
    const made = purged([MAIN, CROSSBAR], SPLICE, { feed: { member: 'crossbar', end: 'finish' } });
    expect(said(made, 'feed-not-free')).toMatchObject({ field: '/purge/feed/end', wayOut: null });
  });
});

describe('gas', () => {
  it('a target that the gas does not reach has no plan, and the way out has one', () => {
    const gas = { from: 'certificate' as const, oxygen: 50 };
    const made = purged([MAIN], SPLICE, { gas, targetOxygen: 50 });
    expect(made.purge).toBeNull();
    expect(made.setups).toBe(1);
    const stop = said(made, 'target-below-gas');
    expect(stop).toMatchObject({ grade: 'stop', data: { value: 50, low: 50 } });
    const mended = purged([MAIN], SPLICE, { gas, targetOxygen: Number(stop?.wayOut?.value) });
    expect(mended.purge).not.toBeNull();
  });

  it('adds up: before, during and after every weld', () => {
    const made = purged([MAIN], [...SPLICE, { member: 'main', station: 2000 }]).purge;
    // 2.8534 L × 8.381 = 23.915 L; 5 L/min for 2 × 76 s of arc and one hold of 60 s = 17.667 L
    expect(made?.purgeGas.value.toFixed(2)).toBe('41.58');
    // torch 8 L/min for 2 × (76 + 8) s
    expect(made?.torchGas.value.toFixed(1)).toBe('22.4');
    expect(made?.jobGas.value).toBeCloseTo((made?.purgeGas.value ?? 0) + 22.4, 10);
    expect(made?.bottleShare.value).toBeCloseTo((100 * made!.jobGas.value) / made!.bottleContents.value, 10);
  });

  it('an empty bottle is not enough, and a full one is', () => {
    const bottle = (gaugePressure: number) => ({ bottle: { waterVolume: 20, gaugePressure, temperature: 15 } });
    for (const empty of [0, 5, 10, 11])
      expect(said(purged([MAIN], SPLICE, bottle(empty)), 'bottle-not-enough')).toBeDefined();
    expect(said(purged([MAIN], SPLICE, bottle(15)), 'bottle-not-enough')).toBeUndefined();
  });
});

describe('pressure under the pool, at the welding flow', () => {
  it.each([
    [6, undefined],
    [5, 'caution'],
    [4.5, 'stop'],
  ])('10 L/min through %d mm: %s', (ventBore, grade) => {
    const made = purged([MAIN], SPLICE, { weldingFlow: 10, ventBore });
    const high = said(made, 'vent-pressure-high');
    expect(high?.grade).toBe(grade);
    if (high === undefined) return;
    expect(high.wayOut).toEqual({ field: '/purge/ventBore', value: 5.7 });
    expect(said(purged([MAIN], SPLICE, { weldingFlow: 10, ventBore: 5.7 }), 'vent-pressure-high')).toBeUndefined();
  });
});

describe('room', () => {
  it('a locker is a stop until air is brought in', () => {
    const made = purged([MAIN], SPLICE, { room: { volume: 0.5, fanFlow: 0 } });
    const low = said(made, 'room-oxygen-low');
    expect(low).toMatchObject({ grade: 'stop', field: '/purge/room/fanFlow' });
    expect(made.purge?.roomOxygenFan.value).toBeCloseTo(made.purge?.roomOxygenStill.value ?? 0, 10);
    const fanFlow = Number(low?.wayOut?.value);
    const aired = purged([MAIN], SPLICE, { room: { volume: 0.5, fanFlow } });
    expect(said(aired, 'room-oxygen-low')).toBeUndefined();
    expect(aired.purge?.roomOxygenFan.value).toBeGreaterThan(20.5);
    expect(aired.purge?.timeToAlarm).toBeNull();
  });
  it('10 L/min is the alarm after 20.8 min in 3 m³, and the larger flow of torch and purge sooner', () => {
    const room = { room: { volume: 3, fanFlow: 0 } };
    const small = purged([MAIN], SPLICE, { ...room, prePurgeFlow: 13, weldingFlow: 5 });
    // 13 L/min, before as while welding (5 + 8): 20.8 × 10/13 min
    expect(((small.purge?.timeToAlarm?.value ?? 0) / 60).toFixed(1)).toBe('16.0');
    expect(small.purge?.airToStaySafe.value.toFixed(0)).toBe('666');
  });
  it('always tells what argon does', () => {
    expect(said(purged([MAIN], SPLICE), 'argon-caution')?.grade).toBe('note');
  });
});
