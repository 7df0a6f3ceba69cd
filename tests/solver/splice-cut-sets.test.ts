import { describe, expect, it } from 'vitest';
import { cutSets } from '../../server/solver/correction/splice/cut-sets.ts';
import {
  bodiesAfter,
  frameGraph,
  type Cut,
  type FrameGraph,
} from '../../server/solver/correction/splice/frame-graph.ts';
import type { EndGeometry, MemberGeometry } from '../../server/solver/frame/frame-geometry.ts';
import { centrelineFromChain, straightPiece, type Link } from '../../server/solver/geometry/centreline.ts';
import { length, subtract, unit, type Vector3 } from '../../server/solver/geometry/vector.ts';
import { randomSource } from '../properties/returned-scatter.ts';

const { uniform } = randomSource(41);
const below = (count: number): number => Math.floor(count * uniform());

/** A straight tube, or one with bends, whose ends sit anywhere on the others: only how it hangs together counts. */
function randomMembers(count: number): MemberGeometry[] {
  const lengths = Array.from({ length: count }, () => 500 + 500 * uniform());
  return lengths.map((length, index): MemberGeometry => {
    const closed = index === 0 && uniform() < 0.3;
    const end = (): EndGeometry => {
      const onto = below(index);
      if (closed || index === 0 || uniform() < 0.25) return { kind: 'free' };
      // now and then two tubes sit on the same place
      const station = uniform() < 0.2 ? 250 : 50 + (lengths[onto]! - 100) * uniform();
      return { kind: 'saddle', onto: `tube ${String(onto)}`, station, axisAngle: Math.PI / 2, offset: 0 };
    };
    const bend: Link = { kind: 'arc', radius: 50, angle: 1, rotation: 0, made: 'die' };
    const links: Link[] =
      uniform() < 0.4
        ? [{ kind: 'straight', length: length / 2 - 25 }, bend, { kind: 'straight', length: length / 2 - 25 }]
        : [{ kind: 'straight', length }];
    const start = {
      point: { x: 0, y: 300 * index, z: 0 },
      direction: { x: 1, y: 0, z: 0 },
      normal: { x: 0, y: 0, z: 1 },
    };
    return {
      name: `tube ${String(index)}`,
      centreline: centrelineFromChain(start, links),
      closed,
      closing: null,
      start: end(),
      finish: end(),
    };
  });
}

/** How many parts the graph falls into when some edges are gone, by spreading from vertex to vertex. */
function partsWithout({ edges }: FrameGraph, gone: readonly number[]): number {
  const vertices = new Set(edges.flatMap(({ start, finish }) => [start, finish]));
  let parts = 0;
  for (let root = [...vertices][0]; root !== undefined; root = [...vertices][0]) {
    parts += 1;
    const waiting = [root];
    vertices.delete(root);
    for (let at = waiting.pop(); at !== undefined; at = waiting.pop()) {
      for (const [index, { start, finish }] of edges.entries()) {
        if (gone.includes(index) || (start !== at && finish !== at)) continue;
        const next = start === at ? finish : start;
        if (vertices.delete(next)) waiting.push(next);
      }
    }
  }
  return parts;
}

/** All sets of one to four edges. */
function* subsets(count: number, most: number, from = 0): Generator<number[]> {
  for (let first = from; first < count; first += 1) {
    yield [first];
    if (most > 1) for (const rest of subsets(count, most - 1, first + 1)) yield [first, ...rest];
  }
}

/** Cutting them parts the frame in two, and there is none among them that could stay. */
function partsInTwo(graph: FrameGraph, set: readonly number[], whole: number): boolean {
  if (partsWithout(graph, set) !== whole + 1) return false;
  return set.every(
    (kept) =>
      partsWithout(
        graph,
        set.filter((one) => one !== kept),
      ) === whole,
  );
}

describe('ways of parting a frame in two', () => {
  it('are all sets of up to four stretches that do it, and no other', () => {
    let found = 0;
    for (let round = 0; round < 60; round += 1) {
      const graph = frameGraph({ members: randomMembers(2 + below(4)) });
      const whole = partsWithout(graph, []);
      // frames come in one piece
      if (whole !== 1 || graph.edges.length > 16) continue;
      const barred = uniform() < 0.5 ? below(graph.edges.length) : -1;
      const wanted = [...subsets(graph.edges.length, 4)]
        .filter((set) => !set.includes(barred) && partsInTwo(graph, set, whole))
        .map((set) => set.join())
        .sort();
      const sets = cutSets(graph, (edge) => edge !== barred, [])
        .sets.map((set) => [...set].sort((a, b) => a - b).join())
        .sort();
      expect(sets).toEqual(wanted);
      found += wanted.length;
    }
    expect(found).toBeGreaterThan(200);
  });

  it('along a plane they may go through more members, and part in two all the same', () => {
    const rails = [0, 600].map((y, index): MemberGeometry => ({
      ...randomMembers(1)[0]!,
      name: `rail ${String(index)}`,
      closed: false,
      centreline: centrelineFromChain(
        { point: { x: 0, y, z: 0 }, direction: { x: 1, y: 0, z: 0 }, normal: { x: 0, y: 0, z: 1 } },
        [{ kind: 'straight', length: 2000 }],
      ),
    }));
    const seat = (onto: string, station: number): EndGeometry => ({
      kind: 'saddle',
      onto,
      station,
      axisAngle: Math.PI / 2,
      offset: 0,
    });
    const rungs = Array.from({ length: 8 }, (_, index): MemberGeometry => {
      const x = 200 + 200 * index;
      return {
        ...rails[0]!,
        name: `rung ${String(index)}`,
        centreline: centrelineFromChain(
          { point: { x, y: 0, z: 0 }, direction: { x: 0, y: 1, z: 0 }, normal: { x: 0, y: 0, z: 1 } },
          [{ kind: 'straight', length: 600 }],
        ),
        start: seat('rail 0', x),
        finish: seat('rail 1', x),
      };
    });
    const graph = frameGraph({ members: [...rails, ...rungs] });
    const { sets } = cutSets(graph, () => true, [{ x: 0, y: 1, z: 0 }]);
    const across = sets.find((set) => set.length === rungs.length)!;
    expect(across.map((edge) => graph.edges[edge]!.member).sort((a, b) => a - b)).toEqual([2, 3, 4, 5, 6, 7, 8, 9]);
    for (const set of sets) expect(partsInTwo(graph, set, 1)).toBe(true);
  });
});

