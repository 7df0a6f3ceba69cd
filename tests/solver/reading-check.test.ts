import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Hoop } from '../../server/job/frame.ts';
import type { Job } from '../../server/job/job.ts';
import type { Reference } from '../../server/job/quantities.ts';
import type { ReadingRow } from '../../server/plan/reading-check.ts';
import type { SlipKey } from '../../server/plan/slip.ts';
import { misreadings } from '../../server/solver/correction/misreadings.ts';
import { readHoop, type HoopReadings } from '../../server/solver/correction/hoop-readings.ts';
import { drawFrame } from '../../server/solver/frame/expand-frame.ts';
import { plan } from '../../server/solver/plan.ts';
import { between, jobWith } from '../properties/plans-compared.ts';

type U = { diameter: number; radius: number; width: number; leg: number; other: number };

/** U frames: a straight crossbar, two corners of 90°, equal legs; lengths centre to centre, with room for every slip. */
const us: fc.Arbitrary<U> = fc
  .record({
    diameter: between(20, 60),
    share: between(2, 4),
    width: between(3, 9),
    leg: between(3, 8),
    other: between(0.8, 1.2),
  })
  .map(({ diameter, share, width, leg, other }) => {
    const radius = share * diameter;
    return { diameter, radius, width: width * radius, leg: leg * radius, other: other * radius };
  });

const SIDE = { outside: 1, centre: 0, inside: -1 } as const;

function jobOf({ diameter, radius, width, leg, other }: U, reference: Reference): Job {
  const frame: Hoop = {
    shape: 'hoop',
    width: { value: width + SIDE[reference] * diameter, reference },
    widthAtFeet: null,
    leftLeg: { value: leg, reference: 'centre' },
    rightLeg: { value: leg, reference: 'centre' },
    crossbar: { form: 'straight' },
    innerCrossbars: [],
  };
  const job = jobWith(frame, {
    tube: { outsideDiameter: diameter, wall: diameter / 20 },
    machine: { leastStraight: 0 },
    die: { radius, gripLength: 0 },
  });
  const [die] = job.machine.dies;
  return { ...job, machine: { ...job.machine, dies: [die!, { ...die!, radius: other }] } };
}

/** Every size of a misread frame off what was wanted, its radius after release, and what a bend springs back by [rad]. */
type Off = { readonly off: HoopReadings; readonly R: number; readonly springback: number; readonly otherR: number };

const KEYS = ['width-at-corners', 'width-at-feet', 'left-leg', 'right-leg'] as const;

/** All four sizes as the rows have them: a row shows three of the sizes, so the frames behind them are read. */
function offBy(job: Job, slip: SlipKey): Off {
  const made = plan(job);
  const R = made.springback!.radiusAfterRelease.value;
  const shape = { outsideDiameter: job.tube.outsideDiameter, cornerRadius: R, root: '/frame' as const };
  const wanted = drawFrame(job.frame, shape).geometry!;
  const command = made.springback!.bendTo90.value;
  const second = { ...job, machine: { ...job.machine, die: 1 } };
  const otherR = plan(second).springback!.radiusAfterRelease.value;
  const [found] = misreadings(job.frame, wanted, {
    draw: (frame) => drawFrame(frame, shape).geometry,
    outsideDiameter: shape.outsideDiameter,
    springbackShare: 1 - 90 / command,
    spareLength: 0,
    ofDie: (piece) => piece.kind === 'arc',
    otherDies: [{ radius: job.machine.dies[1]!.radius, leaves: otherR }],
  }).filter((one) => one.slip === slip);
  const line = found!.made!.rebent.get('hoop') ?? found!.made!.drawn.members[0]!.centreline;
  const [is, was] = [readHoop(line)!, readHoop(wanted.members[0]!.centreline)!];
  const off = Object.fromEntries(KEYS.map((key) => [key, is[key] - was[key]])) as HoopReadings;
  return { off, R, otherR, springback: (Math.PI / 2) * (1 - 90 / command) };
}

/** The row of a slip, where the tube could be bent so. */
const rowOf = (job: Job, slip: SlipKey): ReadingRow =>
  plan(job).frame!.readingCheck!.rows.find((row) => row.slip === slip)!;

function expectOff(off: HoopReadings, wanted: Partial<HoopReadings>): void {
  for (const [key, value] of Object.entries(wanted)) expect(off[key as keyof HoopReadings], key).toBeCloseTo(value, 6);
}

const RUNS = { numRuns: 40 };

describe('a U frame read another way', () => {
  it.each([
    ['outside', 'outside-read-as-centre', 1],
    ['outside', 'outside-read-as-inside', 2],
    ['centre', 'centre-read-as-inside', 1],
    ['centre', 'centre-read-as-outside', -1],
    ['inside', 'inside-read-as-centre', -1],
    ['inside', 'inside-read-as-outside', -2],
  ] as const)('%s, %s: as many diameters wider as it says, and the legs as they were', (typed, slip, diameters) => {
    fc.assert(
      fc.property(us, (u) => {
        const by = diameters * u.diameter;
        const { off } = offBy(jobOf(u, typed), slip);
        expectOff(off, { 'width-at-corners': by, 'width-at-feet': by, 'left-leg': 0, 'right-leg': 0 });
        const row = rowOf(jobOf(u, typed), slip);
        expect(row.field).toBe('/frame/width');
        expect(row.worst).toBeCloseTo(Math.abs(by), 6);
      }),
      RUNS,
    );
  });
});
