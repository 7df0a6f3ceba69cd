// A purge is planned for anything that a job takes: no exception, no number that is none, and in time.
import fc from 'fast-check';
import { Compile } from 'typebox/compile';
import { describe, expect, it } from 'vitest';
import type { Schema } from '../../server/job/check-value.ts';
import type { FixingPoint } from '../../server/job/fixing.ts';
import type { Frame, Member } from '../../server/job/frame.ts';
import { newJob } from '../../server/job/default-job.ts';
import { Purge } from '../../server/job/purge.ts';
import type { Tube } from '../../server/job/tube.ts';
import { PurgePlan } from '../../server/plan/purge.ts';
import { planPurge } from '../../server/solver/purge/plan-purge.ts';
import { purgeWork } from '../../server/solver/purge/purge-work.ts';

import { isPlain } from './plans-compared.ts';
import { frames, membersOf } from './purge-frames.ts';
import { pad, workloadOf, type PurgeCase } from './purge-workload.ts';
import { valuesOf } from './schema-values.ts';

const published = Compile(PurgePlan);

/** Where a value holds a number that is none. */
function notFinite(value: unknown, path = ''): string | undefined {
  if (typeof value === 'number') return Number.isFinite(value) ? undefined : `${path} ${String(value)}`;
  if (typeof value !== 'object' || value === null) return undefined;
  for (const [name, one] of Object.entries(value)) {
    const found = notFinite(one, `${path}/${name}`);
    if (found !== undefined) return found;
  }
  return undefined;
}

const at = (x: number, y: number, z = 0) => ({ x, y, z, radius: null });
const onto = (name: string): Member['start'] => ({ end: 'saddle', onto: name });
const FREE: Member['start'] = { end: 'free' };

const straight = (name: string, from: number[], to: number[], ends: Partial<Member> = {}): Member => ({
  name,
  path: {
    by: 'points',
    points: [at(from[0]!, from[1]!, from[2]), at(to[0]!, to[1]!, to[2])],
    closed: false,
  },
  start: FREE,
  finish: FREE,
  ...ends,
});

/** Two stiles and as many rungs as a job takes, or three stiles with rungs between each two of them. */
const ladder = (rungs: number, stiles: 2 | 3): Frame => ({
  shape: 'members',
  members: [
    ...Array.from({ length: stiles }, (_, index) =>
      straight(`stile ${String(index)}`, [600 * index, 0], [600 * index, 100 * rungs]),
    ),
    ...Array.from({ length: rungs }, (_, index) => {
      const from = index % (stiles - 1);
      const height = 100 * index + 50;
      return straight(`rung ${String(index)}`, [600 * from, height], [600 * (from + 1), height], {
        start: onto(`stile ${String(from)}`),
        finish: onto(`stile ${String(from + 1)}`),
      });
    }),
  ],
});

/** Each sits on the one before: as deep as a job takes. */
const chainOfBranches: Frame = {
  shape: 'members',
  members: Array.from({ length: 40 }, (_, index) => {
    const [x, y] = [50 * Math.floor((index + 1) / 2), 50 * Math.floor(index / 2)];
    const [toX, toY] = [50 * Math.floor((index + 2) / 2), 50 * Math.floor((index + 1) / 2)];
    return straight(`branch ${String(index)}`, [x, y], [toX, toY], {
      start: index === 0 ? FREE : onto(`branch ${String(index - 1)}`),
    });
  }),
};

const oddFrames: Frame[] = [
  ladder(38, 2),
  ladder(37, 3),
  chainOfBranches,
  { shape: 'straight', length: 1e-9 },
  { shape: 'straight', length: 50_000 },
  { shape: 'members', members: [straight('dot', [0, 0], [1e-6, 0])] },
  {
    shape: 'members',
    members: [
      straight('rail', [0, 0], [1, 0]),
      straight('stub', [0.5, 0], [0.5, 0.001], { start: onto('rail') }),
      straight('other', [0.5, 0], [0.5, 0, 40_000], { start: onto('rail') }),
    ],
  },
];

const TUBES: Partial<Tube>[] = [
  {},
  {},
  { outsideDiameter: 6, wall: 2.9999 },
  { outsideDiameter: 168.3, wall: 0.5 },
  { outsideDiameter: 0.5, wall: 0.1 },
];

