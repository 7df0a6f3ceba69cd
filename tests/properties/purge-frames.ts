import fc from 'fast-check';
import type { Frame, Member, MemberEnd } from '../../server/job/frame.ts';
import type { AirHole, EndOfMember } from '../../server/job/purge.ts';
import { add, scale, subtract, type Vector3 } from '../../server/solver/geometry/vector.ts';
import { between } from './plans-compared.ts';
import { airHole, pad, type Cut, type PurgeCase } from './purge-workload.ts';

const FREE: MemberEnd = { end: 'free' };
const DIRECTIONS: readonly Vector3[] = [
  { x: 0, y: 1, z: 0 },
  { x: 0, y: 0, z: 1 },
  { x: 0.6, y: 0, z: 0.8 },
  { x: 0.5, y: 0.7, z: -0.5 },
];

type Drawn = { readonly name: string; readonly points: readonly Vector3[]; readonly closed: boolean };

const corner = (point: Vector3) => ({ ...point, radius: null });

/** A point on a side of a member between its corners. */
function pointOn({ points, closed }: Drawn, side: number, share: number): Vector3 {
  const sides = closed ? points.length : points.length - 1;
  const from = points[side % sides]!;
  const to = points[((side % sides) + 1) % points.length]!;
  return add(from, scale(subtract(to, from), share));
}

/** Tubes to build on: straight, bent in a plane, bent in space, or a closed ring; well apart from one another. */
const bases = fc
  .array(fc.tuple(fc.constantFrom('straight', 'straight', 'bent', 'space', 'ring'), between(0.8, 1.4)), {
    minLength: 1,
    maxLength: 3,
  })
  .map((kinds) =>
    kinds.map(([kind, size], index): Drawn => {
      const at = (x: number, y: number, z: number): Vector3 => ({
        x: size * x,
        y: size * y + 2500 * index,
        z: size * z,
      });
      const points = {
        straight: [at(0, 0, 0), at(1800, 0, 0)],
        bent: [at(0, 0, 0), at(1200, 0, 0), at(1200, 900, 0)],
        space: [at(0, 0, 0), at(900, 0, 0), at(900, 800, 0), at(900, 800, 900)],
        ring: [at(0, 0, 0), at(1200, 0, 0), at(1200, 900, 0), at(0, 900, 0)],
      }[kind];
      return { name: `base ${String(index)}`, points: points ?? [], closed: kind === 'ring' };
    }),
  );

const place = fc.record({ of: fc.nat(99), side: fc.nat(9), share: between(0.3, 0.7) });

type Branch = {
  from: { of: number; side: number; share: number };
  to: Branch['from'] | null;
  way: number;
  length: number;
};
const branches = fc.array(
  fc.record<Branch>({
    from: place,
    to: fc.option(place),
    way: fc.nat(DIRECTIONS.length - 1),
    length: between(200, 900),
  }),
  { maxLength: 5 },
);

/** Members with saddles on earlier ones, at one end or at both, every so often on a branch of a branch. */
const memberFrames: fc.Arbitrary<Frame> = fc.tuple(bases, branches).map(([drawn, added]): Frame => {
  const tubes = [...drawn];
  const ends = new Map<string, { start: MemberEnd; finish: MemberEnd }>();
  for (const [index, { from, to, way, length }] of added.entries()) {
    const partner = tubes[from.of % tubes.length]!;
    const far = to === null ? partner : tubes[to.of % tubes.length]!;
    const start = pointOn(partner, from.side, from.share);
    const seated = to !== null && far !== partner;
    const finish = seated ? pointOn(far, to.side, to.share) : add(start, scale(DIRECTIONS[way]!, length));
    const name = `branch ${String(index)}`;
    tubes.push({ name, points: [start, finish], closed: false });
    ends.set(name, {
      start: { end: 'saddle', onto: partner.name },
      finish: seated ? { end: 'saddle', onto: far.name } : FREE,
    });
  }
  return {
    shape: 'members',
    members: tubes.map(({ name, points, closed }): Member => {
      const { start, finish } = ends.get(name) ?? { start: FREE, finish: FREE };
      return { name, path: { by: 'points', points: points.map(corner), closed }, start, finish };
    }),
  };
});

