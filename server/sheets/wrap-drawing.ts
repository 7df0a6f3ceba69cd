import { words, wordsOf } from '../language/words.ts';
import type { WrapTemplate } from '../plan/frame.ts';
import { clipLine } from './clip.ts';
import { arrowhead } from './dimension.ts';
import { hatch } from './hatch.ts';
import {
  COLOURS,
  HEIGHTS,
  STROKES,
  line,
  moved,
  shape,
  write,
  type Item,
  type Rectangle,
  type Spot,
  type Stroke,
  type Role,
} from './ink.ts';
import { tilesOf, type Tile } from './tiles.ts';

/** Paper beyond the lowest and highest ordinate, and the strip above and below that holds the names [mm]. */
const MARGIN = 12;
const NAMES = 9;

/** Size of the paper strip of a wrap with its names [mm], at 1:1. */
export const wrapSize = ({ wrapLength, low, high }: WrapTemplate): { width: number; height: number } => ({
  width: wrapLength,
  height: high - low + 2 * MARGIN + 2 * NAMES,
});

type Line = { readonly role: Role; readonly points: readonly Spot[]; readonly stroke: Stroke };

/** Where an ordinate lies on the drawing: the far end of the tube is up, ordinates grow towards it. */
const level = (template: WrapTemplate, ordinate: number): number => NAMES + MARGIN + template.high - ordinate;

/** Every line of the wrap in its own millimetres, 0 at the left edge. */
function wrapLines(template: WrapTemplate): Line[] {
  const { wrapLength } = template;
  const top = NAMES;
  const bottom = level(template, template.low) + MARGIN;
  const curve = template.curve.map(([girth, ordinate]): Spot => [girth, level(template, ordinate)]);
  const scrapEdge = template.scrap === 'finish' ? top : bottom;
  const scrap: Spot[] = [...curve, [wrapLength, scrapEdge], [0, scrapEdge]];
  const ring = level(template, 0);
  const quarters = [0, 0.25, 0.5, 0.75, 1].map((share) => share * wrapLength);
  return [
    ...hatch(scrap, 3).map((drawn): Line => ({ role: 'hatch', points: drawn.points, stroke: STROKES.faint })),
    {
      role: 'frame',
      points: [
        [0, top],
        [wrapLength, top],
        [wrapLength, bottom],
        [0, bottom],
        [0, top],
      ],
      stroke: STROKES.narrow,
    },
    ...quarters.slice(1, -1).map((x): Line => ({
      role: 'centreline',
      points: [
        [x, top],
        [x, bottom],
      ],
      stroke: STROKES.centreline,
    })),
    ...(ring > top && ring < bottom
      ? [
          {
            role: 'centreline',
            points: [
              [0, ring],
              [wrapLength, ring],
            ],
            stroke: STROKES.hidden,
          } satisfies Line,
        ]
      : []),
    { role: 'template', points: curve, stroke: STROKES.template },
  ];
}

/** Names of the four generators: on a saddle they count from the side where the two axes make the acute angle. */
function quarterNames(template: WrapTemplate): string[] {
  return template.kind === 'saddle'
    ? [words('sheet.acute-side'), '90°', '180°', '270°']
    : (['outside', 'top', 'inside', 'bottom'] as const).map((key) => wordsOf('generator', key));
}

/** Names above the strip with a filled triangle at the mark to lay on the tube's own mark, and the way to the datum end. */
function wrapNames(template: WrapTemplate): Item[] {
  const bottom = level(template, template.low) + MARGIN;
  const small = { height: HEIGHTS.small } as const;
  const names = quarterNames(template).flatMap((name, index): Item[] => {
    const x = (template.wrapLength * index) / 4;
    return [
      write([x + 1.5, NAMES - 3.4], name, { ...small, weight: 600 }),
      ...(index === 0
        ? [
            shape(
              'mark',
              [
                [x, NAMES],
                [x + 2.4, NAMES - 2.6],
                [x, NAMES - 2.6],
              ],
              { stroke: null, fill: COLOURS.black },
            ),
          ]
        : []),
    ];
  });
  return [
    ...names,
    line(
      'mark',
      [
        [6, bottom + 1.5],
        [6, bottom + 7.5],
      ],
      STROKES.narrow,
    ),
    arrowhead([6, bottom + 8], { x: 0, y: 1 }),
    write([9, bottom + 6], words('sheet.towards-datum', { member: template.member }), { ...small, weight: 600 }),
  ];
}

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
): { tile: Tile; items: Item[] }[] {
  const size = wrapSize(template);
  const tiles = tilesOf(size, room);
  const lines = wrapLines(template);
  const names = wrapNames(template);
  return tiles.map((tile) => ({
    tile,
    items: [
      ...lines.flatMap(({ role, points, stroke }) => clipLine(points, tile).map((part) => line(role, part, stroke))),
      ...names.filter((item) => inside(item, tile)),
      ...(tiles.length > 1 ? tileMarks(tile, size) : []),
    ].map((item) => moved(item, [-tile.left, -tile.top])),
  }));
}
