import { describe, expect, it } from 'vitest';
import { landingStage } from '../../db/demo/landing-stage.ts';
import { newJob } from '../../server/job/default-job.ts';
import type { Job } from '../../server/job/job.ts';
import type { Leg } from '../../server/job/leg.ts';
import { Placing, Standing } from '../../server/job/standing.ts';
import type { TubePlace } from '../../server/job/tube-place.ts';
import { Site } from '../../server/job/site.ts';
import { parseJob } from '../../server/job/validate.ts';
import type { Doubt } from '../../server/plan/leg.ts';
import { figure } from '../../server/solver/figure.ts';
import { plan } from '../../server/solver/plan.ts';
import { fieldToMeasure } from '../../web/state/leg-doubts.ts';
import { footEndAs, freshAdjust, FRESH_FITTING, freshLeg } from '../../web/state/leg-fresh.ts';
import { mirrorBetween, mirroredDirection, mirroredPoint } from '../../web/state/leg-mirror.ts';
import { roughPlace, twinPlace } from '../../web/state/leg-place.ts';
import { coordinatesOf, placeOptions } from '../../web/state/leg-site-place.ts';
import { doubtWords, legName, legOrder, legSide, named, turnWords } from '../../web/state/leg-words.ts';
import { MOST_LEGS, MOST_PAIRS, MOST_SLOPES, MOST_THINGS } from '../../web/state/limits.ts';
import { valueAt } from '../../web/state/pointer.ts';
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

const hoop = newJob('hoop');
const demo: Job = { ...landingStage(), cameBack: null };
const demoPlan = plan(demo);
const withSite = (site: Partial<Job['site']>, job: Job = hoop): Job => ({ ...job, site: { ...job.site, ...site } });
const planned = (job: Job) => plan(job);
const degrees = (value: number) => figure(value, 'deg', 'x = y', [], ['first-order']);

/** The job with one leg more, as the button adds it. */
function withFreshLeg(job: Job): Job {
  const leg = freshLeg(job.site, planned(job));
  expect(leg).not.toBeNull();
  return withSite({ legs: [...job.site.legs, leg!] }, job);
}

describe('a fresh leg', () => {
  it('stands 600 below the end of the frame, goes to a bend and has a length at once', () => {
    const job = withFreshLeg(hoop);
    expect(parseJob(job).ok).toBe(true);
    const [leg] = job.site.legs;
    const [member] = planned(hoop).frame!.members;
    const start = member!.pieces[0]!.from;
    expect(leg!.foot.at).toEqual({ x: Math.round(start.x), y: Math.round(start.y), z: -600 });
    expect(leg!.head.at).toMatchObject({ spot: 'bend-start', number: 1 });
    const [cut] = planned(job).site!.legs;
    expect(cut!.cutLength.value).toBeGreaterThan(500);
  });

  it('is mirrored to the other side after the first, what was typed over with it', () => {
    const one = withFreshLeg(hoop);
    const first: Leg = {
      ...one.site.legs[0]!,
      name: 'left',
      foot: {
        ...one.site.legs[0]!.foot,
        at: { x: -300, y: -400, z: -550 },
        surface: { by: 'lean', ahead: 4, port: 0 },
      },
    };
    const two = withFreshLeg(withSite({ legs: [first] }));
    const [, second] = two.site.legs;
    expect(parseJob(two).ok).toBe(true);
    expect(second).toMatchObject({
      name: 'leg 1',
      foot: { at: { x: 300, y: -400, z: -550 }, surface: { by: 'lean', ahead: -4, port: 0 } },
      head: { at: { spot: 'bend-end', number: 2 } },
    });
    const [left, right] = planned(two).site!.legs;
    expect(right!.cutLength.value).toBeCloseTo(left!.cutLength.value, 6);
  });

  it('goes to a place that no leg has yet, and never twice to one while there is another', () => {
    const four = [1, 2, 3, 4].reduce(withFreshLeg, hoop);
    const heads = four.site.legs.map(({ head }) => JSON.stringify(head.at));
    expect(new Set(heads).size).toBe(4);
    expect(new Set(four.site.legs.map(({ name }) => name)).size).toBe(4);
  });

  it('is offered for every shape that a frame can have, and not before there is one', () => {
    for (const shape of ['hoop', 'ring', 'offset', 'straight', 'run', 'members'] as const) {
      const job = withFreshLeg(newJob(shape));
      expect([shape, parseJob(job).ok, planned(job).site!.legs.length]).toEqual([shape, true, 1]);
    }
    expect(freshLeg(hoop.site, null)).toBeNull();
  });

  it('is put below the frame where that stands, not where it was drawn', () => {
    const job = withSite({ legs: [] }, demo);
    const leg = freshLeg(job.site, demoPlan)!;
    // its feet are at the after edge, x = 0 of the stage, and run along it; as drawn they lie along x
    const { x, y, z } = leg.foot.at as { x: number; y: number; z: number };
    expect([Math.abs(x) < 25, Math.abs(y + 456) < 1, z]).toEqual([true, true, -600]);
  });
});

