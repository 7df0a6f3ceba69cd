import { extraFor, type Check, type FrameGeometry } from '../frame/frame-geometry.ts';
import { placeOn, type Centreline } from '../geometry/centreline.ts';
import { add, dot, length, scale, subtract, unit, type Vector3 } from '../geometry/vector.ts';
import { footOnSide, hoopCorner, hoopPoints, legOnSide, levelOn, type HoopPoints } from './hoop-points.ts';
import { REFERENCES, type Lines, type Side } from './lines.ts';
import { cornerOnSide, placeOfSpot, pointOf, type Place } from './tube-places.ts';

/** A size of the frame that can be taken again on any frame with the same pieces. */
export type Size = {
  readonly check: Check;
  /** Members that it depends on, by number. */
  readonly members: readonly number[];
  /** Its two ends on the centrelines; undefined where the tube has no such place any more. */
  readonly ends: (lines: Lines) => Ends | undefined;
  /** What a tape finds over the outside, on the centrelines or inside [mm]. */
  readonly value: (lines: Lines, side: Side) => number | undefined;
};

export type Ends = { readonly from: Vector3; readonly to: Vector3 };

const distance = (ends: Ends | undefined): number | undefined =>
  ends === undefined ? undefined : length(subtract(ends.to, ends.from));

/** Every size that the wanted frame has, as its definition says. */
export function sizesOf(wanted: FrameGeometry, outsideDiameter: number): Size[] {
  const radius = outsideDiameter / 2;
  const pointsOf = rememberedPoints();
  return wanted.checks.flatMap((check): Size[] => {
    const size =
      hoopSize(check, wanted, radius, pointsOf) ?? offsetAcross(check, wanted) ?? betweenPlaces(check, wanted, radius);
    return size === undefined ? [] : [size];
  });
}

/** What a reference adds to a size, as the wanted frame has it [mm]. */
const extraOn = (check: Check, side: Side): number => extraFor(check, REFERENCES[side]);

type PointsOf = (line: Centreline | undefined) => HoopPoints | undefined;

/** All sizes of one hoop are taken one after the other: its points are found once for them. */
function rememberedPoints(): PointsOf {
  let last: { line: Centreline; points: HoopPoints | undefined } | undefined;
  return (line) => {
    if (line === undefined) return undefined;
    if (last?.line !== line) last = { line, points: hoopPoints(line) };
    return last.points;
  };
}

type HoopReader = (points: HoopPoints, lines: Lines) => Ends | undefined;

/** The sizes that a hoop has by name. */
function hoopSize(check: Check, wanted: FrameGeometry, radius: number, pointsOf: PointsOf): Size | undefined {
  const hoop = wanted.members.findIndex(({ name }) => name === 'hoop');
  if (pointsOf(wanted.members[hoop]?.centreline) === undefined) return undefined;
  const bar =
    check.key === 'crossbar-from-foot' ? wanted.members.findIndex(({ name }) => name === check.to.member) : hoop;
  const reader = hoopReader(check, bar);
  if (reader === undefined) return undefined;
  const ends = (lines: Lines) => {
    const points = pointsOf(lines[hoop]);
    return points === undefined ? undefined : reader(points, lines);
  };
  return {
    check,
    members: bar === hoop ? [hoop] : [hoop, bar],
    ends,
    value: (lines, side) => {
      const centre = distance(ends(lines));
      if (centre === undefined || side === 0) return centre;
      const points = pointsOf(lines[hoop]);
      return points === undefined ? undefined : hoopOnSide(check, points, { centre, radius, side });
    },
  };
}

