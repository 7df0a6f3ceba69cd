import type { CameBack, Reading } from '../../server/job/came-back.ts';
import type { Frame } from '../../server/job/frame.ts';
import type { TubePlace } from '../../server/job/tube-place.ts';
import { drawFrame } from '../../server/solver/frame/expand-frame.ts';
import type { FrameGeometry } from '../../server/solver/frame/frame-geometry.ts';
import { relay } from '../../server/solver/geometry/slice.ts';
import { fitReadings, type ReadingsAnswer } from '../../server/solver/returned/fit-readings.ts';
import { frameModel } from '../../server/solver/returned/frame-model.ts';
import { frameMaker } from '../../server/solver/returned/frame-of-lines.ts';
import { layFrame } from '../../server/solver/returned/lay-frame.ts';
import { sizesOf } from '../../server/solver/returned/sizes.ts';

export const D = 38.1;
export const R = 76.2;

const outside = (value: number) => ({ value, reference: 'outside' as const });
const centre = (value: number) => ({ value, reference: 'centre' as const });

export const drawn = (frame: Frame): FrameGeometry => {
  const { geometry } = drawFrame(frame, { outsideDiameter: D, cornerRadius: R, root: '/frame' });
  if (geometry === null) throw new Error('the frame of a test is not drawn');
  return geometry;
};

export const hoop = (change: Partial<Extract<Frame, { shape: 'hoop' }>> = {}): Frame => ({
  shape: 'hoop',
  width: outside(950),
  widthAtFeet: null,
  leftLeg: outside(600),
  rightLeg: outside(640),
  crossbar: { form: 'crowned', radius: 2400 },
  innerCrossbars: [{ fromFoot: centre(250) }],
  ...change,
});
export const ring: Frame = { shape: 'ring', width: outside(900), height: outside(700) };
export const offset: Frame = {
  shape: 'offset',
  across: outside(300),
  angle: 40,
  first: centre(400),
  last: centre(500),
};

const at = (x: number, y: number, z: number) => ({ x, y, z, radius: null });
export const run: Frame = {
  shape: 'run',
  points: [at(0, 0, 0), at(500, 0, 0), at(500, 450, 0), at(900, 450, 300), at(900, 900, 300)],
};

const points = (...all: [number, number, number][]) => ({
  by: 'points' as const,
  points: all.map(([x, y, z]) => at(x, y, z)),
  closed: false,
});
const free = { end: 'free' as const };
const onto = (name: string) => ({ end: 'saddle' as const, onto: name });

/** Two bent legs in space, a straight rail and a bent one between them, and a branch on the rail. */
export const members: Frame = {
  shape: 'members',
  members: [
    { name: 'left', path: points([0, 0, 0], [0, 800, 0], [0, 1000, 300]), start: free, finish: free },
    { name: 'right', path: points([700, 0, 0], [700, 800, 0], [700, 1000, 300]), start: free, finish: free },
    { name: 'rail', path: points([0, 300, 0], [700, 300, 0]), start: onto('left'), finish: onto('right') },
    {
      name: 'bow',
      path: points([0, 600, 0], [150, 600, 200], [550, 600, 200], [700, 600, 0]),
      start: onto('left'),
      finish: onto('right'),
    },
    { name: 'branch', path: points([350, 300, 0], [350, 300, 250]), start: onto('rail'), finish: free },
  ],
};

export const came = (readings: Reading[], change: Partial<CameBack> = {}): CameBack => ({
  tapeAccuracy: 1,
  angleAccuracy: 0.2,
  readings,
  ...change,
});

export const fitted = (wanted: FrameGeometry, cameBack: CameBack): ReadingsAnswer =>
  fitReadings({ wanted, cameBack, outsideDiameter: D, angleScatter: 0.5, planeScatter: 0.7 });

export const place = (member: string, spot: TubePlace['spot'], number = 1, distance = 0): TubePlace => ({
  member,
  spot,
  number,
  distance,
});

export const sized = (check: string, index: number, value: number | null = 1): Reading => ({
  reading: 'size',
  check,
  index,
  reference: 'outside',
  value,
  accuracy: null,
});

/** Every size of a frame, with no value yet. */
export const everySize = ({ checks }: FrameGeometry): Reading[] =>
  checks.map(({ key, index, reference }) => ({ ...sized(key, index), reference }) as Reading);

