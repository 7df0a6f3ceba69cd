import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { newFrameWelds } from '../../server/solver/correction/new-frame-welds.ts';
import { type Vector3 } from '../../server/solver/geometry/vector.ts';
import { balancedPulls, type Mover } from '../../server/solver/welding/movement/balanced-pulls.ts';
import { placedWelds } from '../../server/solver/welding/movement/placed-welds.ts';
import { planMovement } from '../../server/solver/welding/movement/plan-movement.ts';
import { weighed } from '../../server/solver/welding/movement/proposed-order.ts';
import { choicesOf, pullOf, quartersOf } from '../../server/solver/welding/movement/quarters.ts';
import { weldInfluences } from '../../server/solver/welding/movement/weld-influences.ts';
import { weldSites } from '../../server/solver/welding/weld-sites.ts';
import { hoopOf } from '../properties/spliced-frames.ts';
import { movementOf, spaceFrames, spliceAt, TUBE } from './weld-movement-frames.ts';

const FIRSTS = [1, 2, 3, 4] as const;
const OPPOSED = ['opposed', 'opposed-back'] as const;
const ROUND = ['round', 'round-back'] as const;
const UP: Vector3 = { x: 0, y: 0, z: 1 };

/** Every combination of one of some things for each of so many places. */
function combinations<Thing>(things: readonly Thing[], places: number): Thing[][] {
  if (places === 0) return [[]];
  return combinations(things, places - 1).flatMap((rest) => things.map((one) => [...rest, one]));
}

