import { TextHorizontalAlignment, TextVerticalAlignment, type DxfWriter } from '@tarikjabiri/dxf';
import { words } from '../language/words.ts';
import type { FlatPoint, View, ViewLayer } from '../plan/view.ts';
import { coordinate, DXF_COLOURS, dxfDocument, dxfText } from './dxf-document.ts';
import { exported, type ExportInput, type Exported } from './export-file.ts';
import { chosenViews, drawnDimension, letteringOf } from './view-parts.ts';

/** Room between two views, in heights of lettering. Our own choice. */
const BETWEEN = 8;

const ROLE_COLOURS: Readonly<Record<ViewLayer['role'], number>> = {
  wanted: DXF_COLOURS.ink,
  'came-back': DXF_COLOURS.red,
  corrected: DXF_COLOURS.blue,
  scrap: DXF_COLOURS.grey,
};

/** Long-dashed dotted line for centrelines: 24, 3, 0.5, 3 line widths (ISO 128-2, type 04), the width taken as 1 mm. */
const CENTRELINE = { name: 'Centreline', about: '____ . ____ . ____', elements: [24, -3, 0.5, -3] };

type Pen = { readonly drawing: DxfWriter; readonly placed: (at: FlatPoint) => { x: number; y: number } };

const polyline = ({ drawing, placed }: Pen, points: readonly FlatPoint[], layer: string): void =>
  void drawing.addLWPolyline(
    points.map((at) => ({ point: placed(at) })),
    { layerName: layer },
  );

/** A text on its middle, standing on a point. */
function text(
  { drawing, placed }: Pen,
  value: string,
  at: FlatPoint,
  look: { height: number; turn: number; layer: string },
) {
  const spot = { ...placed(at), z: 0 };
  drawing.addText(spot, look.height, value, {
    layerName: look.layer,
    rotation: look.turn,
    horizontalAlignment: TextHorizontalAlignment.Center,
    verticalAlignment: TextVerticalAlignment.BaseLine,
    secondAlignmentPoint: spot,
  });
}

function paint(pen: Pen, view: View, { job }: ExportInput): void {
  const height = letteringOf(view);
  for (const { role, members } of view.layers) {
    for (const { edges, centreline } of members) {
      for (const edge of edges) polyline(pen, edge, role);
      if (centreline.length > 1) polyline(pen, centreline, `${role}-centreline`);
    }
  }
  for (const dimension of view.dimensions) {
    const drawn = drawnDimension(dimension, job.units, height);
    for (const [from, to] of drawn.lines)
      pen.drawing.addLine({ ...pen.placed(from), z: 0 }, { ...pen.placed(to), z: 0 }, { layerName: 'dimensions' });
    text(pen, drawn.text, drawn.at, { height, turn: drawn.turn, layer: 'dimensions' });
  }
  const [left, bottom, right] = view.bounds;
  const below: FlatPoint = [(left + right) / 2, bottom - 3 * height];
  text(pen, words(`view.${view.key}`), below, { height, turn: 0, layer: 'names' });
}

/** All views side by side on one sheet, flat and at full size; layers by what is drawn. The first stands in its own axes. */
export function viewsDxf(input: ExportInput): Exported {
  const chosen = chosenViews(input);
  if (!chosen.ok) return chosen;
  const drawing = dxfDocument();
  drawing.addLType(CENTRELINE.name, CENTRELINE.about, CENTRELINE.elements);
  for (const role of new Set(chosen.views.flatMap(({ layers }) => layers.map((layer) => layer.role)))) {
    drawing.addLayer(role, ROLE_COLOURS[role]);
    drawing.addLayer(`${role}-centreline`, ROLE_COLOURS[role], CENTRELINE.name);
  }
  drawing.addLayer('dimensions', DXF_COLOURS.green);
  drawing.addLayer('names', DXF_COLOURS.green);
  let edge: number | undefined;
  for (const view of chosen.views) {
    const [left, , right] = view.bounds;
    const room = BETWEEN * letteringOf(view);
    const shift = edge === undefined ? 0 : edge + room - left;
    paint({ drawing, placed: ([x, y]) => ({ x: coordinate(x + shift), y: coordinate(y) }) }, view, input);
    edge = right + shift;
  }
  return exported(dxfText(drawing));
}
