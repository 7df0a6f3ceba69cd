import { expect, it } from 'vitest';
import { landingStage } from '../../db/demo/landing-stage.ts';
import { newJob } from '../../server/job/default-job.ts';
import type { Job } from '../../server/job/job.ts';
import type { MemberPlan } from '../../server/plan/frame.ts';
import { planSpringback } from '../../server/solver/bending/plan-springback.ts';
import { setUpOf } from '../../server/solver/bending/set-up.ts';
import type { SpringbackLaw } from '../../server/solver/bending/springback-law.ts';
import { readHoop } from './read-hoop.ts';
import { placeAt, type Centreline } from '../../server/solver/geometry/centreline.ts';
import { length, subtract, type Vector3 } from '../../server/solver/geometry/vector.ts';
import { plan } from '../../server/solver/plan.ts';
import { planTube } from '../../server/solver/tube/plan-tube.ts';
import { testBend } from '../solver/made-up-shop.ts';
import { cornerOf, endOf, relaid, type Off, type Recipe } from './relaid.ts';

const DRAWS = 20_000;
const DEGREE = Math.PI / 180;

/** Normal numbers of mean 0 and standard deviation 1 by Box and Muller's method, the same every time. */
function normals(seed: number): () => number {
  let state = seed;
  const uniform = (): number => {
    // Park & Miller's generator, Comm. ACM 31 (1988) 1192
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}

/** What the bender is given for a planned member, its rolled crown between the two bends. */
function recipeOf(member: MemberPlan): Recipe {
  let rolled: { radius: number; length: number } | undefined;
  const bends = member.bends.flatMap(({ made, feed, rotation, angle, radiusAfterRelease, arcLength }) => {
    if (made === 'rolled') {
      rolled = { radius: radiusAfterRelease.value, length: arcLength.value };
      return [];
    }
    const before = rolled === undefined ? feed.value : rolled.length;
    const crown = rolled === undefined ? {} : { rolled: rolled.radius };
    rolled = undefined;
    return [
      {
        before,
        ...crown,
        rotation: rotation.value * DEGREE,
        angle: angle.value * DEGREE,
        radius: radiusAfterRelease.value,
      },
    ];
  });
  return { bends, last: member.lastStraight.value };
}

function lawOf({ tube, machine }: Job): SpringbackLaw {
  return planSpringback(tube, planTube(tube).grade, setUpOf(machine, tube).setUp!).law!;
}

/** A size by its key, on the tube as it came out, centre to centre; undefined where the tube has no such place. */
type Measure = (line: Centreline) => Readonly<Record<string, number | undefined>>;

const apart = (one: Vector3, other: Vector3) => length(subtract(other, one));
const startOf = (line: Centreline): Vector3 => placeAt(line, 0)!.point;

const hoopSizes: Measure = (line) => readHoop(line)!;
const offsetSizes: Measure = (line) => ({
  // square to the first end, to the corner that the last end leaves from
  offset: Math.abs(cornerOf(line, 1).y),
  'first-length': apart(startOf(line), cornerOf(line, 0)),
  'last-length': apart(cornerOf(line, 1), endOf(line)),
});
const endToEnd: Measure = (line) => ({ 'end-to-end': apart(startOf(line), endOf(line)) });

const at = (x: number, y: number, z: number) => ({ x, y, z, radius: null });
const run: Job = {
  ...newJob('run'),
  frame: {
    shape: 'run',
    points: [
      at(0, 0, 0),
      at(500, 0, 0),
      at(500, 600, 0),
      at(900, 900, 400),
      at(900, 1300, 900),
      at(300, 1500, 900),
      at(300, 1500, 1500),
    ],
  },
};
const base = newJob('hoop');
const byTests: Job = {
  ...base,
  machine: {
    ...base.machine,
    springback: {
      method: 'test-bends',
      bends: [testBend(30, 28.6, 117), testBend(60, 57.9, 118), testBend(95, 91.5), testBend(125, 120.9, 117.5)],
    },
  },
};

const CASES: readonly (readonly [string, Job, Measure])[] = [
  ['a hoop', base, hoopSizes],
  ['a hoop by test bends', byTests, hoopSizes],
  ['an offset', newJob('offset'), offsetSizes],
  ['a run of five bends in space', run, endToEnd],
  ['the example’s crowned hoop', landingStage(), hoopSizes],
];

it.each(CASES)('%s: twice the standard deviation of 20,000 tubes is the ± of each size', (_, job, measure) => {
  const { frame, tube } = plan(job);
  const [member] = frame!.members;
  const made = recipeOf(member!);
  const law = lawOf(job);
  const { angleScatter, planeScatter, markAccuracy } = job.machine.accuracy;
  const next = normals(20_261);
  // every ± is two standard deviations
  const drawn = (plusMinus: number): number => (plusMinus / 2) * next();
  const limits = tube!.diameterLimits!;
  const diameter = job.tube.outsideDiameter;
  const ofTube = Math.max(limits.most!.value - diameter, diameter - limits.least.value) / diameter;

  const seen = new Map<string, { centre: number[]; outside: number[] }>();
  const checks = frame!.checks.filter(({ key }) => measure(relaid(made, nothing(made)))[key] !== undefined);
  for (let draw = 0; draw < DRAWS; draw += 1) {
    const lawOff = drawn(1);
    const radiusOff = drawn(law.radiusPlusMinus);
    const thicker = drawn(ofTube);
    const off: Off = {
      angle: made.bends.map(({ angle }) => drawn(angleScatter * DEGREE) + lawOff * law.lawBandFor(angle)),
      mark: made.bends.map(() => drawn(markAccuracy)),
      rotation: made.bends.map((_, index) => (index === 0 ? 0 : drawn(planeScatter * DEGREE))),
      radius: made.bends.map(() => radiusOff),
      sawn: drawn(markAccuracy),
    };
    const sizes = measure(relaid(made, off));
    for (const { key, outside, centre } of checks) {
      const extra = outside.value - centre.value;
      const all = seen.get(key) ?? { centre: [], outside: [] };
      seen.set(key, all);
      all.centre.push(sizes[key]!);
      all.outside.push(sizes[key]! + extra * (1 + thicker));
    }
  }
  expect(checks.length).toBeGreaterThan(0);
  for (const { key, outside, centre } of checks) {
    const all = seen.get(key)!;
    expect(mean(all.centre), key).toBeCloseTo(centre.value, -1);
    expect((2 * deviation(all.centre)) / centre.band!.plusMinus, `${key}, centre`).toBeGreaterThan(0.95);
    expect((2 * deviation(all.centre)) / centre.band!.plusMinus, `${key}, centre`).toBeLessThan(1.05);
    expect((2 * deviation(all.outside)) / outside.band!.plusMinus, `${key}, outside`).toBeGreaterThan(0.95);
    expect((2 * deviation(all.outside)) / outside.band!.plusMinus, `${key}, outside`).toBeLessThan(1.05);
  }
});

const nothing = ({ bends }: Recipe): Off => {
  const zeros = bends.map(() => 0);
  return { angle: zeros, mark: zeros, rotation: zeros, radius: zeros, sawn: 0 };
};
const mean = (all: readonly number[]): number => all.reduce((sum, one) => sum + one, 0) / all.length;
function deviation(all: readonly number[]): number {
  const middle = mean(all);
  return Math.sqrt(all.reduce((sum, one) => sum + (one - middle) ** 2, 0) / (all.length - 1));
}
