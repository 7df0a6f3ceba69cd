import type { Job } from '../../server/job/job.ts';
import type { MeterReading, Purge } from '../../server/job/purge.ts';
import type { PurgeCase } from './purge-finding-cases.ts';
import { hoopJob, jobOf, MAIN, member, pad, SPLICE } from './purge-frames.ts';

const main = (purge: Partial<Purge> = {}, more: Partial<Job> = {}): Job => jobOf([MAIN], purge, more);
const finish = { member: 'main', end: 'finish' } as const;

/** A plain bend of two straights of 600 mm; the bend begins some 485 mm from its start. */
const BENT = member('bent', [
  [0, 0, 0],
  [600, 0, 0],
  [600, 600, 0],
]);

const flows: readonly PurgeCase[] = [
  {
    name: 'as much oxygen in the gas',
    ...{ code: 'target-below-gas', grade: 'stop', field: '/purge/targetOxygen', cuts: SPLICE },
    job: main({ gas: { from: 'certificate', oxygen: 50 } }),
    data: { value: 50, low: 50 },
    out: { field: '/purge/targetOxygen', value: 100 },
  },
  {
    name: '10 L/min through 5 mm',
    ...{ code: 'vent-pressure-high', grade: 'caution', field: '/purge/ventBore', cuts: SPLICE },
    job: main({ weldingFlow: 10, ventBore: 5 }),
    data: { value: 160.9 },
    out: { field: '/purge/ventBore', value: 5.7 },
  },
  {
    name: '10 L/min through 4.5 mm',
    ...{ code: 'vent-pressure-high', grade: 'stop', field: '/purge/ventBore', cuts: SPLICE },
    job: main({ weldingFlow: 10, ventBore: 4.5 }),
    out: { field: '/purge/ventBore', value: 5.7 },
  },
  {
    name: '5 L/min through a hole of 3 mm in a plate',
    ...{ code: 'vent-pressure-high', grade: 'stop', field: '/purge/ventBore' },
    job: main({ vent: finish }, { fixing: [pad('main', 'finish', 3)] }),
    data: { value: 310.4 },
    out: { field: '/purge/weldingFlow', value: 2.8 },
  },
  {
    name: '10 L/min through 5 mm',
    ...{ code: 'closing-flow-lower', grade: 'note', field: '/purge/weldingFlow', cuts: SPLICE },
    job: main({ weldingFlow: 10, ventBore: 5 }),
    out: { field: '/purge/ventBore', value: 5.7 },
  },
  {
    name: '60 L/min in 34.8 mm',
    ...{ code: 'purge-flow-turbulent', grade: 'caution', field: '/purge/prePurgeFlow', cuts: SPLICE },
    job: main({ prePurgeFlow: 60 }),
    data: { high: 2300 },
    out: { field: '/purge/prePurgeFlow', value: 50.6 },
  },
  {
    name: 'half a minute',
    ...{ code: 'hold-short', grade: 'caution', field: '/purge/hold', job: main({ hold: 30 }), cuts: SPLICE },
    data: { value: 30 },
  },
];

const dams: readonly PurgeCase[] = [
  {
    name: '50 mm from the weld',
    ...{ code: 'dam-near-weld', grade: 'caution', field: '/purge/damDistance', cuts: SPLICE },
    job: main({ extent: 'dams', damDistance: 50 }),
    // 240 J/mm on 1.65 mm gives 178 K there
    data: { value: 50, low: 100, rise: 178 },
    out: { field: '/purge/damDistance', value: 150 },
  },
  {
    name: 'a weld beside the end',
    ...{ code: 'dam-beyond-end', grade: 'note', field: '/purge/damDistance' },
    job: main({ extent: 'dams' }),
    cuts: [{ member: 'main', station: 60 }],
    data: { weld: '1', value: 150, high: 60 },
    out: null,
  },
  {
    name: 'a weld beside a bend',
    ...{ code: 'dam-in-bend', grade: 'stop', field: '/purge/damDistance' },
    job: jobOf([BENT], { extent: 'dams' }),
    cuts: [{ member: 'bent', station: 360 }],
    data: { chamber: 1, member: 'bent', value: 150 },
    // the bend of 115 mm begins at 485
    out: { field: '/purge/damDistance', value: 125 },
  },
  {
    name: 'a crossbar between two saddles',
    ...{ code: 'dam-stays-inside', grade: 'note', field: '/purge/extent', job: hoopJob([300], { extent: 'dams' }) },
    data: { member: 'crossbar 1' },
    out: null,
  },
];

const reading = (minutes: number, oxygen: number, chamber = 1): MeterReading => ({ chamber, minutes, oxygen });
const read = (...meter: MeterReading[]): Pick<PurgeCase, 'job' | 'cuts'> => ({ job: main({ meter }), cuts: SPLICE });

/** 3 m of 34.8 mm at 10 L/min: 17.1 s on the way. After 2 min well mixed leaves 191 ppm. */
const meters: readonly PurgeCase[] = [
  {
    name: 'one chamber, and a reading of another',
    ...{ code: 'meter-no-chamber', grade: 'caution', field: '/purge/meter/0/chamber', ...read(reading(2, 40, 3)) },
    data: { number: 3 },
    out: { field: '/purge/meter/0/chamber', value: 1 },
  },
  {
    name: '250 ppm after two minutes',
    ...{ code: 'meter-later', grade: 'caution', field: '/purge/meter/0/oxygen', ...read(reading(2, 250)) },
    data: { chamber: 1, value: 250, high: 191.3 },
    out: null,
  },
  {
    name: '1 ppm of gas that holds 2',
    ...{ code: 'meter-below-gas', grade: 'note', field: '/purge/meter/0/oxygen', ...read(reading(5, 1)) },
    data: { value: 1, low: 2 },
    out: null,
  },
  {
    name: 'two readings that stay',
    ...{ code: 'target-unreachable-leak', grade: 'caution', field: '/purge/meter/1/oxygen' },
    ...read(reading(4, 400), reading(6, 390)),
    data: { high: 50 },
    out: null,
  },
];

export const flowCases: readonly PurgeCase[] = [...flows, ...dams, ...meters];
