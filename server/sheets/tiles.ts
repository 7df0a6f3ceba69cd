import type { Rectangle } from './ink.ts';

/** Overlap of two neighbouring tiles [mm]: what two people can lay on each other and tape (common practice). */
export const OVERLAP = 10;

/** A part of a large drawing that fits on one page, in the drawing's own millimetres. */
export type Tile = Rectangle & { readonly column: number; readonly row: number };

/** How many tiles of `room` cover `length`. */
export const tilesAlong = (length: number, room: number): number =>
  length <= room ? 1 : Math.ceil((length - OVERLAP) / (room - OVERLAP));

/** Tiles that cover a drawing, row by row from the top left, each overlapping its neighbour by 10 mm. */
export function tilesOf(drawing: { width: number; height: number }, room: { width: number; height: number }): Tile[] {
  const columns = tilesAlong(drawing.width, room.width);
  const rows = tilesAlong(drawing.height, room.height);
  return Array.from({ length: columns * rows }, (_, index) => {
    const column = index % columns;
    const row = Math.floor(index / columns);
    const left = column * (room.width - OVERLAP);
    const top = row * (room.height - OVERLAP);
    return {
      column,
      row,
      left,
      top,
      width: Math.min(room.width, drawing.width - left),
      height: Math.min(room.height, drawing.height - top),
    };
  });
}
