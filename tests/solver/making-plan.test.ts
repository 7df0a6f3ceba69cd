import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { MemberBending } from '../../server/job/bending.ts';
import type { Frame } from '../../server/job/frame.ts';
import type { Job } from '../../server/job/job.ts';
import type { MemberPlan } from '../../server/plan/frame.ts';
import { mirrored, reversed, type BendTable } from '../../server/solver/geometry/bend-table.ts';
import { plan } from '../../server/solver/plan.ts';
import { between, firstDifference, jobWith } from '../properties/plans-compared.ts';
import { BENCH, halfTurn, memberOf, runOf, table, turns, walked } from '../properties/walked-runs.ts';

const RUNS = { numRuns: 40 };
const asked = (member: string, change: Partial<MemberBending>): MemberBending => ({
  member,
  from: 'start',
  side: 'usual',
  closingStraight: null,
  ...change,
});

const bent = (frame: Frame, bending: Partial<Job['bending']>, machine: Partial<Job['machine']> = {}): MemberPlan => {
  const made = plan(jobWith(frame, { ...BENCH, machine: { ...BENCH.machine, ...machine }, bending }));
  return made.frame!.members[0]!;
};

/** The steps of a planned member as a bend table, in degrees. */
const stepsOf = (member: MemberPlan): BendTable => ({
  steps: member.bends.map(({ feed, rotation, angle, radiusAfterRelease }) => ({
    feed: feed.value,
    rotation: rotation.value,
    angle: angle.value,
    radius: radiusAfterRelease.value,
  })),
  lastStraight: member.lastStraight.value,
});

/** Where the tube of a row lies on the sawn bar: the marks of its two ends [mm]. */
const marksOf = ({ bends }: MemberPlan) => bends.map(({ startMark, endMark }) => [startMark.value, endMark.value]);

describe('a member bent from its finish', () => {
  it('has the table from the other end, and its marks count from there', () => {
    fc.assert(
      fc.property(turns, fc.boolean(), (of, stretches) => {
        const frame = runOf(walked(of).points);
        const machine = { stretchPerBend: stretches ? 1.7 : 0 };
        const there = bent(frame, {}, machine);
        fc.pre(!halfTurn(table(there)));
        const back = bent(frame, { members: [asked('run', { from: 'finish' })] }, machine);
        expect(back.making.from).toBe('finish');
        expect(firstDifference(stepsOf(back), reversed(stepsOf(there)), 1e-8)).toBeUndefined();
        // the bar has one length, and a bend lies on it where it lay, seen from its other end
        const whole = there.cutLength.value;
        expect(back.cutLength.value).toBeCloseTo(whole, 8);
        expect(back.developedLength.value).toBeCloseTo(there.developedLength.value, 8);
        const turned = marksOf(there)
          .reverse()
          .map(([start, end]) => [whole - end!, whole - start!]);
        expect(firstDifference(marksOf(back), turned, 1e-8)).toBeUndefined();
        // the pieces are the member's own: which end is bent first does not move it
        expect(back.pieces).toEqual(there.pieces);
      }),
      RUNS,
    );
  });
});

describe('the frame for the other side', () => {
  it('has the mirrored table, the same marks and the same bar', () => {
    fc.assert(
      fc.property(turns, (of) => {
        const frame = runOf(walked(of).points);
        const here = bent(frame, {});
        fc.pre(!halfTurn(table(here)));
        const other = bent(frame, { hand: 'mirrored' });
        expect(firstDifference(stepsOf(other), mirrored(stepsOf(here)), 1e-9)).toBeUndefined();
        expect(firstDifference(marksOf(other), marksOf(here), 1e-9)).toBeUndefined();
        expect(other.cutLength.value).toBeCloseTo(here.cutLength.value, 9);
      }),
      RUNS,
    );
  });

  it('is the same frame where it is flat', () => {
    const frame = runOf(walked([40, 70, 90].map((angle) => ({ length: 700, angle, roll: 0, radius: null }))).points);
    expect(
      firstDifference(stepsOf(bent(frame, { hand: 'mirrored' })), stepsOf(bent(frame, {})), 1e-12),
    ).toBeUndefined();
  });
});

