import type { MemberGeometry } from '../frame/frame-geometry.ts';
import { NEAR, type Bore, type Opening } from './bores.ts';
import { distances, nodeAt, type BoreGraph } from './bore-graph.ts';
import { onSomeWay } from './swept-bores.ts';
import type { TypedPlaces } from './typed-places.ts';

/** How gas gets into a chamber and out of it. */
export type Passing = {
  /** What is wrong: nothing opens it, or nothing that stays open once it is welded. */
  readonly trouble: 'closed' | 'closed-by-weld' | null;
  /** The one opening is feed and vent: a lance is pushed through it to the far end, and gas comes back past it. */
  readonly lance: boolean;
  readonly feed: Opening | null;
  readonly vents: readonly Opening[];
};

/** The openings that gas can be led by: those that no weld closes, or where there are none, the gaps of joints. */
export function usableOpenings(
  openings: readonly Opening[],
): Pick<Passing, 'trouble'> & { usable: readonly Opening[] } {
  const solid = openings.filter(({ kind }) => kind !== 'gap');
  if (solid.length > 0) return { trouble: null, usable: solid };
  return { trouble: openings.length > 0 ? 'closed-by-weld' : 'closed', usable: openings };
}

/** Whether all openings are at one place, so that gas must come back the way that it went. */
export const atOnePlace = ([first, ...others]: readonly Opening[]): boolean =>
  first !== undefined &&
  others.every(({ member, station }) => member === first.member && Math.abs(station - first.station) <= NEAR);

/**
 * Where gas is fed and vented. As typed where that is in the chamber; else fed at the lowest opening and vented at the
 * highest one, of such as are level the two with the longest way between them. An opening that would leave a dead leg
 * if it were plugged is a further vent; the others are plugged.
 *
 * @param level heights that differ by no more than this are the same [mm]
 */
export function feedAndVents(
  chamber: {
    readonly bores: readonly Bore[];
    readonly members: readonly MemberGeometry[];
    readonly graph: BoreGraph;
    readonly openings: readonly Opening[];
  },
  typed: TypedPlaces,
  level: number,
): Passing {
  const { trouble, usable } = usableOpenings(chamber.openings);
  const [first] = usable;
  if (first === undefined) return { trouble, lance: false, feed: null, vents: [] };
  const own = (typedOne: Opening | null, not: Opening | null = null): Opening | null =>
    usable.find((one) => one !== not && typedOne !== null && (one === typedOne || one.beyond.includes(typedOne))) ??
    null;
  const typedFeed = own(typed.feed);
  const typedVent = own(typed.vent, typedFeed);
  const alone = typedFeed ?? typedVent ?? first;
  if (atOnePlace(usable)) return { trouble, lance: true, feed: alone, vents: [alone] };

  const { graph, bores, members } = chamber;
  const nodeOf = new Map(usable.map((one) => [one, nodeAt(graph, bores, members, one) ?? 0]));
  const low = typedFeed === null ? lowest(usable, typedVent, level) : [typedFeed];
  const high = typedVent === null ? highest(usable, typedFeed, level) : [typedVent];
  let pair: { feed: Opening; vent: Opening } | null = null;
  let longest = 0;
  for (const feed of low) {
    const far = low.length * high.length > 1 ? distances(graph, [nodeOf.get(feed) ?? 0]) : null;
    for (const vent of high) {
      if (nodeOf.get(vent) === nodeOf.get(feed)) continue;
      const way = far?.[nodeOf.get(vent) ?? 0] ?? 0;
      if (pair !== null && way <= longest + NEAR) continue;
      pair = { feed, vent };
      longest = way;
    }
  }
  if (pair === null) return { trouble, lance: true, feed: alone, vents: [alone] };
  const { feed, vent } = pair;
  const others = usable.filter((one) => one !== feed && one !== vent);
  const needed = furtherVents(graph, nodeOf, { feed, vent, others });
  const vents = [vent, ...needed].sort((a, b) => b.height - a.height);
  return { trouble, lance: false, feed, vents };
}

const lowest = (openings: readonly Opening[], not: Opening | null, level: number): Opening[] => {
  const left = openings.filter((one) => one !== not);
  const least = Math.min(...left.map(({ height }) => height));
  return left.filter(({ height }) => height <= least + level);
};

const highest = (openings: readonly Opening[], not: Opening | null, level: number): Opening[] => {
  const left = openings.filter((one) => one !== not);
  const most = Math.max(...left.map(({ height }) => height));
  return left.filter(({ height }) => height >= most - level);
};

/** The openings that must stay open beside feed and vent, or bore that gas could run through would be a dead leg. */
function furtherVents(
  { nodes, tubes, passages }: BoreGraph,
  nodeOf: ReadonlyMap<Opening, number>,
  { feed, vent, others }: { feed: Opening; vent: Opening; others: readonly Opening[] },
): Opening[] {
  if (others.length === 0) return [];
  const air = nodes.length;
  const bores = [...tubes, ...passages];
  const sweptWith = (vents: readonly Opening[]): number => {
    const outlets = vents.map((one) => ({ a: nodeOf.get(one) ?? 0, b: air }));
    const swept = onSomeWay(air + 1, [...bores, ...outlets], nodeOf.get(feed) ?? 0, air);
    return tubes.reduce((count, _, index) => count + (swept[index] === true ? 1 : 0), 0);
  };
  let open = [...others];
  const most = sweptWith([vent, ...open]);
  // the lowest are plugged first, and of such as are level the last in the list
  for (const one of [...others].reverse().sort((a, b) => a.height - b.height)) {
    const without = open.filter((other) => other !== one);
    if (sweptWith([vent, ...without]) === most) open = without;
  }
  return open;
}