/** Bodies by spreading over small steps of tube: from each to the next on the same member, and over every weld. */
function spread({ members, nodes }: FrameGraph, cuts: readonly Cut[]): (member: number, station: number) => number {
  const steps = members.map(({ centreline }, member) => {
    const at = [0, centreline.length, ...cuts.flatMap((cut) => (cut.member === member ? [cut.station] : []))];
    return [...new Set(at)].sort((a, b) => a - b);
  });
  const key = (member: number, part: number) => `${String(member)}:${String(part)}`;
  const partOf = (member: number, station: number): number => {
    const own = steps[member]!;
    for (let part = 0; part < own.length - 2; part += 1) if (station <= own[part + 1]!) return part;
    return own.length - 2;
  };
  const near = new Map<string, string[]>();
  const join = (a: string, b: string) => {
    near.set(a, [...(near.get(a) ?? []), b]);
    near.set(b, [...(near.get(b) ?? []), a]);
  };
  for (const [member, own] of steps.entries()) {
    for (let part = 0; part < own.length - 1; part += 1) near.set(key(member, part), near.get(key(member, part)) ?? []);
    if (members[member]!.closed) join(key(member, 0), key(member, own.length - 2));
  }
  for (const { sitting, end, main, station } of nodes)
    join(key(sitting, partOf(sitting, end)), key(main, partOf(main, station)));
  const bodies = new Map<string, number>();
  let count = 0;
  for (const root of near.keys()) {
    if (bodies.has(root)) continue;
    const waiting = [root];
    bodies.set(root, count);
    for (let at = waiting.pop(); at !== undefined; at = waiting.pop())
      for (const next of near.get(at)!) {
        if (bodies.has(next)) continue;
        bodies.set(next, count);
        waiting.push(next);
      }
    count += 1;
  }
  return (member, station) => bodies.get(key(member, partOf(member, station)))!;
}

it('what stays in one piece after cuts is what spreading finds', () => {
  let most = 0;
  for (let round = 0; round < 200; round += 1) {
    const graph = frameGraph({ members: randomMembers(1 + below(5)) });
    const cuts = Array.from({ length: below(6) }, (): Cut => {
      const member = below(graph.members.length);
      return { member, station: 20 + (graph.members[member]!.centreline.length - 40) * uniform() };
    });
    const bodies = bodiesAfter(graph, cuts);
    const wanted = spread(graph, cuts);
    const seen = new Map<number, number>();
    for (const [member, { centreline }] of graph.members.entries()) {
      const own = cuts.flatMap((cut) => (cut.member === member ? [cut.station] : []));
      const ends = [0, ...own, centreline.length].sort((a, b) => a - b);
      for (const [index, from] of ends.slice(0, -1).entries()) {
        for (const share of [0.01, 0.5, 0.99]) {
          const station = from + share * (ends[index + 1]! - from);
          const [one, other] = [bodies.at(member, station), wanted(member, station)];
          expect(seen.get(one) ?? other).toBe(other);
          seen.set(one, other);
        }
      }
    }
    expect(new Set(seen.values()).size).toBe(seen.size);
    expect(seen.size).toBe(bodies.count);
    most = Math.max(most, bodies.count);
  }
  expect(most).toBeGreaterThan(4);
});

it('a long ladder loses none of its single cuts to the count of all the others', () => {
  const rungs = 20;
  const straight = (
    name: string,
    from: Vector3,
    to: Vector3,
    onto: readonly [string, string] | null,
  ): MemberGeometry => {
    const way = subtract(to, from);
    const line = {
      pieces: [straightPiece({ start: from, direction: unit(way)!, length: length(way) })],
      length: length(way),
    };
    const seat = (place: 0 | 1): MemberGeometry['start'] =>
      onto === null
        ? { kind: 'free' }
        : { kind: 'saddle', onto: onto[place], station: from.y, axisAngle: Math.PI / 2, offset: 0 };
    return { name, centreline: line, closed: false, closing: null, start: seat(0), finish: seat(1) };
  };
  const at = (x: number, y: number): Vector3 => ({ x, y, z: 0 });
  const members = [
    straight('left', at(0, 0), at(0, 3000), null),
    straight('right', at(400, 0), at(400, 3000), null),
    ...Array.from({ length: rungs }, (_, index) =>
      straight(`rung ${String(index + 1)}`, at(0, 200 + 130 * index), at(400, 200 + 130 * index), ['left', 'right']),
    ),
  ];
  const { sets } = cutSets(frameGraph({ members }), () => true, []);
  // the four free ends of the rails
  expect(sets.filter((set) => set.length === 1)).toHaveLength(4);
});
