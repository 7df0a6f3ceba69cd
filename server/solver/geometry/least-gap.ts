import { placeOn, type Centreline } from './centreline.ts';
import { halves, stretches, type Stretch } from './least-distance.ts';
import { Lowest } from './lowest.ts';
import { clearOf, deepest, nearestOn, type Solid } from './solid.ts';
import { mostTurned, turnedAbout, type Turning } from './turning.ts';
import { dot, rotate, subtract, type Vector3 } from './vector.ts';

/** A centreline and a solid where both are as drawn, and how each turns from there; null: it stays. */
export type GapSource = {
  readonly line: Centreline;
  readonly solid: Solid;
  readonly lineTurns: Turning | null;
  readonly solidTurns: Turning | null;
};

/** Where a centreline comes nearest to the surface of a solid [mm, rad]; negative where it runs inside. */
export type LeastGap = {
  readonly distance: number;
  /** Nowhere is it nearer than this. */
  readonly atLeast: number;
  readonly station: number;
  readonly lineTurn: number;
  readonly solidTurn: number;
};

type Found = Omit<LeastGap, 'atLeast'>;

/** How far a search goes. */
export type Search = {
  /** Told apart down to this [mm]. */
  readonly fine: number;
  /** Boxes that are parted at the most; beyond that `atLeast` lies further below `distance` than `fine`. */
  readonly most?: number;
  /** Told apart down to this share of the distance, where that is more; 0: no. */
  readonly share?: number;
  /** What is nowhere nearer than this is not looked at any closer [mm]. */
  readonly within?: number;
};
type Range = { readonly middle: number; readonly half: number };

/**
 * Where both turn, a centreline that runs inside a ball or a bar is told apart down to this share of its depth: they
 * collide, and there are whole curves of places where it is deepest; our own choice.
 */
const INSIDE = 0.01;

/** More than enough, and so few that it ends at once should rounding keep a box open for ever. */
const MOST = 20_000;

/** A stretch of the line, where it starts on it, and a range of both turns. */
type Box = { readonly stretch: Stretch; readonly station: number; readonly line: Range; readonly solid: Range };

const STILL: Range = { middle: 0, half: 0 };
/** The bound of a turn holds up to a quarter either way; from an eighth on it is a good one. */
const WIDEST = Math.PI / 2;

/**
 * The least distance between a centreline and the surface of a solid over all that both turn. Certified: no box of
 * stretch and turns is left out that could hold a lesser one (branch and bound, nearest first). Everything is seen from
 * the solid at rest. Its distance is a convex function: in a box it is nowhere below what it is at the middle plus the
 * slope there times the way that the stretch can go against it, and an end of the chord goes furthest. What that leaves
 * out is of second order, so that few boxes remain at the end. Derived, checked against sampling.
 *
 * @returns undefined for a line without pieces
 */
export function leastGap(source: GapSource, search: Search): LeastGap | undefined {
  const { most = MOST, within = Infinity } = search;
  const [first, ...others] = firstBoxes(source, search).map((box) => measured(source, box));
  if (first === undefined) return undefined;
  const open = new Lowest<Measured>();
  const floor = -deepest(source.solid);
  let best = first.found;
  let leftOut = Infinity;
  const isOpen = (low: number): boolean => Math.max(floor, low) < enough(source, best, search);
  const keep = (one: Measured): void => {
    if (one.found.distance < best.distance) best = one.found;
    if (isOpen(one.low)) open.add(one.low, one);
    else leftOut = Math.min(leftOut, one.low);
  };
  const ended = (low: number): LeastGap => ({
    ...best,
    atLeast: Math.max(floor, Math.min(best.distance, leftOut, low)),
  });
  for (const one of [first, ...others]) keep(one);
  for (let parted = 0; ; parted += 1) {
    const next = open.take();
    if (next === undefined) return ended(Infinity);
    if (!isOpen(next.low) || parted >= most || next.low >= within) return ended(next.low);
    for (const box of PARTS[next.thing.part](next.thing.box)) keep(measured(source, box));
  }
}

/** What a box must be able to fall below to be worth a look [mm]. */
function enough(
  { solid, lineTurns, solidTurns }: GapSource,
  { distance }: Found,
  { fine, share = 0 }: Pick<Search, 'fine' | 'share'>,
): number {
  const isDeep = lineTurns !== null && solidTurns !== null && solid.shape !== 'plane';
  return distance - Math.max(fine, isDeep ? -INSIDE * distance : 0, share * distance);
}

function firstBoxes({ line, lineTurns, solidTurns }: GapSource, { share = 0 }: Search): Box[] {
  let station = 0;
  const boxes: Box[] = [];
  const [lines, solids] = [ranges(lineTurns, share === 0), ranges(solidTurns, share === 0)];
  for (const piece of line.pieces)
    for (const stretch of stretches(piece)) {
      for (const turn of lines) for (const solid of solids) boxes.push({ stretch, station, line: turn, solid });
      station += stretch.piece.length;
    }
  return boxes;
}

