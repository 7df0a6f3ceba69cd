import type { Job } from '../../server/job/job.ts';
import type { FindingCode, FindingGrade } from '../../server/plan/finding.ts';
import {
  arc,
  BRANCH,
  jobWith,
  line,
  MAIN,
  ownGrade,
  padAt,
  SADDLE,
  settings,
  spliceAt,
  tube,
  type Work,
} from './welding-frames.ts';

/** Work that raises one finding; `beside` what comes with it, `mend` what a person does where there is no way out. */
export type WeldCase = {
  readonly code: FindingCode;
  readonly name: string;
  readonly grade: FindingGrade;
  readonly field: string;
  readonly job: Job;
  readonly work?: Work;
  readonly data?: Readonly<Record<string, number | string>>;
  readonly beside?: readonly FindingCode[];
  readonly mend?: (job: Job) => Job;
};

const DUPLEX = { grade: { from: 'catalogue' as const, key: '2205' as const } };
const bevel = (change: Partial<Job['welding']['groove']> = {}) => ({
  groove: { form: null, angle: 32.5, land: 1.5, ...change },
});
const fixing = (...pads: Job['fixing']) => ({ fixing: pads });
const branched: Work = { members: [MAIN, BRANCH], places: [SADDLE] };
const nearBend = tube('main', [line(500), arc(114.3, Math.PI / 2), line(500)]);
const sleeve = { backing: 'sleeve' as const };
const dry = (job: Job): Job => ({ ...job, finish: { ...job.finish, nearSea: false } });

/** Every case but 'settings-not-proved' has its settings proved, so that only what is meant is said. */
const proved = (job: Job): Job => {
  const { butt, saddle, pad } = job.welding;
  const provedOn = 'test piece';
  const welding = {
    ...job.welding,
    butt: { ...butt, provedOn },
    saddle: { ...saddle, provedOn },
    pad: { ...pad, provedOn },
  };
  return { ...job, welding };
};

