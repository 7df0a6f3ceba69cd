import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { newFrameWelds } from '../../server/solver/correction/new-frame-welds.ts';
import { mirrorFrame } from '../../server/solver/frame/mirror-frame.ts';
import type { FrameGeometry } from '../../server/solver/frame/frame-geometry.ts';
import { placeAt } from '../../server/solver/geometry/centreline.ts';
import { cross, dot, ORIGIN, scale, type Vector3 } from '../../server/solver/geometry/vector.ts';
import { turnAbout } from '../../server/solver/geometry/rigid-motion.ts';
import { placedWelds } from '../../server/solver/welding/movement/placed-welds.ts';
import { sizePulls } from '../../server/solver/welding/movement/size-pulls.ts';
import { weldInfluences } from '../../server/solver/welding/movement/weld-influences.ts';
import { weldSites, type WeldPlace } from '../../server/solver/welding/weld-sites.ts';
import { movementOf, seatOn, spaceFrames, spliceAt, straightOf, TUBE } from '../solver/weld-movement-frames.ts';
import { movedByStiffness } from '../solver/weld-movement-witness.ts';
import { drawnAs, hoopOf, stoodElsewhere } from './spliced-frames.ts';

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const influencesOf = (frame: FrameGeometry, cuts: readonly WeldPlace[]) => {
  const sites = weldSites([...newFrameWelds(frame), ...cuts], frame, []);
  const welds = sites.map((site) => ({ site, shrinkage: 0.5 }));
  return weldInfluences(frame, TUBE, placedWelds(welds, frame, []));
};

const KINDS = ['outside', 'top', 'shrinkage'] as const;

/** What every weld does to every check, as a frame of many straight beams moves. */
function byStiffness(frame: FrameGeometry, { welds }: ReturnType<typeof influencesOf>) {
  const sizes = sizePulls(frame);
  const held = sizes.flatMap(({ pulls }) => pulls.map(({ spot }) => spot));
  const strains = welds.flatMap(({ weld }) =>
    KINDS.map((kind) => ({
      member: weld.member,
      station: weld.station,
      move: kind === 'shrinkage' ? scale(weld.tangent, -1) : ORIGIN,
      turn: kind === 'shrinkage' ? ORIGIN : cross(weld.tangent, weld[kind]),
    })),
  );
  return movedByStiffness(frame.members, TUBE, strains, held).map((moves) => {
    let at = 0;
    return sizes.map(({ pulls }) => pulls.reduce((sum, { along }) => sum + dot(along, moves[at++]!), 0));
  });
}

/** Smaller than this an influence is none beside those of a frame of about a metre [mm for 1 rad, mm for 1 mm]. */
const leastOf = (kind: (typeof KINDS)[number]): number => (kind === 'shrinkage' ? 0.02 : 20);

/** The largest difference of two lists, as a share of the largest of the second. */
function apart(one: readonly number[], other: readonly number[], least: number): number {
  const most = Math.max(least, ...other.map(Math.abs));
  return Math.max(...one.map((value, index) => Math.abs(value - other[index]!))) / most;
}

function expectAsBeams(frame: FrameGeometry, cuts: readonly WeldPlace[]): void {
  const found = influencesOf(frame, cuts);
  expect(found.checks).toHaveLength(frame.checks.length);
  const there = byStiffness(frame, found);
  for (const [index, influence] of found.welds.entries())
    for (const [kind, name] of KINDS.entries())
      expect(apart(influence[name], there[3 * index + kind]!, leastOf(name))).toBeLessThan(1e-3);
}