/** A purge of any values, with its ends and places on tubes of the frame. */
const purgeOf = (frame: Frame): fc.Arbitrary<Purge> => {
  const names = membersOf(frame).map(({ name }) => name);
  const named = (value: unknown, salt: number): unknown => {
    if (Array.isArray(value)) return value.map((one, index) => named(one, salt + index));
    if (!isPlain(value)) return value;
    return Object.fromEntries(
      Object.entries(value).map(([key, one], index) =>
        key === 'member' && salt % 5 !== 4 ? [key, names[salt % names.length]] : [key, named(one, salt + index + 1)],
      ),
    );
  };
  return fc
    .tuple(valuesOf(Purge as Schema), fc.nat(1000))
    .map(([value, salt]) => named(structuredClone(value), salt) as Purge);
};

const oddCases: fc.Arbitrary<PurgeCase> = fc
  .oneof({ weight: 8, arbitrary: frames }, { weight: 1, arbitrary: fc.constantFrom(...oddFrames) })
  .chain((frame) => {
    const names = membersOf(frame).map(({ name }) => name);
    const place = fc.record({
      member: fc.constantFrom(...names, 'nobody'),
      station: fc.oneof(fc.constantFrom(0, 1e-9, 50, 1e5), fc.double({ min: 0, max: 4000, noNaN: true })),
    });
    const pads: fc.Arbitrary<FixingPoint> = fc
      .tuple(
        fc.constantFrom(...names),
        fc.constantFrom('start' as const, 'finish' as const),
        fc.constantFrom(0, 1e-3, 200),
      )
      .map(([name, end, hole]) => pad(name, end, hole));
    return fc
      .record({
        purge: purgeOf(frame),
        cuts: fc.array(place, { maxLength: 4 }),
        fixing: fc.array(pads, { maxLength: 3 }),
        tube: fc.constantFrom(...TUBES),
      })
      .map(({ purge, cuts, fixing, tube }): PurgeCase => {
        const job = newJob(frame.shape);
        return { frame, purge, cuts, fixing, job: { tube: { ...job.tube, ...tube } } };
      });
  });

describe('a purge', () => {
  it('is planned for anything, finite and as published', () => {
    const reached = { planned: 0, none: 0, undrawn: 0 };
    fc.assert(
      fc.property(oddCases, (one) => {
        const work = workloadOf(one);
        if (work === undefined) {
          reached.undrawn += 1;
          return;
        }
        const { purge, findings } = planPurge(work.context);
        expect(notFinite(purge)).toBeUndefined();
        expect(notFinite(findings)).toBeUndefined();
        expect(notFinite(purgeWork(work.context))).toBeUndefined();
        if (purge === null) reached.none += 1;
        else {
          reached.planned += 1;
          expect(published.Check(purge)).toBe(true);
          for (const { paths } of purge.chambers)
            if (paths.length > 0) expect(paths.reduce((sum, { share }) => sum + share.value, 0)).toBeCloseTo(100, 6);
        }
      }),
      { numRuns: 140, seed: 41, endOnFailure: true },
    );
    expect(reached.planned).toBeGreaterThan(70);
    expect(reached.none).toBeGreaterThan(15);
  });

  it.each([
    ['two stiles', ladder(38, 2)],
    ['three stiles', ladder(37, 3)],
    ['a branch on a branch', chainOfBranches],
  ])('of forty members, %s, leads all of the gas out', (_, frame) => {
    const holes = { underSaddles: 'all' as const, except: [], bore: 6, toAir: [] };
    const { purge } = planPurge(workloadOf({ frame, purge: { holes } })!.context);
    expect(purge?.chambers).toHaveLength(1);
    const { paths } = purge!.chambers[0]!;
    expect(paths.reduce((sum, { share }) => sum + share.value, 0)).toBeCloseTo(100, 6);
  });

  it('to a target that is hardly above the gas takes long, and an end', () => {
    const { context } = workloadOf({
      frame: { shape: 'straight', length: 3000 },
      cuts: [{ member: 'tube', station: 1500 }],
      purge: { gas: { from: 'certificate', oxygen: 10 }, targetOxygen: 10.000000000000082, model: 'long-tube' },
    })!;
    expect(notFinite(planPurge(context))).toBeUndefined();
    expect(notFinite(purgeWork(context))).toBeUndefined();
  });
});