/** Every piece of every member that can be measured by itself. */
export const everyPiece = (frame: FrameGeometry): Reading[] =>
  frame.members.flatMap(({ name, centreline }) => {
    let arcs = 0;
    return centreline.pieces.flatMap((piece, index): Reading[] => {
      const of = { member: name, piece: index + 1, value: 1, accuracy: null };
      if (piece.kind === 'straight') return [{ reading: 'piece', what: 'length', ...of }];
      arcs += 1;
      const angle: Reading = { reading: 'turn', what: 'angle', ...of };
      const rotation: Reading = { reading: 'turn', what: 'rotation', ...of };
      const radius: Reading = { reading: 'piece', what: 'radius', ...of };
      const turns = arcs > 1 && frame.planeNormal === null ? [angle, rotation] : [angle];
      return piece.made === 'rolled' ? [...turns, radius] : turns;
    });
  });

/** The readings with the values that they have on a frame. A scatter of each in its accuracies, where there is one. */
export function readOn(
  wanted: FrameGeometry,
  actual: FrameGeometry,
  readings: Reading[],
  scatter: (index: number) => number = () => 0,
): Reading[] {
  const { solved } = fitted(wanted, came(readings));
  const values = solved.predictAll(actual);
  const byField = new Map(solved.readings.map((one, index) => [one.field, { one, value: values[index], index }]));
  return readings.map((reading, index) => {
    const field = `/cameBack/readings/${String(index)}`;
    if (reading.reading === 'point') throw new Error('points are read by the tests themselves');
    const found = byField.get(field);
    if (found?.value === undefined) throw new Error(`no value for ${field}`);
    return { ...reading, value: found.value + scatter(found.index) * found.one.accuracy };
  });
}

/** The frame with its deviations, each given in its own size; rolled tubes keep their radius. */
export function deformed(wanted: FrameGeometry, share: (index: number, what: string) => number): FrameGeometry {
  const model = frameModel(wanted, {
    flat: wanted.planeNormal !== null,
    scatter: { angle: 0.01, plane: 0.01, length: 1 },
    freeRadii: new Map(),
  });
  if (model === undefined) throw new Error('no model');
  const values = model.parameters.map(({ size, what }, index) => size * share(index, what));
  const lines = layFrame(model, values).map(({ line }) => line);
  return frameMaker(wanted, sizesOf(wanted, D))(lines, model.flat);
}

/** A frame of one tube bent otherwise, piece by piece, by another way than the solver's own model. */
export function rebent(
  wanted: FrameGeometry,
  change: (index: number) => { length: number; angle: number },
): FrameGeometry {
  const members = wanted.members.map((member, which) =>
    which > 0
      ? member
      : {
          ...member,
          centreline: relay(member.centreline, (piece, index) => {
            const by = change(index);
            return piece.kind === 'straight'
              ? { length: piece.length + by.length, angle: 0 }
              : { length: piece.length, angle: piece.angle + by.angle };
          }),
        },
  );
  return { ...wanted, members };
}

/** What of two frames with the same pieces differs most: lengths, angles and radii of all pieces [mm, rad]. */
export function piecesApart(a: FrameGeometry, b: FrameGeometry): number {
  let most = 0;
  a.members.forEach(({ centreline }, member) => {
    centreline.pieces.forEach((piece, index) => {
      const other = b.members[member]!.centreline.pieces[index]!;
      most = Math.max(most, Math.abs(piece.length - other.length));
      if (piece.kind === 'arc' && other.kind === 'arc')
        most = Math.max(most, 1000 * Math.abs(piece.angle - other.angle), Math.abs(piece.radius - other.radius));
    });
  });
  return most;
}

/** The largest distance between any two points, from each of two frames: the shape in space, wherever it stands. */
export function shapesApart(a: FrameGeometry, b: FrameGeometry): number {
  const starts = (frame: FrameGeometry) =>
    frame.members.flatMap(({ centreline }) => centreline.pieces.map(({ start }) => start));
  const [first, second] = [starts(a), starts(b)];
  let most = 0;
  first.forEach((p, i) =>
    first.forEach((q, j) => {
      const [r, s] = [second[i]!, second[j]!];
      const apart = Math.hypot(p.x - q.x, p.y - q.y, p.z - q.z) - Math.hypot(r.x - s.x, r.y - s.y, r.z - s.z);
      most = Math.max(most, Math.abs(apart));
    }),
  );
  return most;
}
