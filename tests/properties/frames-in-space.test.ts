import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ChainPiece, Frame, Member, RunPoint } from '../../server/job/frame.ts';
import type { Job } from '../../server/job/job.ts';
import type { MemberPlan } from '../../server/plan/frame.ts';
import { newFrame, SHAPES } from '../../server/job/default-frame.ts';
import { rotate, unit, type Vector3 } from '../../server/solver/geometry/vector.ts';
import { between, firstDifference, jobWith, plannedFrame } from './plans-compared.ts';

const RUNS = { numRuns: 40, seed: 2 };
const DEGREE = Math.PI / 180;

type Turn = { length: number; angle: number; roll: number; radius: number | null };

/** Long straights and bends of any plane, so that every one of them can be bent. */
const turn = fc.record({
  length: between(500, 1200),
  angle: between(5, 130),
  roll: between(-180, 180),
  radius: fc.option(between(70, 150), { nil: null }),
});
const turns = fc.array(turn, { minLength: 1, maxLength: 5 });

/** The corners of a run that is laid turn by turn, with the directions of its straights and the axes of its bends. */
function walked(of: readonly Turn[]): { points: RunPoint[]; normal: Vector3 } {
  let point: Vector3 = { x: 0, y: 0, z: 0 };
  let direction: Vector3 = { x: 1, y: 0, z: 0 };
  let axis: Vector3 = { x: 0, y: 0, z: 1 };
  let normal = axis;
  const points: RunPoint[] = [{ ...point, radius: null }];
  const on = (long: number) => {
    const { x, y, z } = point;
    point = { x: x + long * direction.x, y: y + long * direction.y, z: z + long * direction.z };
  };
  for (const [index, { length, angle, roll, radius }] of of.entries()) {
    on(length);
    points.push({ ...point, radius });
    axis = rotate(axis, direction, roll * DEGREE);
    if (index === 0) normal = axis;
    direction = rotate(direction, axis, angle * DEGREE);
  }
  on(700);
  points.push({ ...point, radius: null });
  return { points, normal };
}

const runOf = (points: readonly RunPoint[]): Frame => ({ shape: 'run', points: [...points] });
/** Nothing to hold: a grip that the first straight is too short for would be added at the datum end alone. */
const BENCH: { machine: Partial<Job['machine']> } = { machine: { gripLength: 0, leastStraight: 0, largestAngle: 360 } };
const planned = (frame: Frame): MemberPlan => plannedFrame(jobWith(frame, BENCH)).members[0]!;

/** What a bender sets: straight, turn of the tube, bend, radius; and the last straight [mm, degrees]. */
const table = (member: MemberPlan) => ({
  steps: member.bends.map(({ feed, rotation, angle, dieRadius, arcLength }) => ({
    feed: feed.value,
    rotation: rotation.value,
    angle: angle.value,
    dieRadius: dieRadius.value,
    arcLength: arcLength.value,
  })),
  lastStraight: member.lastStraight.value,
  cutLength: member.cutLength.value,
});

/** Rotations of a half turn may come out with either sign. */
const halfTurn = ({ steps }: ReturnType<typeof table>) => steps.some(({ rotation }) => Math.abs(rotation) > 179.999);

