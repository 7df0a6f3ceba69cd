import type { Offset } from '../../job/frame.ts';
import type { Dimension } from '../../job/quantities.ts';
import type { Finding } from '../../plan/finding.ts';
import { finding } from '../finding.ts';
import { DEGREES, RADIANS } from '../geometry/angle.ts';
import { LEAST_BEND, tangentLength } from '../geometry/bend-table.ts';
import { pathThrough } from '../geometry/path-through.ts';
import type { Vector3 } from '../geometry/vector.ts';
import { acrossTubes, asTyped, betweenPoints, centred, check, toCorner } from './check.ts';
import { dieCorners, freeEnds } from './die-corners.ts';
import type { FrameGeometry, MemberGeometry, Spot } from './frame-geometry.ts';
import type { DrawnFrame, ShapeContext } from './shape-context.ts';
import { atLeast, wayOut } from './way-out.ts';

/** Rounding that does not count as too short [mm]. */
const ROUNDING = 1e-6;

/** An offset, centre to centre [mm, rad]: H across, θ, and from each end to the corner beside it. */
export type OffsetSizes = {
  readonly across: number;
  readonly angle: number;
  readonly first: number;
  readonly last: number;
};

/** Corner to corner along the ends [mm]: H / tan θ. Derived. */
export const run = ({ across, angle }: Pick<OffsetSizes, 'across' | 'angle'>): number => across / Math.tan(angle);

/** Two equal and opposite bends in x-y: from the origin along +x, up by the offset, and on along +x. */
export function expandOffset(offset: Offset, context: ShapeContext): DrawnFrame {
  const angle = offset.angle * RADIANS;
  const corner = toCorner({ angle, outsideDiameter: context.outsideDiameter });
  const sizes: OffsetSizes = {
    across: centred(offset.across, acrossTubes(context.outsideDiameter)),
    angle,
    first: centred(offset.first, corner),
    last: centred(offset.last, corner),
  };
  const findings = sizeFindings(offset, sizes, context);
  if (findings.length > 0) return { geometry: null, findings };
  const first: Vector3 = { x: sizes.first, y: 0, z: 0 };
  const second: Vector3 = { x: sizes.first + run(sizes), y: sizes.across, z: 0 };
  const die = { radius: context.cornerRadius, made: 'die' as const };
  const path = pathThrough(
    [
      { ...die, point: { x: 0, y: 0, z: 0 } },
      { ...die, point: first },
      { ...die, point: second },
      { ...die, point: { ...second, x: second.x + sizes.last } },
    ],
    false,
  );
  const { centreline } = path;
  if (centreline === null) return { geometry: null, findings: [finding('path-not-possible', 'stop', context.root)] };
  const free = { kind: 'free' as const };
  const member: MemberGeometry = {
    name: 'offset',
    centreline,
    closed: false,
    closing: null,
    start: free,
    finish: free,
  };
  return { geometry: drawn(offset, member, { first, second }, context), findings: [] };
}

function drawn(
  offset: Offset,
  member: MemberGeometry,
  apex: { first: Vector3; second: Vector3 },
  context: ShapeContext,
): FrameGeometry {
  const { outsideDiameter, root } = context;
  const angle = offset.angle * RADIANS;
  const whole = member.centreline.length;
  const at = (station: number, point: Vector3): Spot => ({ member: member.name, station, point });
  const feet = freeEnds(member);
  const corners = dieCorners(member);
  const [firstFoot = at(0, apex.first), lastFoot = at(whole, apex.second)] = feet;
  const [firstCorner = firstFoot, secondCorner = lastFoot] = corners;
  const sized = (key: string, of: Dimension, name: 'across' | 'first' | 'last', from: Spot, to: Spot) =>
    check(key, {
      extra: name === 'across' ? acrossTubes(outsideDiameter) : toCorner({ angle, outsideDiameter }),
      reference: of.reference,
      field: `${root}/${name}/value`,
      from,
      to,
    });
  return {
    members: [member],
    checks: [
      // square across the two ends, under the second corner
      sized('offset', offset.across, 'across', at(0, { ...apex.second, y: 0 }), at(whole, apex.second)),
      sized('first-length', offset.first, 'first', firstFoot, firstCorner),
      sized('last-length', offset.last, 'last', lastFoot, secondCorner),
      check('end-to-end', { extra: betweenPoints, reference: 'centre', from: firstFoot, to: lastFoot }),
    ],
    feet,
    corners,
    planeNormal: { x: 0, y: 0, z: 1 },
  };
}

function sizeFindings(offset: Offset, sizes: OffsetSizes, context: ShapeContext): Finding[] {
  const { outsideDiameter, cornerRadius: radius, root } = context;
  const { angle } = sizes;
  const tangent = tangentLength({ radius, angle });
  const findings: Finding[] = [];
  const short = (
    code: 'straight-negative' | 'leg-short-for-bend',
    name: 'across' | 'first' | 'last',
    centreLow: number,
  ): void => {
    if (sizes[name] >= centreLow - ROUNDING) return;
    const extra = name === 'across' ? acrossTubes(outsideDiameter) : toCorner({ angle, outsideDiameter });
    const typed = offset[name];
    const low = asTyped(centreLow, typed, extra);
    const field = `${root}/${name}/value`;
    findings.push(finding(code, 'stop', field, { value: typed.value, low }, wayOut(field, atLeast(low))));
  };
  if (angle < LEAST_BEND) {
    const low = LEAST_BEND * DEGREES;
    findings.push(finding('bend-angle-zero', 'stop', `${root}/angle`, { value: offset.angle, low }));
  }
  // room for both bends along the travel: H / sin θ ≥ 2 T
  short('straight-negative', 'across', 2 * tangent * Math.sin(angle));
  short('leg-short-for-bend', 'first', tangent);
  short('leg-short-for-bend', 'last', tangent);
  return findings;
}
