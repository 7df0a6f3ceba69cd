import type { CutClosing } from '../../../job/closing.ts';
import type { FrameGeometry } from '../../frame/frame-geometry.ts';
import { AXES, dot, type Vector3 } from '../../geometry/vector.ts';
import type { CorrectionTarget, Post } from '../corrected.ts';
import { freeMotions, targetsOfBodies, worstOf } from './body-targets.ts';
import { BETTER_IN, byScore, candidateOf, distinct, gains, ORDERS, top, type Candidate } from './candidate.ts';
import { cutSets, type CutSet } from './cut-sets.ts';
import { frameGraph, type FrameGraph } from './frame-graph.ts';
import { freeStretches, type FreeStretch } from './free-stretches.ts';
import { layoutOf, layoutsOf, stretchesOn, type CutPlace, type Layout } from './layouts.ts';
import { solveSplice, type SolvedSplice } from './solve-splice.ts';
import { axesOf, leastLetIn, spliceProblem, type ClosingSizes } from './splice-problem.ts';

/** What a splice is sought for: the frame as it came back, where its points must go, what may be cut and how. */
export type SpliceTask = {
  readonly frame: FrameGeometry;
  readonly targets: readonly CorrectionTarget[];
  /** Posts that must pass; none where they are left out. */
  readonly posts?: readonly Post[];
  /** Where wanted and returned frame lie in the same plane. */
  readonly planeNormal: Vector3 | null;
  readonly closing: CutClosing;
  readonly sizes: ClosingSizes;
  readonly wall: number;
};

/** What the search knows of a frame before it places joints. */
export type Ground = {
  readonly graph: FrameGraph;
  readonly stretches: readonly FreeStretch[];
  readonly memberIndex: ReadonlyMap<string, number>;
};

export type SearchResult = {
  readonly ground: Ground;
  /** Best of all by each measure; a measure whose best is another's best already is left out. */
  readonly best: readonly { readonly key: keyof typeof ORDERS; readonly candidate: Candidate }[];
  /** Everything that can be made, best first. */
  readonly candidates: readonly Candidate[];
  readonly layouts: number;
  readonly workedOut: number;
  /** False where not every way of parting the frame was looked at. */
  readonly complete: boolean;
  /** The frame as it is, laid on the wanted one: its worst misfit [mm], and in tolerances. */
  readonly uncut: { readonly worst: number; readonly outOfTolerance: number };
};

/** Cut sets, pairs of them and layouts that are followed; our own choice: more found nothing better in any frame tried. */
const MOST_SETS = 12;
const MOST_PAIRS = 6;
const SMALL_SET = 2;
const LAYOUTS_OF_PAIR = 6;
const WORKED_OUT = 2;
const SHOWN = 8;

/** A set of cuts whose bound is so many times the best score is not followed any further; our own choice: on the safe side. */
const FAR_OFF = 4;

/** Layouts that are solved roughly at the most, so that a person is not kept waiting; our own choice. */
const MOST_LAYOUTS = 240;

/** What one more joint must gain before a set of cuts is looked at, in squared tapes: our own choice. */
const JOINT_GAINS = 4;

export function groundOf(task: Pick<SpliceTask, 'frame' | 'closing' | 'sizes'>): Ground {
  const graph = frameGraph(task.frame);
  const { cutMembers, barred } = task.closing;
  const { outsideDiameter } = task.sizes;
  return {
    graph,
    stretches: freeStretches(graph, { outsideDiameter, cutMembers, barred }),
    memberIndex: new Map(task.frame.members.map(({ name }, index) => [name, index])),
  };
}

/**
 * Seeks the splices that put a frame right: every way of parting it is rated by how near its bodies could come if their
 * joints were free; the best are given joints in every sensible place, solved, and the best of those worked out.
 */
export function searchSplices(task: SpliceTask): SearchResult {
  const ground = groundOf(task);
  const { graph, stretches } = ground;
  const usable = graph.edges.map((edge) => {
    const line = graph.members[edge.member]?.centreline;
    return line !== undefined && stretchesOn(edge, stretches, line.length).length > 0;
  });
  const axes = task.planeNormal === null ? AXES : axesOf(task.planeNormal);
  const { sets, complete } = cutSets(graph, (edge) => usable[edge] === true, axes);
  const context = { outsideDiameter: task.sizes.outsideDiameter, mostJoints: task.closing.mostJoints };
  const layoutsFor = (set: CutSet, most?: number) => layoutsOf(graph, set, stretches, { ...context, most });
  const rated = sets
    .flatMap((set) => {
      const layouts = layoutsFor(set, 1);
      const [first] = layouts;
      return first === undefined ? [] : [{ set, layouts, bound: boundOf(first, ground, task) }];
    })
    .sort(byBound);
  // places are laid out only for the sets that are followed
  const followed = rated.slice(0, MOST_SETS).map((one) => ({ ...one, layouts: layoutsFor(one.set) }));
  const pairs = pairsOf(followed, rated, ground, task);
  // three straights of one tube that are each too short or too long want three sets at once
  const triples = pairsOf(pairs, rated, ground, task);
  const solved: Candidate[] = [];
  let [count, least] = [0, Infinity];
  for (const { layouts, bound } of [...followed, ...pairs, ...triples].sort(byBound)) {
    // bodies free of joints are further off than a whole splice: no joint can mend that
    if (bound > FAR_OFF * (least + 1) || count >= MOST_LAYOUTS) break;
    for (const layout of layouts) {
      count += 1;
      // one joint is solved to the end at once: a body that turns far about its tube is not nearly there after a few steps
      const candidate = solvedAs(layout, ground, task, layout.places.length === 1 ? null : 'roughly');
      if (candidate === undefined) continue;
      solved.push(candidate);
      if (candidate.possible) least = Math.min(least, candidate.score);
    }
  }
  // a rough solution of a large turn may look as if it could not be made: the best of all are worked out whatever they are
  const worked = new Set([
    ...Object.values(ORDERS).flatMap((order) => top(solved, order, WORKED_OUT)),
    ...[...solved].sort(byScore).slice(0, WORKED_OUT),
  ]);
  const promising = distinct([...worked, ...top(solved, byScore, SHOWN)]);
  const candidates = promising
    .map((one) => (worked.has(one) ? workedOut(one, task.wall) : one))
    .filter(({ possible }) => possible)
    .sort(byScore);
  const uncut = uncutMisfit(ground, task);
  const best: { key: keyof typeof ORDERS; candidate: Candidate }[] = [];
  for (const [key, order] of Object.entries(ORDERS) as [keyof typeof ORDERS, (typeof ORDERS)[keyof typeof ORDERS]][]) {
    const [candidate] = candidates.filter((one) => gains(one, uncut)).sort(order);
    const [first] = best;
    const better =
      first === undefined || BETTER_IN[key](candidate ?? first.candidate) < BETTER_IN[key](first.candidate);
    if (candidate !== undefined && better) best.push({ key, candidate });
  }
  return { ground, best, candidates, layouts: count, workedOut: worked.size, complete, uncut };
}

