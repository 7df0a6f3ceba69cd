import { placeAt, type Centreline, type Piece } from '../geometry/centreline.ts';
import { arcCentre, pieceEnd } from '../geometry/slice.ts';
import { add, dot, length, scale, subtract, type Vector3 } from '../geometry/vector.ts';

/** What a tape reads on a hoop, centre to centre [mm]. */
export type HoopReadings = Readonly<Record<'width-at-corners' | 'width-at-feet' | 'left-leg' | 'right-leg', number>>;

/**
 * Reads a hoop's centreline as the typed sizes are defined: widths where the corner bends begin and at the feet (the
 * longer leg read level with the shorter one's foot), legs from the foot to where the leg's line meets the
 * crossbar's.
 *
 * @returns undefined for a centreline that is not leg, bend, crossbar, bend, leg
 */
export function readHoop(line: Centreline): HoopReadings | undefined {
  const bends = line.pieces.flatMap((piece, index) => (piece.kind === 'arc' && piece.made === 'die' ? [index] : []));
  const [firstBend, secondBend] = bends;
  const { pieces } = line;
  const left = pieces[0];
  const right = pieces.at(-1);
  if (bends.length !== 2 || firstBend !== 1 || secondBend !== pieces.length - 2) return undefined;
  const crossbar = pieces[2];
  if (left?.kind !== 'straight' || right?.kind !== 'straight' || crossbar === undefined) return undefined;
  const leftTop = pieceEnd(left).point;
  const rightFoot = pieceEnd(right).point;
  const leftFoot = placeAt(line, 0)?.point ?? left.start;
  const leftLeg = legTo(crossbar, leftFoot, left.direction);
  const rightLeg = legTo(crossbar, rightFoot, scale(right.direction, -1));
  if (leftLeg === undefined || rightLeg === undefined) return undefined;
  const level = Math.min(leftLeg, rightLeg);
  const lowLeft = add(leftFoot, scale(left.direction, leftLeg - level));
  const lowRight = add(rightFoot, scale(right.direction, level - rightLeg));
  return {
    'width-at-corners': length(subtract(right.start, leftTop)),
    'width-at-feet': length(subtract(lowRight, lowLeft)),
    'left-leg': leftLeg,
    'right-leg': rightLeg,
  };
}

/** From a foot along a leg to where its line meets the crossbar's line or circle [mm]. */
function legTo(crossbar: Piece, foot: Vector3, direction: Vector3): number | undefined {
  if (crossbar.kind === 'straight') {
    const across = subtract(direction, scale(crossbar.direction, dot(direction, crossbar.direction)));
    const away = dot(subtract(crossbar.start, foot), across);
    const rate = dot(direction, across);
    return rate === 0 ? undefined : away / rate;
  }
  const toCentre = subtract(arcCentre(crossbar), foot);
  const along = dot(toCentre, direction);
  const inside = along ** 2 - dot(toCentre, toCentre) + crossbar.radius ** 2;
  return inside < 0 ? undefined : along + Math.sqrt(inside);
}