/** Two legs square to each other's plane: bent and turned, the first one hangs down. */
const legs = (first: number, last: number): Frame => {
  const at = (x: number, y: number, z: number) => ({ x, y, z, radius: null });
  return runOf([at(0, 0, 0), at(first, 0, 0), at(first, 600, 0), at(first, 600, last)]);
};
const codes = (job: Job) => plan(job).findings.map(({ code }) => code);

describe('a run that strikes the bed as planned', () => {
  const above = (bedBelow: number, side: 'right' | 'both' = 'right', frame = legs(900, 500)): Job => {
    const job = jobWith(frame, BENCH);
    const { surroundings } = job.machine;
    return { ...job, machine: { ...job.machine, surroundings: { ...surroundings, bedBelow, side } } };
  };
  const taking = (job: Job): Job => {
    const way = plan(job).findings.find(({ code }) => code === 'bend-another-way')!.wayOut!;
    expect(way.field).toBe('/bending/members');
    return { ...job, bending: { ...job.bending, members: way.value as MemberBending[] } };
  };

  it('and not from its other end is told so, and strikes no more where that is taken', () => {
    const job = above(700);
    expect(codes(job)).toEqual(expect.arrayContaining(['tube-strikes', 'bend-another-way']));
    const { ways } = plan(job).frame!.members[0]!.making;
    expect(ways.map(({ key, possible }) => [key, possible])).toEqual([
      ['as-planned', false],
      ['other-end', true],
    ]);
    // the foot hangs as deep as the first leg is long; its rim swings by a little lower
    const bed = ways[0]!.problems.find(({ obstacle }) => obstacle === 'bed')!;
    expect(bed.value).toBeLessThanOrEqual(-200);
    expect(bed.value).toBeGreaterThan(-202);
    const after = taking(job);
    expect(after.bending.members).toEqual([asked('run', { from: 'finish' })]);
    expect(codes(after)).not.toContain('tube-strikes');
    expect(codes(after)).not.toContain('bend-another-way');
    expect(plan(after).frame!.members[0]!.making.from).toBe('finish');
  });

  it('from either end goes by on the other side of a machine that has both', () => {
    const job = above(700, 'both', legs(900, 900));
    const after = taking(job);
    expect(after.bending.members).toEqual([asked('run', { side: 'other' })]);
    expect(codes(after)).not.toContain('tube-strikes');
    expect(plan(after).frame!.members[0]!.making.side).toBe('left');
    // on a machine with its die on the right alone there is no such way
    expect(codes(above(700, 'right', legs(900, 900)))).toContain('bend-no-way');
  });

  it('from its finish is told of its start', () => {
    const job = above(700, 'right', legs(500, 900));
    expect(codes(job)).not.toContain('tube-strikes');
    expect(plan(job).frame!.members[0]!.making.ways.map(({ key }) => key)).toEqual(['as-planned']);
    const stuck = { ...job, bending: { ...job.bending, members: [asked('run', { from: 'finish' })] } };
    expect(codes(stuck)).toContain('tube-strikes');
    expect(taking(stuck).bending.members).toEqual([asked('run', {})]);
    expect(codes(taking(stuck))).not.toContain('tube-strikes');
  });

  it('mirrored hangs up where it hung down', () => {
    const job = above(700);
    expect(codes({ ...job, bending: { ...job.bending, hand: 'mirrored' } })).not.toContain('tube-strikes');
  });

  it('is not told of a bed that nobody measured', () => {
    expect(codes(jobWith(legs(900, 900), BENCH))).not.toContain('tube-strikes');
  });
});

