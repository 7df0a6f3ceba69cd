import { newJob } from '../../server/job/default-job.ts';
import type { Job } from '../../server/job/job.ts';
import type { Purge } from '../../server/job/purge.ts';
import type { FindingCode, FindingGrade } from '../../server/plan/finding.ts';
import { airHole, holes, hoopJob, jobOf, LEG, MAIN, member, pad, seat, SPLICE, UP, type Cut } from './purge-frames.ts';

/** A job that raises one finding of its purge; `out` the way out that it must offer, null: none, left out: any. */
export type PurgeCase = {
  readonly name: string;
  readonly code: FindingCode;
  readonly grade: FindingGrade;
  readonly field: string;
  readonly job: Job;
  readonly cuts?: readonly Cut[];
  readonly cutsOnly?: boolean;
  readonly data?: Readonly<Record<string, number | string>>;
  readonly out?: { readonly field: string; readonly value: number | string | null } | null;
};

const main = (purge: Partial<Purge> = {}, more: Partial<Job> = {}): Job => jobOf([MAIN], purge, more);
const start = { member: 'main', end: 'start' } as const;
const finish = { member: 'main', end: 'finish' } as const;
const all = holes({ underSaddles: 'all' });
const none = '/purge/holes/underSaddles';
const hoopCut: readonly Cut[] = [{ member: 'hoop', station: 150 }];

/** The main tube with a hole to the air, and a plate without one on its start: bore that ends blind there. */
const blind = (distance: number): Job =>
  main(holes({ toAir: [airHole('main', distance)] }), { fixing: [pad('main', 'start')] });

/** A stub that sits on the main tube, so long past its wall, with a plate on its end. */
const stub = (length: number): Job =>
  jobOf(
    [
      MAIN,
      member(
        'stub',
        [
          [500, 0, 0],
          [500, 19.05 + length, 0],
        ],
        { start: seat('main') },
      ),
    ],
    all,
    { fixing: [pad('stub', 'finish')] },
  );

const passing: readonly PurgeCase[] = [
  {
    name: 'a crossbar between two saddles',
    ...{ code: 'closed-chamber', grade: 'stop', field: none, job: hoopJob([300]) },
    data: { chamber: 2, member: 'crossbar 1' },
    out: { field: none, value: 'all' },
  },
  {
    name: 'a tube between two plates',
    ...{ code: 'closed-chamber', grade: 'stop', field: '/fixing/0/plate/hole' },
    job: main({}, { fixing: [pad('main', 'start'), pad('main', 'finish')] }),
    data: { plates: 'pad at start, pad at finish' },
    // 6 mm; with a hose of 4 mm in it still an opening of 4.5 mm, 61 Pa at 5 L/min
    out: { field: '/fixing/0/plate/hole', value: 6 },
  },
  {
    name: 'a tube between two plates, with more gas',
    ...{ code: 'closed-chamber', grade: 'stop', field: '/fixing/0/plate/hole' },
    job: main({ weldingFlow: 10 }, { fixing: [pad('main', 'start'), pad('main', 'finish')] }),
    // 100 Pa behind 5.63 mm, and the hose beside it: √(5.63² + 4²), rounded up
    out: { field: '/fixing/0/plate/hole', value: 7 },
  },
  {
    name: 'a leg between its saddle and a plate, welded now',
    ...{ code: 'closed-chamber', grade: 'stop', field: '/fixing/0/plate/hole' },
    job: jobOf([MAIN, LEG], {}, { fixing: [pad('leg', 'finish')] }),
    data: { chamber: 2, member: 'leg', plates: 'pad at finish' },
    out: { field: '/fixing/0/plate/hole', value: 6 },
  },
  {
    name: 'dams cut a crossbar with holes under its saddles off from the hoop',
    ...{ code: 'closed-by-weld', grade: 'stop', field: '/purge/extent', cutsOnly: true },
    job: hoopJob([300], { ...all, extent: 'dams' }),
    cuts: [{ member: 'crossbar 1', station: 430 }],
    data: { dams: 150 },
    out: { field: '/purge/extent', value: 'whole-frame' },
  },
  {
    name: 'a lance in a hole of 5 mm',
    ...{ code: 'one-opening', grade: 'stop', field: '/purge/vent' },
    job: hoopJob([300], holes({ toAir: [airHole('crossbar 1', 400, 5)] })),
    data: { value: 5, low: 5.1, lance: 4 },
    // 100 Pa behind 3.98 mm at 5 L/min, and the hose beside it: √(3.98² + 4²), rounded up
    out: { field: '/purge/holes/toAir/0/bore', value: 5.7 },
  },
  {
    name: 'a leg on a tube',
    ...{ code: 'one-opening', grade: 'caution', field: '/purge/vent', job: jobOf([MAIN, LEG]) },
    data: { chamber: 2, member: 'leg' },
    out: { field: none, value: 'all' },
  },
  {
    name: 'a ring',
    ...{ code: 'closed-by-weld', grade: 'stop', field: '/purge/holes/toAir', job: newJob('ring') },
    data: { chamber: 1, member: 'ring', welds: 'C1', bare: 'ring' },
    out: null,
  },
  {
    name: 'a crossbar that is cut, its saddles welded long ago',
    ...{ code: 'closed-by-weld', grade: 'stop', field: none, job: hoopJob([300]), cutsOnly: true },
    cuts: [{ member: 'crossbar 1', station: 400 }],
    data: { fitted: 'crossbar 1' },
    // nobody drills under a saddle that is welded
    out: null,
  },
  {
    name: 'a pad without a hole beyond the vent hole',
    ...{ code: 'weld-in-dead-leg', grade: 'stop', field: '/purge/holes/toAir', job: blind(300) },
    data: { chamber: 1, value: 300, welds: 'P1' },
    out: { field: '/fixing/0/plate/hole', value: 6 },
  },
  {
    name: 'a saddle in a pocket that only its hole opens',
    ...{ code: 'weld-in-dead-leg', grade: 'stop', field: '/purge/holes/toAir' },
    job: hoopJob([300], { ...all, extent: 'dams' }),
    out: { field: '/purge/extent', value: 'whole-frame' },
  },
  {
    name: 'a crossbar with one hole, nothing welded there',
    ...{ code: 'dead-leg', grade: 'caution', field: '/purge/holes/toAir', cuts: hoopCut, cutsOnly: true },
    job: hoopJob([300], holes({ except: [{ member: 'crossbar 1', end: 'start' }] })),
    // 861.9 mm from axis to axis, less half of each leg
    data: { value: 823.8 },
    out: null,
  },
  {
    name: 'a few millimetres that clear while one waits',
    ...{ code: 'dead-leg', grade: 'note', field: '/purge/holes/toAir', job: stub(15) },
    data: { value: 15, minutes: 1 },
    out: null,
  },
  {
    name: 'little gas through the holes of a crossbar',
    ...{ code: 'bore-by-vent-holes', grade: 'caution', field: '/purge/holes/bore', job: hoopJob([300], all) },
    data: { chamber: 1, member: 'crossbar 1' },
  },
];

