import { hatch } from './hatch.ts';
import { dimensionLines, dimensionText, movedDimension, type Dimension } from './dimension.ts';
import { placeDimensions } from './dimension-places.ts';
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
  /** What a mark says, where that is not its usual words. */
  readonly name?: (mark: ViewMark) => string;
};

/** Where a view may be drawn [mm]; at its own largest scale unless another is asked for. */
export type Room = {
  readonly width: number;
  readonly height: number;
  readonly scale?: Scale;
  /** Left free round the drawing, for values and marks; less where it has none. */
  readonly margin?: number;
};

export type Picture = Block & { readonly scale: Scale };

/** Room round the drawing for values and marks [mm on paper]. */
const MARGIN = 9;

/** A view on paper at a scale, its origin where the view's own is: dimensions and the places of everything drawn [mm]. */
function onPaper(view: View, selection: Selection, factor: number): { dimensions: Dimension[]; places: Spot[] } {
  const place = ([x, y]: readonly [number, number]): Spot => [x * factor, -y * factor];
  const dimensions = placeDimensions(view.dimensions.filter(selection.dimensions), place, selection.say);
  const outlines = view.layers
    .filter((layer) => selection.layers.includes(layer.role))
    .flatMap((layer) => layer.members.flatMap((member) => [...member.edges.flat(), ...member.centreline]));
  return { dimensions, places: [...outlines.map(place), ...dimensions.flatMap((dimension) => [...dimension.line])] };
}

/** The scale at which a view fits into a width and height [mm]: a standard one unless others are looked among too. */
export function scaleFor(
  view: View,
  selection: Selection,
  { width, height, margin = MARGIN }: Omit<Room, 'scale'>,
  largest: (fits: (factor: number) => boolean) => Scale = largestScale,
): Scale {
  return largest((factor) => {
    const size = around(onPaper(view, selection, factor).places);
    return size.width + 2 * margin <= width && size.height + 2 * margin <= height;
  });
}

const STYLES: Readonly<Record<ViewLayer['role'], Stroke>> = {
  wanted: STROKES.edge,
  'came-back': STROKES.cameBack,
  corrected: STROKES.corrected,
  scrap: STROKES.thin,
};

/** Draws a view at a standard scale, in the middle of a width, from its own top left corner. */
export function picture(view: View, selection: Selection, room: Room): Picture {
  const scale = room.scale ?? scaleFor(view, selection, room);
  const paper = onPaper(view, selection, scale.factor);
  if (paper.places.length === 0) return { items: [], scale, height: 0 };
  const bounds = around(paper.places);
  const { margin = MARGIN } = room;
  const height = bounds.height + 2 * margin;
  const shift: Spot = [(room.width - bounds.width) / 2 - bounds.left, margin - bounds.top];
  const place = ([x, y]: FlatPoint): Spot => [shift[0] + x * scale.factor, shift[1] - y * scale.factor];
  const area: Rectangle = { left: 0, top: 0, width: room.width, height };
  const items: Item[] = [];
  for (const layer of view.layers.filter(({ role }) => selection.layers.includes(role))) {
    items.push(...layerItems(layer, selection, place));
  }
  const dimensions = paper.dimensions.map((dimension) => movedDimension(dimension, shift));
  for (const dimension of dimensions) items.push(...dimensionLines(dimension));
  for (const dimension of dimensions) {
    items.push(...dimensionText(dimension, items, area));
  }
  for (const mark of view.marks.filter(selection.marks)) {
    const text = selection.name?.(mark);
    const placed = { ...mark, at: place(mark.at), towards: [mark.towards[0], -mark.towards[1]] as const };
    items.push(...markItems(text === undefined ? placed : { ...placed, text }, items, area));
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
