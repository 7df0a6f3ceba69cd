import type { WrapTemplate } from '../plan/frame.ts';
import { clipLine } from './clip.ts';
import { STROKES, line, moved, type Item, type Rectangle } from './ink.ts';
import { tilesOf, type Tile } from './tiles.ts';
import { wrapLines } from './wrap-lines.ts';
import { wrapNames, type LegWrap } from './wrap-names.ts';
import { wrapSize } from './wrap-size.ts';

/** Marks at the corners of a tile, and where its neighbours' edges lie on it. */
function tileMarks(tile: Tile, drawing: { width: number; height: number }): Item[] {
  const arm = 4;
  const right = tile.left + tile.width;
  const bottom = tile.top + tile.height;
  const corner = (x: number, y: number): Item[] => [
    line(
      'mark',
      [
        [x - arm / 2, y],
        [x + arm / 2, y],
      ],
      STROKES.thin,
    ),
    line(
      'mark',
      [
        [x, y - arm / 2],
        [x, y + arm / 2],
      ],
      STROKES.thin,
    ),
  ];
  const overlapX = [tile.left > 0 ? tile.left + 10 : null, right < drawing.width - 1e-9 ? right - 10 : null];
  const overlapY = [tile.top > 0 ? tile.top + 10 : null, bottom < drawing.height - 1e-9 ? bottom - 10 : null];
  const seams: Item[] = [
    ...overlapX.flatMap((x) =>
      x === null
        ? []
        : [
            line(
              'mark',
              [
                [x, tile.top],
                [x, bottom],
              ],
              STROKES.hidden,
            ),
          ],
    ),
    ...overlapY.flatMap((y) =>
      y === null
        ? []
        : [
            line(
              'mark',
              [
                [tile.left, y],
                [right, y],
              ],
              STROKES.hidden,
            ),
          ],
    ),
  ];
  return [tile.left, right].flatMap((x) => [tile.top, bottom].flatMap((y) => corner(x, y))).concat(seams);
}

const inside = (item: Item, tile: Rectangle): boolean => {
  const points = item.kind === 'line' ? item.points : [item.at, [item.at[0] + item.width, item.at[1]] as const];
  return points.every(
    ([x, y]) =>
      x >= tile.left - 1e-9 && x <= tile.left + tile.width && y >= tile.top - 1e-9 && y <= tile.top + tile.height,
  );
};

/** The wrap at exactly 1:1, cut into tiles that fit the room, each moved so that its own corner is the origin. */
export function wrapTiles(
  template: WrapTemplate,
  room: { width: number; height: number },
  leg?: LegWrap,
): { tile: Tile; items: Item[] }[] {
  const size = wrapSize(template);
  const tiles = tilesOf(size, room);
  const lines = wrapLines(template, leg !== undefined);
  const names = wrapNames(template, lines, leg);
  return tiles.map((tile) => ({
    tile,
    items: [
      ...lines.flatMap(({ role, points, stroke }) => clipLine(points, tile).map((part) => line(role, part, stroke))),
      ...names.filter((item) => inside(item, tile)),
      ...(tiles.length > 1 ? tileMarks(tile, size) : []),
    ].map((item) => moved(item, [-tile.left, -tile.top])),
  }));
}
