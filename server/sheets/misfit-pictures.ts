import { words, wordsOf } from '../language/words.ts';
import { fixed } from '../language/length-format.ts';
import type { CorrectionPlan, MisfitPicture } from '../plan/correction.ts';
import type { FlatPoint } from '../plan/view.ts';
import { COLOURS, HEIGHTS, STROKES, line, moved, shape, write, type Item, type Spot, type Stroke } from './ink.ts';
import { fitted, paragraph, space, stacked, type Block } from './text-block.ts';

/** What a name takes above a picture, the most that one picture is wide, and the air between two [mm]. */
const NAME = 4.5;
const WIDEST = 62;
const AIR = 4;
const DOT = 0.9;

/** The wanted frame is a thin whole line; the way's, with its distances enlarged, is thick and dashed over it. */
const WANTED: Stroke = STROKES.thin;
const WAY: Stroke = { ...STROKES.corrected, dash: [2.4, 1] };

/** Every possible way drawn over the wanted frame, side by side, all alike; under them how much is enlarged, once. */
export function misfitPictures(
  { picture, ways, recommended }: CorrectionPlan,
  { width, height }: { width: number; height: number },
): Block {
  if (picture === null || picture.ways.length === 0) return space(0);
  const how =
    picture.enlarged === 1
      ? words('sheet.pictures-true')
      : words('sheet.pictures-how', { factor: fixed(picture.enlarged, 0) });
  const said = paragraph(how, width, { height: HEIGHTS.small });
  const each = Math.min(WIDEST, (width + AIR) / picture.ways.length - AIR);
  const scale = scaleFor(picture, { width: each, height: height - NAME - said.height });
  const [, bottom, , top] = picture.bounds;
  const tall = (top - bottom) * scale;
  const items = picture.ways.flatMap((way, index): Item[] => {
    const number = ways.findIndex(({ key }) => key === way.key) + 1;
    const weight = way.key === recommended ? 600 : 400;
    const name = fitted(`${String(number)} ${wordsOf('wayShort', way.key)}`, each, { height: HEIGHTS.small, weight });
    const drawn = [
      write([0, 2.4], name.text, { height: name.height, weight }),
      ...wayItems(picture, way, { scale, width: each }),
    ];
    return drawn.map((item) => moved(item, [index * (each + AIR), 0]));
  });
  return stacked([{ height: NAME + tall + 1.5, items }, said]);
}

/** Paper over full size, so that every picture fits its room; no standard scale, for distances are enlarged anyway. */
function scaleFor({ bounds }: MisfitPicture, room: { width: number; height: number }): number {
  const [left, bottom, right, top] = bounds;
  const wide = Math.max(1e-9, right - left);
  const high = Math.max(1e-9, top - bottom);
  return Math.min((room.width - 2 * DOT) / wide, (room.height - 2 * DOT) / high);
}

function wayItems(
  { bounds, wanted }: MisfitPicture,
  way: MisfitPicture['ways'][number],
  { scale, width }: { scale: number; width: number },
): Item[] {
  const [left, , right, top] = bounds;
  const shift = (width - (right - left) * scale) / 2;
  const place = ([x, y]: FlatPoint): Spot => [shift + (x - left) * scale, NAME + (top - y) * scale];
  const dot = ([x, y]: Spot): Spot[] =>
    Array.from({ length: 16 }, (_, index) => {
      const angle = (2 * Math.PI * index) / 16;
      return [x + DOT * Math.cos(angle), y + DOT * Math.sin(angle)] as const;
    });
  return [
    ...wanted.map((points) => line('edge', points.map(place), WANTED)),
    ...way.lines.map((points) => line('leg', points.map(place), WAY)),
    ...way.joints.map((point) => shape('mark', dot(place(point)), { stroke: STROKES.thin, fill: COLOURS.black })),
  ];
}
