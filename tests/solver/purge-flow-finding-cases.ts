import type { Job } from '../../server/job/job.ts';
import type { MeterReading, Purge } from '../../server/job/purge.ts';
import type { PurgeCase } from './purge-finding-cases.ts';
import { holes, hoopJob, jobOf, LEG, MAIN, member, pad, SPLICE } from './purge-frames.ts';

const main = (purge: Partial<Purge> = {}, more: Partial<Job> = {}): Job => jobOf([MAIN], purge, more);
const finish = { member: 'main', end: 'finish' } as const;

/** A plain bend of two straights of 600 mm; the bend begins some 485 mm from its start. */
const BENT = member('bent', [
  [0, 0, 0],
  [600, 0, 0],
  [600, 600, 0],
]);

const [inland, bySea] = [false, true].map((nearSea) => ({ finish: { ...main().finish, nearSea } }));

/** A leg on the middle of 2 m of tube, fed at its foot: all gas goes through the hole under it. */
const TEE: Job = jobOf(
  [
    member('main', [
      [0, 0, 0],
      [2000, 0, 0],
    ]),
    LEG,
  ],
  { ...holes({ underSaddles: 'all', bore: 2 }), feed: { member: 'leg', end: 'finish' } },
);

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
    // 160.9 Pa behind the hole, and 1.5 m of bore before it
    data: { value: 161.0 },
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
    ...{ code: 'vent-pressure-high', grade: 'stop', field: '/fixing/0/plate/hole' },
    job: main({ vent: finish }, { fixing: [pad('main', 'finish', 3)] }),
    data: { value: 310.4, weld: 'P1' },
    out: { field: '/fixing/0/plate/hole', value: 4 },
  },
  {
    name: '5 L/min through a hole of 2 mm under a saddle',
    ...{ code: 'vent-pressure-high', grade: 'stop', field: '/purge/holes/bore', job: TEE },
    // 1571.2 Pa behind it, 4.9 Pa behind two vents of 6 mm
    data: { value: 1576.1, weld: 'S1' },
    out: { field: '/purge/holes/bore', value: 4.1 },
  },
  {
    name: '100 L/min through 1.5 m of 10 mm',
    ...{ code: 'closing-flow-lower', grade: 'note', field: '/purge/weldingFlow', cuts: SPLICE },
    job: main({ weldingFlow: 100, ventBore: 34 }, { tube: { ...main().tube, outsideDiameter: 12, wall: 1 } }),
    // 0.1006 q² behind the vent and 2.272 q along the bore: 22.199 L/min make 100 Pa
    out: { field: '/purge/weldingFlow', value: 22.1 },
    data: { high: 22.1 },
  },
  {
    name: '2000 ppm',
    ...{ code: 'target-high', grade: 'caution', field: '/purge/targetOxygen', cuts: SPLICE },
    job: main({ targetOxygen: 2000 }, inland),
    data: { value: 2000, high: 1000 },
    out: { field: '/purge/targetOxygen', value: 50 },
  },
  {
    name: '100 ppm near the sea',
    ...{ code: 'target-high', grade: 'caution', field: '/purge/targetOxygen', cuts: SPLICE },
    job: main({ targetOxygen: 100 }, bySea),
    data: { value: 100, high: 50, sea: 50 },
    out: { field: '/purge/targetOxygen', value: 50 },
  },
  {
    name: '5000 ppm with gas that holds 200',
    ...{ code: 'target-high', grade: 'caution', field: '/purge/targetOxygen', cuts: SPLICE },
    job: main({ targetOxygen: 5000, gas: { from: 'certificate', oxygen: 200 } }, inland),
    out: { field: '/purge/targetOxygen', value: 500 },
  },
  {
    name: '100 ppm near the sea with gas that holds 60',
    ...{ code: 'target-high', grade: 'caution', field: '/purge/targetOxygen', cuts: SPLICE },
    job: main({ targetOxygen: 100, gas: { from: 'certificate', oxygen: 60 } }, bySea),
    out: null,
  },
  {
    name: 'gas that holds more than any target',
    ...{ code: 'target-below-gas', grade: 'stop', field: '/purge/targetOxygen', cuts: SPLICE },
    job: main({ gas: { from: 'certificate', oxygen: 2000 } }),
    data: { value: 50, low: 2000 },
    out: null,
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
