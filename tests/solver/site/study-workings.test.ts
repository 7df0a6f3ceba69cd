// A working must carry its number: what it lists, put into its formula, gives the value.
import { describe, expect, it } from 'vitest';
import type { Figure } from '../../../server/plan/figure.ts';
import { planSite } from '../../../server/solver/site/plan-site.ts';
import { faultsOf } from '../figures-in.ts';
import { degrees, incline, levelOf, radians, X, Y } from './level-study.ts';
import { at, HINGE, place, slope, sourceOf, standing } from './standing-site.ts';

const inputsOf = ({ working }: Figure) => new Map(working.inputs.map(({ symbol, value }) => [symbol, value] as const));
const from = (figure: Figure, symbol: string): number => inputsOf(figure).get(symbol) ?? Number.NaN;
const turnOf = (...changes: Parameters<typeof sourceOf>): Figure => planSite(sourceOf(...changes)).site.standing!.turn!;
const level = levelOf([incline(X, 1), incline(Y, -2)]);

describe('a turn about a hinge', () => {
  const left = (turn: Figure): number => {
    const angle = radians(turn.value);
    return from(turn, 'A') + from(turn, 'B') * Math.cos(angle) + from(turn, 'C') * Math.sin(angle);
  };

  it('comes to the slope that is asked for', () => {
    const turn = turnOf({ level, ...standing({ hinge: HINGE, slopes: [slope(at(0, 1, 0), 12, 'level')] }) });
    expect(Math.abs(turn.value)).toBeGreaterThan(1);
    expect(degrees(Math.asin(left(turn)))).toBeCloseTo(from(turn, 'a'), 9);
    expect(turn.working.sources).toEqual(['standing-turn']);
    expect(faultsOf(turn)).toEqual([]);
  });

  it('comes to the height that is asked for', () => {
    const height = { at: place('corner'), over: at(10, 20, 30), value: 250, to: 'structure' as const };
    const turn = turnOf({ ...standing({ hinge: HINGE, height }) });
    expect(left(turn)).toBeCloseTo(250, 6);
    expect(from(turn, 'h')).toBe(250);
    expect(faultsOf(turn)).toEqual([]);
  });
});

describe('a turn of a frame without a hinge', () => {
  it('is what its direction lacks', () => {
    const turn = turnOf({ level, ...standing({ slopes: [slope(at(0, 1, 0), 12, 'level')] }) });
    expect(Math.abs(from(turn, 'a') - degrees(Math.asin(from(turn, 'd · v'))))).toBeCloseTo(turn.value, 9);
    expect(faultsOf(turn)).toEqual([]);
  });

  it('has a ± where it is small, and rests on the own axes where nobody has read a level', () => {
    const slopes = [slope(at(0, 1, 0), -1.99, 'level')];
    const small = turnOf({ level: { ...level, angleAccuracy: 0.2 }, ...standing({ slopes }) });
    expect(small.value).toBeCloseTo(0.01, 3);
    expect(small.band!.plusMinus).toBeCloseTo(0.2, 2);
    const unread = planSite(sourceOf({ ...standing({ slopes }) })).site.standing!;
    expect(unread.turn!.working.sources).toContain('level-own-axes');
    expect(unread.slopes[0]!.toLevel.working.sources).toContain('level-own-axes');
    expect(unread.slopes[0]!.toStructure.working.sources).not.toContain('level-own-axes');
  });
});

describe('a slope that is level, or a tube that is plumb', () => {
  it('is known as well as the level, whatever it is', () => {
    for (const trim of [0, 0.05, 0.1, 0.3]) {
      const lies = { ...levelOf([incline(X, trim), incline(Y, 0)]), angleAccuracy: 0.2 };
      const upright = { by: 'axes' as const, origin: at(0, 0, 0), x: at(0, 0, 1), y: at(0, 1, 0) };
      const { slopes } = planSite(sourceOf({ level: lies, placing: upright, directions: [] })).site.standing!;
      // x of the frame stands up, y lies level
      for (const { toLevel } of slopes) {
        expect(toLevel.band!.plusMinus).toBeGreaterThan(0.1999);
        expect(toLevel.band!.plusMinus).toBeLessThan(0.218);
      }
    }
  });
});

describe('a point by its distances', () => {
  const typed = (name: string, x: number, y: number, z: number) => ({
    name,
    at: { by: 'typed' as const, point: at(x, y, z), accuracy: null },
  });
  const deck = {
    name: 'deck',
    shape: {
      shape: 'plane' as const,
      plane: { by: 'normal' as const, at: at(0, 0, 50), normal: { by: 'axes' as const, vector: at(0.1, 0, 1) } },
    },
    clearance: null,
    swing: null,
  };
  const found = (on: string | null, ...distances: [string, number][]) => ({
    name: 'P',
    at: {
      by: 'distances' as const,
      distances: distances.map(([name, distance]) => ({ from: name, distance, accuracy: null })),
      on,
      towards: on === null ? ('up' as const) : ('port' as const),
    },
  });
  const known = [typed('A', 10, 0, 5), typed('B', 900, 20, 0), typed('C', 30, 800, 0)];

  it.each([
    ['alone', found(null, ['A', 700], ['B', 640], ['C', 690])],
    ['on a plane', found('deck', ['A', 700], ['B', 640])],
  ])('%s, lists where each was measured from', (_, point) => {
    const { points } = planSite(sourceOf({ points: [...known, point], things: [deck] })).site;
    const { x, y, z } = points.find(({ name }) => name === 'P')!;
    point.at.distances.forEach(({ distance }, index) => {
      const one = '₁₂₃'[index]!;
      const apart = [x, y, z].map((figure, axis) => figure.value - from(x, `${'xyz'[axis]!}${one}`));
      expect(Math.hypot(...apart)).toBeCloseTo(from(x, `d${one}`), 6);
      expect(from(x, `d${one}`)).toBe(distance);
    });
    if (point.at.on !== null) {
      const height = from(x, 'nₓ') * x.value + from(x, 'n_y') * y.value + from(x, 'n_z') * z.value;
      expect(height).toBeCloseTo(from(x, 'e'), 6);
    }
    expect(x.working.sources).toContain('site-first-order');
    expect(faultsOf(points)).toEqual([]);
  });
});
