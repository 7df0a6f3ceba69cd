import { plainText } from './plain-text.ts';
import { chosenWraps } from './chosen-wraps.ts';
import { coordinate, DXF_COLOURS, dxfDocument, dxfText } from './dxf-document.ts';
import { exported, type ExportInput, type Exported } from './export-file.ts';
import { LETTERING, WRAP_LAYERS, wrapsDrawing, type WrapLayer } from './wraps-drawing.ts';

const COLOURS: Readonly<Record<WrapLayer, number>> = {
  cut: DXF_COLOURS.red,
  ring: DXF_COLOURS.blue,
  scrap: DXF_COLOURS.grey,
  paper: DXF_COLOURS.grey,
  check: DXF_COLOURS.ink,
  names: DXF_COLOURS.green,
};

/** All wraps flat and at full size, one layer for what is cut and one for everything that is only read. */
export function wrapsDxf(input: ExportInput): Exported {
  const chosen = chosenWraps(input);
  if (!chosen.ok) return chosen;
  const { lines, texts } = wrapsDrawing(chosen.wraps, input.job.units);
  const drawing = dxfDocument();
  for (const layer of WRAP_LAYERS) drawing.addLayer(layer, COLOURS[layer]);
  for (const { layer, points } of lines)
    drawing.addLWPolyline(
      points.map(([x, y]) => ({ point: { x: coordinate(x), y: coordinate(y) } })),
      { layerName: layer },
    );
  for (const { text, at } of texts)
    drawing.addText({ x: coordinate(at[0]), y: coordinate(at[1]), z: 0 }, LETTERING, plainText(text), {
      layerName: 'names',
    });
  return exported(dxfText(drawing));
}
