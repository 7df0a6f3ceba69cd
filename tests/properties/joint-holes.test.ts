// The hole under a saddle laid back on its main in space: every point of it is as far from the branch's axis as the bore.
import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { MemberGeometry } from '../../server/solver/frame/frame-geometry.ts';
import { centrelineFromChain, placeAt } from '../../server/solver/geometry/centreline.ts';
import { add, cross, dot, length, rotate, scale, subtract, unit } from '../../server/solver/geometry/vector.ts';
import { generatorRuns, lengthAlong, pointOn } from '../../server/solver/joints/generators.ts';
import { holeWraps } from '../../server/solver/joints/hole-wrap.ts';
import { middleOf, outsideAt } from '../../server/solver/joints/outside.ts';
import { members } from './tubes-in-space.ts';

const tube = { outsideDiameter: 38.1, wall: 1.65 };

it('every point of a hole lies on the bore of the branch, on straights and bends, from either end of it', () => {
  let [holes, onLine] = [0, 0];
  fc.assert(
    fc.property(
      members,
      fc.constantFrom(0, 1, 3, 4),
      fc.constantFrom('start' as const, 'finish' as const),
      fc.double({ min: 0.6, max: Math.PI / 2, noNaN: true }),
      fc.double({ min: 0, max: 6, noNaN: true }),
      fc.double({ min: -1.2, max: 1.2, noNaN: true }),
      (main, piece, end, angle, roll, offset) => {
        const before = main.centreline.pieces.slice(0, piece).reduce((sum, one) => sum + one.length, 0);
        const station = before + main.centreline.pieces[piece]!.length / 2;
        const { point, tangent } = placeAt(main.centreline, station)!;
        const square = rotate(
          unit(cross(tangent, Math.abs(tangent.z) < 0.9 ? { x: 0, y: 0, z: 1 } : { x: 1, y: 0, z: 0 }))!,
          tangent,
          roll,
        );
        const away = add(scale(tangent, Math.cos(angle)), scale(square, Math.sin(angle)));
        const foot = add(point, scale(unit(cross(tangent, away))!, offset));
        const seat = { kind: 'saddle', onto: main.name, station, axisAngle: angle, offset } as const;
        const from = end === 'start' ? foot : add(foot, scale(away, 300));
        const branch: MemberGeometry = {
          ...main,
          name: 'branch',
          start: { kind: 'free' },
          finish: { kind: 'free' },
          centreline: centrelineFromChain(
            { point: from, direction: end === 'start' ? away : scale(away, -1), normal: { x: 0, y: 0, z: 1 } },
            [{ kind: 'straight', length: 300 }],
          ),
          [end]: seat,
        };
        const partners = new Map([main, branch].map((one) => [one.name, one]));
        const drilled = { underSaddles: 'all' as const, except: [], bore: 50 };
        const [wrap] = holeWraps(main, { tube, paperThickness: 0.1, templateStations: 16, partners, holes: drilled });
        if (wrap === undefined) return;
        holes += 1;
        expect(wrap).toMatchObject({ kind: 'hole', member: main.name, place: 'hole 1', scrap: 'inside' });
        const outside = outsideAt(main, station, middleOf(partners.values()))!;
        const runs = generatorRuns(main.centreline, station, outside);
        for (const [girth, ordinate] of wrap.curve.filter((_, index) => index % 10 === 0)) {
          const generator = { radius: 19.05, angle: ((wrap.edge + (360 * girth) / wrap.wrapLength) * Math.PI) / 180 };
          let [low, high] = [station - 3000, station + 3000];
          for (let step = 0; step < 100; step += 1) {
            const middle = (low + high) / 2;
            if (lengthAlong(runs, generator, station, middle) < ordinate) low = middle;
            else high = middle;
          }
          // the hole is laid out on the piece that the branch stands on, carried on beyond its ends
          const on = runs.find(({ to }) => station <= to)!;
          if (low < on.begin || low > on.begin + on.piece.length) continue;
          const arm = subtract(pointOn(runs, generator, low)!, foot);
          expect(length(subtract(arm, scale(away, dot(arm, away))))).toBeCloseTo(17.4, 6);
          expect(dot(arm, away)).toBeGreaterThan(0);
          onLine += 1;
        }
      },
    ),
    { numRuns: 80 },
  );
  expect(holes).toBeGreaterThan(60);
  // most of every line lies on the piece that its branch stands on
  expect(onLine).toBeGreaterThan(8 * holes);
});
