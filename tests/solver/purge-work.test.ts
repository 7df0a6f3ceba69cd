import { describe, expect, it } from 'vitest';
import type { Job } from '../../server/job/job.ts';
import type { OperationRate } from '../../server/job/rates.ts';
import type { MeterReading, Purge } from '../../server/job/purge.ts';
import { peakRise } from '../../server/solver/purge/dam-heat.ts';
import { descent, heightProfile } from '../../server/solver/purge/height-profile.ts';
import { rootCooling } from '../../server/solver/purge/root-cooling.ts';
import { tintSample } from '../../server/solver/purge/tint.ts';
import { placeAt } from '../../server/solver/geometry/centreline.ts';
import { dot } from '../../server/solver/geometry/vector.ts';
import { geometryOf, holes, hoopJob, jobOf, LEG, MAIN, purged, SPLICE, UP } from './purge-frames.ts';

const main = (purge: Partial<Purge> = {}): Job => jobOf([MAIN], { hold: 60, ...purge });
const planOf = (...made: Parameters<typeof purged>) => purged(...made).purge!;

/** Set-up and one filling as a new job has them for an example [min]. */
const EXAMPLE = 10 + 5;

/** Purging with these times [min]. */
const timesOf = ({ rates }: Job, setUp: number | null, each: number | null): OperationRate => {
  const own = (value: number | null) => ({ value, since: '', example: false });
  return { ...rates.labour.purge, setUp: own(setUp), each: own(each) };
};

describe('gas and time', () => {
  it('adds up: before, during and after every weld', () => {
    const plan = planOf(main(), [...SPLICE, { member: 'main', station: 2000 }]);
    // 2.8534 L × 8.381 = 23.915 L; 5 L/min for 2 × 76 s of arc / 0.2 and one hold of 60 s = 68.333 L
    expect(plan.purgeGas.value.toFixed(2)).toBe('92.25');
    // an arc that burns 0.1 more or less of the time: half of 5 L/min for 760 s
    expect(plan.purgeGas.band?.plusMinus.toFixed(2)).toBe('31.67');
    expect(plan.jobGas.band).toEqual(plan.purgeGas.band);
    // torch 8 L/min for 2 × 84 s
    expect(plan.torchGas.value.toFixed(1)).toBe('22.4');
    expect(plan.jobGas.value).toBeCloseTo(plan.purgeGas.value + 22.4, 10);
    const [whole] = plan.extents;
    expect(whole?.minutes.value).toBeCloseTo(plan.chambers[0]!.printed.time.value / 60 + (760 + 60) / 60 + EXAMPLE, 10);
  });

  it('a weld that heats two chambers has both filled at once, the one that is full first turned down', () => {
    const { extents, chambers } = planOf(jobOf([MAIN, LEG], { hold: 60 }));
    const [whole] = extents;
    expect(whole?.setups.value).toBe(1);
    const [long, short] = chambers.map(({ printed }) => printed.time.value);
    expect(long).toBeGreaterThan(short!);
    expect(whole?.wait.value).toBe(long);
    expect(whole?.minutes.value).toBeCloseTo((long! + 5 * 76 + 60) / 60 + EXAMPLE, 10);
    const before = 10 * (long! + short!) + 5 * (long! - short!);
    expect(whole?.gasBefore.value).toBeCloseTo(before / 60, 10);
    expect(whole?.gas.value).toBeCloseTo((before + 2 * 5 * (5 * 76 + 60)) / 60, 10);
  });

  it('both extents are worked out whichever is chosen, with what stops them', () => {
    const job = hoopJob([300], holes({ underSaddles: 'all' }));
    const plan = planOf(job);
    const other = planOf({ ...job, purge: { ...job.purge, extent: 'dams' } });
    expect(plan.extents).toEqual(other.extents);
    const [whole, dams] = plan.extents;
    expect([whole?.setups.value, dams?.setups.value]).toEqual([1, 2]);
    expect(whole?.stops).toEqual([]);
    expect(dams?.stops).toContain('weld-in-dead-leg');
    expect(whole?.wait.value).toBe(plan.setups.reduce((sum, { wait }) => sum + wait.value, 0));
    expect(dams?.wait.value).toBe(other.setups.reduce((sum, { wait }) => sum + wait.value, 0));
    expect(other.setups.length).toBe(2);
  });

  it('set-ups count where the shop has both of their times', () => {
    const job = main();
    const times = (setUp: number | null, each: number | null): Job => ({
      ...job,
      rates: { ...job.rates, labour: { ...job.rates.labour, purge: timesOf(job, setUp, each) } },
    });
    const minutes = (one: Job) => planOf(one, SPLICE).extents[0]!.minutes.value;
    const without = minutes(times(0, 0));
    expect(minutes(times(10, 4))).toBeCloseTo(without + 14, 10);
    expect(minutes(times(10, null))).toBe(without);
  });

  it('several vents share the welding flow', () => {
    const tee = jobOf([MAIN, LEG], { ...holes({ underSaddles: 'all' }), weldingFlow: 10 });
    // 77.57 Pa behind 6 mm, and 1.5 m of bore take 0.16 Pa more
    expect(planOf(main({ weldingFlow: 10 }), SPLICE).ventPressure.value.toFixed(1)).toBe('77.7');
    // of two vents of 6 mm one is behind a hole as wide: q and q/√2, and 0.05 Pa of bore
    expect(planOf(tee).ventPressure.value.toFixed(1)).toBe((77.57 / (1 + Math.SQRT1_2) ** 2 + 0.05).toFixed(1));
    // 0.7757 q² + 0.0155 q are 100 Pa at 11.34 L/min, which 20 L/min are turned down to
    expect(planOf(main({ weldingFlow: 20 }), SPLICE).closingFlow.value.toFixed(2)).toBe('11.34');
    expect(planOf(main({ weldingFlow: 10 }), SPLICE).closingFlow.value).toBe(10);
  });

  it('a room that gets the torch alone gets less', () => {
    const room = (receives: 'all' | 'torch') => planOf(main({ room: { ...main().purge.room, receives } }), SPLICE).room;
    // 8 L/min for 84 s into 30 m³
    expect(room('torch').oxygenStill.value).toBeCloseTo(20.9 * Math.exp(-0.0112 / 30), 9);
    expect(room('all').oxygenStill.value).toBeLessThan(room('torch').oxygenStill.value);
    expect(room('all').alarmStill.value).toBeLessThan(room('torch').alarmStill.value);
  });
});

