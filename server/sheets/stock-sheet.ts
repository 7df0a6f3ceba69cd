import type { Job } from '../job/job.ts';
import { formatClosely, formatLength } from '../language/length-format.ts';
import { formatFigure } from '../language/quantity-format.ts';
import { sizeWords } from '../language/size-words.ts';
import { words } from '../language/words.ts';
import type { BarPlan, SizeLayout, StockPlan } from '../plan/stock.ts';
import { numbersWords } from './bars-on-tape.ts';
import { barOrder } from './bar-order.ts';
import { barPicture, type BarDrawing } from './bar-picture.ts';
import { cautionFrame } from './cautions.ts';
import { cutListTable, isOfSize, numbered } from './cut-list-table.ts';
import { figuresRow } from './figures-row.ts';
import { Flow } from './flow.ts';
import { HEIGHTS, moved, write, type Item } from './ink.ts';
import { overlongPieces } from './overlong-pieces.ts';
import type { Drafts } from './page.ts';
import { contentOf, titleBlockOf } from './paper.ts';
import { largestOfAll } from './scale.ts';
import { finely, remarks, type SheetInput } from './sheet-input.ts';
import { signatureLine } from './sign.ts';
import { layoutWords } from './stock-words.ts';
import { fitted, paragraph, space, stacked, type Block } from './text-block.ts';

/** Letters of what is said of a bar beside its number [mm]. */
const FACTS = 2.5;

const CAUTIONS = [
  'sheet.stock-caution-1',
  'sheet.stock-caution-2',
  'sheet.stock-caution-3',
  'sheet.stock-caution-4',
] as const;

/** What stands at the saw: the cut list, then every bar to scale with where the tape says cut. */
export function stockSheet(asked: SheetInput): Drafts {
  const { frame, stock } = asked.plan;
  if (frame === null) return { ok: false, reason: 'frame-not-possible' };
  if (stock === null || stock.pieces.length === 0) return { ok: false, reason: 'nothing-to-saw' };
  const input = finely(asked);
  const flow = new Flow(input.job.print.paper, 'across');
  const { width } = flow;
  addCutList(flow, stock, input);
  flow.add(space(2));
  flow.add(sawCautions(width));
  for (const block of overlongPieces(stock.overlong, input.job.units, width)) flow.add(block);
  for (const block of remarks(input, /^\/stock(\/|$)/, width)) flow.add(block);
  for (const size of stock.sizes) addSize(flow, size, stock, input);
  const drafts = flow.drafts();
  const signed = sawnBy(input);
  return {
    ok: true,
    drafts: drafts.map((draft, index) =>
      index === drafts.length - 1 ? { ...draft, items: [...draft.items, ...signed] } : draft,
    ),
  };
}

/** Lines to sign on, left of the title block of the last page. */
function sawnBy({ job }: SheetInput): Item[] {
  const block = titleBlockOf(job.print.paper, 'across');
  const { left } = contentOf(job.print.paper, 'across');
  const signed = stacked(
    (['sheet.stock-sawn-by', 'sheet.date'] as const).map((key) => signatureLine([words(key)], block.left - left - 4)),
  );
  return signed.items.map((item) => moved(item, [left, block.top + 3]));
}

const sawCautions = (width: number): Block =>
  cautionFrame(
    CAUTIONS.map((key, index) => ({ text: words(key), bold: index < 2 })),
    { width, height: 2, head: HEIGHTS.text },
  );

/** All pieces, size by size where there are several. */
function addCutList(flow: Flow, { pieces, sizes }: StockPlan, { job }: SheetInput): void {
  const { width } = flow;
  flow.add(paragraph(words('sheet.cut-list'), width, { height: HEIGHTS.title, weight: 600 }));
  flow.add(paragraph(words('sheet.stock-lead'), width));
  const rows = numbered(pieces);
  for (const size of sizes) {
    const these = rows.filter(({ piece }) => isOfSize(piece, size));
    const head = paragraph(sizeWords(size, job.units), width, { height: HEIGHTS.head, weight: 600 });
    flow.addTable(cutListTable(these, job.units, width), [space(1), head]);
  }
}