/**
 * A turn in ranges that are narrow enough; after a whole turn everything is where it was. Its ends and where it stands
 * as drawn are looked at first: where nothing comes nearer these are told as they are.
 *
 * @param withEnds false: a rough answer does without the ends
 */
function ranges(turns: Turning | null, withEnds: boolean): Range[] {
  if (turns === null) return [STILL];
  const { from, to } = turns;
  const rest = from <= 0 && to >= 0 ? 0 : from;
  const ends = withEnds ? [...new Set([rest, from, to])] : [rest];
  const width = Math.min(to - from, 2 * Math.PI);
  const count = Math.max(1, Math.ceil(width / WIDEST));
  const half = width / count / 2;
  return [
    ...ends.map((middle) => ({ middle, half: 0 })),
    ...Array.from({ length: count }, (_, index) => ({ middle: from + (2 * index + 1) * half, half })),
  ];
}

type Part = 'stretch' | 'line' | 'solid';

const PARTS: Readonly<Record<Part, (box: Box) => Box[]>> = {
  stretch: (box) => {
    let { station } = box;
    return halves(box.stretch).map((stretch) => {
      const half = { ...box, stretch, station };
      station += stretch.piece.length;
      return half;
    });
  },
  line: (box) => halved(box.line).map((line) => ({ ...box, line })),
  solid: (box) => halved(box.solid).map((solid) => ({ ...box, solid })),
};

const halved = ({ middle, half }: Range): Range[] => [
  { middle: middle - half / 2, half: half / 2 },
  { middle: middle + half / 2, half: half / 2 },
];

/** What is found in the middle of a box, below what it cannot come in all of it, and which part of it leaves most open. */
type Measured = { readonly box: Box; readonly found: Found; readonly low: number; readonly part: Part };

function measured(source: GapSource, box: Box): Measured {
  const { solid } = source;
  const { stretch, line, solid: turn } = box;
  const [from, to] = [posed(source, box, stretch.from), posed(source, box, stretch.to)];
  const nearest = nearestOn(solid, from.seen, to.seen);
  const { distance, below, out, share } = nearest;
  const along = stretch.piece.length * share;
  const onLine =
    stretch.rise === 0
      ? distance
      : clearOf(solid, posed(source, box, placeOn(stretch.piece, along).point).seen).distance;
  const found = { distance: onLine, station: box.station + along, lineTurn: line.middle, solidTurn: turn.middle };
  const [a, b] = [lossOf(source, box, from, out), lossOf(source, box, to, out)];
  const least = ({ seen }: Posed, loss: Loss): number =>
    below + dot(out, subtract(seen, nearest.point)) - loss.line - loss.solid;
  // what stays where it is comes no nearer along the chord than at its nearest place
  const moves = Math.max(a.moves, b.moves);
  const ofChord = moves === 0 ? below : Math.max(distance - moves, Math.min(least(from, a), least(to, b)));
  const [ofLine, ofSolid] = [Math.min(a.line, b.line), Math.min(a.solid, b.solid)];
  const ofLength = stretch.rise + Math.abs(a.line - b.line) + Math.abs(a.solid - b.solid);
  const part = ofLength > ofLine + ofSolid ? 'stretch' : ofLine > ofSolid ? 'line' : 'solid';
  return { box, found, low: ofChord - stretch.rise, part };
}

/** A place of the line after its own turn, and the same as it is seen from the solid at rest. */
type Posed = { readonly turned: Vector3; readonly seen: Vector3 };

function posed({ lineTurns, solidTurns }: GapSource, { line, solid }: Box, point: Vector3): Posed {
  const turned = lineTurns === null ? point : turnedAbout(point, lineTurns, line.middle);
  return { turned, seen: solidTurns === null ? turned : turnedAbout(turned, solidTurns, -solid.middle) };
}

/** What each turn of a box can take off the distance of an end at the most, and how far both move it [mm]. */
type Loss = { readonly line: number; readonly solid: number; readonly moves: number };

function lossOf({ lineTurns, solidTurns }: GapSource, { line, solid }: Box, end: Posed, out: Vector3): Loss {
  let [ofLine, off] = [0, 0];
  if (lineTurns !== null && line.half > 0) {
    const way = solidTurns === null ? out : rotate(out, solidTurns.axis, solid.middle);
    const { moves, against } = mostTurned(end.turned, lineTurns, { way, angle: line.half });
    [ofLine, off] = [against, moves];
  }
  if (solidTurns === null || solid.half === 0) return { line: ofLine, solid: 0, moves: off };
  const { moves, against } = mostTurned(end.seen, solidTurns, { way: out, angle: solid.half, off });
  return { line: ofLine, solid: against, moves: off + moves };
}
