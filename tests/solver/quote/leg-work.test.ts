import { describe, expect, it } from 'vitest';
import { newJob } from '../../../server/job/default-job.ts';
import type { SettledJob } from '../../../server/job/job.ts';
import type { LegPlan } from '../../../server/plan/leg.ts';
import { legWork } from '../../../server/solver/quote/leg-work.ts';
import { buttLength, mitreLength, padLength, saddleLength } from '../../../server/solver/welding/weld-length.ts';
import { weldWork } from '../../../server/solver/welding/weld-work.ts';
import { made } from '../made-up-ways.ts';

const NEW = newJob('straight');
/** 38.1 × 1.65, welded with the settings to begin with; gas kept on for 60 s. */
const JOB: SettledJob = {
  ...NEW,
  closing: { ...NEW.closing, shrinkage: 1 },
  purge: { ...NEW.purge, hold: 60, prePurgeFlow: 10, weldingFlow: 5 },
};

type Given = { foot?: Partial<LegPlan['foot']>; head?: Partial<LegPlan['head']> } & Partial<
  Omit<LegPlan, 'foot' | 'head'>
>;

/** A leg of 1 m, square on a plate, a fitting at its head; what the work does not ask for is left out. */
const leg = ({ foot, head, ...more }: Given = {}): LegPlan =>
  ({
    number: 1,
    name: 'leg',
    field: '/site/legs/0',
    outsideDiameter: 38.1,
    wall: 1.65,
    cutLength: made(1000),
    foot: { end: 'square', tilt: made(0, 'deg'), takes: made(0), rise: null, longSide: null, plate: 6, ...foot },
    head: { end: 'eye', member: 'rail', station: made(500), axisAngle: made(90, 'deg'), takes: made(0), ...head },
    ...more,
  }) as LegPlan;

const plain = leg({ foot: { plate: 0 } });

describe('a leg on a plate', () => {
  const work = legWork(JOB, [leg()])!;

  it('is one piece with two ends cut and one weld, as a pad of the frame is', () => {
    expect(work.counts).toEqual({ bend: 0, cut: 2, fit: 1, purge: 1, bottle: 0, weld: 1, finish: 1 });
    expect(work.pieces.map(({ kind, name, length }) => [kind, name, length.value])).toEqual([['leg', 'leg', 1000]]);
    const site = { form: 'pad', plate: { thickness: 6, hole: 0 } } as Parameters<typeof weldWork>[0][number];
    const [pad] = weldWork([site], { welding: JOB.welding, tube: JOB.tube, gap: 0, members: [] });
    // π D = 119.695 mm at 1.85 mm/s
    expect(work.metres.weld).toBeCloseTo(0.119695, 6);
    expect(work.process.weld).toBeCloseTo(119.695 / 1.85 / 60, 4);
    expect(work.process.weld).toBeCloseTo(pad!.arcTime / 60, 12);
    // 1.2 × 2.7225 mm² × 119.695 mm × 0.0079 g/mm³
    expect(work.filler.toFixed(3)).toBe('3.089');
    expect(work.torchGas).toBeCloseTo(pad!.torchGas, 12);
    expect(work.metres.cut).toBeCloseTo((2 * 119.695) / 1000, 5);
  });

  it('is filled once by itself: volume of its bore as often as well mixed gas takes, then the welding flow', () => {
    // bore 34.8 mm, 0.95115 L × 8.381 volumes = 7.9716 L at 10 L/min
    expect(work.process.purge.toFixed(3)).toBe('0.797');
    // and 5 L/min for 64.7 s of arc / 0.2 and 60 s
    expect(work.purgeGas.toFixed(2)).toBe((7.9716 + (5 * (119.695 / 1.85 / 0.2 + 60)) / 60).toFixed(2));
    expect(work.parts.gas?.map(({ key, name, unit }) => [key, name, unit])).toEqual([['leg', 'leg', 'L']]);
    expect(work.parts.gas?.[0]?.value).toBeCloseTo(work.purgeGas + work.torchGas, 12);
  });

  it('takes neither time nor gas where the gas never reaches the target', () => {
    const purge = { ...JOB.purge, gas: { from: 'certificate', oxygen: 500 } as const, targetOxygen: 100 };
    const never = legWork({ ...JOB, purge }, [leg()])!;
    expect([never.purgeGas, never.process.purge, never.counts.purge]).toEqual([0, 0, 0]);
    expect(never.counts.weld).toBe(1);
  });
});

