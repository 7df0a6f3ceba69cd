import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Job } from '../../server/job/job.ts';
import { isoTolerance } from '../../server/solver/tube/tolerances.ts';
import {
  arc,
  BRANCH,
  jobWith,
  line,
  madeUpJoint,
  MAIN,
  SADDLE,
  settings,
  spliceAt,
  tube,
  welded,
} from './welding-frames.ts';

type Change = Parameters<typeof jobWith>[0];
const sleeved = ({ welding, ...change }: Change = {}, work: Parameters<typeof welded>[1] = {}) =>
  welded(jobWith({ ...change, welding: { backing: 'sleeve', ...welding } }), work);
const sleeveOf = (change: Change = {}) => sleeved(change).welding.sleeve!;

describe('sizes', () => {
  it('38.1 × 1.65 to ISO 1127 D3 T3: least bore 34.1, 0.3 of play, largest bore 35.5', () => {
    const { outsideDiameter, clearance, length, wall } = sleeveOf();
    // 38.1 − 0.3 − 2 (1.65 + 0.2) = 34.1; 38.1 + 0.3 − 2 (1.65 − 0.2) = 35.5
    expect(outsideDiameter.value).toBeCloseTo(33.8, 10);
    expect(clearance.value).toBeCloseTo(1.7, 10);
    expect([length.value, wall.value]).toEqual([76.2, 1.5]);
  });
  it('go into every tube of its tolerance, with play, and never fill one', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 20, max: 300, noNaN: true }),
        fc.double({ min: 0.8, max: 4, noNaN: true }),
        (outsideDiameter, wall) => {
          const size = { outsideDiameter, wall };
          const off = isoTolerance('iso-1127-d3-t3', size);
          const sleeve = sleeveOf({ tube: size });
          const narrowest = outsideDiameter - off.outsideDiameter.minus - 2 * (wall + off.wall.plus!);
          const widest = outsideDiameter + off.outsideDiameter.plus - 2 * (wall - off.wall.minus);
          expect(narrowest - sleeve.outsideDiameter.value).toBeCloseTo(0.3, 9);
          expect(widest - sleeve.outsideDiameter.value).toBeCloseTo(sleeve.clearance.value, 9);
        },
      ),
    );
  });
  it('take the shop’s own tolerance, and say that they are in doubt where none has a row', () => {
    const own = sleeveOf({ tube: { tolerance: { by: 'own', outsideDiameter: 0.1, wall: 0.05 } } });
    expect(own.outsideDiameter.value).toBeCloseTo(38.1 - 0.1 - 2 * 1.7 - 0.3, 10);
    const none = sleeveOf({
      tube: { outsideDiameter: 300, wall: 3, tolerance: { by: 'standard', standard: 'astm-a249' } },
    });
    expect(none.outsideDiameter.value).toBeCloseTo(300 - 6 - 0.3, 10);
    expect(none.outsideDiameter.band).not.toBeNull();
    expect(own.outsideDiameter.band).toBeNull();
  });
  it('take a wall that no standard limits upwards as far over as under', () => {
    const pipe = sleeveOf({
      tube: { outsideDiameter: 60.3, wall: 2.8, tolerance: { by: 'standard', standard: 'astm-a312' } },
    });
    expect(pipe.outsideDiameter.value).toBeCloseTo(60.3 - 0.79 - 2 * 2.8 * 1.125 - 0.3, 10);
  });
  it('have 2 plug holes of 6 mm in each small thin tube, 4 of 8 mm in a large thick one, and none wider than D/4', () => {
    const plugs = (outsideDiameter: number, wall: number) => {
      const { plugHoles, plugHoleBore } = sleeveOf({ tube: { outsideDiameter, wall } });
      return [plugHoles.value, plugHoleBore.value];
    };
    expect(plugs(38.1, 1.65)).toEqual([2, 6]);
    expect(plugs(114.3, 3)).toEqual([4, 8]);
    expect(plugs(12, 1)).toEqual([2, 3]);
  });
});

