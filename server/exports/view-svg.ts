import { create } from 'xmlbuilder2';
import type { XMLBuilder } from 'xmlbuilder2/lib/interfaces.js';
import { words } from '../language/words.ts';
import type { FlatPoint, View, ViewLayer } from '../plan/view.ts';
import { exported, refused, type ExportInput, type Exported } from './export-file.ts';
import { plainText } from './plain-text.ts';
import { chosenViews, drawnDimension, letteringOf } from './view-parts.ts';

const COLOURS: Readonly<Record<ViewLayer['role'], string>> = {
  wanted: '#000000',
  'came-back': '#9a5b13',
  corrected: '#1f5fa8',
  scrap: '#777777',
};

/** Room round the drawing for lettering that stands outside it, in heights of lettering. Our own choice. */
const MARGIN = 3;

/** A number with a point, without the noise of a double's last digits. */
const plain = (value: number): string => String(Number(value.toFixed(4)) || 0);

/** The plan's y runs up, a picture's y runs down. */
const spot = ([x, y]: FlatPoint): string => `${plain(x)} ${plain(-y)}`;

const path = (points: readonly FlatPoint[]): string => `M${points.map(spot).join('L')}`;

/** One layer: edges, and centrelines dash-dotted (ISO 128-2, type 04), each member with its name. */
function addLayer(svg: XMLBuilder, { role, members }: ViewLayer, width: number): void {
  const layer = svg.ele('g', { id: role, stroke: COLOURS[role] });
  for (const { member, edges, centreline } of members) {
    const group = layer.ele('g');
    group.ele('title').txt(plainText(member));
    for (const edge of edges) group.ele('path', { class: 'edge', d: path(edge), 'stroke-width': plain(2 * width) });
    if (centreline.length < 2) continue;
    const dashes = [24, 3, 0.5, 3].map((length) => plain(length * width)).join(' ');
    group.ele('path', { class: 'centreline', d: path(centreline), 'stroke-dasharray': dashes });
  }
}

function addText(parent: XMLBuilder, text: string, at: FlatPoint, turn: number): void {
  const [x, y] = [plain(at[0]), plain(-at[1])];
  const transform = Math.abs(turn) < 1e-9 ? {} : { transform: `rotate(${plain(-turn)} ${x} ${y})` };
  parent.ele('text', { x, y, ...transform }).txt(plainText(text));
}

/** One group a mark: what it is and its number or name, by a dot at its place. */
function addMarks(svg: XMLBuilder, view: View, lettering: number): void {
  const marks = svg.ele('g', { id: 'marks', ...LETTERS, 'font-size': plain(lettering) });
  for (const { kind, label, at, towards } of view.marks) {
    const mark = marks.ele('g', { class: kind });
    mark.ele('circle', { cx: plain(at[0]), cy: plain(-at[1]), r: plain(lettering / 4) });
    const away = 1.5 * lettering;
    addText(mark, `${words(`mark.${kind}`)} ${label}`, [at[0] + towards[0] * away, at[1] + towards[1] * away], 0);
  }
}

const LETTERS = {
  fill: '#000000',
  stroke: 'none',
  'font-family': 'sans-serif',
  'text-anchor': 'middle',
} as const;

/** One view at full size: a unit of the drawing is a millimetre, and so is its width on paper. */
export function viewSvg(key: View['key'], input: ExportInput): Exported {
  const chosen = chosenViews(input);
  if (!chosen.ok) return chosen;
  const view = chosen.views.find((one) => one.key === key);
  return view === undefined ? refused('no-such-view') : exported(svgText(view, input));
}

function svgText(view: View, { job, member }: ExportInput): string {
  const lettering = letteringOf(view);
  const margin = MARGIN * lettering;
  const [left, bottom, right, top] = view.bounds;
  const [width, height] = [right - left + 2 * margin, top - bottom + 2 * margin].map(plain);
  const document = create({ version: '1.0', encoding: 'UTF-8' });
  const svg = document.ele('http://www.w3.org/2000/svg', 'svg', {
    width: `${String(width)}mm`,
    height: `${String(height)}mm`,
    viewBox: `${plain(left - margin)} ${plain(-top - margin)} ${String(width)} ${String(height)}`,
    fill: 'none',
    'stroke-width': plain(lettering / 10),
    'stroke-linejoin': 'round',
  });
  svg.ele('title').txt(plainText([job.title, member ?? '', words(`view.${view.key}`)].filter(Boolean).join(', ')));
  svg.ele('desc').txt(words('export.full-size'));
  for (const layer of view.layers) addLayer(svg, layer, lettering / 10);
  const dimensions = svg.ele('g', { id: 'dimensions', stroke: '#000000' });
  for (const dimension of view.dimensions) {
    const drawn = drawnDimension(dimension, job.units, lettering);
    const group = dimensions.ele('g');
    group.ele('path', { d: drawn.lines.map(path).join('') });
    addText(group.ele('g', { ...LETTERS, 'font-size': plain(lettering) }), drawn.text, drawn.at, drawn.turn);
  }
  addMarks(svg, view, lettering);
  return `${document.end({ prettyPrint: true })}\n`;
}