function hoopReader(check: Check, bar: number): HoopReader | undefined {
  const legOf = (points: HoopPoints, which: 'left' | 'right', radius = 0): Ends | undefined => {
    const to = hoopCorner(points, which, radius, 0);
    return to === undefined ? undefined : { from: points.foot[which], to };
  };
  const across = ({ left, right }: { left: Vector3; right: Vector3 }): Ends => ({ from: left, to: right });
  switch (check.key) {
    case 'width-at-corners':
      return ({ tangent }) => across(tangent);
    case 'width-at-feet':
      return (points) => across(levelOn(points, 0));
    case 'width-at-middle':
      return (points) => across(levelOn(points, 1 / 2));
    case 'left-leg':
      return (points) => legOf(points, 'left');
    case 'right-leg':
      return (points) => legOf(points, 'right');
    case 'diagonal':
      return (points) => {
        const [foot, far] = check.index === 1 ? (['left', 'right'] as const) : (['right', 'left'] as const);
        const to = hoopCorner(points, far, 0, 0);
        return to === undefined ? undefined : { from: points.foot[foot], to };
      };
    case 'reach':
      // square to a line across both legs where they are level
      return (points) => {
        const level = levelOn(points, 0);
        const along = unit(subtract(level.right, level.left));
        const from = points.foot.left;
        const whole = subtract(points.middle, from);
        return along === undefined ? undefined : { from, to: subtract(points.middle, scale(along, dot(whole, along))) };
      };
    case 'crown-rise':
      return ({ crossbar, middle }) => {
        const chord = add(crossbar.start, placeOn(crossbar, crossbar.length).point);
        return { from: scale(chord, 1 / 2), to: middle };
      };
    case 'crossbar-from-foot':
      return (points, lines) => {
        const to = lines[bar]?.pieces[0]?.start;
        return to === undefined ? undefined : { from: points.foot.left, to };
      };
    default:
      return undefined;
  }
}

/** A size of a hoop over the outside or inside: a leg to the corner of the outer lines, a crown along the outer one. */
function hoopOnSide(
  check: Check,
  points: HoopPoints,
  { centre, radius, side }: { centre: number; radius: number; side: Side },
): number | undefined {
  switch (check.key) {
    case 'left-leg':
    case 'right-leg':
      return legOnSide(points, check.key === 'left-leg' ? 'left' : 'right', radius, side);
    case 'diagonal': {
      const [foot, far] = check.index === 1 ? (['left', 'right'] as const) : (['right', 'left'] as const);
      const to = hoopCorner(points, far, radius, side);
      return to === undefined ? undefined : length(subtract(to, footOnSide(points, foot, radius, side)));
    }
    case 'crown-rise': {
      const { crossbar } = points;
      const half = crossbar.kind === 'arc' ? crossbar.angle / 2 : 0;
      return centre + side * radius * (1 - Math.cos(half));
    }
    default:
      return centre + extraOn(check, side);
  }
}

/** Across the ends of an offset: from the second corner square to the line of the first end. */
function offsetAcross(check: Check, wanted: FrameGeometry): Size | undefined {
  if (check.key !== 'offset') return undefined;
  const [corner] = wanted.corners.slice(1).flatMap((spot) => placeOfSpot(wanted, spot) ?? []);
  if (corner === undefined) return undefined;
  const ends = (lines: Lines): Ends | undefined => {
    const first = lines[corner.member]?.pieces[0];
    const to = pointOf(corner, lines);
    if (first === undefined || to === undefined) return undefined;
    const whole = subtract(to, first.start);
    return { from: add(first.start, scale(first.direction, dot(whole, first.direction))), to };
  };
  const value = (lines: Lines, side: Side): number | undefined => {
    const centre = distance(ends(lines));
    return centre === undefined ? undefined : centre + extraOn(check, side);
  };
  return { check, members: [corner.member], ends, value };
}

/** A size between two places of the tubes. */
function betweenPlaces(check: Check, wanted: FrameGeometry, radius: number): Size | undefined {
  const from = placeOfSpot(wanted, check.from);
  const to = placeOfSpot(wanted, check.to);
  if (from === undefined || to === undefined) return undefined;
  const ends = (lines: Lines): Ends | undefined => {
    const [a, b] = [pointOf(from, lines), pointOf(to, lines)];
    return a === undefined || b === undefined ? undefined : { from: a, to: b };
  };
  const value = (lines: Lines, side: Side): number | undefined => {
    const centre = distance(ends(lines));
    if (centre === undefined || side === 0) return centre;
    if (from.by === 'corner' && to.by === 'corner') {
      const [a, b] = [cornerOnSide(from, lines, radius, side), cornerOnSide(to, lines, radius, side)];
      return a === undefined || b === undefined ? undefined : length(subtract(b, a));
    }
    return centre + (to.by === 'corner' ? side * cornerExtra(to, lines, radius) : extraOn(check, side));
  };
  return { check, members: [...new Set([from.member, to.member])], ends, value };
}

/** What a length from a cut end grows by at the corner of a bend: r tan(θ/2) [mm]. Derived. */
function cornerExtra(corner: Place, lines: Lines, radius: number): number {
  const arc = lines[corner.member]?.pieces[corner.piece];
  return arc?.kind === 'arc' ? radius * Math.tan(arc.angle / 2) : 0;
}
