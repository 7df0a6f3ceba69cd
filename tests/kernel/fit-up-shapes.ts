import type { Frame, MemberFrame } from '../../server/job/frame.ts';
import { drawFrame } from '../../server/solver/frame/expand-frame.ts';
import type { FrameGeometry } from '../../server/solver/frame/frame-geometry.ts';

/** 1-1/2 in × 0.065 in [mm]. */
export const TUBE = { outsideDiameter: 38.1, wall: 1.65 } as const;

function drawn(frame: Frame): FrameGeometry {
  const { geometry } = drawFrame(frame, {
    outsideDiameter: TUBE.outsideDiameter,
    cornerRadius: 115,
    root: '/frame',
    closingStraight: () => null,
  });
  if (geometry === null) throw new Error('this frame cannot be drawn');
  return geometry;
}

const outside = (value: number) => ({ value, reference: 'outside' as const });

export type HoopSizes = {
  width: number;
  feet?: number;
  legs: readonly [number, number];
  crown?: number;
  bars: number[];
};

export const hoop = ({ width, feet, legs, crown, bars }: HoopSizes): FrameGeometry =>
  drawn({
    shape: 'hoop',
    width: outside(width),
    widthAtFeet: feet === undefined ? null : outside(feet),
    leftLeg: outside(legs[0]),
    rightLeg: outside(legs[1]),
    crossbar: crown === undefined ? { form: 'straight' } : { form: 'crowned', radius: crown },
    innerCrossbars: bars.map((bar) => ({ fromFoot: outside(bar) })),
  });

export const ring = (width: number, height: number): FrameGeometry =>
  drawn({ shape: 'ring', width: outside(width), height: outside(height) });

export const offset = (across: number, first: number): FrameGeometry =>
  drawn({ shape: 'offset', across: outside(across), angle: 40, first: outside(first), last: outside(420) });

export type Triple = readonly [number, number, number];

const points = (...path: Triple[]) => path.map(([x, y, z]) => ({ x, y, z, radius: null }));

export const run = (...path: Triple[]): FrameGeometry => drawn({ shape: 'run', points: points(...path) });

type Member = MemberFrame['members'][number];

const member = (name: string, path: readonly Triple[], start = '', finish = '', closed = false): Member => {
  const end = (onto: string): Member['start'] => (onto === '' ? { end: 'free' } : { end: 'saddle', onto });
  return { name, path: { by: 'points', points: points(...path), closed }, start: end(start), finish: end(finish) };
};

const byMembers = (...members: Member[]): FrameGeometry => drawn({ shape: 'members', members });

/** Two stiles and three rungs; `turned` lifts the second stile's far end out of the plane [mm]. */
export function ladder(width: number, turned: number): FrameGeometry {
  const at = (height: number): Triple => [width, height, (turned * height) / 1200];
  return byMembers(
    member('left', [
      [0, 0, 0],
      [0, 1200, 0],
    ]),
    member('right', [at(0), at(1200)]),
    ...[250, 600, 950].map((height) => member(`rung ${String(height)}`, [[0, height, 0], at(height)], 'left', 'right')),
  );
}

/** Two bent legs in space, a rail and a bow between them, and a branch on the rail. */
export const stand = (width: number): FrameGeometry =>
  byMembers(
    member('left', [
      [0, 0, 0],
      [0, 800, 0],
      [0, 1100, 400],
    ]),
    member('right', [
      [width, 0, 0],
      [width, 800, 0],
      [width, 1100, 400],
    ]),
    member(
      'rail',
      [
        [0, 250, 0],
        [width, 250, 0],
      ],
      'left',
      'right',
    ),
    member(
      'bow',
      [
        [0, 560, 0],
        [150, 560, 220],
        [width - 150, 560, 220],
        [width, 560, 0],
      ],
      'left',
      'right',
    ),
    member(
      'branch',
      [
        [width / 2, 250, 0],
        [width / 2, 250, 250],
      ],
      'rail',
    ),
  );

/** A closed tube round four corners; `lifted` takes the third out of the plane of the others [mm]. */
export const round = (third: readonly [number, number], lifted: number): FrameGeometry =>
  byMembers(
    member(
      'round',
      [
        [0, 0, 0],
        [900, 0, 0],
        [third[0], third[1], lifted],
        [0, 700, 0],
      ],
      '',
      '',
      true,
    ),
  );
