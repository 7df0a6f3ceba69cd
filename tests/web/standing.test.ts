import { describe, expect, it } from 'vitest';
import { parseJob } from '../../server/job/validate.ts';
import { alongOf, directionOfSide, sideOfDirection, wayOptions } from '../../web/state/standing-axes.ts';
import {
  FRESH_SWING,
  freshHeight,
  freshHinge,
  freshPair,
  freshPlacing,
  freshSlope,
} from '../../web/state/standing-fresh.ts';
import { misfitName, risingOf } from '../../web/state/standing-words.ts';
import { tubesOf } from '../../web/state/tubes.ts';
import { degrees, hoop, withSite } from './made-up-site.ts';
import { demo, demoPlan } from './planned-stage.ts';

describe('how the frame stands', () => {
  const tubes = tubesOf(demoPlan);

  it('knows the six ways of an axis, whatever its length, from any other', () => {
    for (const side of ['ahead', 'back', 'port', 'starboard', 'up', 'down'] as const) {
      const { x, y, z } = directionOfSide(side);
      expect(sideOfDirection({ x: 3 * x, y: 3 * y, z: 3 * z })).toBe(side);
    }
    expect([sideOfDirection({ x: 1, y: 1, z: 0 }), sideOfDirection({ x: 0, y: 0, z: 0 })]).toEqual([null, null]);
    expect(wayOptions('shore').map(({ words }) => words)).toContain('to the left');
    expect([alongOf({ x: 2, y: 0, z: 0 }), alongOf({ x: 0, y: 1, z: 0 }), alongOf({ x: 0, y: -1, z: 0 })]).toEqual([
      'x',
      'y',
      'other',
    ]);
  });

  it('begins each part with what a job may hold', () => {
    const placing = freshPlacing('points', tubes, demo.site, null)!;
    expect(placing).toMatchObject({ by: 'points', pairs: [{ point: 'port cleat' }, {}, {}] });
    expect(freshPlacing('points', tubes, { ...demo.site, points: [] }, null)).toBeNull();
    expect(freshPlacing('axes', tubes, demo.site, { x: 1, y: 2, z: 3 })).toMatchObject({
      origin: { x: 1, y: 2, z: 3 },
    });
    const first = freshSlope([]);
    const standing = {
      hinge: freshHinge(tubes),
      slopes: [first, freshSlope([first])],
      height: freshHeight(tubes),
      swing: FRESH_SWING,
    };
    expect(standing.slopes.map(({ along }) => alongOf(along))).toEqual(['y', 'x']);
    expect(parseJob(withSite({ placing, standing }, demo)).ok).toBe(true);
    expect(freshPair([], demo.site, 0)).toBeNull();
  });

  it('rises, falls or is level, and says which place is off its point', () => {
    expect(risingOf(degrees(1.7), hoop.units).way).toBe('rises');
    expect(risingOf(degrees(-0.8), hoop.units)).toMatchObject({ size: { value: 0.8 }, way: 'falls' });
    expect(risingOf(degrees(-1e-9), hoop.units).way).toBe('level');
    const placing = freshPlacing('points', tubes, demo.site, null)!;
    expect(misfitName('/site/placing/pairs/1', '', placing)).toBe('place 2');
    expect(misfitName('/site/placing/pairs/1', 'cleat', placing)).toBe('cleat');
  });
});