describe('where it goes', () => {
  it('behind butts alone', () => {
    const { welding } = sleeved({}, { members: [MAIN, BRANCH], places: [spliceAt(1500), SADDLE] });
    expect(welding.welds.map(({ backing }) => backing)).toEqual(['sleeve', 'purge']);
    expect(welded(jobWith({})).welding.sleeve).toBeNull();
  });
  const bent = tube('main', [line(500), arc(114.3, Math.PI / 2), line(500)]);
  const stops = (station: number, length: number | null = null, members = [bent]) =>
    sleeved({ welding: { sleeve: { wall: 1.5, length } } }, { members, places: [spliceAt(station)] }).findings.filter(
      ({ code }) => code === 'sleeve-does-not-fit',
    );
  it('not into a bend: half a sleeve must lie on the straight but for its play', () => {
    // x²/2R = 0.3 at x = 8.28: 38.1 − 8.28 = 29.82 before the bend
    expect(stops(500 - 29.9)).toEqual([]);
    expect(stops(500 - 29.7)).toHaveLength(1);
    const end = 500 + (114.3 * Math.PI) / 2;
    expect(stops(end + 29.9)).toEqual([]);
    expect(stops(end + 29.7)).toHaveLength(1);
  });
  it('a shorter one goes in, and the longest that does is offered', () => {
    const [stop] = stops(480);
    const offered = stop!.wayOut!.value as number;
    expect(stop!.wayOut!.field).toBe('/welding/sleeve/length');
    expect(stops(480, offered)).toEqual([]);
    expect(stops(480, offered + 0.2)).toHaveLength(1);
  });
  it('in the middle of a bend none does that is worth it', () => {
    expect(stops(590)[0]!.wayOut).toEqual({ field: '/welding/backing', value: 'purge' });
  });
  it('in a crown of a large radius it does', () => {
    const crown = (radius: number) => [tube('main', [arc(radius, 1)])];
    // l²/8R = 76.2²/(8 R): 0.3 at 2419 mm
    expect(stops(1200, null, crown(2430))).toEqual([]);
    expect(stops(1200, null, crown(2410))).toHaveLength(1);
  });
  it('through a kink that is small enough: half its length times half the kink', () => {
    const kinked = (kink: number) => {
      const joints = [madeUpJoint(1, kink, 0)];
      return sleeved({}, { joints }).findings.filter(({ code }) => code === 'sleeve-does-not-fit').length;
    };
    // 38.1 · κ/2 = 0.3 at κ = 0.902°
    expect([kinked(0), kinked(0.89), kinked(0.92)]).toEqual([0, 0, 1]);
  });
  it('round the closing weld of a closed tube as well', () => {
    const links = [line(200), arc(114.3, Math.PI / 2), line(20), arc(114.3, Math.PI / 2), line(10)];
    const ring = { ...tube('main', links), closed: true };
    const at = { kind: 'closing', joint: 0, side: '', member: 'main', station: 0 } as const;
    const job: Job = jobWith({ welding: { backing: 'sleeve' } });
    // 10 mm before the weld the last bend ends
    expect(welded(job, { members: [ring], places: [at] }).findings.map(({ code }) => code)).toContain(
      'sleeve-does-not-fit',
    );
  });
  it('beside the sleeve of the other face of a let-in piece, by the length of the piece and not of what it replaces', () => {
    const letIn = (side: 'A' | 'B', station: number) =>
      ({ kind: 'let-in', joint: 1, side, member: 'main', station }) as const;
    const stopped = (piece: number) => {
      const joint = { ...madeUpJoint(1, 0, 0), kind: 'let-in' as const };
      const length = { ...joint.removed, value: piece };
      const joints = [{ ...joint, letIn: { length } as NonNullable<typeof joint.letIn> }];
      return sleeved({}, { joints, places: [letIn('A', 1000), letIn('B', 1030)] }).findings.filter(
        ({ code }) => code === 'sleeve-does-not-fit',
      );
    };
    expect(stopped(76.3)).toEqual([]);
    expect(stopped(70)).toMatchObject([{ data: { weld: '1A', other: '1B', high: 70 }, wayOut: { value: 70 } }]);
    expect(stopped(30)).toMatchObject([{ wayOut: { field: '/welding/backing', value: 'purge' } }]);
  });
  it('over a branch whose bore stays shut under its saddle, but not over a hole', () => {
    const over = (underSaddles: 'none' | 'all') => {
      const job = jobWith({ welding: { backing: 'sleeve' } });
      const purge = { ...job.purge, holes: { ...job.purge.holes, underSaddles } };
      const work = { members: [MAIN, BRANCH], places: [spliceAt(1000)] };
      return welded({ ...job, purge }, work).findings.some(({ code }) => code === 'sleeve-does-not-fit');
    };
    expect([over('none'), over('all')]).toEqual([false, true]);
  });
});

describe('how it is welded', () => {
  it('with filler and a gap, however thin and tight the butt', () => {
    const { welding } = sleeved({ closing: { gap: 0 } });
    expect(welding.procedures[0]!.process).toBe('141');
    // 1 to 2 mm of gap: half a millimetre either way
    expect(welding.welds[0]!.squareness.value).toBe(0.5);
    expect(sleeved({ welding: settings('butt', { process: '142' }) }).welding.procedures[0]!.process).toBe('142');
  });
  it('its plugs take arc, gas and filler: 4 holes of 6 mm, once round and filled', () => {
    const fixed = { process: '141', travelSpeed: 2, preFlow: 1, postFlow: 9, torchFlow: 6, runs: 1 } as const;
    const change = { closing: { gap: 1.5 }, welding: settings('butt', fixed) };
    const [bare, held] = [welded(jobWith(change)), sleeved(change)];
    const [without, plugged] = [bare.works[0]!, held.works[0]!];
    expect(plugged.length).toBe(without.length);
    expect(plugged.arcTime - without.arcTime).toBeCloseTo((4 * Math.PI * 6) / 2, 9);
    expect(plugged.torchGas - without.torchGas).toBeCloseTo((6 * ((4 * Math.PI * 6) / 2 + 4 * 10)) / 60, 9);
    expect(plugged.fillerMass - without.fillerMass).toBeCloseTo(1.2 * 0.0079 * 4 * Math.PI * 9 * 1.65, 9);
    const [weld] = held.welding.welds;
    expect([weld!.arcTime.value, weld!.fillerMass.value, weld!.fillerLength.value]).toEqual([
      plugged.arcTime,
      plugged.fillerMass,
      plugged.fillerLength,
    ]);
    // and the working says so
    for (const figure of [weld!.arcTime, weld!.fillerLength])
      expect(figure.working.inputs.some(({ name }) => name.includes('plug'))).toBe(true);
  });
});