describe('the closing weld', () => {
  const ring: Frame = {
    shape: 'ring',
    width: { value: 900, reference: 'centre' },
    height: { value: 650, reference: 'centre' },
  };
  const loop = memberOf({
    by: 'points',
    points: [
      { x: 0, y: 0, z: 0, radius: null },
      { x: 700, y: 0, z: 0, radius: null },
      { x: 700, y: 900, z: 300, radius: null },
      { x: 0, y: 600, z: 0, radius: null },
    ],
    closed: true,
  });
  const jobOf = (frame: Frame, member: string, closingStraight: number | null): Job =>
    jobWith(frame, { ...BENCH, bending: { members: [asked(member, { closingStraight })] } });

  it.each([
    ['a ring', ring, 'ring'],
    ['a closed path in space', loop, 'tube'],
  ])('of %s stands in the middle of its longest straight, or where it is asked for', (_, frame, name) => {
    const byRule = plan(jobOf(frame, name, null)).frame!.members[0]!;
    const { choices } = byRule.making.closing!;
    expect(choices.map(({ straight }) => straight)).toEqual([1, 2, 3, 4]);
    const longest = Math.max(...choices.map(({ length }) => length));
    expect(byRule.making.closing!.byRule).toBe(true);
    expect(byRule.making.closing!.length.value).toBeCloseTo(longest, 9);
    for (const { straight, length } of choices) {
      const job = jobOf(frame, name, straight);
      const made = plan(job);
      const member = made.frame!.members[0]!;
      expect(made.findings.map(({ code }) => code)).not.toContain('closing-straight-missing');
      expect(member.making.closing).toMatchObject({ straight, byRule: false, choices });
      expect(member.making.closing!.clear.value).toBeCloseTo(length / 2, 9);
      // the datum is the weld: half the straight before the first bend and half after the last
      expect(member.bends[0]!.feed.value).toBeCloseTo(length / 2, 9);
      expect(member.lastStraight.value).toBeCloseTo(length / 2, 9);
      const { point } = member.start;
      expect(firstDifference(member.finish.point, point, 1e-9)).toBeUndefined();
      // the same tube, begun elsewhere
      expect(member.cutLength.value).toBeCloseTo(byRule.cutLength.value, 8);
      const turned = (of: MemberPlan) => of.bends.map(({ angle }) => angle.value).sort((a, b) => a - b);
      expect(firstDifference(turned(member), turned(byRule), 1e-9)).toBeUndefined();
      // it is welded there: the only joint, at station 0, where the member starts
      expect(made.welding!.welds).toMatchObject([{ name: 'C1', kind: 'closing', member: name, station: 0 }]);
      expect(made.purge!.chambers.flatMap(({ welds }) => welds)).toEqual(['C1']);
    }
    const starts = choices.map(({ straight }) => plan(jobOf(frame, name, straight)).frame!.members[0]!.start.point);
    expect(new Set(starts.map((point) => JSON.stringify(point))).size).toBe(4);
  });

  it('is asked in vain of a straight that is not there, or by rule where none is asked', () => {
    const missing = plan(jobOf(ring, 'ring', 7));
    expect(missing.findings.find(({ code }) => code === 'closing-straight-missing')!.data).toMatchObject({ value: 7 });
    const { closing } = missing.frame!.members[0]!.making;
    expect(closing!.byRule).toBe(true);
    expect(plan(jobOf(legs(600, 600), 'run', 2)).frame!.members[0]!.making.closing).toBeNull();
  });

  it('leaves of every size what the middle of it leaves', () => {
    fc.assert(
      fc.property(between(400, 1500), between(400, 1500), fc.integer({ min: 1, max: 4 }), (width, height, straight) => {
        const frame: Frame = {
          shape: 'ring',
          width: { value: width, reference: 'centre' },
          height: { value: height, reference: 'centre' },
        };
        const { checks } = plan(jobOf(frame, 'ring', straight)).frame!;
        for (const [key, size] of [
          ['width', width],
          ['height', height],
        ] as const)
          expect(checks.find((check) => check.key === key)!.centre.value).toBeCloseTo(size, 8);
      }),
      { numRuns: 30 },
    );
  });
});