describe('which ends are welded', () => {
  const welds = (...legs: LegPlan[]) => legWork(JOB, legs)!.counts.weld;

  it('a saddle and a foot with a plate; no eye, no plain foot, no socket', () => {
    expect(welds(plain)).toBe(0);
    expect(welds(leg({ foot: { end: 'socket', plate: 0 } }))).toBe(0);
    expect(welds(leg({ foot: { plate: 0 }, head: { end: 'saddle' } }))).toBe(1);
    expect(welds(leg({ head: { end: 'saddle' } }))).toBe(2);
    expect(legWork(JOB, [plain])).toMatchObject({ purgeGas: 0, torchGas: 0, filler: 0, counts: { cut: 2, purge: 0 } });
  });

  it('one filling for both ends of a leg, one for each leg', () => {
    const both = leg({ head: { end: 'saddle' } });
    expect(legWork(JOB, [both])!.counts.purge).toBe(1);
    expect(legWork(JOB, [both, plain, leg()])!.counts).toMatchObject({ purge: 2, cut: 6, fit: 3 });
  });

  it('the saddle is as long as its own tube and angle make it on the tube of the frame', () => {
    const thin = { outsideDiameter: 20, wall: 1.5 };
    const one = legWork(JOB, [
      leg({ ...thin, foot: { plate: 0 }, head: { end: 'saddle', axisAngle: made(60, 'deg') } }),
    ])!;
    const seat = { axisAngle: Math.PI / 3, offset: 0 };
    expect(one.metres.weld).toBeCloseTo(saddleLength(seat, { ...thin, main: 38.1 }) / 1000, 12);
    expect(one.metres.weld).toBeLessThan(saddleLength(seat, thin) / 1000);
    // on a tube of no end of a width it is the ring of its own wall
    const flat = saddleLength({ axisAngle: Math.PI / 2, offset: 0 }, { ...thin, main: 1e7 });
    expect(Math.abs(flat / buttLength(thin) - 1)).toBeLessThan(1e-3);
  });

  it('a mitred foot is welded round its ellipse', () => {
    // half axes 19.05 and 19.05/cos 30° = 21.997 mm, the ellipse by Ramanujan's second formula
    const [a, b] = [19.05 / Math.cos(Math.PI / 6), 19.05];
    const h = ((a - b) / (a + b)) ** 2;
    const round = Math.PI * (a + b) * (1 + (3 * h) / (10 + Math.sqrt(4 - 3 * h)));
    const one = legWork(JOB, [leg({ foot: { end: 'mitre', tilt: made(30, 'deg') } })])!;
    expect(one.metres.weld).toBeCloseTo(round / 1000, 9);
    const tube = { outsideDiameter: 38.1, wall: 1.65 };
    expect(mitreLength(tube, 0)).toBeCloseTo(padLength(tube), 10);
    expect(mitreLength(tube, Math.PI / 2)).toBeLessThan(1e4);
  });
});

describe('legs together', () => {
  it('add up, named one by one', () => {
    const [one, other] = [leg(), leg({ name: 'other', cutLength: made(700), wall: 2 })];
    const [both, first, second] = [[one, other], [one], [other]].map((legs) => legWork(JOB, legs)!);
    for (const key of ['purgeGas', 'torchGas', 'filler', 'welds'] as const)
      expect(both![key]).toBeCloseTo(first![key] + second![key], 10);
    expect(both!.process.finish).toBeCloseTo(first!.process.finish + second!.process.finish, 10);
    expect(both!.parts.weld?.map(({ name }) => name)).toEqual(['leg', 'other']);
    expect(both!.pieces).toHaveLength(2);
  });

  it('are nothing where there are none, and are not finished where welds are left alone', () => {
    expect(legWork(JOB, [])).toBeNull();
    const left = legWork({ ...JOB, finish: { ...JOB.finish, treatment: 'none', cleaning: 'none' } }, [leg()])!;
    expect([left.counts.finish, left.metres.finish, left.process.finish]).toEqual([0, 0, 0]);
  });
});
