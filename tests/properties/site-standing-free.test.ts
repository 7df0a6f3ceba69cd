import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { turned, turnOf } from '../../server/solver/geometry/rigid-motion.ts';
import {
  add,
  cross,
  dot,
  length,
  ORIGIN,
  rotate,
  scale,
  subtract,
  unit,
  type Vector3,
} from '../../server/solver/geometry/vector.ts';
import type { LaidFrame } from '../../server/solver/site/laid-site.ts';
import { turnToTwo } from '../../server/solver/site/standing/least-turn.ts';
import { leastTurnApart, type Rise } from '../../server/solver/site/standing/least-turn-apart.ts';
import { place, sourceOf, stand, UPRIGHT } from '../solver/site/standing-site.ts';
import {
  RUNS,
  DEGREE,
  between,
  direction,
  lying,
  slope,
  placing,
  standing,
  uprightOf,
  measured,
  turnFrom,
} from './standing-sites.ts';

describe('a frame without a hinge', () => {
  it('comes to one slope and goes on heading the same way', () => {
    fc.assert(
      fc.property(placing, lying, slope(80), (by, up, asked) => {
        const placed = stand(sourceOf({ placing: by }), { up }).frame!;
        const { frame, findings } = stand(sourceOf({ placing: by, standing: standing({ slopes: [asked] }) }), { up });
        expect(measured(frame!, asked, up)).toBeCloseTo(asked.angle, 9);
        if (findings.length > 0) return;
        const upright = uprightOf(asked, up);
        const heading = (of: LaidFrame) => unit(cross(upright, turned(of.motion, asked.along)))!;
        expect(dot(heading(placed), heading(frame!))).toBeCloseTo(1, 9);
        // the slope changes by no more than the turn: the least turn is the change of the slope
        const change = Math.abs(asked.angle - measured(placed, asked, up));
        expect(frame!.turn / DEGREE).toBeCloseTo(change, 8);
      }),
      RUNS,
    );
  });

  it('comes to two slopes and a height at once, turning less than any other turn that does', () => {
    let solved = 0;
    fc.assert(
      fc.property(placing, lying, slope(35), slope(35), between(-500, 500), (by, up, one, two, value) => {
        const height = { at: place('finish'), over: { x: 1, y: 2, z: 3 }, value, to: 'structure' as const };
        const placed = stand(sourceOf({ placing: by }), { up }).frame!;
        const source = sourceOf({ placing: by, standing: standing({ slopes: [one, two], height }) });
        const { frame, findings } = stand(source, { up });
        if (findings.some(({ code }) => code === 'slopes-at-odds')) return;
        solved += 1;
        expect(measured(frame!, one, up)).toBeCloseTo(one.angle, 9);
        expect(measured(frame!, two, up)).toBeCloseTo(two.angle, 9);
        const finish = frame!.lines[0]!.centreline.pieces.at(-1)!;
        expect(add(finish.start, scale(finish.direction, finish.length)).z - 3).toBeCloseTo(value, 8);
        const turn = turnOf(turnFrom(placed, frame!));
        expect(length(turn)).toBeCloseTo(frame!.turn, 7);
        // no part of the turn runs along the one line about which both slopes stay: to first order nothing shortens it
        const [first, second] = [one, two].map((asked) =>
          cross(unit(turned(frame!.motion, asked.along))!, uprightOf(asked, up)),
        );
        const keeps = cross(first!, second!);
        if (length(keeps) > 0.05) expect(dot(turn, unit(keeps)!)).toBeCloseTo(0, 6);
      }),
      RUNS,
    );
    expect(solved).toBeGreaterThan(30);
  });

  it('finds the same turn for two uprights that are one as in closed form, and one near it for uprights near each other', () => {
    const rise = fc.record({ along: direction, sine: between(-0.5, 0.5) });
    let compared = 0;
    fc.assert(
      fc.property(rise, rise, lying, (one, two, up) => {
        const rises: [Rise, Rise] = [
          { ...one, up },
          { ...two, up },
        ];
        const closed = turnToTwo(...rises);
        fc.pre(closed !== undefined && !closed.eitherWay && length(closed.turn) < 1.2);
        // not where the slopes can only just be had: there the root is a double one
        const normal = unit(cross(one.along, two.along))!;
        const upright = rotate(up, unit(closed.turn) ?? UPRIGHT, -length(closed.turn));
        fc.pre(Math.abs(dot(upright, normal)) > 0.1);
        compared += 1;
        const near = add(closed.turn, { x: 0.05, y: -0.04, z: 0.06 });
        const solved = leastTurnApart(rises[0], rises[1], near);
        expect(length(subtract(solved!, closed.turn))).toBeLessThan(1e-9);
        const other = unit(add(up, { x: 1e-4, y: 0, z: 0 }))!;
        const apart = turnToTwo(rises[0], { ...rises[1], up: other });
        expect(length(subtract(apart!.turn, closed.turn))).toBeLessThan(0.02);
      }),
      RUNS,
    );
    expect(compared).toBeGreaterThan(40);
  });

  it('against two uprights turns less than any other turn found by looking all round', () => {
    const rise = fc.record({ along: direction, sine: between(-0.4, 0.4) });
    fc.assert(
      fc.property(rise, rise, lying, (one, two, up) => {
        const rises: [Rise, Rise] = [
          { ...one, up },
          { ...two, up: UPRIGHT },
        ];
        const found = turnToTwo(...rises);
        fc.pre(found !== undefined && !found.eitherWay);
        const least = Math.min(...allRound(...rises));
        // steps of 1° round the circle find it to their square
        expect(length(found.turn)).toBeLessThan(least + 1e-3);
      }),
      { numRuns: 60, seed: 3 },
    );
  });
});

/** Turns that meet both slopes [rad], for the first direction all round its circle: the second then has two places. */
function allRound(one: Rise, two: Rise): number[] {
  const share = dot(one.along, two.along);
  const side = unit(cross(one.along, two.along))!;
  const beside = unit(cross(one.up, { x: 1, y: 0.3, z: 0 }))!;
  const cosine = Math.sqrt(1 - one.sine ** 2);
  return Array.from({ length: 720 }, (_, step) => step * 0.5 * DEGREE).flatMap((angle) => {
    const first = add(scale(one.up, one.sine), scale(rotate(beside, one.up, angle), cosine));
    // e₂ on e₂ · e₁ = share and e₂ · v₂ = sine
    const across = dot(first, two.up);
    const squares = 1 - across ** 2;
    const [a, b] = [(share - across * two.sine) / squares, (two.sine - across * share) / squares];
    const flat = add(scale(first, a), scale(two.up, b));
    const left = 1 - dot(flat, flat);
    if (left < 0) return [];
    const normal = unit(cross(first, two.up))!;
    return [1, -1].map((sign) => {
      const second = add(flat, scale(normal, sign * Math.sqrt(left)));
      const third = unit(cross(first, second))!;
      const row = (axis: 'x' | 'y' | 'z'): Vector3 =>
        [
          [first, one.along],
          [cross(third, first), cross(side, one.along)],
          [third, side],
        ].reduce((sum, [to, from]) => add(sum, scale(from!, to![axis])), ORIGIN);
      return length(turnOf({ x: row('x'), y: row('y'), z: row('z'), shift: ORIGIN }));
    });
  });
}
