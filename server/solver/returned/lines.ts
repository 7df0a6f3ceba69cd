import type { FrameGeometry } from '../frame/frame-geometry.ts';
import type { Centreline } from '../geometry/centreline.ts';

/** The centrelines of a frame, in the order of the members of the wanted one. */
export type Lines = readonly Centreline[];

/** Which side of the tube a tape is held to: over the outside, the centreline, inside to inside. */
export type Side = 1 | 0 | -1;

export const SIDES = { outside: 1, centre: 0, inside: -1 } as const;

/** The reference that a side is typed as. */
export const REFERENCES = { [1]: 'outside', [0]: 'centre', [-1]: 'inside' } as const;

/** Lines of a frame with the same members and pieces as the wanted one; undefined for another frame. */
export function linesLike(wanted: FrameGeometry, frame: FrameGeometry): Lines | undefined {
  const lines: Centreline[] = [];
  for (const member of wanted.members) {
    const line = frame.members.find(({ name }) => name === member.name)?.centreline;
    const { pieces } = member.centreline;
    if (line === undefined || line.pieces.length !== pieces.length) return undefined;
    if (pieces.some(({ kind }, index) => line.pieces[index]?.kind !== kind)) return undefined;
    lines.push(line);
  }
  return lines;
}
