import type { Hoop } from '../../job/frame.ts';
import { centrelineFromChain, placeAt, type Link } from '../geometry/centreline.ts';
import type { Vector3 } from '../geometry/vector.ts';
import { dieCorners } from './die-corners.ts';
import type { Check, FrameGeometry, MemberGeometry, Spot } from './frame-geometry.ts';
import { hoopDiagonals } from './hoop-diagonals.ts';
import { hoopSizes, type HoopFailure } from './hoop-sizes.ts';
import { innerCrossbars } from './inner-crossbars.ts';

/**
 * A hoop in its own axes: x to the right with its origin midway between the legs, legs along +y, corners (where a
 * leg's line meets the crossbar's) at y = 0. The member 'hoop' runs from the left foot to the right one; inner
 * crossbars sit on its legs as saddles.
 *
 * @param context outside diameter and corner radius after release [mm]; `root` is the frame's JSON pointer
 */
export function hoopFrame(
  hoop: Hoop,
  context: { outsideDiameter: number; cornerRadius: number; root: string },
): FrameGeometry | HoopFailure {
  const sizes = hoopSizes(hoop, context);
  if ('failure' in sizes) return sizes;
  const { half, width, left, right } = sizes;
  const up: Vector3 = { x: -Math.sin(half.lean), y: Math.cos(half.lean), z: 0 };
  const corner: Vector3 = { x: -width / 2 + half.setback * up.x, y: 0, z: 0 };
  const along = (distance: number): Vector3 => ({
    x: corner.x - (left - distance) * up.x,
    y: -(left - distance) * up.y,
    z: 0,
  });
  const bend: Link = { kind: 'arc', radius: context.cornerRadius, angle: half.bendAngle, rotation: 0, made: 'die' };
  const { crossbar } = hoop;
  const barLength = 2 * half.halfCrossbar;
  const bar: Link =
    crossbar.form === 'straight'
      ? { kind: 'straight', length: barLength }
      : { kind: 'arc', radius: crossbar.radius, angle: barLength / crossbar.radius, rotation: 0, made: 'rolled' };
  const legs = { left: left - half.setback, right: right - half.setback };
  const links: Link[] = [
    { kind: 'straight', length: legs.left },
    bend,
    ...(barLength > 0 ? [bar] : []),
    bend,
    { kind: 'straight', length: legs.right },
  ];
  const centreline = centrelineFromChain({ point: along(0), direction: up, normal: { x: 0, y: 0, z: -1 } }, links);
  const rightTangent = centreline.length - legs.right;
  const member: MemberGeometry = {
    name: 'hoop',
    centreline,
    closed: false,
    closing: null,
    start: { kind: 'free' },
    finish: { kind: 'free' },
  };
  const at = (station: number): Spot => ({
    member: 'hoop',
    station,
    point: placeAt(centreline, station)?.point ?? corner,
  });
  const mirror = (point: Vector3): Vector3 => ({ ...point, x: -point.x });
  const shorter = Math.min(left, right);
  const spots = {
    leftFoot: at(0),
    rightFoot: at(centreline.length),
    leftTangent: at(legs.left),
    rightTangent: at(rightTangent),
    middle: at((legs.left + rightTangent) / 2),
  };
  const inner = innerCrossbars(hoop, context, {
    along,
    straights: legs,
    left,
    right,
    whole: centreline.length,
    lean: half.lean,
  });
  if ('failure' in inner) return inner;
  const { root } = context;
  const { outsideDiameter } = context;
  const across = { outsideExtra: outsideDiameter, insideExtra: -outsideDiameter, bothEnds: true };
  const ofLeg = { outsideExtra: half.outerExtra, insideExtra: half.innerExtra, bothEnds: false };
  const upTo = { outsideExtra: outsideDiameter / 2, insideExtra: -outsideDiameter / 2, bothEnds: false };
  const diagonals = hoopDiagonals(
    {
      left: { foot: spots.leftFoot, corner: { ...spots.leftTangent, point: corner } },
      right: { foot: spots.rightFoot, corner: { ...spots.rightTangent, point: mirror(corner) } },
    },
    { lean: half.lean, outsideDiameter, outerExtra: half.outerExtra, innerExtra: half.innerExtra },
    hoop.width.reference,
  );
  const halfWayUp = shorter / 2;
  const widthHalfWayUp: Check[] =
    halfWayUp > shorter - half.setback
      ? []
      : [
          {
            ...across,
            key: 'width-at-middle',
            index: 0,
            field: '',
            reference: hoop.width.reference,
            from: at(left - halfWayUp),
            to: at(centreline.length - (right - halfWayUp)),
          },
        ];
  const checks: Check[] = [
    {
      ...across,
      key: 'width-at-corners',
      index: 0,
      field: `${root}/width/value`,
      reference: hoop.width.reference,
      from: spots.leftTangent,
      to: spots.rightTangent,
    },
    {
      ...across,
      key: 'width-at-feet',
      index: 0,
      field: hoop.widthAtFeet === null ? '' : `${root}/widthAtFeet/value`,
      reference: (hoop.widthAtFeet ?? hoop.width).reference,
      // level with the foot of the shorter leg
      from: at(left - shorter),
      to: at(centreline.length - (right - shorter)),
    },
    {
      ...ofLeg,
      key: 'left-leg',
      index: 0,
      field: `${root}/leftLeg/value`,
      reference: hoop.leftLeg.reference,
      from: spots.leftFoot,
      to: { ...spots.leftTangent, point: corner },
    },
    {
      ...ofLeg,
      key: 'right-leg',
      index: 0,
      field: `${root}/rightLeg/value`,
      reference: hoop.rightLeg.reference,
      from: spots.rightFoot,
      to: { ...spots.rightTangent, point: mirror(corner) },
    },
    {
      ...upTo,
      key: 'reach',
      index: 0,
      field: '',
      reference: 'outside',
      from: spots.leftFoot,
      to: { ...spots.middle, point: { ...spots.leftFoot.point, y: spots.middle.point.y } },
    },
    ...crownRise(crossbar, half.halfCrossbar, spots.middle, outsideDiameter),
    ...diagonals,
    ...widthHalfWayUp,
    ...inner.checks(spots.leftFoot, upTo, root),
  ];
  return {
    members: [member, ...inner.members],
    checks,
    feet: [spots.leftFoot, spots.rightFoot],
    corners: dieCorners(member),
    planeNormal: { x: 0, y: 0, z: 1 },
  };
}

/**
 * Rise of the crown from the chord between its two ends [mm]: C (1 − cos β), and with C ± D/2 along the outer and the
 * inner line. None for a straight crossbar.
 */
function crownRise(crossbar: Hoop['crossbar'], half: number, middle: Spot, outsideDiameter: number): Check[] {
  if (crossbar.form === 'straight') return [];
  const share = 1 - Math.cos(half / crossbar.radius);
  const more = (outsideDiameter / 2) * share;
  return [
    {
      key: 'crown-rise',
      index: 0,
      field: '',
      reference: 'outside',
      outsideExtra: more,
      insideExtra: -more,
      bothEnds: false,
      from: { ...middle, point: { ...middle.point, y: middle.point.y - crossbar.radius * share } },
      to: middle,
    },
  ];
}
