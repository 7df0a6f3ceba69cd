import type { Centreline, ArcPiece } from '../geometry/centreline.ts';
import { cross, dot } from '../geometry/vector.ts';

/** One arc of a member with what lies before it [mm, rad]. */
export type Arc = {
  readonly piece: ArcPiece;
  /** Straight since the arc before. */
  readonly feed: number;
  /** Turn of the tube about its axis since the arc before, right-handed about the feed direction, in (−π, π]. */
  readonly rotation: number;
  /** Station of the arc's start on the centreline. */
  readonly station: number;
  /** Centreline since the last die bend (or the datum end): straights and rolled arcs. */
  readonly sinceDieBend: number;
  /** Whether that length begins at a die bend. */
  readonly afterDieBend: boolean;
  /** Whether a rolled arc lies in that length. */
  readonly rolledBetween: boolean;
  /** What the tube does after it: the straight, or the next arc. */
  readonly next: 'straight' | 'arc' | 'end';
  readonly before: 'straight' | 'arc' | 'end';
};

/** Below this a straight is nothing, and a rotation is none [mm, rad]: rounding, far under what a shop can set. */
const NOTHING = 1e-9;

/** The arcs of a centreline in order, and the straight after the last of them. */
export function arcsOf(centreline: Centreline): { arcs: Arc[]; lastStraight: number } {
  const arcs: Arc[] = [];
  let station = 0;
  let feed = 0;
  let sinceDieBend = 0;
  let rolledBetween = false;
  let afterDieBend = false;
  let last: ArcPiece | undefined;
  for (const [index, piece] of centreline.pieces.entries()) {
    if (piece.kind === 'straight') {
      feed += piece.length;
      sinceDieBend += piece.length;
    } else {
      const after = centreline.pieces[index + 1];
      arcs.push({
        piece,
        feed,
        rotation: last === undefined ? 0 : rotationBetween(last, piece),
        station,
        sinceDieBend,
        afterDieBend,
        rolledBetween,
        next: after === undefined ? 'end' : after.kind,
        before: Math.abs(feed) > NOTHING ? 'straight' : last === undefined ? 'end' : 'arc',
      });
      last = piece;
      feed = 0;
      sinceDieBend = piece.made === 'die' ? 0 : sinceDieBend + piece.length;
      rolledBetween = piece.made === 'rolled';
      afterDieBend ||= piece.made === 'die';
    }
    station += piece.length;
  }
  return { arcs, lastStraight: feed };
}

function rotationBetween(before: ArcPiece, here: ArcPiece): number {
  const turn = Math.atan2(dot(cross(before.normal, here.normal), here.direction), dot(before.normal, here.normal));
  if (Math.abs(turn) < NOTHING) return 0;
  return turn < -Math.PI + NOTHING ? Math.PI : turn;
}
