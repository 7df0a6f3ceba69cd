import type { Way, WayKey } from '../../server/plan/correction.ts';
import type { Joint, JointFace } from '../../server/plan/joint.ts';
import type { Figure, Unit } from '../../server/plan/figure.ts';
import type {
  Check,
  EndGeometry,
  FrameGeometry,
  MemberGeometry,
  Spot,
} from '../../server/solver/frame/frame-geometry.ts';
import { centrelineFromChain, placeAt, type Centreline, type Link } from '../../server/solver/geometry/centreline.ts';
import { cross, type Vector3 } from '../../server/solver/geometry/vector.ts';

export const vector = (x: number, y: number, z: number): Vector3 => ({ x, y, z });

export const made = (value: number, unit: Unit = 'mm', plusMinus: number | null = null): Figure => ({
  value,
  unit,
  band: plusMinus === null ? null : { plusMinus, from: ['tape'] },
  working: { formula: 'v', inputs: [], sources: ['geometry'] },
});

/** A possible way that fits with nothing left over, one weld; whatever else it is may be given. */
export const wayOf = (key: WayKey, given: Partial<Way> = {}): Way => ({
  key,
  possible: true,
  reasons: [],
  fixingMisfit: made(1),
  fixings: [],
  cornerMisfit: made(1),
  cornerWidth: null,
  endWidth: null,
  toe: made(0, 'deg'),
  largestKink: made(0, 'deg'),
  largestHiLo: made(0),
  welds: made(1, 'count'),
  purgeSetups: made(1, 'count'),
  purgeGas: made(10, 'L'),
  minutes: made(60, 'min'),
  cost: made(10_000, 'minor'),
  costAtLeast: made(10_000, 'minor'),
  days: made(1, 'd'),
  risks: [],
  after: [],
  joints: [],
  rebends: [],
  trims: [],
  packing: [],
  steps: [],
  members: [],
  within: true,
  unbeaten: false,
  ...given,
});

export const faceAt = (station: number, tilt = 0, tiltDirection = 0): JointFace => ({
  station: made(station),
  tilt: made(tilt, 'deg'),
  tiltDirection,
  saw: { offSquare: made(tilt, 'deg'), longSide: 'outside', fromLongSide: tiltDirection },
  marks: { from: 'datum-end', bend: 0, towards: 'finish', generators: [] },
  check: null,
  template: null,
});

/** A slug between two faces; whatever else it is may be given. */
export const jointOf = (member: string, faceA: JointFace, faceB: JointFace, given: Partial<Joint> = {}): Joint => {
  const [from, to] = [faceA.station.value, faceB.station.value];
  const place = (from + to) / 2;
  return {
    number: 1,
    member,
    on: 'straight',
    kind: 'slug',
    place,
    range: { from: place - 200, to: place + 200 },
    bounds: { from: 'end', to: 'end' },
    faceA,
    faceB,
    removed: made(to - from),
    scrap: made(to - from),
    scrapShort: made(to - from),
    kink: made(0, 'deg'),
    hiLo: made(0),
    hiLoGrade: 'good',
    twist: made(0, 'deg'),
    letIn: null,
    point: vector(0, 0, 0),
    ...given,
  };
};

const FREE: EndGeometry = { kind: 'free' };

export const memberOf = (name: string, centreline: Centreline, closed = false): MemberGeometry => ({
  name,
  centreline,
  closed,
  closing: null,
  start: closed ? { kind: 'closed' } : FREE,
  finish: closed ? { kind: 'closed' } : FREE,
});

const QUARTER = Math.PI / 2;
/** Half of what a crown of this radius turns by over its length [mm]. */
const CROWN = { radius: 2400, length: 800 };

export const straight = (length: number): Link => ({ kind: 'straight', length });
export const bend = (angle: number, made: 'die' | 'rolled' = 'die', radius = 100): Link => ({
  kind: 'arc',
  radius,
  angle,
  rotation: 0,
  made,
});

/** Right and up of a plane, in space. */
export type Plane = { readonly right: Vector3; readonly up: Vector3 };
export const FLAT: Plane = { right: vector(1, 0, 0), up: vector(0, 1, 0) };

/** Links laid in a plane: from a point of it, up at first, turning to the right. */
export const laidIn = ({ right, up }: Plane, links: readonly Link[], from = vector(0, 0, 0)): Centreline =>
  centrelineFromChain({ point: from, direction: up, normal: cross(up, right) }, links);

/** A hoop with a crowned crossbar, as long as it is told. `crown` is the length of the rolled arc [mm]. */
export function hoopLine(
  plane: Plane = FLAT,
  given: { crown?: number; left?: number; right?: number } = {},
): Centreline {
  const { crown = CROWN.length, left = 600, right = 600 } = given;
  const turn = crown / CROWN.radius;
  const corner = bend(QUARTER - turn / 2);
  return laidIn(plane, [straight(left), corner, bend(turn, 'rolled', CROWN.radius), corner, straight(right)]);
}

/** A frame of some members with a foot at each free end, a corner in each bend of the die, and its end width. */
export function frameOf(members: readonly MemberGeometry[], planeNormal: Vector3 | null): FrameGeometry {
  const spot = (member: MemberGeometry, station: number): Spot => ({
    member: member.name,
    station,
    point: placeAt(member.centreline, station)!.point,
  });
  const feet = members.flatMap((member) =>
    member.closed ? [] : [spot(member, 0), spot(member, member.centreline.length)],
  );
  const check: Check[] =
    feet.length < 2
      ? []
      : [
          {
            key: 'width-at-feet',
            index: 0,
            field: '/frame/widthAtFeet',
            reference: 'outside',
            outsideExtra: 40,
            insideExtra: -40,
            bothEnds: true,
            from: feet[0]!,
            to: feet[1]!,
          },
        ];
  return { members, checks: check, feet, corners: [], planeNormal };
}
