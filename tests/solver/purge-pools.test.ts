/** The pressure behind a weld pool, wherever the gas is throttled on its way from there to the air. */
import { describe, expect, it } from 'vitest';
import type { Job } from '../../server/job/job.ts';
import type { Purge } from '../../server/job/purge.ts';
import type { PurgePlan } from '../../server/plan/purge.ts';
import { faultsOf } from './figures-in.ts';
import { airHole, holes, hoopJob, jobOf, LEG, MAIN, member, pad, purged, seat, SPLICE } from './purge-frames.ts';

const planOf = (...made: Parameters<typeof purged>): PurgePlan => {
  const { purge } = purged(...made);
  if (purge === null) throw new Error('nothing to purge');
  return purge;
};

/** Behind a hole of 3 mm at 5 L/min there are 310.36 Pa. */
const behind = (bore: number, flow: number): number => 310.36 * (3 / bore) ** 4 * (flow / 5) ** 2;
/** A metre of 34.8 mm takes 0.01033 Pa for each L/min. */
const PER_METRE = 0.01033;

/** Fed at the foot of a leg that opens into the main tube by one hole. */
const tee = (bore: number, change: Partial<Purge> = {}): Job =>
  jobOf([MAIN, LEG], {
    ...holes({ underSaddles: 'all', bore }),
    feed: { member: 'leg', end: 'finish' },
    ...change,
  });

describe('pressure behind the pool', () => {
  it('all of the gas goes through the hole under the saddle, and then parts to two vents', () => {
    const { ventPressure, closingFlow } = planOf(tee(2));
    const all = behind(2, 5) + behind(6, 5) / 4;
    expect(Math.abs(ventPressure.value - all)).toBeLessThan(0.2);
    expect(closingFlow.value).toBeCloseTo(5 * Math.sqrt(100 / all), 2);
    expect(closingFlow.value).toBeLessThan(1.3);
  });

  it('its working adds up: what the bores take, and each hole on the way', () => {
    for (const job of [tee(2), tee(4), tee(6, { weldingFlow: 20 })]) {
      const plan = planOf(job);
      const { inputs } = plan.ventPressure.working;
      const named = (part: string) => inputs.filter(({ name }) => name.startsWith(part)).map(({ value }) => value);
      const [flows, bores, [lost]] = [named('flow-through'), named('bore-of'), named('lost-in-bores')];
      expect([flows.length, bores.length]).toEqual([2, 2]);
      const sum = flows.reduce((total, flow, index) => total + behind(bores[index]!, flow), lost!);
      expect(sum / plan.ventPressure.value).toBeCloseTo(1, 4);
      expect(faultsOf(plan)).toEqual([]);
    }
  });

  it('at its closing flow it is 100 Pa', () => {
    for (const bore of [2, 4]) {
      const { closingFlow } = planOf(tee(bore, { weldingFlow: 50 }));
      const turned = planOf(tee(bore, { weldingFlow: closingFlow.value }));
      expect(turned.ventPressure.value).toBeCloseTo(100, 6);
    }
  });

  it('bore counts as far as the weld is from the vent', () => {
    const at = (station: number) => planOf(jobOf([MAIN]), [{ member: 'main', station }]).ventPressure.value;
    expect(at(100) - at(2900)).toBeCloseTo(5 * 2.8 * PER_METRE, 4);
    // fed at 0 and vented at 3000 mm
    expect(at(2900) - behind(6, 5)).toBeCloseTo(5 * 0.1 * PER_METRE, 2);
  });

  it('a pool in still bore has the pressure of the stream beside it', () => {
    const fed = { ...holes({ toAir: [airHole('main', 400)] }), feed: { hole: 1 } };
    const { ventPressure, chambers } = planOf(jobOf([MAIN], fed, { fixing: [pad('main', 'start')] }));
    expect(chambers[0]!.deadLegs[0]?.welds).toEqual(['P1']);
    expect(ventPressure.value - behind(6, 5)).toBeCloseTo(5 * 2.6 * PER_METRE, 2);
  });

  it('what throttles is said and widened, the vents where they do, the flow where neither is enough', () => {
    const told = (job: Job) => purged(job).findings.find(({ code }) => code === 'vent-pressure-high');
    expect(told(tee(2))?.field).toBe('/purge/holes/bore');
    expect(told(tee(20, { ventBore: 2 }))?.field).toBe('/purge/ventBore');
    const both = told(tee(2, { ventBore: 2 }));
    expect(both?.wayOut?.field).toBe('/purge/weldingFlow');
  });
});

describe('a lance through a hole', () => {
  const through = (bore: number) => purged(hoopJob([300], holes({ toAir: [airHole('crossbar 1', 400, bore)] })));
  const told = (bore: number, code: string) => through(bore).findings.find((found) => found.code === code);

  it('takes part of it: the gas comes back through what is left', () => {
    // √(6² − 4²) = 4.47 mm
    expect(through(6).purge?.ventPressure.value).toBeCloseTo(behind(Math.sqrt(20), 5), 0);
    expect(told(6, 'one-opening')?.grade).toBe('caution');
    expect(told(6, 'vent-pressure-high')).toBeUndefined();
    expect(told(5.3, 'vent-pressure-high')?.field).toBe('/purge/holes/toAir/0/bore');
  });

  it('does not go in where it leaves no room', () => {
    expect([2, 4, 5].map((bore) => told(bore, 'one-opening')?.grade)).toEqual(['stop', 'stop', 'stop']);
    expect(told(5, 'one-opening')?.data).toMatchObject({ value: 5, low: 5.1, lance: 4 });
  });

  it('a plug has a hole for it and one to vent', () => {
    const { purge } = purged(jobOf([MAIN, LEG]));
    expect(purge?.ventPressure.value).toBeCloseTo(behind(6, 5), 0);
  });
});

describe('what a change leaves', () => {
  const out = (...made: Parameters<typeof purged>) =>
    purged(...made).findings.find(({ code }) => code === 'closed-chamber')?.wayOut ?? null;

  it('a hole under a saddle is no way out where the pool behind it would be blown out', () => {
    const bar = (bore: number) => hoopJob([300], { ...holes({ bore }), feed: null });
    expect(out(bar(16))).toEqual({ field: '/purge/holes/underSaddles', value: 'all' });
    // fed at the foot of one stub, vented by another: all gas has to go through holes of 2 mm
    const stub = (name: string, x: number) =>
      member(
        name,
        [
          [x, 0, 0],
          [x, 300, 0],
        ],
        { start: seat('main') },
      );
    const plated = (bore: number) =>
      jobOf([MAIN, stub('one', 500), stub('other', 2500)], holes({ bore }), {
        fixing: [pad('main', 'start'), pad('main', 'finish')],
      });
    const drilled = (bore: number) => {
      const job = plated(bore);
      return purged({ ...job, purge: { ...job.purge, holes: { ...job.purge.holes, underSaddles: 'all' } } }).findings;
    };
    expect(drilled(2).find(({ code }) => code === 'vent-pressure-high')?.grade).toBe('stop');
    expect(out(plated(2))?.field).not.toBe('/purge/holes/underSaddles');
  });
});

it('closing flows are told rounded down', () => {
  const found = purged(jobOf([MAIN], { weldingFlow: 20 }), SPLICE).findings.find(
    ({ code }) => code === 'closing-flow-lower',
  );
  expect(found?.data['high']).toBe(11.3);
});
