import type { Job } from '../../server/job/job.ts';
import type { Finding } from '../../server/plan/finding.ts';
import type { Plan } from '../../server/plan/plan.ts';
import type { Chamber } from '../../server/plan/purge.ts';
import type { Weld } from '../../server/plan/welding.ts';
import { figure } from './fixture-figure.ts';
import { chamber, pocket, setUpsFor } from './fixture-gas.ts';
import { weld, welds } from './fixture-weld.ts';
import { makeJob, makePlan } from './fixture.ts';

/** The made-up plan with other chambers, and with other welds where some are given. */
export function planWith(chambers: Chamber[], all: Weld[] = welds(), diameter = 38.1, together = false): Plan {
  const plan = makePlan(diameter);
  const { purge, welding } = plan;
  if (purge === null || welding === null) throw new Error('the made-up plan is whole');
  const order = all.map(({ name }) => ({ weld: name, quarters: [1, 3, 2, 4] }));
  return {
    ...plan,
    purge: { ...purge, chambers, setups: setUpsFor(chambers, together) },
    welding: { ...welding, welds: all, order, proposed: order },
  };
}

/** So many welds in the one chamber: splices along the crown, every third a bevel with a gap, and saddles. */
export function planOfWelds(count: number): Plan {
  const all = Array.from({ length: count }, (_, index): Weld => {
    const saddle = index % 2 === 1;
    const where = { x: -300 + (600 * index) / Math.max(1, count - 1), y: 0, z: 0 };
    const spec = { member: 'hoop', station: 700 + 40 * index, point: where };
    return saddle
      ? weld({ ...spec, name: `S${String(index)}`, kind: 'saddle', form: 'saddle', onto: 'crossbar 1' })
      : weld({ ...spec, name: String(index + 1), kind: 'splice', form: 'butt', joint: index + 1 });
  });
  const names = all.map(({ name }) => name);
  return planWith([{ ...chamber(), welds: names, taped: [] }], all);
}

/** One set-up of two chambers that are filled side by side: the hoop, and a pocket in the crossbar that fills sooner. */
export function planOfTwoSideBySide(): Plan {
  const small = pocket(2, '2');
  const quick = { ...small, printed: { ...small.printed, time: figure(45, 's') } };
  return planWith([{ ...chamber(), welds: ['1', '2'], deadLegs: [] }, quick], welds(), 38.1, true);
}

/** Three set-ups: the whole hoop, and a pocket either side of each of two welds. */
export function planOfThree(): Plan {
  const plan = planWith([{ ...chamber(), welds: ['S1', 'S2'] }, pocket(2, '1'), pocket(3, '2')]);
  const line: [number, number][] = [
    [-150, -350],
    [150, -350],
  ];
  const pockets = [2, 3].map((number) => ({ chamber: number, flows: true, layer: 'came-back' as const, line }));
  return { ...plan, views: plan.views.map((view) => ({ ...view, gas: [...view.gas, ...pockets] })) };
}

export const stopIn = (number: number): Finding => ({
  code: 'closed-chamber',
  grade: 'stop',
  field: '/purge/holes/underSaddles',
  data: { chamber: number, member: 'crossbar 1' },
  wayOut: null,
});

export const withFindings = (plan: Plan, findings: Finding[]): Plan => ({ ...plan, findings });

/** The made-up job held another way up. */
export const heldWith = (up: Job['purge']['up'], job = makeJob()): Job => ({ ...job, purge: { ...job.purge, up } });

/** The made-up plan with a sleeve in its butts. */
export function planWithSleeve(): Plan {
  const plan = makePlan();
  if (plan.welding === null) throw new Error('the made-up plan is whole');
  return {
    ...plan,
    welding: {
      ...plan.welding,
      sleeve: {
        outsideDiameter: figure(34.2, 'mm'),
        wall: figure(1.5, 'mm'),
        length: figure(90, 'mm'),
        clearance: figure(0.6, 'mm'),
        plugHoles: figure(2, 'count'),
        plugHoleBore: figure(8, 'mm'),
      },
    },
  };
}
