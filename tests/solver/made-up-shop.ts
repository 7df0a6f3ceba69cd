import { newJob } from '../../server/job/default-job.ts';
import type { Die, Machine, TestBend } from '../../server/job/machine.ts';

/** The machine of a new job. */
export const { machine: BENDER, tube: TUBE } = newJob('straight');

/** A machine with the die that stands first in its list changed. */
export const withDie = (machine: Machine, die: Partial<Die>): Machine => ({
  ...machine,
  dies: machine.dies.map((one, place) => (place === 0 ? { ...one, ...die } : one)),
});

/** A test bend on the tube and the die of a new job, of no known heat and without scribed lines. */
export const testBend = (
  commandedAngle: number,
  measuredAngle: number,
  measuredRadius: number | null = null,
  more: Partial<Omit<TestBend, 'measuredAngle'>> = {},
): TestBend & { readonly measuredAngle: number } => ({
  commandedAngle,
  measuredAngle,
  measuredRadius,
  scribedBefore: null,
  scribedAfter: null,
  tubeDiameter: TUBE.outsideDiameter,
  wall: TUBE.wall,
  dieRadius: BENDER.dies[0]!.radius,
  heat: '',
  ...more,
});
