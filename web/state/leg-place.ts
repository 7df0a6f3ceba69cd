import type { TubePlace } from '../../server/job/tube-place.ts';
import type { MemberPlan } from '../../server/plan/frame.ts';
import type { Point } from '../../server/plan/figure.ts';

type Place = Pick<TubePlace, 'spot' | 'number' | 'distance'>;

const between = (from: Point, to: Point, share: number): Point => ({
  x: from.x + (to.x - from.x) * share,
  y: from.y + (to.y - from.y) * share,
  z: from.z + (to.z - from.z) * share,
});

/**
 * Roughly where a place of a tube is, in the frame's axes [mm]: enough to put a fresh leg below it. A corner is taken for
 * the start of its bend, a place within an arc for one on its chord. Undefined where the tube has no such place.
 */
export function roughPlace({ spot, number, distance }: Place, { pieces }: MemberPlan): Point | undefined {
  if (spot === 'start') return pieces[0]?.from;
  if (spot === 'finish') return pieces.at(-1)?.to;
  if (spot === 'middle') {
    const piece = pieces[number - 1];
    return piece && between(piece.from, piece.to, 0.5);
  }
  if (spot === 'along') return placeAlong(distance, pieces);
  const bend = pieces.filter((piece) => piece.kind === 'arc' && piece.made === 'die')[number - 1];
  return spot === 'bend-end' ? bend?.to : bend?.from;
}

function placeAlong(distance: number, pieces: MemberPlan['pieces']): Point | undefined {
  let left = distance;
  for (const { from, to, length } of pieces) {
    if (left <= length) return length > 0 ? between(from, to, left / length) : from;
    left -= length;
  }
  return pieces.at(-1)?.to;
}

/** The same place counted from the other end of an open tube; null where it is its own twin, or the tube goes round. */
export function twinPlace(place: TubePlace, { closed, pieces, bends }: MemberPlan): TubePlace | null {
  if (closed) return null;
  const { spot, number, distance } = place;
  const from = (count: number): number => count + 1 - number;
  switch (spot) {
    case 'start':
      return { ...place, spot: 'finish' };
    case 'finish':
      return { ...place, spot: 'start' };
    case 'bend-start':
      return { ...place, spot: 'bend-end', number: from(bends.length) };
    case 'bend-end':
      return { ...place, spot: 'bend-start', number: from(bends.length) };
    case 'corner':
      return from(bends.length) === number ? null : { ...place, number: from(bends.length) };
    case 'middle':
      return from(pieces.length) === number ? null : { ...place, number: from(pieces.length) };
    case 'along': {
      const whole = pieces.reduce((sum, { length }) => sum + length, 0);
      return distance * 2 === whole ? null : { ...place, distance: whole - distance };
    }
  }
}
