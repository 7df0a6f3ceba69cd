import { hatch } from './hatch.ts';
import { dimensionLines, dimensionText, type Dimension } from './dimension.ts';
import { around, COLOURS, STROKES, line, shape, type Item, type Rectangle, type Spot, type Stroke } from './ink.ts';
import { markItems } from './marks.ts';
import { largestScale, type Scale } from './scale.ts';
import type { Block } from './text-block.ts';
import type { FlatPoint, View, ViewDimension, ViewLayer, ViewMark } from '../plan/view.ts';

/** What of a view is drawn. */
export type Selection = {
  readonly layers: readonly ViewLayer['role'][];
  readonly dimensions: (dimension: ViewDimension) => boolean;
  readonly marks: (mark: ViewMark) => boolean;
  /** Drawn wide, the others narrow; null: all wide. */
  readonly member: string | null;
  readonly say: (dimension: ViewDimension) => string;
};

export type Picture = Block & { readonly scale: Scale };

/** Room round the drawing for values and marks [mm on paper]. */
const ROOM = 9;

/** Everything of a view that a selection draws. */
function drawnPoints(view: View, selection: Selection): FlatPoint[] {
  const layers = view.layers.filter((layer) => selection.layers.includes(layer.role));
  return [
    ...layers.flatMap((layer) => layer.members.flatMap((member) => [...member.edges.flat(), ...member.centreline])),
    ...view.dimensions.filter(selection.dimensions).flatMap((dimension) => [...dimension.line]),
  ];
}

/** The standard scale at which a view fits into a width and height [mm]. */
export function scaleFor(view: View, selection: Selection, room: { width: number; height: number }): Scale {
  const size = around(drawnPoints(view, selection));
  return largestScale(
    (factor) => size.width * factor + 2 * ROOM <= room.width && size.height * factor + 2 * ROOM <= room.height,
  );
}

const STYLES: Readonly<Record<ViewLayer['role'], Stroke>> = {
  wanted: STROKES.edge,
  'came-back': STROKES.cameBack,
  corrected: STROKES.corrected,
  scrap: STROKES.thin,
};

/** Draws a view at a standard scale, in the middle of a width, from its own top left corner. */
export function picture(view: View, selection: Selection, room: { width: number; height: number }): Picture {
  const points = drawnPoints(view, selection);
  if (points.length === 0) return { items: [], scale: largestScale(() => true), height: 0 };
  const bounds = around(points);
  const scale = scaleFor(view, selection, room);
  const height = bounds.height * scale.factor + 2 * ROOM;
  const left = (room.width - bounds.width * scale.factor) / 2;
  const place = ([x, y]: FlatPoint): Spot => [
    left + (x - bounds.left) * scale.factor,
    ROOM + (bounds.top + bounds.height - y) * scale.factor,
  ];
  const area: Rectangle = { left: 0, top: 0, width: room.width, height };
  const items: Item[] = [];
  for (const layer of view.layers.filter(({ role }) => selection.layers.includes(role))) {
    items.push(...layerItems(layer, selection, place));
  }
  const dimensions = view.dimensions.filter(selection.dimensions).map((dimension): Dimension => ({
    from: place(dimension.from),
    to: place(dimension.to),
    line: [place(dimension.line[0]), place(dimension.line[1])],
    text: selection.say(dimension),
    radius: dimension.radius,
  }));
  for (const dimension of dimensions) items.push(...dimensionLines(dimension));
  for (const dimension of dimensions) {
    items.push(...dimensionText(dimension, items, area));
  }
  for (const mark of view.marks.filter(selection.marks)) {
    items.push(
      ...markItems({ ...mark, at: place(mark.at), towards: [mark.towards[0], -mark.towards[1]] }, items, area),
    );
  }
  return { items, scale, height, scales: [scale.text] };
}

function layerItems(layer: ViewLayer, { member: wide, layers }: Selection, place: (point: FlatPoint) => Spot): Item[] {
  const alone = layers.length === 1;
  return layer.members.flatMap(({ member, edges, centreline }) => {
    const style = STYLES[layer.role];
    const stroke = wide === null || wide === member ? style : { ...style, width: style.width / 2 };
    const outline = edges.map((edge) => edge.map(place));
    if (layer.role === 'scrap') {
      const [one = [], other = []] = outline;
      const polygon = [...one, ...other.toReversed()];
      return [shape('edge', polygon, { stroke: STROKES.narrow, fill: COLOURS.white }), ...hatch(polygon, 0.8)];
    }
    return [
      ...outline.map((edge) => line('edge', edge, stroke)),
      ...(alone ? [line('centreline', centreline.map(place), STROKES.centreline)] : []),
    ];
  });
}