describe('a run', () => {
  it('bent from its other end has the same bends in reverse and the same turns one bend on', () => {
    fc.assert(
      fc.property(turns, (of) => {
        const { points } = walked(of);
        const there = table(planned(runOf(points)));
        const back = table(planned(runOf([...points].reverse())));
        fc.pre(!halfTurn(there));
        const { steps } = there;
        const order = [...steps].reverse();
        const wanted = {
          steps: order.map((step, index) => ({
            ...step,
            feed: index === 0 ? there.lastStraight : order[index - 1]!.feed,
            rotation: index === 0 ? 0 : order[index - 1]!.rotation,
          })),
          lastStraight: steps[0]!.feed,
          cutLength: there.cutLength,
        };
        expect(firstDifference(back, wanted, 1e-8)).toBeUndefined();
      }),
      RUNS,
    );
  });

  it('seen in a mirror has the same straights and bends and turns the other way', () => {
    fc.assert(
      fc.property(turns, (of) => {
        const { points } = walked(of);
        const here = table(planned(runOf(points)));
        fc.pre(!halfTurn(here));
        const mirrored = table(planned(runOf(points.map((point) => ({ ...point, z: -point.z })))));
        const wanted = { ...here, steps: here.steps.map((step) => ({ ...step, rotation: -step.rotation })) };
        expect(firstDifference(mirrored, wanted, 1e-8)).toBeUndefined();
      }),
      RUNS,
    );
  });

  it('is turned the other way by a machine that counts the other way', () => {
    fc.assert(
      fc.property(turns, (of) => {
        const frame = runOf(walked(of).points);
        const here = table(planned(frame));
        const turned = plannedFrame(jobWith(frame, { machine: { ...BENCH.machine, rotationSign: -1 } })).members[0]!;
        const wanted = { ...here, steps: here.steps.map((step) => ({ ...step, rotation: -step.rotation })) };
        expect(firstDifference(table(turned), wanted, 1e-12)).toBeUndefined();
      }),
      RUNS,
    );
  });

  it('moved and turned in space is bent just the same', () => {
    const axis = fc.tuple(between(-1, 1), between(-1, 1), between(0.1, 1)).map(([x, y, z]) => unit({ x, y, z })!);
    const shift = fc.record({ x: between(-9e3, 9e3), y: between(-9e3, 9e3), z: between(-9e3, 9e3) });
    fc.assert(
      fc.property(turns, axis, between(-3, 3), shift, (of, about, angle, by) => {
        const { points } = walked(of);
        const moved = points.map(({ radius, ...point }): RunPoint => {
          const turned = rotate(point, about, angle);
          return { x: turned.x + by.x, y: turned.y + by.y, z: turned.z + by.z, radius };
        });
        const here = table(planned(runOf(points)));
        fc.pre(!halfTurn(here));
        expect(firstDifference(table(planned(runOf(moved))), here, 1e-8)).toBeUndefined();
      }),
      RUNS,
    );
  });

  it('with tube, die and points k times as large has all lengths k times as long and the same angles', () => {
    const factor = fc.constantFrom(1e-2, 0.5, 2, 8);
    const pieces = fc.array(turn, { minLength: 1, maxLength: 3 });
    fc.assert(
      fc.property(pieces, factor, (of, k) => {
        const { points } = walked(of);
        const larger = points.map(({ x, y, z, radius }): RunPoint => {
          return { x: k * x, y: k * y, z: k * z, radius: radius === null ? null : k * radius };
        });
        const at = (scale: number, frame: Frame) =>
          plannedFrame(
            jobWith(frame, {
              tube: { outsideDiameter: 38.1 * scale, wall: 1.65 * scale },
              machine: { ...BENCH.machine, dieRadius: 114.3 * scale },
            }),
          ).members[0]!;
        const here = table(at(1, runOf(points)));
        fc.pre(!halfTurn(here));
        const wanted = {
          steps: here.steps.map((step) => ({
            ...step,
            feed: k * step.feed,
            dieRadius: k * step.dieRadius,
            arcLength: k * step.arcLength,
          })),
          lastStraight: k * here.lastStraight,
          cutLength: k * here.cutLength,
        };
        expect(firstDifference(table(at(k, runOf(larger))), wanted, 1e-8)).toBeUndefined();
      }),
      RUNS,
    );
  });
});

/** The same tube piece by piece: straights shortened by R tan(θ/2) at each corner, arcs turned by what was walked. */
function chainOf(of: readonly Turn[], cornerRadius: number): ChainPiece[] {
  const tangent = (one: Turn | undefined) =>
    one === undefined ? 0 : (one.radius ?? cornerRadius) * Math.tan((one.angle * DEGREE) / 2);
  const lengths = [...of.map(({ length }) => length), 700];
  const straight = (index: number): ChainPiece => {
    return { piece: 'straight', length: lengths[index]! - tangent(of[index - 1]) - tangent(of[index]) };
  };
  return [
    ...of.flatMap((one, index): ChainPiece[] => [
      straight(index),
      {
        piece: 'arc',
        angle: one.angle,
        radius: one.radius,
        rotation: index === 0 ? 0 : one.roll,
        made: 'die',
      },
    ]),
    straight(of.length),
  ];
}

const memberOf = (path: Member['path']): Frame => ({
  shape: 'members',
  members: [{ name: 'tube', path, start: { end: 'free' }, finish: { end: 'free' } }],
});

