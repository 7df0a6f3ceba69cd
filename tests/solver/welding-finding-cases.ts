import type { Job } from '../../server/job/job.ts';
import { preparationCases } from './preparation-finding-cases.ts';
import { sleeveCases } from './sleeve-finding-cases.ts';
import type { WeldCase } from './weld-case.ts';
import {
  BRANCH,
  jobWith,
  line,
  MAIN,
  onto,
  ownGrade,
  padAt,
  SADDLE,
  settings,
  spliceAt,
  tube,
  type Work,
} from './welding-frames.ts';

const DUPLEX = { grade: { from: 'catalogue' as const, key: '2205' as const } };
const fixing = (...pads: Job['fixing']) => ({ fixing: pads });
const flatBranch = tube('branch', [line(800)], { ends: { start: onto(Math.PI / 9) } });
const branched: Work = { members: [MAIN, BRANCH], places: [SADDLE] };

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
  ...preparationCases,
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
    beside: ['duplex-gas'],
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
    beside: ['duplex-gas'],
  },
  {
    code: 'duplex-gas',
    name: 'a saddle of duplex',
    grade: 'note',
    field: '/welding/saddle/torchFlow',
    job: jobWith({ tube: DUPLEX }),
    work: branched,
    data: { grade: '2205' },
    mend: (job) => ({ ...job, tube: { ...job.tube, grade: { from: 'catalogue', key: '316L' } } }),
  },
  {
    code: 'saddle-acute',
    name: 'a branch at 20°',
    grade: 'caution',
    field: '/frame',
    job: jobWith({}),
    work: { members: [MAIN, flatBranch], places: [SADDLE] },
    data: { weld: 'S1', member: 'branch', onto: 'main', value: 20, low: 30 },
    mend: null,
  },
  ...sleeveCases,
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
  {
    code: 'pad-thick-plate',
    name: 'a plate of 6 mm under 1.65',
    grade: 'caution',
    field: '/welding/pad/provedOn',
    job: jobWith({ more: { fixing: [padAt('start', { hole: 8 })] } }),
    work: { places: [] },
    data: { value: 6, high: 4.95, wall: 1.65 },
    beside: ['settings-not-proved'],
    mend: proved,
  },
];

/** A job that nothing is said about. */
export const quiet: Job = proved(jobWith({}));