describe('places of a tube and their twins', () => {
  const member = planned(hoop).frame!.members[0]!;
  const at = (spot: TubePlace['spot'], number = 1): TubePlace => ({
    member: member.name,
    spot,
    number,
    distance: 0,
  });

  it('are counted from the other end, and one in the middle has none', () => {
    expect(twinPlace(at('start'), member)).toMatchObject({ spot: 'finish' });
    expect(twinPlace(at('bend-start', 1), member)).toMatchObject({ spot: 'bend-end', number: 2 });
    expect(twinPlace(at('corner', 2), member)).toMatchObject({ spot: 'corner', number: 1 });
    const middle = (member.pieces.length + 1) / 2;
    expect(twinPlace(at('middle', middle), member)).toBeNull();
    expect(twinPlace(at('start'), { ...member, closed: true })).toBeNull();
  });

  it('lie where the frame has them, each the other’s image on a hoop', () => {
    for (const spot of ['start', 'bend-start', 'corner', 'middle'] as const) {
      const place = roughPlace(at(spot), member)!;
      const twin = roughPlace(twinPlace(at(spot), member)!, member)!;
      if (spot !== 'corner') expect(twin.x).toBeCloseTo(-place.x, 6);
      expect(Number.isFinite(twin.y)).toBe(true);
    }
    const along = (distance: number) => roughPlace({ spot: 'along', number: 1, distance }, member)!;
    expect(along(0)).toEqual(roughPlace(at('start'), member));
    expect(along(1e6)).toEqual(roughPlace(at('finish'), member));
    expect(roughPlace(at('bend-end', 9), member)).toBeUndefined();
  });
});

describe('a mirror between two places', () => {
  const across = mirrorBetween({ x: 0, y: -400, z: 0 }, { x: 0, y: 400, z: 0 })!;

  it('takes a point to the other side and back', () => {
    const point = { x: 12.3, y: -420, z: -610 };
    expect(mirroredPoint(point, across)).toEqual({ x: 12.3, y: 420, z: -610 });
    expect(mirroredPoint(mirroredPoint(point, across), across)).toEqual(point);
    expect(mirrorBetween(point, point)).toBeNull();
  });

  it('turns a lean across it and leaves what names something real', () => {
    expect(mirroredDirection({ by: 'lean', ahead: 3, port: -12 }, across)).toEqual({ by: 'lean', ahead: 3, port: 12 });
    expect(mirroredDirection({ by: 'axes', vector: { x: 0, y: 1, z: 2 } }, across)).toEqual({
      by: 'axes',
      vector: { x: 0, y: -1, z: 2 },
    });
    const thing = { by: 'thing' as const, thing: 'wall' };
    expect(mirroredDirection(thing, across)).toBe(thing);
    const zero = mirroredDirection({ by: 'lean', ahead: 0, port: 0 }, across);
    expect(zero.by === 'lean' && Object.is(zero.port, 0)).toBe(true);
  });
});