describe('a member', () => {
  it('laid piece by piece is the same as through its corners', () => {
    fc.assert(
      fc.property(turns, (of) => {
        const { points, normal } = walked(of);
        const byPoints = plannedFrame(jobWith(memberOf({ by: 'points', points, closed: false }), BENCH));
        fc.pre(!halfTurn(table(byPoints.members[0]!)));
        const die = byPoints.members[0]!.bends.find((_, index) => of[index]!.radius === null);
        const chain = memberOf({
          by: 'chain',
          start: { x: 0, y: 0, z: 0 },
          direction: { x: 1, y: 0, z: 0 },
          normal,
          pieces: chainOf(of, die?.radiusAfterRelease.value ?? 0),
        });
        expect(firstDifference(plannedFrame(jobWith(chain, BENCH)), byPoints, 1e-9)).toBeUndefined();
      }),
      RUNS,
    );
  });

  it('coiled by more than half a turn keeps the length of its arcs', () => {
    fc.assert(
      fc.property(between(181, 3600), between(400, 3000), between(0, 400), (angle, radius, straight) => {
        const pieces: ChainPiece[] = [
          { piece: 'straight', length: straight + 1 },
          { piece: 'arc', angle, radius, rotation: 0, made: 'rolled' },
        ];
        const at = { x: 0, y: 0, z: 0 };
        const path = { by: 'chain', start: at, direction: { ...at, x: 1 }, normal: { ...at, z: 1 }, pieces } as const;
        const member = planned(memberOf({ ...path, pieces }));
        const arc = radius * angle * DEGREE;
        expect(member.developedLength.value).toBeCloseTo(straight + 1 + arc, 6);
        expect(member.bends[0]!.angle.value).toBeCloseTo(angle, 9);
        expect(member.bends[0]!.arcLength.value).toBeCloseTo(arc, 6);
      }),
      RUNS,
    );
  });
});

/** A frame of each shape: what a new job starts with, and a crowned hoop with an inner crossbar. */
const everyFrame: Frame[] = [
  ...SHAPES.map(newFrame),
  {
    shape: 'hoop',
    width: { value: 900, reference: 'outside' },
    widthAtFeet: { value: 960, reference: 'outside' },
    leftLeg: { value: 700, reference: 'outside' },
    rightLeg: { value: 650, reference: 'inside' },
    crossbar: { form: 'crowned', radius: 2400 },
    innerCrossbars: [{ fromFoot: { value: 300, reference: 'centre' } }],
  },
];

describe('every frame', () => {
  it.each(everyFrame.map((frame) => [frame.shape, frame] as const))(
    '%s is as long as its straights and arcs, each measured from its ends',
    (_, frame) => {
      for (const member of plannedFrame(jobWith(frame)).members) {
        const lengths = member.pieces.map((piece) => {
          if (piece.kind === 'arc') return piece.radius * piece.angle * DEGREE;
          return Math.hypot(piece.to.x - piece.from.x, piece.to.y - piece.from.y, piece.to.z - piece.from.z);
        });
        expect(member.developedLength.value).toBeCloseTo(
          lengths.reduce((sum, one) => sum + one, 0),
          9,
        );
        const feeds = member.bends.reduce((sum, bend) => sum + bend.feed.value + bend.arcLength.value, 0);
        const open = member.start.kind !== 'saddle' && member.finish.kind !== 'saddle';
        if (open) expect(feeds + member.lastStraight.value).toBeCloseTo(member.developedLength.value, 9);
        for (const [index, piece] of member.pieces.entries()) {
          const next = member.pieces[index + 1] ?? (member.closed ? member.pieces[0] : undefined);
          if (next !== undefined) expect(firstDifference(piece.to, next.from, 1e-9)).toBeUndefined();
        }
      }
    },
  );

  it('a closed ring in a plane turns by 360° in all', () => {
    const corners = fc.integer({ min: 3, max: 9 });
    fc.assert(
      fc.property(between(1500, 4000), corners, between(0, 0.2), (size, count, wobble) => {
        const points = Array.from({ length: count }, (_, index): RunPoint => {
          const at = (2 * Math.PI * index) / count;
          const far = size * (1 + wobble * Math.sin(3 * index));
          return { x: far * Math.cos(at), y: far * Math.sin(at), z: 0, radius: null };
        });
        const { bends, pieces, closed } = planned(memberOf({ by: 'points', points, closed: true }));
        const turned = pieces.reduce(
          (sum, one) => sum + (one.kind === 'arc' ? one.angle * Math.sign(one.normal.z) : 0),
          0,
        );
        expect(closed).toBe(true);
        expect(turned).toBeCloseTo(360, 9);
        // bends that turn the other way are half a turn of the tube apart
        const flips = bends.map(({ rotation }) => Math.round(Math.abs(rotation.value)) === 180);
        const signs = flips.reduce<number[]>((all, flip) => [...all, (all.at(-1) ?? 1) * (flip ? -1 : 1)], []);
        const exterior = bends.reduce((sum, { angle }, index) => sum + angle.value * signs[index]!, 0);
        expect(Math.abs(exterior)).toBeCloseTo(360, 9);
      }),
      RUNS,
    );
  });
});
