import { describe, expect, it } from 'vitest';
import type { Job } from '../../server/job/job.ts';
import type { SiteThing } from '../../server/job/site-thing.ts';
import { parseJob } from '../../server/job/validate.ts';
import type { GapRow } from '../../server/plan/gap.ts';
import { plan } from '../../server/solver/plan.ts';
import {
  FRESH_ENDS,
  freshPlane,
  freshShape,
  freshSwing,
  freshThing,
  isFreshThing,
  SHAPES,
} from '../../web/state/thing-fresh.ts';
import { swungWords } from '../../web/state/thing-words.ts';
import { degrees, hoop, millimetres } from './made-up-site.ts';
import { demo } from './planned-stage.ts';

const withThings = (...things: SiteThing[]): Job => ({ ...demo, site: { ...demo.site, things } });

describe('a fresh thing of the site', () => {
  it('is a post with room round it, or a surface that nothing keeps clear of', () => {
    const [post, surface] = [freshThing('post', hoop.site), freshThing('surface', hoop.site)];
    expect([post.shape.shape, post.clearance, surface.shape.shape, surface.clearance]).toEqual([
      'cylinder',
      20,
      'plane',
      null,
    ]);
    expect([post, surface].every(isFreshThing)).toBe(true);
    expect(isFreshThing({ ...post, swing: freshSwing() })).toBe(false);
    const moved: SiteThing = {
      ...post,
      shape: { ...freshShape('cylinder'), at: { x: 1, y: 0, z: 0 } } as SiteThing['shape'],
    };
    expect(isFreshThing(moved)).toBe(false);
    expect(freshThing('post', { ...hoop.site, things: [post] }).name).toBe('post 2');
  });

  it('is something that a job holds and a plan tells a gap of, whatever its shape', () => {
    for (const shape of SHAPES) {
      const thing: SiteThing = { name: 'it', shape: freshShape(shape), clearance: 5, swing: freshSwing() };
      const job = withThings(...demo.site.things, thing);
      expect([shape, parseJob(job).ok]).toEqual([shape, true]);
      const gap = plan(job).site!.gaps.find((one) => one.thing === 'it')!;
      expect(gap.rows.length).toBeGreaterThan(0);
    }
    const ended: SiteThing = {
      ...freshThing('post', demo.site),
      shape: { ...freshShape('cylinder'), ends: FRESH_ENDS } as SiteThing['shape'],
    };
    expect(parseJob(withThings(...demo.site.things, ended)).ok).toBe(true);
  });

  it('can go through three points where there are three', () => {
    expect(freshPlane('points', demo.site)).toEqual({
      by: 'points',
      points: ['port cleat', 'starboard cleat', 'pile at the deck'],
    });
    expect(freshPlane('points', hoop.site)).toBeNull();
    expect(freshPlane('normal', hoop.site)).toMatchObject({ by: 'normal' });
  });
});

describe('the room beside a thing, in words', () => {
  const row = (of: Partial<GapRow>): GapRow => ({
    of: 'member',
    field: '',
    name: 'hoop',
    gap: millimetres(33),
    station: millimetres(100),
    onTube: { x: 0, y: 0, z: 0 },
    onThing: { x: 0, y: 0, z: 0 },
    thingSwing: null,
    frameSwing: null,
    ...of,
  });

  it('says how far what swings has swung, and nothing where nothing does', () => {
    expect(swungWords(row({}), hoop.units)).toBe('at rest');
    expect(swungWords(row({ frameSwing: degrees(8) }), hoop.units)).toBe(
      'least over the swing: at 8.00° of the frame’s swing',
    );
    expect(swungWords(row({ frameSwing: degrees(12), thingSwing: degrees(30) }), hoop.units)).toBe(
      'least over the swing: at 12.0° of the frame’s swing, at 30.0° of its own swing',
    );
  });
});