describe('the proposed order', () => {
  it('pulls less in all than any other choice of opposed quarters', () => {
    fc.assert(
      fc.property(spaceFrames, ({ frame, cuts }) => {
        const places = cuts.slice(0, 1);
        const sites = weldSites([...newFrameWelds(frame).slice(0, 2), ...places], frame, []);
        const welds = sites.map((site) => ({ site, shrinkage: 0.5 }));
        const { welds: found } = weldInfluences(frame, TUBE, placedWelds(welds, frame, []));
        const { proposed } = planMovement({ wanted: frame, ...TUBE, pull: 0.01, up: UP, welds, joints: [], order: [] });
        const sum = (quarters: ReadonlyMap<string, number[]>): number => {
          const columns = found.map(({ weld, outside, top, outsideOff, topOff }) => {
            const pull = pullOf(quarters.get(weld.name)!);
            const [one, other] = [weighed(outside, outsideOff), weighed(top, topOff)];
            return one.map((value, row) => pull.outside * value + pull.top * other[row]!);
          });
          return columns[0]!.reduce(
            (total, _, row) => total + columns.reduce((all, one) => all + one[row]!, 0) ** 2,
            0,
          );
        };
        const least = sum(new Map(proposed.map(({ weld, quarters }) => [weld, quarters])));
        const ways = FIRSTS.flatMap((first) => OPPOSED.map((way) => quartersOf({ first, way })));
        for (const combination of combinations(ways, found.length)) {
          const other = sum(new Map(found.map(({ weld }, index) => [weld.name, combination[index]!])));
          expect(least).toBeLessThanOrEqual(other * (1 + 1e-6) + 1e-6);
        }
      }),
      { numRuns: 15 },
    );
  });

  const choices = choicesOf('opposed', { outside: { x: 0, y: 1, z: 0 }, top: UP }, UP);
  const numbers = (rows: number) => fc.array(fc.integer({ min: -100, max: 100 }), { minLength: rows, maxLength: rows });
  const movers = (rows: number, most: number) =>
    fc.array(
      fc.record({ outside: numbers(rows), top: numbers(rows) }).map((one) => ({ ...one, choices })),
      { minLength: 1, maxLength: most },
    );
  const sumOf = (all: readonly Mover[], chosen: readonly number[]): number =>
    (all[0]?.outside ?? []).reduce((total, _, row) => {
      const value = all.reduce((sum, { outside, top }, index) => {
        const choice = choices[chosen[index]!]!;
        return sum + choice.outside * outside[row]! + choice.top * top[row]!;
      }, 0);
      return total + value ** 2;
    }, 0);

  it('of few welds is the best of all, where changing two of them would not find it', () => {
    fc.assert(
      fc.property(movers(2, 5), (all) => {
        const least = Math.min(...combinations([...choices.keys()], all.length).map((one) => sumOf(all, one)));
        expect(sumOf(all, balancedPulls(all))).toBeCloseTo(least, 3);
      }),
      { numRuns: 60 },
    );
  });

  it('of many welds is one that no change of one weld, nor of two, betters', () => {
    fc.assert(
      fc.property(movers(6, 14), (all) => {
        const found = balancedPulls(all);
        const least = sumOf(all, found) - 1e-3;
        for (const one of all.keys())
          for (let other = one; other < all.length; other += 1)
            for (const a of choices.keys())
              for (const b of choices.keys())
                if (sumOf(all, found.with(one, a).with(other, b)) < least)
                  expect.fail(`${String(one)} and ${String(other)}`);
      }),
      { numRuns: 30 },
    );
  });

  it('leaves the widths of a hoop alone where its legs are pulled alike', () => {
    const hoop = hoopOf({ width: 900, legs: [600, 600], bars: [300] });
    const whole = hoop.members[0]!.centreline.length;
    const { movement } = movementOf(hoop, { places: [spliceAt(1, 'hoop', 150), spliceAt(2, 'hoop', whole - 150)] });
    for (const { key, proposed } of movement!.checks)
      if (key.startsWith('width')) expect(Math.abs(proposed.value)).toBeLessThan(0.01);
    expect(movement!.largestWorst.value).toBeGreaterThan(2);
  });

  it('keeps a flat frame flat, which its sizes cannot tell: two welds of one leg pull against each other', () => {
    const hoop = hoopOf({ width: 900, legs: [600, 600] });
    const { proposed, movement } = movementOf(hoop, { places: [spliceAt(1, 'hoop', 150), spliceAt(2, 'hoop', 250)] });
    const [one, other] = proposed.map(({ quarters }) => pullOf(quarters));
    expect(one!.top + other!.top).toBe(0);
    expect(one!.outside + other!.outside).toBe(0);
    // apart they stand 100 mm, and each is turned by half of 0.75°
    expect(movement!.off.proposed.value).toBeLessThan(100 * ((0.375 * Math.PI) / 180));
    expect(movement!.off.worst.value).toBeGreaterThan(2);
  });

  it('goes from inside the frame to what hangs free, and to pads at the end', () => {
    const hoop = hoopOf({ width: 900, legs: [600, 600], bars: [300] });
    const whole = hoop.members[0]!.centreline.length;
    const places = [...newFrameWelds(hoop), spliceAt(1, 'hoop', 100), spliceAt(2, 'hoop', whole / 2)];
    const pad = {
      fixing: 'pad' as const,
      name: 'left pad',
      at: { member: 'hoop', spot: 'start' as const, number: 1, distance: 0 },
      off: { x: 0, y: 0, z: 0 },
      lands: null,
      tolerance: null,
      plate: { thickness: 5, hole: 0 },
    };
    const sites = weldSites(places, hoop, [pad]);
    expect(sites.map(({ name }) => name)).toEqual(['S1', 'S2', '1', '2', 'P1']);
    const { proposed, movement } = planMovement({
      wanted: hoop,
      ...TUBE,
      pull: 0.01,
      up: UP,
      welds: sites.map((site) => ({ site, shrinkage: 0.5 })),
      joints: [],
      order: [],
    });
    const names = proposed.map(({ weld }) => weld);
    expect(names.slice(3)).toEqual(['1', 'P1']);
    expect(names.slice(0, 3).sort()).toEqual(['2', 'S1', 'S2']);
    for (const { quarters } of proposed) expect([...quarters].sort()).toEqual([1, 2, 3, 4]);
    const { movement: without } = movementOf(hoop, {
      places: [spliceAt(1, 'hoop', 100), spliceAt(2, 'hoop', whole / 2)],
      pull: (0.01 * 180) / Math.PI,
    });
    expect(movement!.largestWorst.value).toBeCloseTo(without!.largestWorst.value, 9);
  });

  it('alternates between the sides of a ladder', () => {
    const hoop = hoopOf({ width: 900, legs: [900, 900], bars: [200, 400, 600] });
    const sites = weldSites(newFrameWelds(hoop), hoop, []);
    const side = new Map(sites.map(({ name, point }) => [name, Math.sign(point.x)]));
    const { proposed } = movementOf(hoop);
    const sides = proposed.map(({ weld }) => side.get(weld)!);
    for (const [index, one] of sides.slice(1).entries()) expect(one).toBe(-sides[index]!);
  });
});

describe('the worst order', () => {
  it('moves a size as far as any way of welding every joint once round', () => {
    fc.assert(
      fc.property(spaceFrames, ({ frame, cuts }) => {
        const sites = weldSites([...newFrameWelds(frame).slice(0, 2), ...cuts.slice(0, 1)], frame, []);
        const welds = sites.map((site) => ({ site, shrinkage: 0 }));
        const { welds: found, checks } = weldInfluences(frame, TUBE, placedWelds(welds, frame, []));
        const plan = planMovement({ wanted: frame, ...TUBE, pull: 0.01, up: UP, welds, joints: [], order: [] });
        const ways = FIRSTS.flatMap((first) => ROUND.map((way) => pullOf(quartersOf({ first, way }))));
        let most = 0;
        for (const combination of combinations(ways, found.length)) {
          for (const check of checks.keys()) {
            const size = found.reduce((sum, { outside, top }, index) => {
              const pull = combination[index]!;
              return sum + 0.01 * (pull.outside * outside[check]! + pull.top * top[check]!);
            }, 0);
            most = Math.max(most, Math.abs(size));
          }
        }
        expect(plan.movement!.largestWorst.value).toBeCloseTo(most, 9);
        for (const { quarters } of plan.movement!.worst) expect((quarters[1]! - quarters[0]! + 4) % 2).toBe(1);
      }),
      { numRuns: 15 },
    );
  });
});
