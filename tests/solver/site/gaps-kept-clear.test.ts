import { describe, expect, it } from 'vitest';
import { keptClear } from '../../../server/solver/site/gaps/kept-clear.ts';
import type { Post } from '../../../server/solver/correction/corrected.ts';
import { postRoom } from '../../../server/solver/correction/post-room.ts';
import { turnAbout, UNMOVED } from '../../../server/solver/geometry/rigid-motion.ts';
import { planGaps } from '../../../server/solver/site/gaps/plan-gaps.ts';
import type { LaidThing } from '../../../server/solver/site/laid-site.ts';
import type { SiteStudy } from '../../../server/solver/site/site-study.ts';
import { at, bar, D, madeUp, thing } from './gaps-made-up.ts';

const postsOf = ({ laid, source }: SiteStudy) => keptClear(laid, source.site, D);
const roomOf = (post: Post, { source }: SiteStudy) =>
  postRoom(
    post,
    source.wanted.members.map(({ centreline }) => centreline),
    UNMOVED,
  )!.room;
const gapOf = (study: SiteStudy) => planGaps(study).gaps[0]!.rows[0]!.gap.value;

describe('what a correction keeps clear of', () => {
  it('is everything that asks for room, and nothing else', () => {
    const things: (LaidThing | null)[] = [
      thing(bar(at(400, 100, 0)), { field: '/site/things/0' }),
      null,
      thing(bar(at(400, 300, 0)), { field: '/site/things/2', clearance: null }),
      thing({ shape: 'point', at: at(0, 0, 900), radius: 7 }, { field: '/site/things/3' }),
      thing(bar(at(400, 200, 0), { ends: { from: -5, to: 5 } }), { field: '/site/things/4', clearance: 0 }),
      thing({ shape: 'plane', at: at(0, 0, -500), normal: at(0, 0, 1) }, { field: '/site/things/5' }),
    ];
    const study = madeUp();
    const posts = postsOf({ ...study, laid: { ...study.laid, things } });
    expect(posts.map(({ field, keep, atRest }) => [field, keep, atRest])).toEqual([
      ['/site/things/0', 10 + D / 2, true],
      ['/site/things/3', 10 + D / 2, true],
      ['/site/things/4', D / 2, true],
      ['/site/things/5', 10 + D / 2, true],
    ]);
    expect(posts.map(({ solid }) => solid)).toMatchObject([
      { shape: 'cylinder', radius: 30 },
      { shape: 'point', radius: 7, at: { z: 900 } },
      { radius: 30, ends: { from: -5, to: 5 } },
      { shape: 'plane', normal: { z: 1 } },
    ]);
  });

  it('is nothing where the frame is not laid', () => {
    const study = madeUp({ things: [thing(bar(at(400, 100, 0)))] });
    expect(postsOf({ ...study, laid: { ...study.laid, frame: null } })).toEqual([]);
  });

  it('has the same room in the axes of the frame as in those of the structure', () => {
    const motion = turnAbout(at(3, 5, 7), at(0.4, -0.3, 1.1), at(120, -60, 40));
    const axis = at(0.6, 0, 0.8);
    const bodies: LaidThing['body'][] = [
      bar(at(420, 260, 300), { axis }),
      { shape: 'point', at: at(420, 260, 300), radius: 12 },
      { shape: 'plane', at: at(0, 0, -2000), normal: axis },
    ];
    for (const body of bodies) {
      const study = madeUp({ things: [thing(body)], frame: { motion } });
      const [post] = postsOf(study);
      expect(roomOf(post!, study)).toBeCloseTo(gapOf(study) - 10, 4);
    }
  });

  it('is where it stands as typed, and where it swings nearest to a tube', () => {
    const swing = { about: at(400, 0, -300), axis: at(1, 0, 0), from: 0, to: 3 };
    const rod = thing(bar(at(400, 0, -300), { axis: at(0, 1, 0), radius: 10, ends: { from: 20, to: 250 } }), { swing });
    const motion = turnAbout(at(400, 5, 7), at(0.1, -0.1, 0.1), at(20, -6, 4));
    const study = madeUp({ things: [rod], frame: { motion } });
    const posts = postsOf(study);
    expect(posts.map(({ atRest }) => atRest)).toEqual([true, false]);
    const rooms = posts.map((post) => roomOf(post, study));
    expect(Math.min(...rooms)).toBeCloseTo(gapOf(study) - 10, 2);
    expect(rooms[0]!).toBeGreaterThan(rooms[1]! + 50);
  });

  it('is where the frame swings to it', () => {
    const motion = turnAbout(at(3, 5, 7), at(0.1, -0.2, 0.1), at(20, -6, 4));
    const frame = { motion, hinge: { at: at(20, 0, 0), axis: at(0, 0, 1) } };
    const site = { standing: { hinge: null, slopes: [], height: null, swing: { from: 5, to: -25 } } };
    const study = madeUp({ things: [thing(bar(at(500, -260, 0)))], frame, site });
    const posts = postsOf(study);
    expect(posts.map(({ atRest }) => atRest)).toEqual([true, false]);
    const rooms = posts.map((post) => roomOf(post, study));
    expect(rooms[1]!).toBeCloseTo(gapOf(study) - 10, 2);
    expect(rooms[0]!).toBeGreaterThan(rooms[1]! + 50);
    // one that the frame never comes near to stands where it stands
    const far = madeUp({ things: [thing(bar(at(500, -900, 0)))], frame, site });
    expect(postsOf(far).map(({ atRest }) => atRest)).toEqual([true]);
  });
});
