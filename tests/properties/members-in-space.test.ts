import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { newFrame, SHAPES } from '../../server/job/default-frame.ts';
import type { ChainPiece, Frame, RunPoint } from '../../server/job/frame.ts';
import { frameGeometry } from '../../server/solver/frame/expand-frame.ts';
import { dot, length } from '../../server/solver/geometry/vector.ts';
import { between, firstDifference, jobWith, plannedFrame } from './plans-compared.ts';
import { BENCH, halfTurn, memberOf, planned, table, turns, walked, type Turn } from './walked-runs.ts';

const RUNS = { numRuns: 40, seed: 2 };
const DEGREE = Math.PI / 180;

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

  it('of a hundred arcs is as true at its far end as at its datum', () => {
    fc.assert(
      fc.property(between(20, 350), between(60, 3000), between(-180, 180), (angle, radius, rotation) => {
        const at = { x: 0, y: 0, z: 0 };
        const arc = { piece: 'arc', radius, made: 'die' } as const;
        const pieces: ChainPiece[] = Array.from({ length: 120 }, (_, index) => {
          return { ...arc, angle, rotation: rotation * (index % 3) };
        });
        const path = { by: 'chain', start: at, direction: { ...at, x: 1 }, normal: { ...at, z: 1 }, pieces } as const;
        const { geometry } = frameGeometry(memberOf({ ...path, pieces }), {
          outsideDiameter: 20,
          cornerRadius: 60,
          root: '/frame',
        });
        for (const piece of geometry!.members[0]!.centreline.pieces) {
          if (piece.kind !== 'arc') throw new Error('an arc was typed');
          expect(length(piece.direction)).toBeCloseTo(1, 12);
          expect(length(piece.normal)).toBeCloseTo(1, 12);
          expect(dot(piece.direction, piece.normal)).toBeCloseTo(0, 12);
        }
      }),
      { ...RUNS, numRuns: 15 },
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
