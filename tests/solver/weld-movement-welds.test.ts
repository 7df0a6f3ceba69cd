import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Joint } from '../../server/plan/joint.ts';
import type { Vector3 } from '../../server/solver/geometry/vector.ts';
import { placedWelds } from '../../server/solver/welding/movement/placed-welds.ts';
import { planMovement } from '../../server/solver/welding/movement/plan-movement.ts';
import { weldSites, type WeldPlace } from '../../server/solver/welding/weld-sites.ts';
import { drawnAs, hoopOf } from '../properties/spliced-frames.ts';
import {
  checkOf,
  frameOf,
  movementOf,
  spaceFrames,
  spliceAt,
  spotOf,
  straightOf,
  TUBE,
} from './weld-movement-frames.ts';

const UP: Vector3 = { x: 0, y: 0, z: 1 };

describe('welds of a frame that came back', () => {
  const hoop = hoopOf({ width: 900, legs: [600, 600] });
  const joint = (point: Vector3, letIn: number | null) =>
    ({ number: 1, point, letIn: letIn === null ? null : { length: { value: letIn } } }) as unknown as Joint;
  const welds = (places: readonly WeldPlace[]) => weldSites(places, hoop, []).map((site) => ({ site, shrinkage: 0.5 }));

  it('are found on the wanted frame by where their joint stands', () => {
    const places = [spliceAt(1, 'hoop', 470)];
    const [placed] = placedWelds(welds(places), hoop, [joint({ x: -452, y: -400, z: 3 }, null)]);
    // the left leg goes up from y = −600
    expect(placed!.station).toBeCloseTo(200, 9);
    expect(placed!.tangent.y).toBe(1);
    expect(placed!.outside.x).toBeCloseTo(-1, 12);
  });

  it('of a piece that is let in stand half its length to both sides', () => {
    const places: WeldPlace[] = (['A', 'B'] as const).map((side) => ({
      kind: 'let-in',
      joint: 1,
      side,
      member: 'hoop',
      station: side === 'A' ? 300 : 320,
    }));
    const placed = placedWelds(welds(places), hoop, [joint({ x: -450, y: -400, z: 0 }, 60)]);
    expect(placed.map(({ name, station }) => [name, Math.round(station * 1e6) / 1e6])).toEqual([
      ['1A', 170],
      ['1B', 230],
    ]);
  });

  it('on a tube that the wanted frame does not have move nothing, and are welded all the same', () => {
    const [site] = weldSites([spliceAt(1, 'hoop', 100)], hoop, []);
    const strange = { site: { ...site!, name: '2', member: 'nobody' }, shrinkage: 0.5 };
    const { proposed, movement } = planMovement({
      wanted: hoop,
      ...TUBE,
      pull: 0.01,
      up: UP,
      welds: [{ site: site!, shrinkage: 0.5 }, strange],
      joints: [],
      order: [],
    });
    expect(proposed.map(({ weld }) => weld)).toEqual(['1', '2']);
    expect(movement!.checks.find(({ key }) => key === 'left-leg')!.shrinkage.value).toBeCloseTo(-0.5, 12);
  });
});

describe('figures of movement', () => {
  it('follow from what stands in their working', () => {
    fc.assert(
      fc.property(spaceFrames, ({ frame, cuts }) => {
        const { movement } = movementOf(frame, { places: cuts });
        for (const { shrinkage, proposed } of movement!.checks) {
          const value = (of: typeof shrinkage, symbol: string) =>
            of.working.inputs.find((one) => one.symbol === symbol)?.value ?? 0;
          const names = (of: typeof shrinkage, letter: string) =>
            of.working.inputs.flatMap(({ symbol }) => (symbol.startsWith(letter) ? [symbol.slice(2)] : []));
          const drawn = names(shrinkage, 's_').reduce(
            (sum, name) => sum + value(shrinkage, `s_${name}`) * value(shrinkage, `S_${name}`),
            value(shrinkage, 'r'),
          );
          expect(shrinkage.value).toBeCloseTo(drawn, 9);
          const pulled = names(proposed, 'k_').reduce((sum, name) => sum + value(proposed, `k_${name}`), 0);
          expect(proposed.value).toBeCloseTo(value(proposed, 'θ') * pulled + value(proposed, 'r'), 9);
          expect(shrinkage.band?.plusMinus ?? 0).toBeGreaterThanOrEqual(Math.abs(shrinkage.value) / 2 - 1e-12);
          expect(proposed.band?.plusMinus ?? 0).toBeGreaterThanOrEqual(Math.abs(proposed.value) / 3 - 1e-12);
        }
      }),
      { numRuns: 20 },
    );
  });

  it('of many welds tell the greatest, and the others in one sum', () => {
    const bars = [100, 200, 300, 400, 500, 600, 700, 800];
    const { movement } = movementOf(hoopOf({ width: 900, legs: [1000, 1000], bars }));
    const { shrinkage } = movement!.checks.find(({ key }) => key === 'width-at-feet')!;
    expect(shrinkage.working.inputs.filter(({ symbol }) => symbol.startsWith('s_'))).toHaveLength(12);
    expect(shrinkage.working.formula).toBe('Δ = Σ s_i S_i + r');
    const sum = shrinkage.working.inputs.reduce((total, { symbol, value }) => {
      if (symbol === 'r') return total + value;
      const own = shrinkage.working.inputs.find((one) => one.symbol === symbol.replace('s_', 'S_'));
      return symbol.startsWith('s_') ? total + value * (own?.value ?? 0) : total;
    }, 0);
    expect(shrinkage.value).toBeCloseTo(sum, 9);
  });
});

