import { describe, expect, it } from 'vitest';
import type { Weld } from '../../server/plan/welding.ts';
import {
  BRANCH,
  jobWith,
  line,
  madeUpJoint,
  MAIN,
  onto,
  padAt,
  SADDLE,
  settings,
  spliceAt,
  tube,
  welded,
} from './welding-frames.ts';

const ALL = { members: [MAIN, BRANCH], places: [spliceAt(1500), SADDLE] };
const padded = (hole = 8) => ({ fixing: [padAt('start', { hole })] });

describe('all welds together', () => {
  const { welding, works } = welded(jobWith({ closing: { gap: 0.5 }, more: padded() }), {
    ...ALL,
    places: [spliceAt(1000, 1), spliceAt(2000, 2), SADDLE],
  });
  const sum = (of: (weld: Weld) => number) => welding.welds.reduce((total, weld) => total + of(weld), 0);
  it('add up', () => {
    expect(welding.welds.map(({ name }) => name)).toEqual(['1', '2', 'S1', 'P1']);
    expect(welding.count.value).toBe(4);
    expect(welding.weldLength.value).toBeCloseTo(
      sum(({ length }) => length.value),
      9,
    );
    expect(welding.arcTime.value).toBeCloseTo(
      sum(({ arcTime }) => arcTime.value),
      9,
    );
    expect(welding.fillerMass.value).toBeCloseTo(
      sum(({ fillerMass }) => fillerMass.value),
      9,
    );
    expect(welding.fillerLength.value).toBeCloseTo(
      sum(({ fillerLength }) => fillerLength.value),
      9,
    );
    for (const figure of [welding.weldLength, welding.arcTime, welding.fillerMass, welding.fillerLength])
      expect(figure.working.inputs.reduce((total, { value }) => total + value, 0)).toBeCloseTo(figure.value, 9);
  });
  it('are those that every way is priced by', () => {
    for (const [index, work] of works.entries()) {
      const weld = welding.welds[index]!;
      expect([weld.name, weld.length.value, weld.arcTime.value]).toEqual([work.site.name, work.length, work.arcTime]);
      expect([weld.fillerMass.value, weld.fillerLength.value]).toEqual([work.fillerMass, work.fillerLength]);
    }
  });
  it('take five times the arc on the floor, by hand', () => {
    expect(welding.floorTime.value).toBeCloseTo(welding.arcTime.value / 0.2, 9);
    const { value, band } = welding.floorTime;
    expect(value - band!.plusMinus).toBeLessThan(welding.arcTime.value / 0.3);
  });
  it('are nothing where there are none', () => {
    const none = welded(jobWith({}), { places: [] }).welding;
    for (const figure of [none.weldLength, none.arcTime, none.floorTime, none.count, none.fillerMass])
      expect([figure.value, figure.band]).toEqual([0, null]);
    expect([none.welds, none.procedures, none.order, none.sleeve]).toEqual([[], [], [], null]);
  });
});

describe('gas of the torch', () => {
  it('flows before, during and after each quarter of each run', () => {
    const typed = { runs: 2, travelSpeed: 1, preFlow: 1, postFlow: 9, torchFlow: 6 };
    const { works } = welded(jobWith({ welding: settings('butt', typed) }));
    const seconds = 2 * works[0]!.length + 2 * 4 * (1 + 9);
    expect(works[0]!.arcTime).toBeCloseTo(2 * works[0]!.length, 10);
    expect(works[0]!.torchGas).toBeCloseTo((6 * seconds) / 60, 10);
  });
});

describe('preparation', () => {
  const prepared = (wall: number, gap: number, more: Parameters<typeof jobWith>[0]['welding'] = {}) =>
    welded(jobWith({ tube: { wall }, closing: { gap }, welding: more, more: padded() }), ALL).welding.welds.map(
      ({ preparation }) => preparation,
    );
  const groove = (form: 'square' | 'bevel') => ({ groove: { form, angle: 30, land: 1 } });
  it('by wall and gap: square up to 3 mm, a bevel over it; saddles and plates as they are', () => {
    expect(prepared(1.65, 0)).toEqual(['square-tight', 'saddle', 'fillet']);
    expect(prepared(3, 0.5)[0]).toBe('square-gap');
    expect(prepared(3.1, 2)[0]).toBe('bevel');
  });
  it('or as typed', () => {
    expect(prepared(3.5, 1, groove('square'))[0]).toBe('square-gap');
    expect(prepared(2.5, 2, groove('bevel'))).toEqual(['bevel', 'saddle', 'fillet']);
  });
  it('a bevel says its angle and its land, no thicker than the wall', () => {
    const [weld] = welded(
      jobWith({ tube: { wall: 3.5 }, closing: { gap: 2 }, welding: { groove: { form: null, angle: 35, land: 9 } } }),
    ).welding.welds;
    expect([weld!.bevel!.value, weld!.land!.value]).toEqual([35, 3.5]);
    const [square] = welded(jobWith({})).welding.welds;
    expect([square!.bevel, square!.land]).toEqual([null, null]);
  });
  it('faces are parallel to half of what the gap may be off', () => {
    const of = (wall: number, gap: number) =>
      welded(jobWith({ tube: { wall }, closing: { gap }, more: padded() }), ALL).welding.welds.map(
        ({ squareness }) => squareness.value,
      );
    // without filler 0.1 t and 0.2 mm at most; square with filler 0 to 1; a bevel 1.5 to 2.5; half a wall is bridged
    expect(of(1.65, 0)[0]).toBeCloseTo(0.0825, 12);
    expect(of(2, 0)).toEqual([0.1, 0.5, 0.5]);
    expect(of(2, 0.5)[0]).toBe(0.5);
    expect(of(4, 2)[0]).toBe(0.5);
  });
});

