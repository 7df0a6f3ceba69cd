import type { MemberBending } from '../../server/job/bending.ts';
import type { Frame } from '../../server/job/frame.ts';
import type { Job } from '../../server/job/job.ts';
import { calm, shapes, type Case } from './frame-finding-cases.ts';

const { D, R, run, at } = shapes;

const bent = (member: string, change: Partial<MemberBending>): MemberBending => ({
  member,
  from: 'start',
  side: 'usual',
  closingStraight: null,
  ...change,
});
const asking = (job: Job, ...members: MemberBending[]): Job => ({ ...job, bending: { ...job.bending, members } });

/** A machine that stands this far above its floor [mm]. */
const above = (frame: Frame, bedBelow: number): Job => {
  const job = calm(frame);
  return { ...job, machine: { ...job.machine, surroundings: { ...job.machine.surroundings, bedBelow } } };
};

/** Two legs square to each other's plane: bent and turned by 90°, the first leg hangs down, from its end to the tube's axis. */
const legs = (first: number, last: number): Frame => run(at(0, 0), at(first, 0), at(first, 600), at(first, 600, last));

/** A tube whose far end sweeps over the place where its datum end stands, before it hangs beside it. */
const sweeping = run(
  at(-100, 200, 0),
  at(-100, 200, 400),
  at(600, 200, 400),
  at(600, 600, 400),
  at(600, 600, 0),
  at(150, 600, 0),
  at(150, 100, 0),
);

const ring = (height: number): Frame => ({
  shape: 'ring',
  width: { value: 900, reference: 'centre' },
  height: { value: height, reference: 'centre' },
});

/** How a member gets through the machine, and where its closing weld stands. */
export const makingCases: readonly Case[] = [
  {
    code: 'tube-strikes',
    grade: 'caution',
    name: 'a first leg that hangs deeper than the floor',
    job: above(legs(900, 500), 700),
    field: '/frame',
    data: { member: 'run', obstacle: 'bed', bends: '2', low: 0 },
    beside: ['bend-another-way'],
  },
  {
    code: 'bend-another-way',
    grade: 'caution',
    name: 'the same, bent from its other end',
    job: above(legs(900, 500), 700),
    field: '/frame',
    data: { member: 'run', making: 'other-end' },
    beside: ['tube-strikes'],
  },
  {
    code: 'tube-strikes',
    grade: 'stop',
    name: 'an end that the far end of the tube sweeps over',
    job: calm(sweeping),
    field: '/frame',
    data: { member: 'run', obstacle: 'tube', value: -D },
    beside: ['bend-another-way'],
  },
  {
    code: 'bend-no-way',
    grade: 'caution',
    name: 'two legs that both hang too deep, but not of two pieces',
    job: above(legs(900, 900), 700),
    field: '/frame',
    data: { member: 'run', splitAt: 900 - R + (R * Math.PI) / 2 + (600 - 2 * R) / 2 },
    beside: ['tube-strikes'],
  },
  {
    code: 'bending-member-missing',
    grade: 'note',
    name: 'a member that is asked for and not there',
    job: asking(calm(ring(600)), bent('ring', { from: 'finish' }), bent('rail', {})),
    field: '/bending/members/1/member',
    data: { member: 'rail' },
    beside: ['closed-by-weld'],
  },
  {
    code: 'closing-straight-missing',
    grade: 'caution',
    name: 'a fifth straight of a ring of four',
    job: asking(calm(ring(600)), bent('ring', { closingStraight: 5, from: 'finish' })),
    field: '/bending/members',
    data: { member: 'ring', value: 5, straights: '1, 2, 3, 4' },
    out: { field: '/bending/members', value: [bent('ring', { from: 'finish' })] },
    beside: ['closed-by-weld'],
  },
  {
    code: 'closing-weld-near-bend',
    grade: 'caution',
    name: 'asked into a straight of 80 mm',
    job: asking(calm(ring(2 * R + 80)), bent('ring', { closingStraight: 1 })),
    field: '/bending/members',
    data: { member: 'ring', value: 40, low: 1.5 * D },
    // the ring's own end comes round to the machine
    beside: ['bend-no-way', 'closed-by-weld', 'tube-strikes'],
    out: { field: '/bending/members', value: [bent('ring', {})] },
  },
];
