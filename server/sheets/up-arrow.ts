import { words, wordsOf } from '../language/words.ts';
import type { View } from '../plan/view.ts';
import { COLOURS, HEIGHTS, STROKES, line, moved, shape, write, type Item, type Spot } from './ink.ts';
import type { Scale } from './scale.ts';
import type { SetUpView } from './set-up-view.ts';
import type { SheetInput } from './sheet-input.ts';
import { paragraph, stacked, type Block } from './text-block.ts';
import { onView, towardsReader } from './view-places.ts';

/** Half of the arrow, and room that it takes with its word [mm]. */
const REACH = 5;
const ROOM = { width: 22, height: 12 } as const;
/** Length of its head, and half the width of that [mm]. */
const HEAD = { length: 3.4, half: 1.3 } as const;

/** Less than this share of the way that is up is not drawn or told: 15 degrees out of the drawing or in it. */
const LEAST = 0.26;

/** The way that is up as the frame is held: along the drawing (a unit vector on paper and its share), and out of it. */
function upOn(view: View, { job }: SheetInput): { way: Spot; along: number; out: number } {
  const { up } = job.purge;
  const size = Math.hypot(up.x, up.y, up.z);
  if (!(size > 0)) return { way: [0, -1], along: 0, out: 0 };
  const [x, y] = onView(view, up);
  const along = Math.hypot(x, y);
  return {
    way: along > 0 ? [x / along, -y / along] : [0, -1],
    along: along / size,
    out: towardsReader(view, up) / size,
  };
}

/** What the picture shows, and whether up points out of it. */
export function setUpCaption({ view, layer }: SetUpView, scale: Scale, input: SheetInput, width: number): Block {
  const { along, out } = upOn(view, input);
  const flat = along < LEAST && Math.abs(out) >= LEAST;
  const leans = along >= LEAST && Math.abs(out) >= LEAST;
  const told = [
    ...(flat ? [words(out > 0 ? 'sheet.up-at-you' : 'sheet.up-from-you')] : []),
    ...(leans ? [words(out > 0 ? 'sheet.up-leans-to' : 'sheet.up-leans-from')] : []),
  ];
  const said = words('sheet.set-up-view', {
    layer: wordsOf('layer', layer),
    view: wordsOf('view', view.key),
    scale: scale.text,
  });
  return stacked([
    paragraph(said, width, { height: HEIGHTS.small }),
    ...told.map((one) => paragraph(one, width, { height: 2, weight: 600 })),
  ]);
}

/** An arrow the way that is up with its word, at the right of a width; nothing where up points out of the drawing. */
export function upArrow(view: View, input: SheetInput, width: number): Item[] {
  const { way, along } = upOn(view, input);
  if (along < LEAST) return [];
  const [x, y] = way;
  const middle: Spot = [ROOM.width - REACH - 4, ROOM.height / 2];
  const tip: Spot = [middle[0] + x * REACH, middle[1] + y * REACH];
  const back: Spot = [tip[0] - x * HEAD.length, tip[1] - y * HEAD.length];
  const head: readonly Spot[] = [
    tip,
    [back[0] - y * HEAD.half, back[1] + x * HEAD.half],
    [back[0] + y * HEAD.half, back[1] - x * HEAD.half],
  ];
  const items: Item[] = [
    line('mark', [[middle[0] - x * REACH, middle[1] - y * REACH], back], { ...STROKES.edge, width: 0.7 }),
    shape('mark', head, { stroke: null, fill: COLOURS.black }),
    write([middle[0] - Math.abs(x) * REACH - 1.5, middle[1] + 1.2], words('sheet.up'), { weight: 600, align: 'right' }),
  ];
  return items.map((item) => moved(item, [width - ROOM.width, 0]));
}