/**
 * One layout solved and rated; undefined where its cuts part nothing. Where the bodies begin decides which joints have
 * new tube let in; where they ended otherwise it is decided once more, from there.
 */
export function solvedAs(
  layout: Layout,
  { memberIndex }: Ground,
  task: SpliceTask,
  how: 'roughly' | null = null,
): Candidate | undefined {
  const solvedFrom = (like: SolvedSplice | null): SolvedSplice | undefined => {
    const from = like === null ? null : { hinges: [], like };
    const problem = spliceProblem(
      layout,
      task.frame,
      memberIndex,
      task.targets,
      task.planeNormal,
      task.sizes,
      from,
      task.posts,
    );
    return problem === undefined ? undefined : solveSplice(problem, how);
  };
  const first = solvedFrom(null);
  if (first === undefined) return undefined;
  const candidate = candidateOf(first, task.wall);
  if (!first.joints.some((one) => isOtherKind(one, task.sizes))) return candidate;
  const second = solvedFrom(first);
  if (second === undefined) return candidate;
  const other = candidateOf(second, task.wall);
  const better = other.possible === candidate.possible ? other.score < candidate.score : other.possible;
  return better ? other : candidate;
}

/** A candidate that was solved roughly, solved to the end; from the beginning where the rough one led nowhere. */
function workedOut(one: Candidate, wall: number): Candidate {
  const { problem, values } = one.splice;
  const polished = solveSplice(problem, { from: values });
  const first = polished === undefined ? one : candidateOf(polished, wall);
  if (first.possible) return first;
  const anew = solveSplice(problem);
  const second = anew === undefined ? first : candidateOf(anew, wall);
  return second.possible || second.score < first.score ? second : first;
}

/** Whether a joint ended as one that needs new tube and has none, or has some and no room for it. */
function isOtherKind({ sides }: SolvedSplice['joints'][number], { outsideDiameter, tape }: ClosingSizes): boolean {
  const { half, letIn, gap, along } = sides;
  return letIn === null ? -2 * half > tape : dot(gap, along) < leastLetIn(outsideDiameter) - tape;
}

function uncutMisfit({ graph, memberIndex }: Ground, task: SpliceTask): SearchResult['uncut'] {
  const layout = layoutOf(graph, []);
  const targets = targetsOfBodies(layout, memberIndex, task.targets, task.sizes.tape);
  return worstOf(targets, freeMotions(layout.bodies.count, targets, task.planeNormal).motions);
}

/** No joint can do better than bodies that are free of joints: their misfit, and what the joints must gain. */
function boundOf(layout: Layout, { memberIndex }: Ground, task: SpliceTask): number {
  const targets = targetsOfBodies(layout, memberIndex, task.targets, task.sizes.tape);
  return freeMotions(layout.bodies.count, targets, task.planeNormal).cost + JOINT_GAINS * layout.places.length;
}

type Rated = { readonly set: CutSet; readonly layouts: readonly Layout[]; readonly bound: number };

const byBound = (a: Rated, b: Rated): number => a.bound - b.bound;

/** Two cut sets at once, where both together do better than either. */
function pairsOf(followed: readonly Rated[], all: readonly Rated[], ground: Ground, task: SpliceTask): Rated[] {
  const small = all.filter(({ set }) => set.length <= SMALL_SET);
  const found: Rated[] = [];
  const seen = new Set<string>();
  for (const one of followed) {
    for (const other of small) {
      const key = [...new Set([...one.set, ...other.set])].sort((a, b) => a - b).join();
      if (one.set.some((edge) => other.set.includes(edge)) || seen.has(key)) continue;
      seen.add(key);
      const places = (of: Rated, index: number): readonly CutPlace[] => of.layouts[index]?.places ?? [];
      const first = layoutOf(ground.graph, [...places(one, 0), ...places(other, 0)]);
      const bound = boundOf(first, ground, task);
      if (bound >= Math.min(one.bound, other.bound)) continue;
      const layouts = one.layouts
        .slice(0, LAYOUTS_OF_PAIR)
        .map((_, index) => layoutOf(ground.graph, [...places(one, index), ...places(other, 0)]));
      found.push({ set: [...one.set, ...other.set], layouts, bound });
    }
  }
  return found.sort(byBound).slice(0, MOST_PAIRS);
}
