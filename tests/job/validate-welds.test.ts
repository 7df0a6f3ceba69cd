import { describe, expect, it } from 'vitest';
import { problemsIn, shown, withValue } from './refused.ts';

describe('a value of the gas, the welds or their finish that is refused', () => {
  it.each([
    ['/purge/bottle/waterVolume', 0, 'below-range'],
    ['/purge/bottle/gaugePressure', -1, 'below-range'],
    ['/purge/bottle/gaugeNow', 301, 'above-range'],
    ['/purge/bottle/reserve', -0.1, 'below-range'],
    ['/purge/prePurgeFlow', 0, 'below-range'],
    ['/purge/weldingFlow', 0, 'below-range'],
    ['/purge/weldingFlow', -5, 'below-range'],
    ['/purge/targetOxygen', 0, 'below-range'],
    ['/purge/ventBore', 0, 'below-range'],
    ['/purge/hold', -1, 'below-range'],
    ['/purge/hold', 'long', 'wrong-type'],
    ['/purge/up', 'top', 'wrong-type'],
    ['/purge/up/z', 1e9, 'above-range'],
    ['/purge/holes/underSaddles', 'some', 'not-one-of'],
    ['/purge/holes/bore', 0, 'below-range'],
    ['/purge/room/volume', 0, 'below-range'],
    ['/purge/room/lowVolume', 0, 'below-range'],
    ['/purge/room/fanFlow', -1, 'below-range'],
    ['/purge/room/fanWay', 'round', 'not-one-of'],
    ['/purge/room/receives', null, 'not-one-of'],
    ['/welding/butt/current', 0, 'below-range'],
    ['/welding/saddle/travelSpeed', 0, 'below-range'],
    ['/welding/saddle/torchFlow', 0, 'below-range'],
    ['/welding/pad/process', '143', 'not-one-of'],
    ['/welding/pad/runs', 1.5, 'not-whole'],
    ['/welding/groove/angle', 90, 'above-range'],
    ['/welding/groove/land', -1, 'below-range'],
    ['/welding/quality', 'A', 'not-one-of'],
    ['/welding/pull', -0.5, 'below-range'],
    ['/finish/surface', 'chrome', 'not-one-of'],
    ['/finish/minutes/flush', -1, 'below-range'],
    ['/finish/nearSea', 'yes', 'wrong-type'],
  ])('%s = %j is %s', (field, value, code) => {
    expect(shown(withValue(field, value))).toEqual([`${code} ${field}`]);
  });

  it.each([
    ['/purge/prePurgeFlow', 0, 'Pre-purge flow is 0; allowed is more than 0 L/min, at most 100 L/min'],
    ['/purge/room/volume', 0, 'Room volume is 0; allowed is more than 0 m3, at most 1000000 m3'],
    ['/purge/bottle/gaugePressure', -3, 'Bottle gauge pressure is -3; allowed is at least 0 bar, at most 300 bar'],
    ['/welding/butt/voltage', 2, 'Arc voltage is 2; allowed is at least 5 V, at most 40 V'],
  ])('says what would do: %s = %j', (field, value, words) => {
    const [problem] = problemsIn(withValue(field, value));
    expect(problem!.message).toBe(`${words}. Give a larger value.`);
    expect(problem).toMatchObject({ field, value, allowed: { unit: /\d ([^ ,]+),/.exec(words)![1] } });
  });

  it.each<[string, unknown, string[]]>([
    ['/purge/feed', { member: 'hoop', end: 'middle' }, ['not-one-of /purge/feed/end']],
    ['/purge/feed', { hole: 0 }, ['below-range /purge/feed/hole']],
    ['/purge/vent', { hole: 1, bore: 4 }, ['unknown-field /purge/vent/bore']],
    ['/purge/vent', {}, ['missing-field /purge/vent/member', 'missing-field /purge/vent/end']],
    ['/purge/feed', 'left', ['wrong-type /purge/feed']],
    [
      '/purge/meter',
      [{ chamber: 0, minutes: -1, oxygen: 300_000 }],
      ['below-range /purge/meter/0/chamber', 'below-range /purge/meter/0/minutes', 'above-range /purge/meter/0/oxygen'],
    ],
    ['/purge/holes/toAir', [{ at: 'low', bore: 4 }], ['wrong-type /purge/holes/toAir/0/at']],
    ['/welding/order', [{ weld: 'S1', first: 5, way: 'round' }], ['not-one-of /welding/order/0/first']],
  ])('%s = %j answers for what was meant', (field, value, problems) => {
    expect(shown(withValue(field, value))).toEqual(problems);
  });
});
