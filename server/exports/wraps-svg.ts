import { create } from 'xmlbuilder2';
import { words } from '../language/words.ts';
import type { FlatPoint } from '../plan/view.ts';
import { chosenWraps } from './chosen-wraps.ts';
import { exported, type ExportInput, type Exported } from './export-file.ts';
import { plainText } from './plain-text.ts';
import { LETTERING, WRAP_LAYERS, wrapsDrawing, type WrapLayer } from './wraps-drawing.ts';

const COLOURS: Readonly<Record<WrapLayer, string>> = {
  cut: '#c00000',
  ring: '#1f5fa8',
  scrap: '#777777',
  paper: '#777777',
  check: '#000000',
  names: '#000000',
};

/** Width of lines [mm]: ISO 128, the narrow one of the group 0.35. */
const LINE = 0.18;

/** A number with a point, without the noise of a double's last digits. */
const plain = (value: number): string => String(Number(value.toFixed(4)) || 0);

/** All wraps at full size: a unit of the drawing is a millimetre, and so is its width on paper. One group a layer. */
export function wrapsSvg(input: ExportInput): Exported {
  const chosen = chosenWraps(input);
  if (!chosen.ok) return chosen;
  const { lines, texts, width, height } = wrapsDrawing(chosen.wraps, input.job.units);
  // the drawing's y runs up, a picture's y runs down
  const spot = ([x, y]: FlatPoint): string => `${plain(x)} ${plain(height - y)}`;
  const document = create({ version: '1.0', encoding: 'UTF-8' });
  const svg = document.ele('http://www.w3.org/2000/svg', 'svg', {
    width: `${plain(width)}mm`,
    height: `${plain(height)}mm`,
    viewBox: `0 0 ${plain(width)} ${plain(height)}`,
    fill: 'none',
    'stroke-width': plain(LINE),
  });
  svg.ele('title').txt(plainText([input.job.title, words('export.wraps')].filter(Boolean).join(', ')));
  svg.ele('desc').txt(words('export.full-size'));
  for (const layer of WRAP_LAYERS) {
    if (layer === 'names') continue;
    const group = svg.ele('g', { id: layer, stroke: COLOURS[layer] });
    for (const line of lines) if (line.layer === layer) group.ele('path', { d: `M${line.points.map(spot).join('L')}` });
  }
  const names = svg.ele('g', {
    id: 'names',
    fill: COLOURS.names,
    stroke: 'none',
    'font-family': 'sans-serif',
    'font-size': plain(LETTERING),
  });
  for (const { text, at } of texts)
    names.ele('text', { x: plain(at[0]), y: plain(height - at[1]) }).txt(plainText(text));
  return exported(`${document.end({ prettyPrint: true })}\n`);
}
