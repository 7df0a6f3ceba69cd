import { newJob } from '../../server/job/default-job.ts';
import type { CameBack, Reading } from '../../server/job/came-back.ts';
import type { Hoop } from '../../server/job/frame.ts';
import type { Job } from '../../server/job/job.ts';
import type { Die, Machine } from '../../server/job/machine.ts';
import type { Purge } from '../../server/job/purge.ts';
import type { Site } from '../../server/job/site.ts';
import { landingStageRates } from './landing-stage-rates.ts';

const outside = (value: number) => ({ value, reference: 'outside' as const });
const centre = (value: number) => ({ value, reference: 'centre' as const });

const size = (check: string, index: number, value: number): Extract<Reading, { reading: 'size' }> => ({
  reading: 'size',
  check,
  index,
  reference: 'outside',
  value,
  accuracy: null,
});

/** What the club asked for [mm]. */
const WANTED: Hoop = {
  shape: 'hoop',
  width: outside(950),
  widthAtFeet: null,
  leftLeg: outside(600),
  rightLeg: outside(600),
  crossbar: { form: 'crowned', radius: 2400 },
  innerCrossbars: [{ fromFoot: centre(250) }],
};

/**
 * What the tape found, to the millimetre: the distances between the corners were laid along the tube and each mark was
 * taken for the start of a bend; the bar was sawn with its trim allowance. The inner crossbar was set down from the
 * crown.
 */
const CAME_BACK: CameBack = {
  tapeAccuracy: 1,
  angleAccuracy: 0.2,
  readings: [
    size('width-at-corners', 0, 983),
    size('width-at-feet', 0, 976),
    size('left-leg', 0, 701),
    size('right-leg', 0, 614),
    size('reach', 0, 751),
    size('diagonal', 1, 1204),
    size('diagonal', 2, 1157),
    { ...size('crossbar-from-foot', 1, 351), reference: 'centre' },
  ],
};

/** The made-up machine: two dies for this tube, and a bed that a leg hanging down can strike. */
function machineOf({ machine }: Job): Machine {
  const [die] = machine.dies;
  const dies: Die[] =
    die === undefined
      ? []
      : [
          { ...die, name: '3 D', tooling: 'plug' },
          { ...die, name: '2 D', radius: 76.2, tooling: 'plug' },
        ];
  return {
    ...machine,
    name: 'Draw bender of the example',
    dies,
    trimAllowance: 150,
    surroundings: { ...machine.surroundings, bedBelow: 850 },
  };
}

/**
 * Held in a vice by its left leg, the other leg above it: argon that is fed at the left foot rises all the way to the
 * right one. The crossbar's bore opens into both legs, so that one set-up fills the whole frame. The workshop has a fan
 * in its wall.
 */
const heldAndPurged = ({ purge }: Job): Purge => ({
  ...purge,
  up: { x: 1, y: 0, z: 0 },
  holes: { ...purge.holes, underSaddles: 'all', bore: 16 },
  room: { ...purge.room, volume: 180, fanFlow: 600, fanWay: 'out' },
});

const named = (name: string) => ({ named: name });
const along = (x: number, y: number, z: number) => ({ x, y, z });
const spot = (at: 'start' | 'finish' | 'bend-start' | 'bend-end', number: number) => ({
  member: 'hoop',
  spot: at,
  number,
  distance: 0,
});

const LEG: Omit<Site['legs'][number], 'name' | 'head'> = {
  foot: {
    at: along(0, 0, 0),
    surface: { by: 'thing', thing: 'face of the float' },
    end: { end: 'mitre', plate: 6 },
    held: 'pinned',
  },
  tube: null,
  adjust: null,
};

/**
 * The stage floats with a list of 1.7 and a trim of -0.8 degrees. The frame is hinged by its feet to the after edge, runs
 * out over the water, level as the stage lies now, and is held up by two legs from the face of the float. A pile that
 * leans 12 degrees to starboard passes through it.
 */
function standingOnStage({ site }: Job): Site {
  const slope: Site['standing']['slopes'][number] = { along: along(0, 1, 0), angle: 0, to: 'level' };
  return {
    ...site,
    tapeAccuracy: 0.5, // a steel tape read twice
    level: {
      ...site.level,
      angleAccuracy: 0.2, // a telephone laid on a straight batten
      sets: [
        {
          taken: '2026-11-02T10:20',
          note: 'two people on the stage, made up',
          readings: [
            { reading: 'incline', along: along(1, 0, 0), angle: -0.8, accuracy: null },
            { reading: 'incline', along: along(0, 1, 0), angle: 1.7, accuracy: null },
          ],
        },
      ],
    },
    points: [
      { name: 'port cleat', at: { by: 'typed', point: along(0, 420, 0), accuracy: null } },
      { name: 'starboard cleat', at: { by: 'typed', point: along(0, -420, 0), accuracy: null } },
      {
        name: 'pile at the deck',
        at: {
          by: 'distances',
          distances: [
            { from: 'port cleat', distance: 584, accuracy: null },
            { from: 'starboard cleat', distance: 665, accuracy: null },
          ],
          on: 'deck',
          towards: 'back',
        },
      },
    ],
    things: [
      {
        name: 'deck',
        shape: {
          shape: 'plane',
          plane: { by: 'normal', at: along(0, 0, 0), normal: { by: 'axes', vector: along(0, 0, 1) } },
        },
        clearance: null,
        swing: null,
      },
      {
        name: 'face of the float',
        shape: {
          shape: 'plane',
          plane: { by: 'normal', at: along(0, 0, 0), normal: { by: 'axes', vector: along(-1, 0, 0) } },
        },
        clearance: null,
        swing: null,
      },
      {
        name: 'pile',
        shape: {
          shape: 'cylinder',
          at: named('pile at the deck'),
          axis: { by: 'lean', ahead: 0, port: -12 },
          diameter: 60.3,
          ends: null,
        },
        clearance: 20,
        swing: null,
      },
    ],
    directions: [{ name: 'hand rail post', direction: { by: 'lean', ahead: -10, port: 0 } }],
    placing: { by: 'axes', origin: along(-581, 0, 0), x: along(0, 1, 0), y: along(-1, 0, 0) },
    standing: {
      hinge: { from: spot('start', 1), to: spot('finish', 1) },
      slopes: [slope],
      height: null,
      swing: { from: 0, to: 10 },
    },
    legs: [
      {
        ...LEG,
        name: 'starboard leg',
        foot: { ...LEG.foot, at: along(0, -420, -610) },
        head: { at: spot('bend-start', 1), end: { end: 'saddle' }, held: 'pinned' },
      },
      {
        ...LEG,
        name: 'port leg',
        foot: { ...LEG.foot, at: along(0, 420, -610) },
        head: { at: spot('bend-end', 2), end: { end: 'saddle' }, held: 'pinned' },
      },
    ],
  };
}

/** The job that a new database opens with: made up from end to end, and it says so. */
export function landingStage(): Job {
  const job = newJob('hoop');
  return {
    ...job,
    title: 'Landing stage boarding frame',
    customer: 'a rowing club',
    drawingNumber: 'LS-1',
    note: 'Made-up example: club, sizes, readings and rates are invented. Two equal frames hold the hand rail of a landing stage.',
    invented: true,
    frame: WANTED,
    machine: machineOf(job),
    cameBack: CAME_BACK,
    purge: heldAndPurged(job),
    site: standingOnStage(job),
    rates: landingStageRates(job),
  };
}
