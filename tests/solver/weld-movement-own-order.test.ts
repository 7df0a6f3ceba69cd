import { describe, expect, it } from 'vitest';
import type { WeldTurn } from '../../server/job/welding.ts';
import { type WeldPlace } from '../../server/solver/welding/weld-sites.ts';
import { hoopOf } from '../properties/spliced-frames.ts';
import { checkOf, frameOf, movementOf, spliceAt, spotOf, straightOf } from './weld-movement-frames.ts';

describe('an order of one’s own', () => {
  const hoop = hoopOf({ width: 900, legs: [600, 600], bars: [300] });
  const places: WeldPlace[] = [spliceAt(1, 'hoop', 150)];
  const turn = (weld: string, first: WeldTurn['first'] = 1, way: WeldTurn['way'] = 'opposed'): WeldTurn => ({
    weld,
    first,
    way,
  });

  it('is the proposed one where none is given', () => {
    const { order, proposed, movement, findings } = movementOf(hoop, { places });
    expect(order).toEqual(proposed);
    expect(movement!.largestGiven).toEqual(movement!.largestProposed);
    expect(findings).toEqual([]);
  });

  it('is followed by the welds that it leaves out', () => {
    const { order, proposed } = movementOf(hoop, { places, order: [turn('S2', 3, 'round-back')] });
    expect(order[0]).toEqual({ weld: 'S2', quarters: [3, 2, 1, 4] });
    expect(order.slice(1)).toEqual(proposed.filter(({ weld }) => weld !== 'S2'));
  });

  it('tells of names that no weld has, and of welds that it names twice', () => {
    const { order, findings } = movementOf(hoop, {
      places,
      order: [turn('S1', 2), turn('S9'), turn('S1', 4, 'round')],
    });
    expect(order[0]).toEqual({ weld: 'S1', quarters: [2, 4, 3, 1] });
    expect(order).toHaveLength(3);
    expect(findings.slice(0, 2)).toEqual([
      {
        code: 'order-no-such-weld',
        grade: 'caution',
        field: '/welding/order/1/weld',
        data: { weld: 'S9' },
        wayOut: null,
      },
      { code: 'order-twice', grade: 'caution', field: '/welding/order/2/weld', data: { weld: 'S1' }, wayOut: null },
    ]);
  });

  it('that pulls a size clearly further than the proposed one is told of, with both numbers', () => {
    const { movement, findings } = movementOf(hoop, { places, order: [turn('1', 2, 'round')] });
    const row = movement!.checks.find(({ key }) => key === 'width-at-feet')!;
    // 2-3-4-1 ends on the outside: 150 mm below the weld swing out by 0.75°
    expect(row.given.value).toBeCloseTo(150 * ((0.75 * Math.PI) / 180), 1);
    expect(findings).toEqual([
      {
        code: 'order-pulls-more',
        grade: 'note',
        field: '/welding/order',
        data: {
          check: 'width-at-feet',
          index: 0,
          value: Math.abs(row.given.value),
          high: Math.abs(row.proposed.value),
        },
        wayOut: null,
      },
    ]);
  });
});

describe('a frame that welds cannot keep in size', () => {
  const tube = straightOf('tube', { x: 0, y: 0, z: 0 }, { x: 2000, y: 0, z: 0 });
  /** From an end to points that stand far off, on two sides: whichever way the tube is pulled, one of them moves. */
  const off = [
    { x: 0, y: 900, z: 0 },
    { x: 0, y: 0, z: 900 },
  ];
  const checks = off.map((one, index) =>
    checkOf('end-to-end', index + 1, spotOf([tube], 'tube', 0), spotOf([tube], 'tube', 2000, one)),
  );
  const frame = frameOf([tube], checks);

  it('is told of with the size that is off most and what class B of ISO 13920 allows it', () => {
    const { movement, findings } = movementOf(frame, { places: [spliceAt(1, 'tube', 1000)], pull: 3 });
    const most = Math.max(...movement!.checks.map(({ proposed }) => Math.abs(proposed.value)));
    expect(most).toBeGreaterThan(6);
    expect(findings.map(({ code, grade, field }) => [code, grade, field])).toEqual([
      ['pull-out-of-size', 'caution', '/welding/pull'],
    ]);
    // ISO 13920, table 1, class B: ± 6 over 2000 up to 4000 mm
    expect(findings[0]!.data).toMatchObject({ check: 'end-to-end', value: most, high: 6 });
  });

  it('is not told of while it stays within that', () => {
    expect(movementOf(frame, { places: [spliceAt(1, 'tube', 1000)], pull: 0.2 }).findings).toEqual([]);
  });
});

describe('what moves nothing', () => {
  const hoop = hoopOf({ width: 900, legs: [600, 600] });
  it('has no movement, and an order all the same', () => {
    expect(movementOf(hoop)).toEqual({ order: [], proposed: [], movement: null, findings: [] });
    const held = movementOf(hoop, { places: [spliceAt(1, 'hoop', 150)], pull: 0, shrinkage: 0 });
    expect(held.movement).toBeNull();
    expect(held.order.map(({ weld }) => weld)).toEqual(['1']);
    const unchecked = movementOf({ ...hoop, checks: [] }, { places: [spliceAt(1, 'hoop', 150)] });
    expect([unchecked.movement, unchecked.order.length]).toEqual([null, 1]);
  });

  it('pulls nothing in a jig, where shrinkage still does what it does', () => {
    const { movement } = movementOf(hoop, { places: [spliceAt(1, 'hoop', 150)], pull: 0 });
    expect(movement!.largestWorst.value).toBe(0);
    expect(movement!.off.worst.value).toBe(0);
    expect(movement!.checks.find(({ key }) => key === 'left-leg')!.shrinkage.value).toBeCloseTo(-0.5, 12);
  });
});
