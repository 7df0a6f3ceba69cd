import { describe, expect, it } from 'vitest';
import type { Die, Machine } from '../../server/job/machine.ts';
import type { Tube } from '../../server/job/tube.ts';
import { planMember, type MemberContext } from '../../server/solver/bending/plan-member.ts';
import { planSpringback } from '../../server/solver/bending/plan-springback.ts';
import { setUpOf } from '../../server/solver/bending/set-up.ts';
import type { MemberGeometry } from '../../server/solver/frame/frame-geometry.ts';
import { centrelineFromChain, type Link } from '../../server/solver/geometry/centreline.ts';
import { planTube } from '../../server/solver/tube/plan-tube.ts';
import { BENDER, testBend, TUBE, withDie } from './made-up-shop.ts';

const quarter = Math.PI / 2;
const tube: Tube = { ...TUBE, grade: { from: 'catalogue', key: '304' } };
const onThis = { dieRadius: 76.2 };
const machine: Machine = withDie(
  {
    ...BENDER,
    springback: {
      method: 'test-bends',
      bends: [testBend(20, 17.9, null, onThis), testBend(120, 113.6, 80, onThis)],
    },
    leastStraight: 60,
    accuracy: { ...BENDER.accuracy, angleScatter: 0.2 },
  },
  { radius: 76.2, gripLength: 50 },
);

function contextFor(
  change: Partial<Machine> = {},
  others: readonly MemberGeometry[] = [],
  die: Partial<Die> = {},
): MemberContext {
  const changed = setUpOf(withDie({ ...machine, ...change }, die), tube).setUp!;
  const { grade, tolerance } = planTube(tube);
  const { law } = planSpringback(tube, grade, changed);
  return {
    tube,
    grade,
    machine: changed,
    law: law!,
    tolerance: { outsideDiameter: tolerance!.outsideDiameter.plus, wall: tolerance!.wall.plus! },
    paperThickness: 0.1,
    templateStations: 24,
    partners: new Map(others.map((member) => [member.name, member])),
    field: '/frame',
  };
}

function member(links: readonly Link[], name = 'tube'): MemberGeometry {
  const start = { point: { x: 0, y: 0, z: 0 }, direction: { x: 1, y: 0, z: 0 }, normal: { x: 0, y: 0, z: 1 } };
  const free = { kind: 'free' } as const;
  const centreline = centrelineFromChain(start, links);
  return { name, centreline, closed: false, closing: null, start: free, finish: free };
}

const bend = (rotation = 0, angle = quarter, radius = 80): Link => ({
  kind: 'arc',
  radius,
  angle,
  rotation,
  made: 'die',
});
const straight = (length: number): Link => ({ kind: 'straight', length });
const codes = (findings: readonly { code: string }[]) => findings.map((each) => each.code);