describe('odd frames', () => {
  const number = { value: 900, reference: 'centre' as const };
  it('are all moved in numbers', () => {
    const straight = straightOf('tube', { x: 0, y: 0, z: 0 }, { x: 1000, y: 0, z: 0 });
    const none = { ...straight, name: 'none', centreline: { pieces: [], length: 0 } };
    const twin = { ...straight, name: 'twin', start: straight.start };
    const point = {
      ...straight,
      name: 'point',
      centreline: { pieces: [{ ...straight.centreline.pieces[0]!, length: 0 }], length: 0 },
    };
    const on = (onto: string, station: number) => ({ kind: 'saddle' as const, onto, station, axisAngle: 1, offset: 0 });
    const length = checkOf('length', 0, spotOf([straight], 'tube', 0), spotOf([straight], 'tube', 1000));
    const nowhere = checkOf('end-to-end', 1, length.from, length.from);
    const frames = [
      frameOf([straight], [length, nowhere]),
      frameOf([none, straight], [length]),
      // a second tube on the very same line, held at both ends, and one without any length in a loop with itself
      frameOf([straight, { ...twin, start: on('tube', 0), finish: on('tube', 1000) }], [length]),
      frameOf([straight, { ...point, start: on('tube', 500), finish: on('tube', 500) }], [length]),
      frameOf([{ ...straight, start: on('tube', 700), finish: on('tube', 200) }], [length]),
      drawnAs({ shape: 'ring', width: number, height: number }),
      drawnAs({ shape: 'straight', length: 1000 }),
      hoopOf({ width: 900, legs: [600, 600], scale: 1e-3 }),
      hoopOf({ width: 900, legs: [600, 600], scale: 1e3, bars: [300] }),
    ];
    for (const frame of frames) {
      const cuts = frame.members.map(({ name, centreline }, index) => spliceAt(index + 1, name, centreline.length / 3));
      const { movement, proposed } = movementOf(frame, { places: cuts });
      expect(proposed.length).toBeGreaterThan(0);
      for (const row of movement?.checks ?? [])
        for (const figure of [row.shrinkage, row.given, row.proposed, row.worst])
          expect(Number.isFinite(figure.value)).toBe(true);
      for (const figure of Object.values(movement?.off ?? {})) expect(Number.isFinite(figure.value)).toBe(true);
    }
  });

  it('of forty members are moved as well, and balanced', () => {
    const rails = [0, 800].map((x, index) =>
      straightOf(`rail ${String(index)}`, { x, y: 0, z: 0 }, { x, y: 4000, z: 0 }),
    );
    const rungs = Array.from({ length: 38 }, (_, index) => {
      const y = 100 * index + 50;
      const rung = straightOf(`rung ${String(index)}`, { x: 0, y, z: 0 }, { x: 800, y, z: 0 });
      const seat = (rail: number) => ({
        kind: 'saddle' as const,
        onto: `rail ${String(rail)}`,
        station: y,
        axisAngle: Math.PI / 2,
        offset: 0,
      });
      return { ...rung, start: seat(0), finish: seat(1) };
    });
    const members = [...rails, ...rungs];
    const width = (index: number, y: number) =>
      checkOf('width', index, spotOf(rails, 'rail 0', y), spotOf(rails, 'rail 1', y));
    const frame = frameOf(members, [width(1, 0), width(2, 2000), width(3, 4000)], { x: 0, y: 0, z: 1 });
    const { movement, proposed } = movementOf(frame);
    expect(proposed).toHaveLength(76);
    expect(movement!.largestProposed.value).toBeLessThan(movement!.largestWorst.value / 4);
    // the rungs that stand at the middle of a width take nearly all of two shrinkages with them
    const [lower, middle, upper] = movement!.checks.map(({ shrinkage }) => shrinkage.value);
    expect(middle).toBeCloseTo(-1, 2);
    expect(upper! - lower!).toBeGreaterThan(-0.5);
  });
});