describe('heat', () => {
  it.each([
    [205, 1.65],
    [240, 1.65],
    [400, 3],
    [30, 3],
    [5000, 0.5],
  ])('%d J/mm on %d mm: at the time told the root has 250 °C', (heat, wall) => {
    const time = rootCooling({ heat, wall });
    const capacity = 3.95e6 * (wall / 1000);
    const rise = (heat * 1000) / (capacity * Math.sqrt(4 * Math.PI * 3.8e-6 * time));
    expect(20 + rise * Math.exp((-25 * time) / capacity)).toBeCloseTo(250, 6);
  });

  it('the hold is the cooling in steps of 5 s, unless one is typed', () => {
    const plan = planOf(main({ hold: null }), SPLICE);
    expect(plan.cooling.value).toBeCloseTo(rootCooling({ heat: 240, wall: 1.65 }), 12);
    expect(plan.hold.value).toBe(5 * Math.ceil(plan.cooling.value / 5));
    expect(planOf(main({ hold: 42 }), SPLICE).hold.value).toBe(42);
    expect(plan.damRise.value).toBeCloseTo(peakRise({ heat: 240, wall: 1.65 }, 150), 12);
  });

  it.each([
    [5, 1],
    [10, 1],
    [20, 2],
    [50, 3],
    [51, 4],
    [1000, 7],
    [25_000, 10],
    [90_000, 10],
  ])('%d ppm is sample %d', (target, sample) => {
    expect(tintSample(target)).toBe(sample);
  });
});

