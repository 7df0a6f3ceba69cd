import type { BarredStretch } from '../../server/job/closing.ts';
import type { ChainPiece, Frame, Member, RunPoint } from '../../server/job/frame.ts';
import type { Job } from '../../server/job/job.ts';
import type { TestBend } from '../../server/job/machine.ts';
import { dieSetUp } from './dies.ts';

/**
 * What a new row starts with. These are places to type over (our own choice), large enough to be made with an
 * ordinary die, so that a new row is a plan at once.
 */
export const freshStraight: ChainPiece = { piece: 'straight', length: 400 };
export const freshArc: ChainPiece = { piece: 'arc', angle: 90, radius: null, rotation: 0, made: 'die' };

/** A test bend still to be measured, on the job's own tube, die and heat. */
export const freshTestBend = ({ tube, machine }: Job): TestBend => ({
  commandedAngle: 90,
  measuredAngle: null,
  measuredRadius: null,
  scribedBefore: null,
  scribedAfter: null,
  tubeDiameter: tube.outsideDiameter,
  wall: tube.wall,
  dieRadius: dieSetUp(machine).radius,
  heat: tube.heat,
});

const point = (x: number, y: number, z = 0): RunPoint => ({ x, y, z, radius: null });

/** A stretch not to be cut, still to be given its place. */
export const freshBarred = (member: string): BarredStretch => ({ member, from: 0, to: 100, why: 'fitting' });

export const freshMember = (count: number): Member => ({
  name: `tube ${String(count + 1)}`,
  path: { by: 'points', points: [point(0, 400 * count), point(800, 400 * count)], closed: false },
  start: { end: 'free' },
  finish: { end: 'free' },
});

export const freshPath = (by: 'points' | 'chain'): Member['path'] =>
  by === 'points'
    ? { by, points: [point(0, 0), point(800, 0)], closed: false }
    : {
        by,
        start: { x: 0, y: 0, z: 0 },
        direction: { x: 1, y: 0, z: 0 },
        normal: { x: 0, y: 0, z: 1 },
        pieces: [freshStraight],
      };

export const SHAPES = [
  'hoop',
  'ring',
  'offset',
  'straight',
  'run',
  'members',
] as const satisfies readonly Frame['shape'][];
