import fc from 'fast-check';
import type { WeldTurn } from '../../server/job/welding.ts';
import { newFrameWelds } from '../../server/solver/correction/new-frame-welds.ts';
import type {
  Check,
  EndGeometry,
  FrameGeometry,
  MemberGeometry,
  Spot,
} from '../../server/solver/frame/frame-geometry.ts';
import { centrelineFromChain, placeAt, type Link } from '../../server/solver/geometry/centreline.ts';
import { add, cross, length, ORIGIN, subtract, unit, type Vector3 } from '../../server/solver/geometry/vector.ts';
import { planMovement } from '../../server/solver/welding/movement/plan-movement.ts';
import { weldSites, type WeldPlace } from '../../server/solver/welding/weld-sites.ts';
import { DEGREE } from '../properties/spliced-frames.ts';

export const TUBE = { outsideDiameter: 38.1, wall: 1.65 };

const FREE = { kind: 'free' } as const;

/** A member from links, from a point on. */
export function tubeOf(
  name: string,
  from: { point: Vector3; direction: Vector3; normal: Vector3 },
  links: readonly Link[],
): MemberGeometry {
  const centreline = centrelineFromChain(from, links);
  return { name, centreline, closed: false, closing: null, start: FREE, finish: FREE };
}

export const straightOf = (name: string, from: Vector3, to: Vector3): MemberGeometry => {
  const direction = unit(subtract(to, from))!;
  const normal = unit(cross(direction, Math.abs(direction.z) < 0.9 ? { x: 0, y: 0, z: 1 } : { x: 1, y: 0, z: 0 }))!;
  return tubeOf(name, { point: from, direction, normal }, [{ kind: 'straight', length: length(subtract(to, from)) }]);
};

/** A seat on a member; its axis may pass the partner's at a distance. */
export const seatOn = (onto: string, station: number, offset = 0): EndGeometry => ({
  kind: 'saddle',
  onto,
  station,
  axisAngle: Math.PI / 2,
  offset,
});

export const spotOf = (members: readonly MemberGeometry[], member: string, station: number, off = ORIGIN): Spot => {
  const { centreline } = members.find(({ name }) => name === member)!;
  return { member, station, point: add(placeAt(centreline, station)!.point, off) };
};

export const checkOf = (key: string, index: number, from: Spot, to: Spot): Check => ({
  key,
  index,
  field: '',
  reference: 'centre',
  outsideExtra: 0,
  insideExtra: 0,
  bothEnds: false,
  from,
  to,
});

export const frameOf = (
  members: readonly MemberGeometry[],
  checks: readonly Check[],
  planeNormal: Vector3 | null = null,
): FrameGeometry => ({ members, checks, feet: [], corners: [], planeNormal });

/** A joint cut through a member between its ends. */
export const spliceAt = (joint: number, member: string, station: number): WeldPlace => ({
  kind: 'splice',
  joint,
  side: '',
  member,
  station,
});

/** Movement of a frame with the welds of a new one and some splices; each pulls in half a mm. */
export function movementOf(
  wanted: FrameGeometry,
  more: {
    places?: readonly WeldPlace[];
    shrinkage?: number;
    pull?: number;
    order?: readonly WeldTurn[];
    up?: Vector3;
  } = {},
) {
  const { places = [], shrinkage = 0.5, pull = 0.75, order = [], up = { x: 0, y: 0, z: 1 } } = more;
  const sites = weldSites([...newFrameWelds(wanted), ...places], wanted, []);
  const welds = sites.map((site) => ({ site, shrinkage }));
  return planMovement({ wanted, ...TUBE, pull: pull * DEGREE, up, welds, joints: [], order });
}

/** Evenly spread: places a millionth of a mm apart are what beams of a witness cannot tell. */
const number = (min: number, max: number) =>
  fc.integer({ min: 0, max: 1000 }).map((thousandths) => min + ((max - min) * thousandths) / 1000);
const vector = (size: number) => fc.record({ x: number(-size, size), y: number(-size, size), z: number(-size, size) });
const direction = vector(1).map((one) => unit({ ...one, x: one.x + 2 })!);

