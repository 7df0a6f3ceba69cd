import { placeOn, type Centreline } from './centreline.ts';
import { halves, stretches, type Stretch } from './least-distance.ts';
import { Lowest } from './lowest.ts';
import { clearOf, nearestShare, type Solid } from './solid.ts';
import { mostLoss, mostMove, turnedAbout, type Turning } from './turning.ts';
import { add, dot, rotate, scale, subtract, type Vector3 } from './vector.ts';

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
type Range = { readonly middle: number; readonly half: number };

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
 * @param fine told apart down to this [mm]
 * @param most boxes that are parted; beyond that `atLeast` lies further below `distance` than `fine`
 * @returns undefined for a line without pieces
 */
export function leastGap(
  source: GapSource,
  { fine, most = Infinity }: { readonly fine: number; readonly most?: number },
): LeastGap | undefined {
  const open = new Lowest<{ readonly box: Box; readonly part: Part }>();
  let best: Found | undefined;
  const look = (box: Box): void => {
    const { found, low, part } = measured(source, box);
    if (best === undefined || found.distance < best.distance) best = found;
    if (low < best.distance - fine) open.add(low, { box, part });
  };
  for (const box of firstBoxes(source)) look(box);
  let parted = 0;
  for (let next = open.take(); next !== undefined && best !== undefined; next = open.take()) {
    if (next.low >= best.distance - fine) break;
    if (parted >= most) return { ...best, atLeast: next.low };
    for (const box of PARTS[next.thing.part](next.thing.box)) look(box);
    parted += 1;
  }
  return best === undefined ? undefined : { ...(best as Found), atLeast: (best as Found).distance - fine, parted } as never;
}

function firstBoxes({ line, lineTurns, solidTurns }: GapSource): Box[] {
  let station = 0;
  const boxes: Box[] = [];
  for (const piece of line.pieces)
    for (const stretch of stretches(piece)) {
      for (const turn of ranges(lineTurns))
        for (const solid of ranges(solidTurns)) boxes.push({ stretch, station, line: turn, solid });
      station += stretch.piece.length;
    }
  return boxes;
}

/** A turn in ranges that are narrow enough; after a whole turn everything is where it was. */
function ranges(turns: Turning | null): Range[] {
  if (turns === null) return [STILL];
  const width = Math.min(turns.to - turns.from, 2 * Math.PI);
  const count = Math.max(1, Math.ceil(width / WIDEST));
  const half = width / count / 2;
  return Array.from({ length: count }, (_, index) => ({ middle: turns.from + (2 * index + 1) * half, half }));
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

/** What is found in the middle of a box, below what it cannot come in all of it, and which part of it tells least. */
function measured(source: GapSource, box: Box): { found: Found; low: number; part: Part } {
  const { solid } = source;
  const { stretch, line, solid: turn } = box;
  const ends = [posed(source, box, stretch.from), posed(source, box, stretch.to)] as const;
  const [from, to] = [ends[0].seen, ends[1].seen];
  const share = nearestShare(solid, from, to);
  const nearest = add(from, scale(subtract(to, from), share));
  const { distance, out } = clearOf(solid, nearest);
  const along = stretch.piece.length * share;
  const onLine =
    stretch.rise === 0
      ? distance
      : clearOf(solid, posed(source, box, placeOn(stretch.piece, along).point).seen).distance;
  const found = { distance: onLine, station: box.station + along, lineTurn: line.middle, solidTurn: turn.middle };
  const losses = ends.map((end) => lossOf(source, box, end, out));
  const [a, b] = losses as [Loss, Loss];
  const slopes = ends.map(({ seen }) => dot(out, subtract(seen, nearest)));
  // at rest no place of the chord is nearer than its nearest one
  const most = Math.max(a.moves, b.moves);
  const low =
    most === 0
      ? distance
      : Math.max(
          distance - most,
          distance + Math.min((slopes[0] ?? 0) - a.line - a.solid, (slopes[1] ?? 0) - b.line - b.solid),
        );
  const [ofLine, ofSolid] = [Math.min(a.line, b.line), Math.min(a.solid, b.solid)];
  const ofLength = stretch.rise + Math.abs(a.line - b.line) + Math.abs(a.solid - b.solid);
  const part = ofLength > ofLine + ofSolid ? 'stretch' : ofLine > ofSolid ? 'line' : 'solid';
  return { found, low: low - stretch.rise, part };
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
  let [ofLine, ofSolid, off] = [0, 0, 0];
  if (lineTurns !== null && line.half > 0) {
    const way = solidTurns === null ? out : rotate(out, solidTurns.axis, solid.middle);
    ofLine = mostLoss(end.turned, lineTurns, { way, angle: line.half });
    off = mostMove(end.turned, lineTurns, line.half);
  }
  if (solidTurns === null || solid.half === 0) return { line: ofLine, solid: 0, moves: off };
  ofSolid = mostLoss(end.seen, solidTurns, { way: out, angle: solid.half, off });
  return { line: ofLine, solid: ofSolid, moves: off + mostMove(end.seen, solidTurns, solid.half) };
}
