import type { Job } from '../../server/job/job.ts';
import type { WeldCase } from './weld-case.ts';
import { jobWith } from './welding-frames.ts';

const bevel = (change: Partial<Job['welding']['groove']> = {}) => ({
  groove: { form: null, angle: 32.5, land: 1.5, ...change },
});

/** Gaps and faces that do not suit each other or the wall. */
export const preparationCases: readonly WeldCase[] = [
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
];