/** A tube with two bends in turned planes; its last part may be rolled wide. */
const bentTubes = fc
  .record({
    direction,
    lengths: fc.tuple(number(200, 500), number(100, 400), number(200, 500)),
    radius: number(100, 900),
  })
  .chain((first) =>
    fc.record({
      first: fc.constant(first),
      angles: fc.tuple(number(0.3, 1.6), number(0.2, 1)),
      rotation: number(-3, 3),
    }),
  )
  .map(({ first, angles, rotation }) => (name: string, point: Vector3): MemberGeometry => {
    const normal = unit(cross(first.direction, { x: 0.2, y: 0.3, z: 1 }))!;
    return tubeOf(name, { point, direction: first.direction, normal }, [
      { kind: 'straight', length: first.lengths[0] },
      { kind: 'arc', radius: 114.3, angle: angles[0], rotation: 0, made: 'die' },
      { kind: 'straight', length: first.lengths[1] },
      { kind: 'arc', radius: first.radius, angle: angles[1], rotation, made: 'rolled' },
      { kind: 'straight', length: first.lengths[2] },
    ]);
  });

/**
 * Frames in space: two bent tubes, up to three rungs between them whose axes may pass theirs at a distance, and a stub
 * on the first rung. One rung makes a tree, each further one a loop. Checks run between any places, also off the tube.
 */
export const spaceFrames = fc
  .record({
    tubes: fc.tuple(bentTubes, bentTubes),
    apart: number(300, 800),
    rungs: fc.array(
      fc.record({ shares: fc.tuple(number(0.05, 0.95), number(0.05, 0.95)), offs: fc.tuple(vector(30), vector(30)) }),
      {
        minLength: 1,
        maxLength: 3,
      },
    ),
    stub: vector(400),
    spots: fc.array(fc.tuple(fc.nat(), number(0, 1), vector(60), fc.nat(), number(0, 1), vector(60)), {
      minLength: 3,
      maxLength: 6,
    }),
    welds: fc.array(fc.tuple(fc.nat(), number(0.02, 0.98)), { minLength: 1, maxLength: 3 }),
  })
  .map(({ tubes, apart, rungs, stub, spots, welds }) => {
    const rails = [tubes[0]('a', ORIGIN), tubes[1]('b', { x: 0, y: apart, z: 100 })];
    const members = [...rails];
    for (const [index, { shares, offs }] of rungs.entries()) {
      const ends = rails.map((rail, side) => {
        const station = rail.centreline.length * shares[side]!;
        return { rail, station, off: offs[side]!, spot: spotOf(rails, rail.name, station, offs[side]) };
      });
      const rung = straightOf(`rung ${String(index)}`, ends[0]!.spot.point, ends[1]!.spot.point);
      const [start, finish] = ends.map(({ rail, station, off }) => seatOn(rail.name, station, length(off)));
      members.push({ ...rung, start: start!, finish: finish! });
    }
    const rung = members[2]!;
    const middle = spotOf(members, rung.name, rung.centreline.length / 2);
    const out = straightOf('stub', middle.point, add(middle.point, { ...stub, z: stub.z + 500 }));
    members.push({ ...out, start: seatOn(rung.name, rung.centreline.length / 2) });
    const pick = (number: number, share: number, off: Vector3): Spot => {
      const member = members[number % members.length]!;
      return spotOf(members, member.name, share * member.centreline.length, off);
    };
    const feet = rails.map((rail) => spotOf(members, rail.name, rail.centreline.length));
    const apartFrom = spots.flatMap(([a, one, offA, b, other, offB]) => {
      const [from, to] = [pick(a, one, offA), pick(b, other, offB)];
      // a size of a few mm is no size, and its direction is chance
      return length(subtract(to.point, from.point)) < 50 ? [] : [{ from, to }];
    });
    const checks = [{ from: feet[0]!, to: feet[1]! }, ...apartFrom].map(({ from, to }, index) =>
      checkOf('end-to-end', index + 1, from, to),
    );
    const cuts = welds.map(([number, share], index) => {
      const member = members[number % members.length]!;
      return spliceAt(index + 1, member.name, share * member.centreline.length);
    });
    return { frame: frameOf(members, checks), cuts };
  });