const raw: readonly WeldCase[] = [
  {
    code: 'gap-for-wall',
    name: 'a bevel without a gap',
    grade: 'caution',
    field: '/closing/gap',
    job: jobWith({ tube: { wall: 4 }, closing: { gap: 0, shrinkage: null } }),
    data: { value: 0, low: 1.5, high: 2.5, wall: 4 },
  },
  {
    code: 'gap-for-wall',
    name: 'a bevel with a wide gap',
    grade: 'caution',
    field: '/closing/gap',
    job: jobWith({ tube: { wall: 4 }, closing: { gap: 3, shrinkage: null } }),
    data: { value: 3, high: 2.5 },
  },
  {
    code: 'gap-for-wall',
    name: 'a gap wider than a thin wall',
    grade: 'caution',
    field: '/closing/gap',
    job: jobWith({ tube: { wall: 0.8 }, closing: { gap: 0.9, shrinkage: null } }),
    data: { value: 0.9, low: 0, high: 0.8 },
  },
  {
    code: 'bevel-thin-wall',
    name: 'a bevel on 2 mm',
    grade: 'note',
    field: '/welding/groove/form',
    job: jobWith({
      tube: { wall: 2 },
      closing: { gap: 1.5, shrinkage: null },
      welding: bevel({ form: 'bevel', land: 1 }),
    }),
    data: { value: 2, low: 3 },
  },
  {
    code: 'square-thick-wall',
    name: 'square faces on 5 mm',
    grade: 'caution',
    field: '/welding/groove/form',
    job: jobWith({
      tube: { wall: 5 },
      closing: { gap: 1, shrinkage: null },
      welding: bevel({ form: 'square' }),
    }),
    data: { value: 5, high: 4 },
  },
  {
    code: 'land-over-wall',
    name: 'a land of 4 mm on 3.5 mm',
    grade: 'stop',
    field: '/welding/groove/land',
    job: jobWith({ tube: { wall: 3.5 }, closing: { gap: 2, shrinkage: null }, welding: bevel({ land: 4 }) }),
    data: { value: 4, high: 3.5 },
  },
  {
    code: 'pad-not-an-end',
    name: 'a plate in the middle of a tube',
    grade: 'caution',
    field: '/fixing/0/at/spot',
    job: jobWith({ more: fixing(padAt('middle')) }),
    data: { name: 'pad at middle', member: 'main' },
  },
  {
    code: 'pad-not-an-end',
    name: 'a plate at an end that is a saddle',
    grade: 'caution',
    field: '/fixing/0/at/spot',
    job: jobWith({ more: fixing(padAt('start', { member: 'branch' })) }),
    work: branched,
  },
  {
    code: 'pad-not-an-end',
    name: 'a plate on no tube at all',
    grade: 'caution',
    field: '/fixing/1/at/spot',
    job: jobWith({ more: fixing(padAt('start', { hole: 8 }), padAt('start', { member: 'mian' })) }),
    data: { member: 'mian' },
  },
  {
    code: 'pad-closes-bore',
    name: 'a plate without a hole on a branch',
    grade: 'caution',
    field: '/fixing/0/plate/hole',
    job: jobWith({ more: fixing(padAt('finish', { member: 'branch' })) }),
    work: branched,
    data: { name: 'pad at finish', member: 'branch' },
  },
  {
    code: 'no-filler-for-grade',
    name: 'a grade of the shop with filler',
    grade: 'note',
    field: '/welding/butt/filler',
    job: jobWith({ tube: { grade: ownGrade }, closing: { gap: 0.5 } }),
    data: { grade: 'X', form: 'butt' },
    mend: (job) => ({ ...job, welding: { ...job.welding, butt: { ...job.welding.butt, filler: 'ER316L' } } }),
  },
  {
    code: 'autogenous-not-for-grade',
    name: 'duplex without filler',
    grade: 'caution',
    field: '/welding/butt/process',
    job: jobWith({ tube: DUPLEX, welding: settings('butt', { process: '142' }) }),
    data: { grade: '2205' },
  },
  {
    code: 'autogenous-with-gap',
    name: 'a gap of 0.2 mm on 1.65 without filler',
    grade: 'caution',
    field: '/welding/butt/process',
    job: jobWith({ closing: { gap: 0.2 }, welding: settings('butt', { process: '142' }) }),
    data: { value: 0.2, high: 0.165 },
  },
  {
    code: 'electrode-range',
    name: 'a thin electrode',
    grade: 'caution',
    field: '/welding/butt/electrode',
    job: jobWith({ welding: settings('butt', { electrode: 0.5 }) }),
    data: { value: 57.75, low: 5, high: 20, diameter: 0.5 },
  },
  {
    code: 'electrode-range',
    name: 'a current that nothing carries',
    grade: 'caution',
    field: '/welding/butt/current',
    job: jobWith({ closing: { shrinkage: null }, welding: settings('butt', { current: 2 }) }),
    data: { value: 2, low: 5 },
    beside: ['current-out-of-band'],
  },
  {
    code: 'current-out-of-band',
    name: 'a current for plate',
    grade: 'caution',
    field: '/welding/saddle/current',
    job: jobWith({ welding: settings('saddle', { current: 200 }) }),
    work: branched,
    data: { value: 200, form: 'saddle' },
  },
  {
    code: 'heat-over-grade',
    name: 'duplex welded slowly',
    grade: 'caution',
    field: '/welding/butt/travelSpeed',
    job: jobWith({
      tube: DUPLEX,
      closing: { shrinkage: null },
      welding: settings('butt', { travelSpeed: 0.1 }),
    }),
    data: { high: 2.5 },
  },
  {
    code: 'sleeve-does-not-fit',
    name: 'a sleeve without a bore',
    grade: 'stop',
    field: '/welding/sleeve/wall',
    job: dry(jobWith({ welding: { ...sleeve, sleeve: { wall: 18, length: null } } })),
    beside: ['sleeve-crevice'],
  },
  {
    code: 'sleeve-does-not-fit',
    name: 'a sleeve in a tube without a bore for any',
    grade: 'stop',
    field: '/welding/backing',
    job: dry(jobWith({ tube: { outsideDiameter: 3, wall: 1.4 }, welding: sleeve })),
    beside: ['sleeve-crevice'],
  },
  {
    code: 'sleeve-does-not-fit',
    name: 'a sleeve that reaches into a bend',
    grade: 'stop',
    field: '/welding/sleeve/length',
    job: dry(jobWith({ welding: sleeve })),
    work: { members: [nearBend], places: [spliceAt(475)] },
    data: { weld: '1', high: 0.3 },
    beside: ['sleeve-crevice'],
  },
  {
    code: 'sleeve-does-not-fit',
    name: 'a sleeve in a bend',
    grade: 'stop',
    field: '/welding/sleeve/length',
    job: dry(jobWith({ welding: sleeve })),
    work: { members: [nearBend], places: [spliceAt(590)] },
    beside: ['sleeve-crevice'],
  },
  {
    code: 'sleeve-crevice',
    name: 'a sleeve near the sea',
    grade: 'caution',
    field: '/welding/backing',
    job: jobWith({ welding: sleeve }),
  },
  {
    code: 'sleeve-crevice',
    name: 'a sleeve elsewhere',
    grade: 'note',
    field: '/welding/backing',
    job: dry(jobWith({ welding: sleeve })),
  },
  {
    code: 'shrinkage-differs',
    name: 'three times what is reckoned',
    grade: 'note',
    field: '/closing/shrinkage',
    job: jobWith({ closing: { shrinkage: 1.5 } }),
    data: { value: 1.5 },
  },
  {
    code: 'shrinkage-differs',
    name: 'none',
    grade: 'note',
    field: '/closing/shrinkage',
    job: jobWith({ closing: { shrinkage: 0 } }),
    data: { value: 0 },
  },
];

const provedCases = raw.map((one) => ({ ...one, job: proved(one.job) }));

export const weldCases: readonly WeldCase[] = [
  ...provedCases,
  {
    code: 'settings-not-proved',
    name: 'nothing proved',
    grade: 'note',
    field: '/welding/butt/provedOn',
    job: jobWith({}),
    work: { members: [MAIN, BRANCH], places: [spliceAt(1500), SADDLE] },
    data: { forms: 'butt, saddle' },
    mend: proved,
  },
];

/** A job that nothing is said about. */
export const quiet: Job = proved(jobWith({}));
