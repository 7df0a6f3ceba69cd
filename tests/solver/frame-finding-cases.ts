import { newFrame } from '../../server/job/default-frame.ts';
import { newJob } from '../../server/job/default-job.ts';
import type { Frame, Hoop, Offset, Ring, RunPoint } from '../../server/job/frame.ts';
import type { Job } from '../../server/job/job.ts';
import type { Die } from '../../server/job/machine.ts';
import type { Finding, FindingCode, FindingGrade } from '../../server/plan/finding.ts';
import { plan } from '../../server/solver/plan.ts';
import { withDie } from './made-up-shop.ts';

const D = 38.1;
/** Radius of the usual die's bends after release [mm], as the plan says it. */
const R = plan(newJob('hoop')).springback!.radiusAfterRelease.value;
const tangent = (degrees: number, radius = R) => radius * Math.tan((degrees * Math.PI) / 360);

/** A job that raises one finding. `data` is what the finding must hold beside names; `beside` what comes with it. */
export type Case = {
  readonly name: string;
  readonly job: Job;
  readonly code: FindingCode;
  readonly grade: FindingGrade;
  readonly field: string;
  readonly data: Readonly<Record<string, number | string>>;
  readonly beside?: readonly FindingCode[];
  /** The way out that it must offer, where that is worth more than that there is one. */
  readonly out?: Finding['wayOut'];
};

/** A job whose machine asks nothing of straights, so that only what is meant is said. */
export function calm(frame: Frame, machine: Partial<Job['machine']> = {}, die: Partial<Die> = {}): Job {
  const job = newJob(frame.shape);
  const easy = withDie({ ...job.machine, leastStraight: 0, ...machine }, { gripLength: 0, ...die });
  return { ...job, frame, machine: easy };
}

const outside = (value: number) => ({ value, reference: 'outside' as const });
const inside = (value: number) => ({ value, reference: 'inside' as const });
const centre = (value: number) => ({ value, reference: 'centre' as const });
const hoop = (change: Partial<Hoop> = {}): Hoop => ({ ...(newFrame('hoop') as Hoop), ...change });
const ring = (change: Partial<Ring>): Ring => ({ ...(newFrame('ring') as Ring), ...change });
const offset = (change: Partial<Offset>): Offset => ({ ...(newFrame('offset') as Offset), ...change });
const bar = (value: number) => ({ fromFoot: centre(value) });
const at = (x: number, y: number, z = 0, radius: number | null = null): RunPoint => ({ x, y, z, radius });
const run = (...points: RunPoint[]): Frame => ({ shape: 'run', points });

export const stop = (
  code: FindingCode,
  name: string,
  frame: Frame,
  field: string,
  data: Case['data'],
  machine: Partial<Job['machine']> = {},
): Case => ({ name, job: calm(frame, machine), code, grade: 'stop', field: `/frame${field}`, data });

const hoops: Case[] = [
  stop('leg-short-for-bend', 'a leg over the outside', hoop({ leftLeg: outside(100) }), '/leftLeg/value', {
    value: 100,
    low: R + D / 2,
  }),
  stop('leg-short-for-bend', 'the other leg, to the inside', hoop({ rightLeg: inside(90) }), '/rightLeg/value', {
    value: 90,
    low: R - D / 2,
  }),
  stop('width-under-tube', 'legs that touch', hoop({ width: outside(2 * D) }), '/width/value', {
    value: 2 * D,
    low: 2 * D,
  }),
  stop('width-under-tube', 'feet that touch', hoop({ widthAtFeet: centre(30) }), '/widthAtFeet/value', {
    value: 30,
    low: D,
  }),
  stop('width-short-for-bends', 'bends that meet', hoop({ width: inside(150) }), '/width/value', {
    value: 150,
    low: 2 * R - D,
  }),
  stop(
    'crown-radius-too-small',
    'a crown that does not reach',
    hoop({ crossbar: { form: 'crowned', radius: 300 } }),
    '/crossbar/radius',
    { value: 300, low: (900 - D) / 2 + D },
  ),
  stop(
    'crossbar-outside-legs',
    'an inner crossbar on the bend',
    hoop({ innerCrossbars: [bar(560)] }),
    '/innerCrossbars/0/fromFoot/value',
    { value: 560, low: 0, high: 600 - D / 2 - R },
  ),
  stop(
    'members-cross',
    'two inner crossbars through each other',
    hoop({ innerCrossbars: [bar(200), bar(210)] }),
    '/innerCrossbars/1/fromFoot/value',
    { value: 10, low: D },
  ),
  stop('path-not-possible', 'feet wider than any lean', hoop({ widthAtFeet: centre(5000) }), '/widthAtFeet/value', {
    value: 5000,
  }),
];