describe('meter readings on 3 m of 34.8 mm at 10 L/min, 17.1 s on the way', () => {
  const judged = (...meter: MeterReading[]) => planOf(main({ meter }), SPLICE).meters;
  const reading = (minutes: number, oxygen: number, chamber = 1): MeterReading => ({ chamber, minutes, oxygen });

  it.each([
    // the front has not come: well mixed would be at 155 000
    [0.1, 209_000, 'as-reckoned'],
    [0.25, 209_400, 'as-reckoned'],
    [2, 40, 'reached'],
    [2, 180, 'as-reckoned'],
    [2, 250, 'later'],
    [5, 1, 'below-gas'],
    [1, 20_000, 'later'],
  ] as const)('after %d min %d ppm: %s', (minutes, oxygen, verdict) => {
    expect(judged(reading(minutes, oxygen))[0]?.verdict).toBe(verdict);
  });

  it('sooner than the long tube, which is sooner than well mixed', () => {
    const [read] = judged(reading(0.5, 300));
    expect(read!.longTube!.value).toBeLessThan(read!.wellMixed.value);
    expect(judged(reading(0.5, 0.9 * read!.longTube!.value))[0]?.verdict).toBe('sooner');
    expect(judged(reading(0.5, 0.9 * read!.wellMixed.value))[0]?.verdict).toBe('as-reckoned');
  });

  it('the models are turned round: at their own times they have the target', () => {
    const [chamber] = planOf(main(), SPLICE).chambers;
    const at = (seconds: number) => judged(reading(seconds / 60, 1000))[0]!;
    expect(at(chamber!.wellMixed.time.value).wellMixed.value).toBeCloseTo(50, 6);
    expect(Math.abs(at(chamber!.longTube!.time.value).longTube!.value / 50 - 1)).toBeLessThan(1e-5);
  });

  it('tells how long it still takes, and the leak that would hold it', () => {
    const [read] = judged(reading(2, 250));
    // V/Q ln(248/48), and 10 L/min (250 − 2)/(209 500 − 250)
    expect(read?.remaining?.value.toFixed(1)).toBe((17.1207 * Math.log(248 / 48)).toFixed(1));
    expect(read?.leak?.value.toFixed(2)).toBe('11.85');
    expect(judged(reading(2, 30))[0]?.remaining?.value).toBe(0);
  });

  it('two readings that stay above the target have no time left', () => {
    const [, second] = judged(reading(4, 400), reading(6, 390));
    expect(second?.remaining).toBeNull();
    // falling as fast as well mixed there is
    const fall = (minutes: number) => 2 + 398 * Math.exp((-60 * minutes) / 17.1207);
    expect(judged(reading(3, 400), reading(3.5, fall(0.5)))[1]?.remaining).not.toBeNull();
  });

  it('a chamber that is not there', () => {
    expect(judged(reading(2, 100, 7))[0]?.verdict).toBe('no-chamber');
  });
});

describe('heights along a tube', () => {
  const job = hoopJob([], { up: UP.y });
  const [hoop] = geometryOf(job).members;
  const line = hoop!.centreline;

  it('nothing between two places lies outside of the profile, whichever way is up', () => {
    for (const up of [UP.x, UP.y, UP.z, { x: 0.6, y: -0.8, z: 0 }]) {
      const heights = heightProfile(line, 100, line.length - 250, up);
      const [low, high] = [Math.min(...heights), Math.max(...heights)];
      const samples = Array.from({ length: 400 }, (_, index) => 100 + ((line.length - 350) * index) / 399);
      const seen = samples.map((station) => dot(placeAt(line, station)!.point, up));
      expect(Math.min(...seen)).toBeGreaterThanOrEqual(low - 1e-9);
      expect(Math.max(...seen)).toBeLessThanOrEqual(high + 1e-9);
      expect(Math.min(...seen) - low).toBeLessThan(0.5);
      expect(high - Math.max(...seen)).toBeLessThan(0.5);
    }
  });

  it('a hoop on its feet lets gas down as far as it was led up', () => {
    const there = heightProfile(line, 0, line.length, UP.y);
    const back = heightProfile(line, line.length, 0, UP.y);
    expect(descent(there)).toBeCloseTo(Math.max(...there) - there.at(-1)!, 9);
    expect(descent(back)).toBeCloseTo(descent(there), 9);
    expect(descent(heightProfile(line, 0, 300, UP.y))).toBe(0);
    expect(planOf(job, [{ member: 'hoop', station: 150 }]).chambers[0]?.longTube).toBeNull();
  });
});