const outside = (value: number) => ({ value, reference: 'outside' as const });

/** A hoop with crossbars between its legs. */
const hoopFrames: fc.Arbitrary<Frame> = fc
  .tuple(between(400, 1200), between(500, 900), fc.nat(3), fc.option(between(1500, 4000)))
  .map(([width, leg, bars, crown]): Frame => ({
    shape: 'hoop',
    width: outside(width),
    widthAtFeet: null,
    leftLeg: outside(leg),
    rightLeg: outside(leg),
    crossbar: crown === null ? { form: 'straight' } : { form: 'crowned', radius: crown },
    innerCrossbars: Array.from({ length: bars }, (_, index) => ({
      fromFoot: outside(((index + 1) / (bars + 1)) * (leg - 150)),
    })),
  }));

const plainFrames: fc.Arbitrary<Frame> = fc.oneof(
  between(300, 6000).map((length): Frame => ({ shape: 'straight', length })),
  fc
    .tuple(between(500, 1500), between(500, 1500))
    .map(([width, height]): Frame => ({ shape: 'ring', width: outside(width), height: outside(height) })),
  between(10, 80).map((angle): Frame => ({
    shape: 'offset',
    across: outside(300),
    angle,
    first: outside(700),
    last: outside(700),
  })),
);

export const frames = fc.oneof(
  { weight: 3, arbitrary: memberFrames },
  { weight: 2, arbitrary: hoopFrames },
  { weight: 1, arbitrary: plainFrames },
);

/** Names and ends of a frame's members before it is drawn. */
export function membersOf(frame: Frame): { name: string; closed: boolean; saddles: EndOfMember['end'][] }[] {
  switch (frame.shape) {
    case 'members':
      return frame.members.map((member) => ({
        name: member.name,
        closed: member.path.by === 'points' && member.path.closed,
        saddles: (['start', 'finish'] as const).filter((end) => member[end].end === 'saddle'),
      }));
    case 'hoop':
      return [
        { name: 'hoop', closed: false, saddles: [] },
        ...frame.innerCrossbars.map((_, index) => ({
          name: `crossbar ${String(index + 1)}`,
          closed: false,
          saddles: ['start' as const, 'finish' as const],
        })),
      ];
    default:
      return [{ name: frame.shape === 'straight' ? 'tube' : frame.shape, closed: frame.shape === 'ring', saddles: [] }];
  }
}

const ENDS = ['start', 'finish'] as const;

/** Holes, pads and cuts on a frame, each where there is something to have them on. */
export const casesOf = (frame: Frame): fc.Arbitrary<PurgeCase> => {
  const members = membersOf(frame);
  const saddles = members.flatMap(({ name, saddles: ends }) => ends.map((end): EndOfMember => ({ member: name, end })));
  const free = members.flatMap(({ name, closed, saddles: ends }) =>
    closed ? [] : ENDS.filter((end) => !ends.includes(end)).map((end): EndOfMember => ({ member: name, end })),
  );
  const onMember = fc.constantFrom(...members).map(({ name }) => name);
  return fc
    .record({
      underSaddles: fc.constantFrom('none' as const, 'all' as const),
      except: fc.subarray(saddles),
      toAir: fc.oneof(
        fc.constant<AirHole[]>([]),
        fc.array(
          fc.tuple(onMember, between(60, 400)).map(([name, distance]) => airHole(name, distance)),
          { maxLength: 3 },
        ),
      ),
      pads: fc
        .subarray(free)
        .chain((ends) =>
          fc.tuple(...ends.map(({ member, end }) => fc.constantFrom(0, 0, 10).map((hole) => pad(member, end, hole)))),
        ),
      cuts: fc.array(
        fc.tuple(onMember, between(100, 180)).map(([member, station]): Cut => ({ member, station })),
        {
          maxLength: 2,
        },
      ),
      up: fc.constantFrom(...DIRECTIONS, { x: 0, y: -1, z: 0 }, { x: 0, y: 0, z: -1 }),
    })
    .map(({ underSaddles, except, toAir, pads, cuts, up }): PurgeCase => ({
      frame,
      purge: { up, holes: { underSaddles, except, bore: 6, toAir } },
      fixing: pads,
      cuts,
    }));
};

export const purgeCases = frames.chain(casesOf);
