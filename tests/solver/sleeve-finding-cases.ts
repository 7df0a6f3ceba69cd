import type { Job } from '../../server/job/job.ts';
import type { WeldCase } from './weld-case.ts';
import { arc, BRANCH, jobWith, line, MAIN, spliceAt, tube } from './welding-frames.ts';

const nearBend = tube('main', [line(500), arc(114.3, Math.PI / 2), line(500)]);
const sleeve = { backing: 'sleeve' as const };
// a gap that suits a sleeve, and no shrinkage that is typed
const sleeved = ({ welding, ...change }: Parameters<typeof jobWith>[0] = {}): Job =>
  jobWith({ closing: { gap: 1.5, shrinkage: null }, ...change, welding: { ...sleeve, ...welding } });
const dry = (job: Job): Job => ({ ...job, finish: { ...job.finish, nearSea: false } });
const opened = (job: Job): Job => ({
  ...job,
  purge: { ...job.purge, holes: { ...job.purge.holes, underSaddles: 'all', bore: 8 } },
});

/** Sleeves that do not go in, and what stays behind those that do. */
export const sleeveCases: readonly WeldCase[] = [
  {
    code: 'sleeve-does-not-fit',
    name: 'a sleeve without a bore',
    grade: 'stop',
    field: '/welding/sleeve/wall',
    job: dry(sleeved({ welding: { sleeve: { wall: 18, length: null } } })),
    data: { value: 18, high: 16.9, outside: 33.8 },
    beside: ['sleeve-crevice'],
  },
  {
    code: 'sleeve-does-not-fit',
    name: 'a sleeve in a tube without a bore for any',
    grade: 'stop',
    field: '/welding/backing',
    job: dry(sleeved({ tube: { outsideDiameter: 3, wall: 1.4 }, closing: { gap: 1, shrinkage: null } })),
    beside: ['sleeve-crevice'],
  },
  {
    code: 'sleeve-does-not-fit',
    name: 'a sleeve that reaches into a bend',
    grade: 'stop',
    field: '/welding/sleeve/length',
    job: dry(sleeved()),
    work: { members: [nearBend], places: [spliceAt(475)] },
    // 38.1 − 25 = 13.1 mm into the bend: 13.1²/228.6; x²/228.6 = 0.3 at x = 8.28
    data: { weld: '1', bow: 13.1 ** 2 / 228.6, play: 0.3, value: 76.2, high: 66.5 },
    beside: ['sleeve-crevice'],
  },
  {
    code: 'sleeve-does-not-fit',
    name: 'a sleeve in a bend',
    grade: 'stop',
    field: '/welding/sleeve/length',
    job: dry(sleeved()),
    work: { members: [nearBend], places: [spliceAt(590)] },
    data: { high: 16.5 },
    beside: ['sleeve-crevice'],
  },
  {
    code: 'sleeve-does-not-fit',
    name: 'two sleeves between which there is not tube enough',
    grade: 'stop',
    field: '/welding/sleeve/length',
    job: dry(sleeved()),
    work: { places: [spliceAt(1000, 1), spliceAt(1060, 2)] },
    data: { weld: '1', other: '2', value: 76.2, high: 60 },
    beside: ['sleeve-crevice'],
  },
  {
    code: 'sleeve-does-not-fit',
    name: 'a sleeve that sticks out of its tube',
    grade: 'stop',
    field: '/welding/sleeve/length',
    job: dry(sleeved()),
    work: { places: [spliceAt(2985)] },
    data: { weld: '1', tube: 'main', value: 76.2, high: 30 },
    beside: ['sleeve-crevice'],
  },
  {
    code: 'sleeve-does-not-fit',
    name: 'a sleeve over the hole under a branch',
    grade: 'stop',
    field: '/welding/sleeve/length',
    job: dry(opened(sleeved())),
    work: { members: [MAIN, BRANCH], places: [spliceAt(1025)] },
    // 25 mm from the branch, whose hole is 8 mm wide
    data: { weld: '1', branch: 'branch', value: 76.2, high: 42 },
    beside: ['sleeve-crevice'],
  },
  {
    code: 'sleeve-crevice',
    name: 'a sleeve near the sea',
    grade: 'caution',
    field: '/welding/backing',
    job: sleeved(),
    data: { bore: 30.8 },
  },
  {
    code: 'sleeve-crevice',
    name: 'a sleeve elsewhere',
    grade: 'note',
    field: '/welding/backing',
    job: dry(sleeved()),
  },
  {
    code: 'gap-for-wall',
    name: 'tight faces over a sleeve',
    grade: 'caution',
    field: '/closing/gap',
    job: dry(sleeved({ closing: { gap: 0, shrinkage: null } })),
    data: { value: 0, low: 1, high: 2, backing: 'sleeve' },
    beside: ['sleeve-crevice'],
  },
];