describe('ends', () => {
  it('of a butt are off square by half its kink, of a saddle by the angle of the axes', () => {
    const flat = tube('branch', [line(800)], { ends: { start: onto(Math.PI / 3) }, along: { x: 1, y: 0, z: 2 } });
    const { welding } = welded(jobWith({ more: padded() }), {
      members: [MAIN, flat],
      places: [spliceAt(900, 1), spliceAt(1500, 2), SADDLE],
      joints: [madeUpJoint(1, 1.5, 0.1), madeUpJoint(2, 0, 0)],
    });
    const [first, second, saddle, pad] = welding.welds.map(({ endAngle }) => endAngle);
    expect(first!.value).toBeCloseTo(0.75, 9);
    expect(second!.value).toBe(0);
    expect(saddle!.value).toBeCloseTo(60, 9);
    expect(pad).toBeNull();
  });
});

describe('misfit', () => {
  it('is that of the joint of the same number, both welds of a let-in have it, others have none', () => {
    const letIn = (side: 'A' | 'B') => ({ kind: 'let-in', joint: 2, side, member: 'main', station: 2000 }) as const;
    const { welding } = welded(jobWith({}), {
      ...ALL,
      places: [spliceAt(1000, 1), letIn('A'), letIn('B'), SADDLE],
      joints: [madeUpJoint(1, 0.4, 0.12), madeUpJoint(2, 1.2, 0.3)],
    });
    expect(welding.welds.map(({ name, misfit }) => [name, misfit?.hiLo.value ?? null, misfit?.grade ?? null])).toEqual([
      ['1', 0.12, 'good'],
      ['2A', 0.3, 'over'],
      ['2B', 0.3, 'over'],
      ['S1', null, null],
    ]);
  });
});

describe('symbols', () => {
  const symbols = (job: ReturnType<typeof jobWith>) => welded(job, ALL).welding.welds.map(({ symbol }) => symbol);
  it('say square, flare-bevel and fillet, all round but for a butt, and a butt alone ground flush', () => {
    const [butt, saddle, pad] = symbols(jobWith({ more: padded() }));
    expect(butt).toEqual({
      standard: 'iso-2553',
      elementary: 'square',
      allRound: false,
      flush: true,
      angle: null,
      gap: 0,
      leg: null,
      process: '142',
    });
    expect(saddle).toMatchObject({
      elementary: 'flare-bevel',
      allRound: true,
      flush: false,
      gap: null,
      process: '141',
    });
    expect(pad).toMatchObject({ elementary: 'fillet', allRound: true, flush: false, gap: null });
    // the size is that of the metal which is reckoned
    for (const { leg } of [saddle!, pad!]) expect(leg).toBeCloseTo(Math.SQRT2 * 1.65, 12);
    const { saddle: alone, pad: fused } = {
      ...settings('saddle', { process: '142' }),
      ...settings('pad', { process: '142' }),
    };
    const bare = symbols(jobWith({ more: padded(), welding: { saddle: alone, pad: fused } }));
    expect(bare.map(({ leg }) => leg)).toEqual([null, null, null]);
  });
  it('say a V with both sides of its angle, by the standard that is typed', () => {
    const job = jobWith({ tube: { wall: 4 }, closing: { gap: 2 }, welding: { symbols: 'aws-a2-4' } });
    const [butt] = symbols({ ...job, finish: { ...job.finish, treatment: 'colour' } });
    expect(butt).toMatchObject({ standard: 'aws-a2-4', elementary: 'v', angle: 65, gap: 2, flush: false });
  });
});

it('tacks of a pad are as long as its plate asks for, those of a tight butt are dots', () => {
  const { welding } = welded(jobWith({ more: { fixing: [padAt('start', { hole: 8, thickness: 3 })] } }), ALL);
  expect(welding.welds.map(({ tacks }) => tacks.length.value)).toEqual([4, 6.6, 12]);
  expect(welding.welds.map(({ tacks }) => tacks.count.value)).toEqual([3, 3, 3]);
});

it('the order has every weld once', () => {
  const { welding } = welded(jobWith({ more: padded() }), ALL);
  for (const order of [welding.order, welding.proposed])
    expect(order.map(({ weld }) => weld).sort()).toEqual(['1', 'P1', 'S1']);
});
