import type { Ring } from '../../job/frame.ts';
import type { Finding } from '../../plan/finding.ts';
import { finding } from '../finding.ts';
import { closestStation } from '../geometry/closest-station.ts';
import { pathThrough, type PathPoint } from '../geometry/path-through.ts';
import type { Vector3 } from '../geometry/vector.ts';
import { acrossTubes, asTyped, centred, check } from './check.ts';
import { dieCorners } from './die-corners.ts';
import type { Check, FrameGeometry, MemberGeometry, Spot } from './frame-geometry.ts';
import { askedFrom } from './member-path.ts';
import type { DrawnFrame, ShapeContext } from './shape-context.ts';
import { above, atLeast, wayOut } from './way-out.ts';

/**
 * A closed ring in x-y about the origin, going clockwise seen from +z. Its datum is the middle of the straight that it is
 * closed in: the longest one (the left where all are equal) unless another is asked for.
 */
export function expandRing(ring: Ring, context: ShapeContext): DrawnFrame {
  const extra = acrossTubes(context.outsideDiameter);
  const width = centred(ring.width, extra);
  const height = centred(ring.height, extra);
  const findings = [...sizeFindings('width', ring, context), ...sizeFindings('height', ring, context)];
  if (findings.length > 0) return { geometry: null, findings };
  const corner = (x: -1 | 1, y: -1 | 1): PathPoint => ({
    point: { x: (x * width) / 2, y: (y * height) / 2, z: 0 },
    radius: context.cornerRadius,
    made: 'die',
  });
  const path = pathThrough(
    [corner(-1, -1), corner(-1, 1), corner(1, 1), corner(1, -1)],
    true,
    askedFrom(context, 'ring'),
  );
  if (path.centreline === null)
    return { geometry: null, findings: [finding('path-not-possible', 'stop', context.root)] };
  const member: MemberGeometry = {
    name: 'ring',
    centreline: path.centreline,
    closed: true,
    closing: path.closing,
    start: { kind: 'closed' },
    finish: { kind: 'closed' },
  };
  return { geometry: drawn(ring, member, { width, height }, context), findings: [] };
}

function drawn(
  ring: Ring,
  member: MemberGeometry,
  { width, height }: { width: number; height: number },
  context: ShapeContext,
): FrameGeometry {
  const extra = acrossTubes(context.outsideDiameter);
  const at = (x: number, y: number): Spot => {
    const point: Vector3 = { x, y, z: 0 };
    return { member: member.name, station: closestStation(member.centreline, point)?.station ?? 0, point };
  };
  const corners = dieCorners(member);
  // from outer corner to outer corner, or inner to inner, of a square of tubes
  const longer = (more: number) => Math.hypot(width + more, height + more) - Math.hypot(width, height);
  const across = {
    outsideExtra: longer(context.outsideDiameter),
    insideExtra: longer(-context.outsideDiameter),
    bothEnds: true,
  };
  const [first, second, third, fourth] = corners;
  const diagonal = (index: number, from: Spot | undefined, to: Spot | undefined): Check[] =>
    from === undefined || to === undefined
      ? []
      : [check('diagonal', { extra: across, reference: ring.width.reference, index, from, to })];
  const diagonals = [...diagonal(1, first, third), ...diagonal(2, second, fourth)];
  return {
    members: [member],
    checks: [
      check('width', {
        extra,
        reference: ring.width.reference,
        field: `${context.root}/width/value`,
        from: at(-width / 2, 0),
        to: at(width / 2, 0),
      }),
      check('height', {
        extra,
        reference: ring.height.reference,
        field: `${context.root}/height/value`,
        from: at(0, -height / 2),
        to: at(0, height / 2),
      }),
      ...diagonals,
    ],
    feet: [],
    corners,
    planeNormal: { x: 0, y: 0, z: 1 },
  };
}

function sizeFindings(side: 'width' | 'height', ring: Ring, context: ShapeContext): Finding[] {
  const extra = acrossTubes(context.outsideDiameter);
  const typed = ring[side];
  const field = `${context.root}/${side}/value`;
  const size = centred(typed, extra);
  const low = (centre: number) => asTyped(centre, typed, extra);
  const forBends = low(2 * context.cornerRadius);
  const stop = (code: 'width-under-tube' | 'width-short-for-bends', limit: number): Finding[] => [
    finding(
      code,
      'stop',
      field,
      { value: typed.value, low: limit },
      wayOut(field, Math.max(above(low(context.outsideDiameter)), atLeast(forBends))),
    ),
  ];
  if (size <= context.outsideDiameter) return stop('width-under-tube', low(context.outsideDiameter));
  return size < 2 * context.cornerRadius - ROUNDING ? stop('width-short-for-bends', forBends) : [];
}

/** Rounding that does not count as too small [mm]. */
const ROUNDING = 1e-6;