describe('a U of two bends', () => {
  const u = member([straight(200), bend(), straight(100), bend(), straight(150)]);

  it('has its rows in order, with marks on the straight tube', () => {
    const { plan } = planMember(u, 'start', contextFor());
    const arc = 80 * quarter;
    expect(plan.bends.map((row) => row.feed.value)).toEqual([200, 100]);
    expect(plan.bends.map((row) => row.startMark.value)).toEqual(
      [200, 200 + arc + 100].map((mark) => expect.closeTo(mark, 9) as number),
    );
    expect(plan.bends[1]!.middleMark.value).toBeCloseTo(300 + 1.5 * arc, 9);
    expect(plan.bends[1]!.endMark.value).toBeCloseTo(300 + 2 * arc, 9);
    expect(plan.bends[0]!.tangentLength!.value).toBeCloseTo(80, 9);
    expect(plan.bends[0]!.angleToBendTo.value).toBeCloseTo(95.3396, 4);
    expect(plan.bends[0]!.dieRadius.value).toBe(76.2);
    expect(plan.developedLength.value).toBeCloseTo(450 + 2 * arc, 9);
    expect(plan.cutLength.value).toBeCloseTo(450 + 2 * arc, 9);
    expect(plan.lastStraight.value).toBeCloseTo(150, 9);
  });

  it('is checked from the sawn end, then over both legs', () => {
    const { plan } = planMember(u, 'start', contextFor());
    expect(plan.bends[0]!.check!.value).toBeCloseTo(200 + 80 + 19.05, 9);
    // outside to outside of a U is centre to centre and one diameter more
    expect(plan.bends[1]!.check!.value).toBeCloseTo(100 + 2 * 80 + 38.1, 9);
  });

  it('stretch moves every later mark back and shortens the tube', () => {
    const arc = 80 * quarter;
    const { plan } = planMember(u, 'start', contextFor({ stretchPerBend: 2 }));
    expect(plan.bends[0]!.startMark.value).toBeCloseTo(200, 9);
    expect(plan.bends[0]!.endMark.value).toBeCloseTo(200 + arc - 2, 9);
    expect(plan.bends[1]!.startMark.value).toBeCloseTo(300 + arc - 2, 9);
    expect(plan.cutLength.value).toBeCloseTo(450 + 2 * arc - 4, 9);
    expect(plan.developedLength.value).toBeCloseTo(450 + 2 * arc, 9);
  });

  it('leaves extra on a first straight that the clamp cannot hold, and marks move by it', () => {
    const { plan, findings } = planMember(u, 'start', contextFor({ trimAllowance: 10 }, [], { gripLength: 230 }));
    expect(plan.bends[0]!.startMark.value).toBeCloseTo(230, 9);
    expect(plan.cutLength.value).toBeCloseTo(450 + 160 * quarter + 30 + 10, 9);
    const short = findings.find((each) => each.code === 'grip-short')!;
    expect(short.data).toMatchObject({ value: 200, low: 230, extra: 30 });
    expect(codes(planMember(u, 'start', contextFor()).findings)).not.toContain('grip-short');
  });

  it('warns of straights that the machine cannot clamp, of too large an angle, and of a foreign radius', () => {
    const short = planMember(u, 'start', contextFor({ leastStraight: 151 })).findings;
    expect(codes(short)).toEqual(expect.arrayContaining(['straight-short-for-machine', 'last-straight-short']));
    expect(codes(planMember(u, 'start', contextFor({ leastStraight: 100 })).findings)).not.toContain(
      'straight-short-for-machine',
    );
    const far = planMember(u, 'start', contextFor({}, [], { largestAngle: 95 })).findings.find(
      (each) => each.code === 'angle-over-machine',
    )!;
    expect(far.grade).toBe('stop');
    expect(far.data).toMatchObject({ bends: '1, 2', high: 95 });
    const foreign = planMember(member([straight(200), bend(0, quarter, 120), straight(200)]), 'start', contextFor());
    const row = foreign.plan.bends[0]!;
    expect(codes(foreign.findings)).toContain('radius-not-of-die');
    expect(contextFor().law.radiusFor(row.dieRadius.value)).toBeCloseTo(120, 6);
    expect(row.dieRadius.value).toBeLessThan(120);
  });
});

it('a Z turns half round, out of plane a quarter, in the sign of the machine', () => {
  const zed = member([
    straight(200),
    bend(),
    straight(100),
    bend(Math.PI),
    straight(100),
    bend(quarter),
    straight(200),
  ]);
  const right = planMember(zed, 'start', contextFor()).plan.bends;
  expect(right.map((row) => row.rotation.value)).toEqual(
    [0, 180, 90].map((angle) => expect.closeTo(angle, 9) as number),
  );
  expect(right[2]!.rotationRound.value).toBeCloseTo((Math.PI * 38.1) / 4, 9);
  const left = planMember(zed, 'start', contextFor({ rotationSign: -1 })).plan.bends;
  expect(left.map((row) => row.rotation.value)).toEqual(
    [0, -180, -90].map((angle) => expect.closeTo(angle, 9) as number),
  );
});