describe('a leg in words', () => {
  const doubt = (of: Partial<Doubt>): Doubt => ({
    from: 'level',
    name: '',
    field: '',
    plusMinus: figure(1, 'mm', 'x = y', [], ['first-order']),
    ...of,
  });

  it('is named by its side, unless its name says it', () => {
    expect(legSide({ name: 'leg 1', side: 'port' }, 'boat')).toBe('port side');
    expect(legSide({ name: 'leg 1', side: 'port' }, 'shore')).toBe('left side');
    expect(legSide({ name: 'Port leg', side: 'port' }, 'boat')).toBe('');
    expect(legSide({ name: '', side: 'middle' }, 'boat')).toBe('in the middle');
    expect([legName('', 1), legName('aft', 1), named('')]).toEqual(['leg 2', 'aft', 'no name']);
  });

  it('is cut first, second, or by a number where nobody counts in words', () => {
    expect([legOrder(1, 1), legOrder(1, 2), legOrder(2, 2), legOrder(7, 9)]).toEqual([
      '',
      'cut first',
      'cut second',
      'cut as number 7',
    ]);
  });

  it('is doubtful by something that one can point at', () => {
    expect(doubtWords(doubt({}))).toBe('the level');
    expect(doubtWords(doubt({ from: 'point', name: 'aft leg', field: '/site/legs/0/foot/at/z' }))).toBe(
      'the foot of aft leg',
    );
    expect(doubtWords(doubt({ from: 'point', name: 'cleat', field: '/site/points/0/at/point/x' }))).toBe(
      'the point cleat',
    );
    expect(doubtWords(doubt({ from: 'thing', name: 'aft leg', field: '/site/legs/0/foot/surface/port' }))).toBe(
      'the surface under aft leg',
    );
    expect(doubtWords(doubt({ from: 'thing', name: 'wall', field: '/site/things/0' }))).toBe('the thing wall');
    expect(doubtWords(doubt({ from: 'frame', field: '/site/legs/0/head/at' }))).toBe('the mark for the head');
  });

  it('leads to a field that holds a value for everything that is worth measuring again', () => {
    const fields = demoPlan.site!.legs.flatMap(({ doubts }) => doubts.map(({ field }) => field));
    const typed = fields.filter((field) => field !== '').map((field) => valueAt(demo, fieldToMeasure(demo, field)));
    expect(typed.length).toBeGreaterThan(4);
    for (const value of typed) expect(['string', 'number']).toContain(typeof value);
    expect(fieldToMeasure(demo, '/site/level/sets/0/readings/0')).toBe('/site/level/sets/0/readings/0/angle');
  });

  it('is turned by a size and a way round', () => {
    expect(turnWords(degrees(-179.9), hoop.units)).toMatchObject({ size: { value: 179.9 }, way: 'anticlockwise' });
    expect(turnWords(degrees(12), hoop.units).way).toBe('clockwise');
    expect(turnWords(degrees(-1e-9), hoop.units).way).toBe('none');
  });

  it('begins its ends and its adjustment with values that a job may hold', () => {
    const [leg] = demo.site.legs;
    const socket = footEndAs('socket', { end: 'mitre', plate: 6 });
    const legs: Leg[] = [
      {
        ...leg!,
        foot: { ...leg!.foot, end: socket },
        head: { ...leg!.head, end: FRESH_FITTING },
        adjust: freshAdjust('slip'),
      },
    ];
    expect(parseJob(withSite({ legs }, demo)).ok).toBe(true);
    expect(footEndAs('square', { end: 'mitre', plate: 6 })).toEqual({ end: 'square', plate: 6 });
    expect(footEndAs('mitre', socket)).toEqual({ end: 'mitre', plate: 0 });
  });
});

describe('a place of the site', () => {
  it('goes from a name to the coordinates that it has', () => {
    const site = demoPlan.site!;
    expect(coordinatesOf({ named: 'port cleat' }, site)).toEqual({ x: 0, y: 420, z: 0 });
    expect(coordinatesOf({ named: 'gone' }, site)).toEqual({ x: 0, y: 0, z: 0 });
    expect(placeOptions(['A'], 'gone').map(({ value }) => value)).toEqual([null, 'gone', 'A']);
    expect(placeOptions(['A'], null).map(({ value }) => value)).toEqual([null, 'A']);
  });
});

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

describe('how much of the site there may be', () => {
  it('is what the job takes', () => {
    const most = (schema: object): unknown => (schema as { maxItems?: number }).maxItems;
    const byPoints = Placing.anyOf[1];
    expect([
      most(Site.properties.legs),
      most(Site.properties.things),
      most(Standing.properties.slopes),
      most(byPoints.properties.pairs),
    ]).toEqual([MOST_LEGS, MOST_THINGS, MOST_SLOPES, MOST_PAIRS]);
  });
});
