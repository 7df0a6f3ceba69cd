import type { CutSet } from './cut-sets.ts';
import type { FreeStretch } from './free-stretches.ts';
import { bodiesAfter, type Bodies, type Cut, type Edge, type FrameGraph } from './frame-graph.ts';

/** Where a joint is wanted [mm along its member, of its middle], on which stretch, and whether it may be moved along it. */
export type CutPlace = { readonly stretch: FreeStretch; readonly at: number; readonly movable: boolean };

/** Joints that are to be made, and the bodies that the cuts leave. */
export type Layout = { readonly places: readonly CutPlace[]; readonly bodies: Bodies };

/** Joints nearer than this on one member, in tube diameters, leave a piece that nobody can hold: common practice. */
const LEAST_PIECE = 1.5;

/** Combinations that one cut set is tried with: fewer where it goes through many members, each of which costs; our own choice. */
const MOST_OF_ONE = 120;
const MOST_JOINTS_TRIED = 480;

/** The places for the joints of one edge, with how little they are liked: fewer joints, straights and middles first. */
type Choice = { readonly places: readonly CutPlace[]; readonly dislike: number };

/** Shares of a stretch at which a joint is tried. */
const ONE_JOINT = [1 / 2, 1 / 4, 3 / 4] as const;
const TWO_JOINTS = [
  [1 / 4, 3 / 4],
  [1 / 3, 2 / 3],
] as const;
const THREE_JOINTS = [[1 / 6, 1 / 2, 5 / 6]] as const;

/** The parts of the stretches that lie on an edge; the last edge of a closed member goes on over its datum. */
export function stretchesOn(edge: Edge, stretches: readonly FreeStretch[], whole: number): FreeStretch[] {
  return stretches.flatMap((stretch) => {
    if (stretch.member !== edge.member) return [];
    return [0, whole].flatMap((shift) => {
      const from = Math.max(stretch.from, edge.from - shift);
      const to = Math.min(stretch.to, edge.to - shift);
      return to > from ? [{ ...stretch, from, to }] : [];
    });
  });
}

/**
 * Every way of placing the joints of a cut set, best liked first.
 *
 * @param context `most`: no more than so many
 */
export function layoutsOf(
  graph: FrameGraph,
  set: CutSet,
  stretches: readonly FreeStretch[],
  context: { outsideDiameter: number; mostJoints: number; most?: number | undefined },
): Layout[] {
  const choices = set.map((index): Choice[] => {
    const edge = graph.edges[index];
    const line = edge === undefined ? undefined : graph.members[edge.member]?.centreline;
    if (edge === undefined || line === undefined) return [];
    return choicesOn(stretchesOn(edge, stretches, line.length), context);
  });
  return combined(choices, context.most ?? MOST_OF_ONE).map((places) => layoutOf(graph, places));
}

/** A layout from its places, its bodies parted at bends as well where those may be turned. */
export function layoutOf(graph: FrameGraph, places: readonly CutPlace[], bends: readonly Cut[] = []): Layout {
  const cuts = places.map(({ stretch, at }): Cut => ({ member: stretch.member, station: at }));
  return { places, bodies: bodiesAfter(graph, [...cuts, ...bends]) };
}

function choicesOn(
  stretches: readonly FreeStretch[],
  { outsideDiameter, mostJoints }: { outsideDiameter: number; mostJoints: number },
): Choice[] {
  const choices: Choice[] = [];
  for (const stretch of stretches) {
    const size = stretch.to - stretch.from;
    const at = (share: number): CutPlace => ({ stretch, at: stretch.from + share * size, movable: true });
    const curved = stretch.on === 'rolled' ? 1 : 0;
    const apart = (shares: readonly number[]) =>
      shares.every(
        (share, index) => index === 0 || (share - (shares[index - 1] ?? 0)) * size > LEAST_PIECE * outsideDiameter,
      );
    for (const [rank, share] of ONE_JOINT.entries()) {
      if (rank > 0 && size < LEAST_PIECE * outsideDiameter) continue;
      choices.push({ places: [at(share)], dislike: curved + rank / 4 });
    }
    if (mostJoints >= 2)
      for (const [rank, shares] of TWO_JOINTS.entries())
        if (apart(shares)) choices.push({ places: shares.map(at), dislike: 2 - curved + rank / 4 });
    if (mostJoints >= 3)
      for (const shares of THREE_JOINTS)
        if (apart(shares)) choices.push({ places: shares.map(at), dislike: 4 - curved });
  }
  return choices.sort((a, b) => a.dislike - b.dislike);
}

/** One choice from each list, the best liked sums first, up to a count. */
function combined(lists: readonly (readonly Choice[])[], most: number): CutPlace[][] {
  let begun: { places: CutPlace[]; dislike: number }[] = [{ places: [], dislike: 0 }];
  for (const choices of lists) {
    begun = begun
      .flatMap((one) =>
        choices.map((choice) => ({
          places: [...one.places, ...choice.places],
          dislike: one.dislike + choice.dislike,
        })),
      )
      .sort((a, b) => a.dislike - b.dislike)
      .slice(0, Math.min(most, Math.ceil(MOST_JOINTS_TRIED / lists.length)));
  }
  return begun.map(({ places }) => places);
}