const held: readonly PurgeCase[] = [
  {
    name: 'the feed typed at the top',
    ...{
      code: 'fed-high',
      grade: 'caution',
      field: '/purge/feed',
      job: main({ up: UP.x, feed: finish }),
      cuts: SPLICE,
    },
    data: { value: 3000 },
    out: { field: '/purge/feed', value: null },
  },
  {
    name: 'the vent typed at the bottom',
    ...{ code: 'fed-high', grade: 'caution', field: '/purge/vent', job: main({ up: UP.x, vent: start }), cuts: SPLICE },
    out: { field: '/purge/vent', value: null },
  },
  {
    name: 'a hoop that stands on its feet',
    ...{ code: 'fed-high', grade: 'caution', field: '/purge/up', job: hoopJob([], { up: UP.y }), cuts: hoopCut },
    out: null,
  },
  {
    name: 'a tube that lies flat',
    ...{ code: 'held-level', grade: 'note', field: '/purge/up', job: main(), cuts: SPLICE },
    data: { value: 0 },
    out: null,
  },
  {
    name: 'no direction',
    ...{ code: 'up-no-direction', grade: 'stop', field: '/purge/up', job: main({ up: { x: 0, y: 0, z: 0 } }) },
    cuts: SPLICE,
    out: { field: '/purge/up/z', value: 1 },
  },
];

const typed: readonly PurgeCase[] = [
  {
    name: 'a free end',
    ...{ code: 'except-not-a-saddle', grade: 'caution', field: '/purge/holes/except/0' },
    job: jobOf([MAIN, LEG], holes({ except: [{ member: 'leg', end: 'finish' }] })),
    out: { field: '/purge/holes/except/0/end', value: 'start' },
  },
  {
    name: 'no such member',
    ...{ code: 'except-not-a-saddle', grade: 'caution', field: '/purge/holes/except/0' },
    job: jobOf([MAIN, LEG], holes({ except: [{ member: 'lge', end: 'finish' }] })),
    out: null,
  },
  ...(
    [
      ['no such member', airHole('mian', 40), { field: 'member', value: 'main' }],
      ['beyond the end', airHole('main', 4000), { field: 'distance', value: 3000 }],
      [
        'no such bend',
        { at: { ...airHole('main', 0).at, spot: 'corner' }, bore: 6 },
        { field: 'spot', value: 'middle' },
      ],
    ] as const
  ).map(([name, hole, out]): PurgeCase => ({
    name,
    ...{ code: 'hole-no-place', grade: 'stop', field: '/purge/holes/toAir/0/at', cuts: SPLICE },
    job: main(holes({ toAir: [hole] })),
    out: { field: `/purge/holes/toAir/0/at/${out.field}`, value: out.value },
  })),
  {
    name: 'no such hole',
    ...{
      code: 'hole-no-such',
      grade: 'stop',
      field: '/purge/feed/hole',
      job: main({ feed: { hole: 2 } }),
      cuts: SPLICE,
    },
    data: { hole: 2 },
    out: { field: '/purge/feed', value: null },
  },
  {
    name: 'one end for both',
    ...{
      code: 'feed-is-vent',
      grade: 'stop',
      field: '/purge/vent',
      job: main({ feed: start, vent: start }),
      cuts: SPLICE,
    },
    out: { field: '/purge/vent', value: null },
  },
  {
    name: 'no such member',
    ...{ code: 'feed-not-an-end', grade: 'stop', field: '/purge/vent/member', cuts: SPLICE },
    job: main({ vent: { member: 'mian', end: 'finish' } }),
    out: { field: '/purge/vent/member', value: 'main' },
  },
  {
    name: 'a saddle',
    ...{ code: 'feed-not-free', grade: 'stop', field: '/purge/feed/end' },
    job: jobOf([MAIN, LEG], { feed: { member: 'leg', end: 'start' } }),
    out: { field: '/purge/feed/end', value: 'finish' },
  },
];

export const passingCases: readonly PurgeCase[] = [...passing, ...held, ...typed];
