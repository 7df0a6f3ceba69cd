import type { FindingCode, FindingGrade } from '../../server/plan/finding.ts';
import type { Job } from '../../server/job/job.ts';
import { calm, shapes, type Case } from './frame-finding-cases.ts';
import { testBend } from './made-up-shop.ts';

const { D, R, hoop, run, at } = shapes;

const elbow = run(at(0, 0), at(600, 0), at(600, 600));
const job = calm(elbow);
const ofMachine = (
  code: FindingCode,
  grade: FindingGrade,
  of: { name: string; job: Job; field?: string; data: Case['data']; beside?: readonly FindingCode[] },
): Case => ({ code, grade, field: '/frame', ...of });

const tests = (...bends: readonly (readonly [number, number])[]): Partial<Job['machine']> => ({
  springback: {
    method: 'test-bends',
    bends: bends.map(([commanded, measured]) => testBend(commanded, measured)),
  },
});

/** 316L as the catalogue has it, but for what a case is about. */
const own = (change: { elongation?: number; strengthCoefficient?: number; elasticModulus?: number }): Job => ({
  ...job,
  tube: {
    ...job.tube,
    grade: {
      from: 'own',
      name: 'own',
      density: 8000,
      elasticModulus: 200_000,
      strengthCoefficient: 1300,
      hardeningExponent: 0.4,
      proofStress: 240,
      elongation: 40,
      ...change,
    },
  },
});

/** What the machine, the die and the grade say of frames that can be drawn. */
export const machineCases: readonly Case[] = [
  ofMachine('die-radius-under-tube-radius', 'stop', {
    name: 'a die no wider than the tube',
    job: calm(elbow, {}, { radius: D / 2 }),
    field: '/machine/dies/0/radius',
    data: { value: D / 2, low: D / 2 },
  }),
  ofMachine('die-radius-tight', 'note', {
    name: 'a die of less than twice the tube',
    job: calm(elbow, {}, { radius: 1.9 * D }),
    field: '/machine/dies/0/radius',
    data: { value: 1.9 * D, ratio: 1.9, low: 2 * D },
    beside: ['flattening-likely'],
  }),
  ofMachine('springback-too-large', 'stop', {
    name: 'a grade that springs almost straight again',
    job: own({ strengthCoefficient: 5000, elasticModulus: 10_000 }),
    field: '/tube/grade',
    data: {},
  }),
  ofMachine('test-bends-too-few', 'caution', {
    name: 'one test bend',
    job: calm(elbow, tests([92, 90])),
    field: '/machine/springback/bends',
    data: { value: 1, low: 2 },
  }),
  ofMachine('test-bends-one-angle', 'caution', {
    name: 'three test bends at one angle',
    job: calm(elbow, tests([90, 87.3], [90, 87.1], [90, 87.2])),
    field: '/machine/springback/bends',
    data: { count: 3, angle: 90 },
  }),
  ofMachine('scatter-over-typed', 'note', {
    name: 'test bends that scatter more than was typed',
    job: calm(elbow, tests([45, 43.5], [90, 86.2], [120, 117.5])),
    field: '/machine/accuracy/angleScatter',
    data: { high: 0.5 },
  }),
  ofMachine('test-bend-impossible', 'caution', {
    name: 'a radius smaller than the die that made it',
    job: calm(elbow, {
      springback: { method: 'test-bends', bends: [testBend(45, 43.5), testBend(120, 116), testBend(90, 87, 60)] },
    }),
    field: '/machine/springback/bends/2/measuredRadius',
    data: { value: 60 },
  }),
  ofMachine('test-bends-no-fit', 'caution', {
    name: 'bends that grew on release',
    job: calm(elbow, tests([45, 60], [90, 130])),
    field: '/machine/springback/bends',
    data: { count: 2 },
  }),
  ofMachine('springback-extrapolated', 'note', {
    name: 'a bend far beyond those tested',
    job: calm(elbow, tests([20, 19], [40, 38.5])),
    field: '/machine/springback/bends',
    data: { low: 20, high: 40 },
  }),
  ofMachine('straight-short-for-machine', 'caution', {
    name: 'bends that the clamp has no room between',
    job: calm(run(at(0, 0), at(600, 0), at(600, 300), at(0, 300)), { leastStraight: 80 }, { gripLength: 60 }),
    data: { value: 300 - 2 * R, low: 80 },
    beside: ['bend-no-way', 'tube-strikes'],
  }),
  ofMachine('grip-short', 'note', {
    name: 'a first straight that the clamp cannot hold',
    job: calm(run(at(0, 0), at(R + 40, 0), at(R + 40, 600)), {}, { gripLength: 100 }),
    data: { value: 40, low: 100, extra: 60 },
  }),
  ofMachine('last-straight-short', 'note', {
    name: 'an end too short to clamp',
    job: calm(run(at(0, 0), at(600, 0), at(600, R + 30)), { leastStraight: 80 }),
    data: { value: 30, low: 80, extra: 50 },
  }),
  ofMachine('crowned-bar-gripped', 'note', {
    name: 'a crown between the bends',
    job: calm(hoop({ crossbar: { form: 'crowned', radius: 2400 } }), { leastStraight: 80 }, { gripLength: 80 }),
    data: { value: 0, low: 80 },
  }),
  ofMachine('angle-over-machine', 'stop', {
    name: 'more than the machine turns',
    job: calm(elbow, {}, { largestAngle: 80 }),
    data: { high: 80 },
    beside: ['bend-no-way'],
  }),
  ofMachine('radius-not-of-die', 'caution', {
    name: 'a radius that the die does not give',
    job: calm(run(at(0, 0), at(600, 0, 0, 150), at(600, 600))),
    data: { value: 150, low: R, high: R },
  }),
  ofMachine('elongation-over-grade', 'caution', {
    name: 'more stretch outside than the grade stands',
    job: own({ elongation: 10 }),
    data: { value: (100 * D) / 2 / (3 * D), high: 10 },
  }),
  ofMachine('flattening-likely', 'caution', {
    name: 'a die that flattens the tube',
    job: calm(elbow, {}, { radius: 1.4 * D }),
    data: {},
    beside: ['die-radius-tight'],
  }),
];