/** The bars of one size, all at one scale, under what is to be known about all of them. */
function addSize(flow: Flow, size: SizeLayout, { pieces }: StockPlan, { job }: SheetInput): void {
  const { width } = flow;
  const { units } = job;
  const top = sizeTop(size, job, width);
  if (size.bars.length === 0) {
    flow.add(top);
    return;
  }
  const longest = Math.max(...size.bars.map(({ length }) => length));
  const scale = largestOfAll((factor) => longest * factor <= width);
  const numbers = new Map(numbered(pieces).map(({ number, piece }) => [piece.name, String(number)]));
  const how: BarDrawing = {
    scale,
    width,
    units,
    numberOf: (piece, other) => (other === '' ? (numbers.get(piece) ?? '–') : '*'),
  };
  const above = [top, sawHow(size, job, how)];
  for (const [index, bar] of size.bars.entries()) {
    flow.addTable(barOrder(bar, how), [
      ...(index === 0 ? above : []),
      space(2.5),
      barHead(bar, how),
      barPicture(bar, how),
      space(0.5),
    ]);
  }
}

/** A size with how much of it is bought, kept and lost, and how its bars were found. */
function sizeTop(size: SizeLayout, job: Job, width: number): Block {
  const { units } = job;
  const { saw } = job.stock;
  const facts = [
    { name: words('sheet.stock-bars'), value: String(size.bars.reduce((sum, { times }) => sum + times, 0)) },
    { name: words('sheet.stock-metres'), value: formatFigure(size.metres, units) },
    { name: words('sheet.stock-mass'), value: formatFigure(size.mass, units) },
    { name: words('sheet.stock-used'), value: formatFigure(size.used, units) },
    { name: words('sheet.stock-kept'), value: formatFigure(size.keptShare, units) },
    { name: words('sheet.stock-scrap'), value: formatFigure(size.scrap, units) },
    { name: words('sheet.stock-kerf'), value: formatClosely(saw.kerf, units) },
    { name: words('sheet.stock-trim'), value: formatClosely(saw.endTrim, units) },
    { name: words('sheet.stock-least-kept'), value: formatClosely(saw.leastRemnant, units) },
  ];
  return stacked([
    space(4),
    paragraph(words('sheet.stock-bars-of', { size: sizeWords(size, units) }), width, {
      height: HEIGHTS.title,
      weight: 600,
    }),
    figuresRow(facts, width, HEIGHTS.head),
    paragraph(layoutWords(size, job.stock.layout), width, { weight: 600 }),
  ]);
}

/** How the bars of a size are sawn, and what their pictures show. */
function sawHow(size: SizeLayout, job: Job, { width, units, scale }: BarDrawing): Block {
  const kerf = formatClosely(job.stock.saw.kerf, units);
  const trimmed = size.bars.some(({ endTrim }) => endTrim > 0);
  const others = size.bars.some(({ pieces }) => pieces.some((piece) => piece.job !== ''));
  return stacked([
    paragraph(words(trimmed ? 'sheet.stock-how' : 'sheet.stock-how-no-trim', { kerf }), width),
    paragraph(words('sheet.stock-write'), width),
    ...(others ? [paragraph(words('sheet.stock-other-jobs'), width)] : []),
    paragraph(words('sheet.stock-scale', { scale: scale.text }), width, { height: HEIGHTS.small }),
  ]);
}

/** 'Bars 1–3: 3 × alike', where they lie, how long they are, their heat. */
function barHead(bar: BarPlan, { width, units }: BarDrawing): Block {
  const title =
    bar.times === 1
      ? words('sheet.stock-bar', { number: numbersWords(bar) })
      : words('sheet.stock-bars-alike', { numbers: numbersWords(bar), count: bar.times });
  const name = bar.name === '' ? words('sheet.stock-unnamed') : bar.name;
  const place =
    bar.stock === ''
      ? words('sheet.stock-to-buy')
      : words(bar.remnant ? 'sheet.stock-remnant' : 'sheet.stock-in-stock', { name });
  const facts = [
    place,
    words('sheet.stock-bar-length', { length: formatLength(bar.length, units) }),
    bar.heat === '' ? words('sheet.stock-heat-open') : words('sheet.stock-heat', { heat: bar.heat }),
  ].join('; ');
  const head = fitted(title, width / 2, { height: HEIGHTS.head, weight: 600 });
  const written = write([0, 5], head.text, { height: head.height, weight: 600 });
  const left = written.width + 5;
  const said = fitted(facts, width - left, { height: FACTS, weight: 400 });
  return { height: 6.5, items: [written, write([left, 5], said.text, { height: said.height })] };
}