describe('what one weld does to the sizes of a tacked frame', () => {
  it('is what a frame of many straight beams does, in space, with loops and axes that pass at a distance', () => {
    fc.assert(
      fc.property(spaceFrames, ({ frame, cuts }) => {
        expectAsBeams(frame, cuts);
      }),
      { numRuns: 15 },
    );
  });

  it('is that of the beams on hoops with crowns and crossbars', () => {
    for (const crown of [null, 1500]) {
      const frame = hoopOf({ width: 900, widthAtFeet: 1000, legs: [600, 640], crown, bars: [150, 380] });
      const cuts: WeldPlace[] = [100, 900, 1500].map((station, index) => ({
        kind: 'splice',
        joint: index + 1,
        side: '',
        member: 'hoop',
        station,
      }));
      expectAsBeams(frame, cuts);
    }
  });

  it('is that of the beams on a ring with its closing weld, and one with a bar across', () => {
    const size = (value: number) => ({ value, reference: 'centre' as const });
    const ring = drawnAs({ shape: 'ring', width: size(900), height: size(600) });
    const [line] = ring.members;
    const { length } = line!.centreline;
    const from = placeAt(line!.centreline, length * 0.1)!.point;
    const to = placeAt(line!.centreline, length * 0.55)!.point;
    const bar = {
      ...straightOf('bar', from, to),
      start: seatOn('ring', length * 0.1),
      finish: seatOn('ring', length * 0.55),
    };
    for (const frame of [ring, { ...ring, members: [...ring.members, bar] }])
      expectAsBeams(frame, [spliceAt(1, 'ring', 400), spliceAt(2, 'ring', length - 10)]);
  });

  it('does not hang on where the frame stands', () => {
    fc.assert(
      fc.property(spaceFrames, number(0.1, 3), number(-5000, 5000), ({ frame, cuts }, turn, shift) => {
        const motion = turnAbout(ORIGIN, { x: turn, y: 0.4 * turn, z: -turn }, { x: shift, y: -shift, z: 2 * shift });
        const [here, there] = [influencesOf(frame, cuts), influencesOf(stoodElsewhere(frame, motion), cuts)];
        for (const [index, influence] of here.welds.entries()) {
          const other = there.welds[index]!;
          expect(apart(influence.shrinkage, other.shrinkage, 0.01)).toBeLessThan(1e-6);
          // the generators of a straight through the middle of the frame are named by the axes: any turn is as large
          const size = (one: typeof other) => one.outside.map((value, check) => Math.hypot(value, one.top[check]!));
          expect(apart(size(influence), size(other), 1)).toBeLessThan(1e-6);
        }
      }),
      { numRuns: 30 },
    );
  });

  it('grows with the frame where lengths do: a shrinkage moves as much, a turn as many times more', () => {
    const [one, tenfold] = [1, 10].map((scale) =>
      hoopOf({ width: 900, legs: [600, 600], crown: 2000, bars: [250], scale }),
    );
    const cuts = (times: number): WeldPlace[] => [
      { kind: 'splice', joint: 1, side: '', member: 'hoop', station: 100 * times },
    ];
    const small = influencesOf(one!, cuts(1));
    const sites = weldSites([...newFrameWelds(tenfold!), ...cuts(10)], tenfold!, []);
    const large = weldInfluences(
      tenfold!,
      { outsideDiameter: 10 * TUBE.outsideDiameter, wall: 10 * TUBE.wall },
      placedWelds(
        sites.map((site) => ({ site, shrinkage: 5 })),
        tenfold!,
        [],
      ),
    );
    for (const [index, influence] of small.welds.entries()) {
      const other = large.welds[index]!;
      expect(apart(influence.shrinkage, other.shrinkage, 0.01)).toBeLessThan(1e-8);
      expect(
        apart(
          influence.outside.map((value) => 10 * value),
          other.outside,
          1,
        ),
      ).toBeLessThan(1e-8);
    }
  });
});

describe('how a whole frame moves', () => {
  it('is the sum of what its welds do, in whichever order they are named', () => {
    fc.assert(
      fc.property(spaceFrames, fc.integer({ min: 0, max: 7 }), ({ frame, cuts }, turn) => {
        const numbered = movementOf(frame, { places: cuts });
        const found = influencesOf(frame, cuts);
        for (const [check, { shrinkage }] of numbered.movement!.checks.entries()) {
          const sum = found.welds.reduce((total, one) => total + 0.5 * one.shrinkage[check]!, 0);
          expect(shrinkage.value).toBeCloseTo(sum, 9);
        }
        const turned = numbered.proposed.map((_, index, all) => all[(index + turn) % all.length]!);
        const order = turned.map(({ weld, quarters }) => {
          // proposed ones are opposed: the third quarter says which way on
          const back = (quarters[2]! - quarters[0]! + 4) % 4 === 3;
          const way = back ? ('opposed-back' as const) : ('opposed' as const);
          return { weld, first: quarters[0] as 1 | 2 | 3 | 4, way };
        });
        const again = movementOf(frame, { places: cuts, order });
        expect(again.order).toEqual(turned);
        for (const [check, { given }] of again.movement!.checks.entries())
          expect(given.value).toBeCloseTo(numbered.movement!.checks[check]!.proposed.value, 9);
      }),
      { numRuns: 30 },
    );
  });

  it('never moves further in the proposed order than half of the worst', () => {
    fc.assert(
      fc.property(spaceFrames, ({ frame, cuts }) => {
        const { movement } = movementOf(frame, { places: cuts });
        const { largestProposed, largestWorst, checks } = movement!;
        expect(largestProposed.value).toBeLessThanOrEqual(largestWorst.value / 2 + 1e-9);
        expect(largestWorst.value).toBe(Math.max(...checks.map(({ worst }) => Math.abs(worst.value))));
        expect(movement!.off.proposed.value).toBeGreaterThanOrEqual(0);
      }),
      { numRuns: 60 },
    );
  });

  it('is as large in the frame for the other side', () => {
    fc.assert(
      fc.property(spaceFrames, ({ frame, cuts }) => {
        const up: Vector3 = { x: 0, y: 1, z: 0 };
        const [here, there] = [frame, mirrorFrame(frame)].map((one) => movementOf(one, { places: cuts, up }));
        for (const [check, { shrinkage }] of here!.movement!.checks.entries())
          expect(there!.movement!.checks[check]!.shrinkage.value).toBeCloseTo(shrinkage.value, 7);
        expect(there!.movement!.largestWorst.value).toBeCloseTo(here!.movement!.largestWorst.value, 6);
      }),
      { numRuns: 30 },
    );
  });
});
