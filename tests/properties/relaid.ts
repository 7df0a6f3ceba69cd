import { centrelineFromChain, placeAt, type Centreline, type Link } from '../../server/solver/geometry/centreline.ts';
import { add, cross, dot, length, scale, subtract, type Vector3 } from '../../server/solver/geometry/vector.ts';
import type { Step } from './bent-members.ts';

/** How far each bend is off, in the order of bending, and the sawn length [rad, mm]. */
export type Off = {
  readonly angle: readonly number[];
  readonly mark: readonly number[];
  readonly rotation: readonly number[];
  readonly radius: readonly number[];
  readonly sawn: number;
};

export const none = (bends: number): Off => {
  const nothing = Array.from({ length: bends }, () => 0);
  return { angle: nothing, mark: nothing, rotation: nothing, radius: nothing, sawn: 0 };
};

/** What a bender is given: the straight before each die bend, or a rolled arc in its place, and the last straight. */
export type Recipe = {
  readonly bends: readonly {
    readonly before: number;
    /** Rolled arc between the last bend and this one instead of a straight: its radius. */
    readonly rolled?: number;
    readonly rotation: number;
    readonly angle: number;
    readonly radius: number;
  }[];
  readonly last: number;
};

const DEGREE = Math.PI / 180;

/** A recipe of steps in degrees. */
export const recipe = (steps: readonly Step[], last: number, radius: number): Recipe => ({
  bends: steps.map(([before, rotation, angle]) => {
    return { before, rotation: rotation * DEGREE, angle: angle * DEGREE, radius };
  }),
  last,
});

/**
 * The tube that comes of a recipe where everything is a little off. Marks are laid out on the straight tube from its
 * datum end before anything is bent, each by itself; every arc begins at its mark, and takes as much tube as its radius
 * and the angle that it comes out with say; what is between the end of one and the mark of the next is straight (or is
 * rolled to its radius).
 */
export function relaid({ bends, last }: Recipe, off: Off): Centreline {
  let planned = 0;
  let end = 0;
  const links = bends.flatMap(({ before, rolled, rotation, angle, radius }, index): Link[] => {
    const mark = planned + before + off.mark[index]!;
    const between = mark - end;
    const bent = angle + off.angle[index]!;
    const round = radius + off.radius[index]!;
    planned += before + radius * angle;
    end = mark + round * bent;
    const turn = rotation + off.rotation[index]!;
    return [
      rolled === undefined
        ? { kind: 'straight', length: between }
        : { kind: 'arc', radius: rolled, angle: between / rolled, rotation: 0, made: 'rolled' },
      { kind: 'arc', radius: round, angle: bent, rotation: turn, made: 'die' },
    ];
  });
  const sawn = planned + last + off.sawn;
  return centrelineFromChain(
    { point: { x: 0, y: 0, z: 0 }, direction: { x: 1, y: 0, z: 0 }, normal: { x: 0, y: 0, z: 1 } },
    [...links, { kind: 'straight', length: sawn - end }],
  );
}

/** The end of the tube. */
export const endOf = (line: Centreline): Vector3 => placeAt(line, line.length)!.point;

/** Where the two straights beside a die bend would meet; before a rolled arc: where the leg's line meets its circle. */
export function cornerOf(line: Centreline, index: number): Vector3 {
  const arcs = line.pieces.flatMap((piece, place) => (piece.kind === 'arc' && piece.made === 'die' ? [place] : []));
  const place = arcs[index]!;
  const arc = line.pieces[place]!;
  const next = line.pieces[place + 1]!;
  const { start, direction } = arc;
  if (next.kind === 'straight') {
    // nearest points of two lines that meet
    const across = cross(direction, next.direction);
    const apart = subtract(next.start, start);
    return add(start, scale(direction, dot(cross(apart, next.direction), across) / dot(across, across)));
  }
  const centre = add(next.start, scale(cross(next.normal, next.direction), next.radius));
  const toCentre = subtract(centre, start);
  const along = dot(toCentre, direction);
  const beside = length(subtract(toCentre, scale(direction, along)));
  return add(start, scale(direction, along + Math.sqrt(next.radius ** 2 - beside ** 2)));
}