describe('a crowned crossbar', () => {
  const angle = (80 * Math.PI) / 180;
  const crown: Link = { kind: 'arc', radius: 2000, angle: Math.PI - 2 * angle, rotation: 0, made: 'rolled' };
  const hoop = member([straight(600), bend(0, angle), crown, bend(0, angle), straight(600)], 'hoop');

  it('has three rows; the crown counts as length between the bends, and the clamp grips it', () => {
    const { plan, findings } = planMember(hoop, 'start', contextFor());
    expect(plan.bends.map((row) => row.made)).toEqual(['die', 'rolled', 'die']);
    expect(plan.bends[1]!.angleToBendTo.value).toBeCloseTo(20, 9);
    expect(plan.bends[1]!.dieRadius.value).toBeLessThan(2000);
    expect(plan.bends[1]!.mandrel).toBe('not-needed');
    expect(codes(findings)).toContain('crowned-bar-gripped');
    expect(codes(findings)).not.toContain('straight-short-for-machine');
  });

  it('is checked from the foot to the top of the crown, which is where its points say', () => {
    const { plan } = planMember(hoop, 'start', contextFor());
    const piece = plan.pieces[2]!;
    if (piece.kind !== 'arc') throw new Error('the third piece is the crown');
    expect(plan.bends[0]!.check!.value).toBeCloseTo(piece.centre.x + 2000 + 19.05, 9);
    expect(plan.bends[1]!.check).toBeNull();
  });

  it('is checked over both legs after its second corner: chords of the two bends and of the crown', () => {
    const { plan } = planMember(hoop, 'start', contextFor());
    const { radius } = hoop.centreline.pieces[1] as { radius: number };
    const across = 2 * radius * (1 - Math.cos(angle)) + 2 * 2000 * Math.sin(Math.PI / 2 - angle);
    expect(plan.bends[2]!.check!.value).toBeCloseTo(across + 38.1, 9);
    // legs that are not parallel have no one width
    const splayed = member([straight(600), bend(0, angle), crown, bend(0, angle - 0.1), straight(600)], 'hoop');
    expect(planMember(splayed, 'start', contextFor()).plan.bends[2]!.check).toBeNull();
  });
});

describe('a crossbar that sits on two legs', () => {
  const leg = member([straight(1000)], 'leg');
  const across = {
    ...member([straight(500)], 'crossbar 1'),
    start: { kind: 'saddle', onto: 'leg', station: 300, axisAngle: quarter, offset: 0 } as const,
  };
  const legUp: MemberGeometry = {
    ...leg,
    centreline: centrelineFromChain(
      { point: { x: 0, y: -300, z: 0 }, direction: { x: 0, y: 1, z: 0 }, normal: { x: 0, y: 0, z: 1 } },
      [straight(1000)],
    ),
  };

  it('has a saddle wrap and is sawn shorter by the throat', () => {
    const { plan } = planMember(across, 'start', contextFor({}, [legUp]));
    const [template] = plan.templates;
    expect(template!.key).toBe('crossbar 1 start');
    expect(template!.kind).toBe('saddle');
    expect(template!.wrapLength).toBeCloseTo(Math.PI * 38.2, 9);
    expect(template!.high).toBeCloseTo(19.05, 9);
    // equal tubes at a right angle: at the sides the inner surface stands √(R² − r²) off the axis
    expect(template!.low).toBeCloseTo(Math.sqrt(19.05 ** 2 - 17.4 ** 2), 9);
    expect(plan.cutLength.value).toBeCloseTo(500 - template!.low, 9);
    expect(template!.curve).toHaveLength(121);
  });

  it('has the same saddle at the other end, mirrored', () => {
    const turned = { ...across, start: { kind: 'free' } as const, finish: { ...across.start, station: 300 } };
    const partner: MemberGeometry = {
      ...legUp,
      centreline: centrelineFromChain(
        { point: { x: 500, y: -300, z: 0 }, direction: { x: 0, y: 1, z: 0 }, normal: { x: 0, y: 0, z: 1 } },
        [straight(1000)],
      ),
    };
    const [template] = planMember(turned, 'start', contextFor({}, [partner])).plan.templates;
    expect(template!.key).toBe('crossbar 1 finish');
    expect(template!.ringStation).toBe(500);
    expect(template!.low).toBeCloseTo(-19.05, 9);
  });

  it('a partner that is not there, and an axis that passes by, are stops', () => {
    expect(codes(planMember(across, 'start', contextFor()).findings)).toContain('saddle-partner-missing');
    const aside = {
      ...across,
      centreline: {
        ...across.centreline,
        pieces: across.centreline.pieces.map((piece) => ({ ...piece, start: { x: 0, y: 0, z: 5 } })),
      },
    };
    const { plan, findings } = planMember(aside, 'start', contextFor({}, [legUp]));
    expect(codes(findings)).toContain('saddle-end-off-partner');
    expect(plan.templates).toHaveLength(0);
  });
});
