import { describe, expect, it } from 'vitest';
import type { PlacedJoint } from '../../server/job/closing.ts';
import { newJob } from '../../server/job/default-job.ts';
import { ownSplice } from '../../server/solver/correction/splice/own-splice.ts';
import { groundOf } from '../../server/solver/correction/splice/search-splices.ts';
import { hoopOf, OUTSIDE_DIAMETER, taskOf } from '../properties/spliced-frames.ts';

const wanted = hoopOf({ width: 1000, legs: [700, 700], bars: [250] });
const actual = hoopOf({ width: 1030, legs: [700, 700], bars: [250] });
const closing = {
  ...newJob('hoop').closing,
  barred: [{ member: 'hoop', from: 1040, to: 1100, why: 'other' as const }],
};
const task = taskOf(wanted, actual, { closing });
const ground = groundOf(task);
const { length } = actual.members[0]!.centreline;
const half = length / 2;
const bar = actual.members[1]!.centreline.length / 2;

const own = (...joints: PlacedJoint[]) => ownSplice(joints, ground, task);
const at = (member: string, station: number): PlacedJoint => ({ member, station });

it('good places are taken as they are', () => {
  const { candidate, findings } = own(at('hoop', half + 40), at('crossbar 1', bar));
  expect(findings).toEqual([]);
  expect(candidate!.splice.joints.map(({ middle }) => middle)).toEqual([half + 40, bar]);
  expect(candidate!.fixingMisfit).toBeLessThan(0.01);
});

describe('a place that cannot be', () => {
  it('of a member that the frame has not', () => {
    const { candidate, findings } = own(at('hoop', half), at('strut', 100));
    expect(candidate).toBeNull();
    expect(findings).toMatchObject([
      { code: 'own-joint-no-member', grade: 'stop', field: '/closing/joints/1/member', data: { member: 'strut' } },
    ]);
  });

  it.each([0, length, length + 300, -5])('off the tube: %d', (station) => {
    const { candidate, findings } = own(at('hoop', station));
    expect(candidate).toBeNull();
    expect(findings).toMatchObject([
      { code: 'own-joint-off-tube', grade: 'stop', field: '/closing/joints/0/station', data: { value: station } },
    ]);
    expect(Number(findings[0]!.data['high'])).toBeCloseTo(length, 9);
  });

  it('that parts nothing: one joint in a loop', () => {
    const { candidate, findings } = own(at('crossbar 1', bar));
    expect(candidate).toBeNull();
    expect(findings).toMatchObject([{ code: 'cut-parts-nothing', grade: 'stop', data: { joints: 1 } }]);
  });

  it('too near to another one of the same member, in either order', () => {
    for (const pair of [
      [half, half + 40],
      [half + 40, half],
    ] as const) {
      const { candidate, findings } = own(...pair.map((station) => at('hoop', station)), at('crossbar 1', bar));
      expect(candidate).toBeNull();
      expect(findings).toMatchObject([{ code: 'own-joints-too-near', grade: 'stop', data: { member: 'hoop' } }]);
      expect(Number(findings[0]!.data['value'])).toBeCloseTo(40, 9);
      expect(Number(findings[0]!.data['low'])).toBeCloseTo(1.5 * OUTSIDE_DIAMETER, 9);
    }
  });

  it('twice the same one', () => {
    const { candidate, findings } = own(at('hoop', half), at('hoop', half), at('crossbar 1', bar));
    expect(candidate).toBeNull();
    expect(findings.some(({ code }) => code === 'own-joints-too-near')).toBe(true);
  });
});

describe('a place that is kept free is made all the same, told, with the nearest that is free', () => {
  const bend = 700 - 114.3;
  it.each([
    ['beside a bend', bend - 20, 'bend'],
    ['on a stretch that is barred', 1080, 'barred'],
    ['beside a weld', 260, 'weld'],
    ['beside an end', 30, 'end'],
  ])('%s', (_, station, keepOut) => {
    const { candidate, findings } = own(at('hoop', station), at('crossbar 1', bar), at('hoop', half + 250));
    const told = findings.filter(({ code }) => code === 'own-joint-kept-out');
    expect(told).toHaveLength(1);
    expect(told[0]).toMatchObject({ grade: 'caution', field: '/closing/joints/0/station', data: { keepOut } });
    expect(candidate!.splice.joints[0]!.middle).toBe(station);
    const wayOut = told[0]!.wayOut!;
    expect(wayOut.field).toBe('/closing/joints/0/station');
    expect(own(at('hoop', Number(wayOut.value)), at('crossbar 1', bar), at('hoop', half + 250)).findings).toEqual([]);
  });
});