const ringsAndOffsets: Case[] = [
  stop('width-short-for-bends', 'corners that overlap', ring({ width: outside(200) }), '/width/value', {
    value: 200,
    low: 2 * R + D,
  }),
  stop('width-short-for-bends', 'corners that overlap upwards', ring({ height: centre(150) }), '/height/value', {
    value: 150,
    low: 2 * R,
  }),
  stop('width-under-tube', 'sides that touch', ring({ width: outside(70) }), '/width/value', { value: 70, low: 2 * D }),
  stop('straight-negative', 'bends that overlap', offset({ across: centre(60) }), '/across/value', {
    value: 60,
    low: 2 * tangent(45) * Math.SQRT1_2,
  }),
  stop('leg-short-for-bend', 'a first end too short', offset({ first: centre(20) }), '/first/value', {
    value: 20,
    low: tangent(45),
  }),
  stop('leg-short-for-bend', 'a last end too short', offset({ last: outside(20) }), '/last/value', {
    value: 20,
    low: tangent(45, R + D / 2),
  }),
  stop('bend-angle-zero', 'an offset without an angle', offset({ angle: 0.005 }), '/angle', {
    value: 0.005,
    low: 0.01,
  }),
];

const runs: Case[] = [
  stop('points-coincide', 'a point twice', run(at(0, 0), at(500, 0), at(500, 0), at(500, 500)), '/points/2', {
    first: 2,
    second: 3,
  }),
  stop('bend-angle-straight-back', 'straight back', run(at(0, 0), at(500, 0), at(100, 0)), '/points/1', {
    point: 2,
    value: 180,
  }),
  {
    ...stop('bend-angle-zero', 'a point on a line', run(at(0, 0), at(500, 0), at(900, 0)), '/points/1', { point: 2 }),
    grade: 'note',
  },
  stop('straight-negative', 'points too close', run(at(0, 0), at(500, 0), at(500, 150), at(0, 150)), '/points/2', {
    first: 2,
    second: 3,
    value: 150,
    low: 2 * R,
    shortage: 2 * R - 150,
  }),
  stop('straight-negative', 'a typed radius too large', run(at(0, 0), at(500, 0, 0, 600), at(500, 900)), '/points/1', {
    value: 500,
    low: 600,
    shortage: 100,
  }),
  {
    ...stop(
      'member-crosses-itself',
      'a loop that comes back 20 mm above itself',
      run(at(0, 0), at(800, 0), at(800, 800), at(400, 800, 20), at(400, -400, 20)),
      '/points',
      { value: 20, low: D },
    ),
    beside: ['bend-no-way', 'tube-strikes'],
  },
  stop(
    'die-radius-under-tube-radius',
    'a radius under the tube’s',
    run(at(0, 0), at(500, 0, 0, 15), at(500, 500)),
    '',
    {
      low: D / 2,
    },
  ),
];

export const stops: readonly Case[] = [...hoops, ...ringsAndOffsets, ...runs];
export const shapes = { D, R, hoop, bar, run, at };
