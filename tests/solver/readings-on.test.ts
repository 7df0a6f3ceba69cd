import { describe, expect, it } from 'vitest';
import { DistanceReading, MOST_READINGS, PieceReading, SizeReading, TurnReading } from '../../server/job/came-back.ts';
import type { Frame } from '../../server/job/frame.ts';
import { readingsOn, TAKES } from '../../server/solver/correction/readings-on.ts';
import type { FrameGeometry } from '../../server/solver/frame/frame-geometry.ts';
import { arcPiece } from '../../server/solver/geometry/centreline.ts';
import { drawn, RUN } from './made-up-corrections.ts';

/** What the schema of a number, or of a number that may be open, lets through. */
const rangeOf = (schema: object): { least: number; most: number } => {
  const { anyOf: [number] = [schema] } = schema as { anyOf?: object[] };
  const { minimum, maximum } = number as { minimum: number; maximum: number };
  return { least: minimum, most: maximum };
};

it('what a reading may be is what the job takes', () => {
  expect(TAKES).toEqual({
    length: rangeOf(SizeReading.properties.value),
    piece: rangeOf(PieceReading.properties.value),
    turn: rangeOf(TurnReading.properties.value),
    readings: MOST_READINGS,
  });
  expect(rangeOf(DistanceReading.properties.value)).toEqual(TAKES.length);
});

describe('readings on a frame by pieces', () => {
  const run = drawn(RUN);
  const rolled = (radius: number): FrameGeometry => {
    const [member] = run.members;
    const pieces = member!.centreline.pieces.map((piece, index) =>
      index === 1 && piece.kind === 'arc'
        ? arcPiece({ ...piece, made: 'rolled', radius, angle: piece.length / radius })
        : piece,
    );
    return { ...run, members: [{ ...member!, centreline: { pieces, length: member!.centreline.length } }] };
  };
  const radii = (frame: FrameGeometry) =>
    readingsOn(frame, run)!.flatMap((one) => (one.reading === 'piece' && one.what === 'radius' ? [one.value] : []));

  it('a rolled radius of hundreds of metres is one', () => {
    expect(radii(rolled(400_000))).toEqual([400_000]);
  });

  it('a number that no job takes is left out, and the others stay', () => {
    expect(radii(rolled(2_000_000))).toEqual([]);
    const [all, left] = [readingsOn(rolled(400_000), run), readingsOn(rolled(2_000_000), run)];
    expect(left).toHaveLength(all!.length - 1);
  });

  it('no more than a job has room for', () => {
    const zigzag: Frame = {
      shape: 'run',
      points: Array.from({ length: 100 }, (_, index) => ({
        x: 700 * index,
        y: index % 2 === 0 ? 0 : 500,
        z: 0,
        radius: null,
      })),
    };
    const long = drawn(zigzag);
    const many = { ...long, members: [0, 1, 2].map((one) => ({ ...long.members[0]!, name: String(one) })) };
    expect(readingsOn(many, long)).toHaveLength(MOST_READINGS);
  });
});
