import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inverted, moved, turnAbout, turned } from '../../server/solver/geometry/rigid-motion.ts';
import { add, dot, length, ORIGIN, rotate, scale, subtract, unit } from '../../server/solver/geometry/vector.ts';
import { turnTo } from '../../server/solver/site/standing/turn-to.ts';
import { place, sourceOf, stand } from '../solver/site/standing-site.ts';
import {
  RUNS,
  DEGREE,
  between,
  vector,
  lying,
  slope,
  placing,
  standing,
  uprightOf,
  measured,
  cornerOf,
  HINGE,
} from './standing-sites.ts';

describe('a frame on a hinge', () => {
  it('comes to the slope that is asked for, its hinge where it was, by the least turn that does', () => {
    let reached = 0;
    fc.assert(
      fc.property(placing, lying, slope(60), (by, up, asked) => {
        const placed = stand(sourceOf({ placing: by, standing: standing({ hinge: HINGE }) }), { up }).frame!;
        const source = sourceOf({ placing: by, standing: standing({ hinge: HINGE, slopes: [asked] }) });
        const { frame, findings } = stand(source, { up });
        const { at, axis } = placed.hinge!;
        const before = turned(placed.motion, unit(asked.along)!);
        const rises = (angle: number) => dot(rotate(before, axis, angle), uprightOf(asked, up));
        const sine = Math.sin(asked.angle * DEGREE);
        if (findings.some(({ code }) => code === 'slope-not-reached')) {
          for (let degree = 0; degree < 360; degree += 1)
            expect((rises(degree * DEGREE) - sine) * (rises(0) - sine)).toBeGreaterThan(0);
          expect(frame!.turn).toBe(0);
          return;
        }
        reached += 1;
        expect(measured(frame!, asked, up)).toBeCloseTo(asked.angle, 9);
        for (const along of [-400, 0, 700]) {
          const point = moved(inverted(placed.motion), add(at, scale(axis, along)));
          expect(length(subtract(moved(frame!.motion, point), moved(placed.motion, point)))).toBeLessThan(1e-9);
        }
        // nothing nearer does: up to there the slope is not passed, except where both ways are as near
        if (findings.length > 0 || Math.abs(rises(0) - sine) < 1e-9) return;
        const side = Math.sign(rises(0) - sine);
        for (let share = -0.98; share < 0.99; share += 0.04) {
          expect(Math.sign(rises(share * frame!.turn) - sine)).toBe(side);
        }
      }),
      RUNS,
    );
    expect(reached).toBeGreaterThan(50);
  });

  it('lifts a place to the height that is asked for', () => {
    fc.assert(
      fc.property(placing, lying, between(-200, 200), (by, up, value) => {
        const over = { x: 10, y: 20, z: 30 };
        const height = { at: place('corner'), over, value, to: 'level' as const };
        const bare = stand(sourceOf({ placing: by, standing: standing({ hinge: HINGE }) }), { up }).frame!;
        const { frame, findings } = stand(sourceOf({ placing: by, standing: standing({ hinge: HINGE, height }) }), {
          up,
        });
        const now = dot(subtract(cornerOf(frame!), over), up);
        if (findings.some(({ code }) => code === 'height-not-reached')) {
          const { low, high } = findings[0]!.data as { low: number; high: number };
          expect(value < low || value > high).toBe(true);
          expect(frame!.turn).toBe(0);
        } else expect(now).toBeCloseTo(value, 8);
        expect(length(subtract(frame!.hinge!.at, bare.hinge!.at))).toBe(0);
      }),
      RUNS,
    );
  });

  it('turns alike at a thousandth and at a thousand times its size', () => {
    const number = between(-100, 100);
    fc.assert(
      fc.property(number, number, number, number, (still, along, across, goal) => {
        const found = turnTo({ still, along, across }, goal, 100);
        for (const size of [1e-3, 1e3]) {
          const equation = { still: size * still, along: size * along, across: size * across };
          const scaled = turnTo(equation, size * goal, size * 100);
          if ('turn' in found) expect(scaled).toMatchObject({ turn: expect.closeTo(found.turn, 6) as number });
          else expect((scaled as typeof found).low / size).toBeCloseTo(found.low, 9);
        }
      }),
      RUNS,
    );
  });
});

describe('a frame placed by points', () => {
  it('lies where it was moved to, whatever the motion', () => {
    fc.assert(
      fc.property(vector, vector, (turn, shift) => {
        const motion = turnAbout(ORIGIN, scale(turn, 2), scale(shift, 2000));
        const pairs = (['start', 'corner', 'finish'] as const).map((spot) => ({ at: place(spot), point: spot }));
        const source = sourceOf({ placing: { by: 'points', pairs } });
        const unmoved = stand(sourceOf()).frame!;
        const { pieces } = unmoved.lines[0]!.centreline;
        const last = pieces.at(-1)!;
        const points = {
          start: moved(motion, pieces[0]!.start),
          corner: moved(motion, cornerOf(unmoved)),
          finish: moved(motion, add(last.start, scale(last.direction, last.length))),
        };
        const { frame, findings } = stand(source, { points });
        expect(findings).toEqual([]);
        for (const misfit of frame!.misfits) expect(misfit).toBeLessThan(1e-8);
        const probe = { x: 100, y: -200, z: 300 };
        expect(length(subtract(moved(frame!.motion, probe), moved(motion, probe)))).toBeLessThan(1e-8);
      }),
      RUNS,
    );
  });
});
