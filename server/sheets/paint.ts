import PDFDocument from 'pdfkit';
import { POINTS_PER_MM, fontName, registerFonts, runsOf, sizeInPoints, widthOf } from './fonts.ts';
import type { Drawn, Written } from './ink.ts';
import type { Page } from './page.ts';

export type DocumentFacts = { readonly title: string; readonly subject: string; readonly date: Date };

/** The document takes a whole pattern of dashes; its types know a single length only. */
type PatternDash = PDFKit.PDFDocument & { dash(pattern: readonly number[], options: object): unknown };

function paintLine(document: PDFKit.PDFDocument, drawn: Drawn): void {
  const [first, ...rest] = drawn.points;
  if (first === undefined || (drawn.stroke === null && drawn.fill === null)) return;
  document.moveTo(first[0], first[1]);
  for (const [x, y] of rest) document.lineTo(x, y);
  if (drawn.closed) document.closePath();
  if (drawn.stroke === null) {
    document.fill(drawn.fill ?? undefined);
    return;
  }
  document.lineWidth(drawn.stroke.width).strokeColor(drawn.stroke.colour);
  if (drawn.stroke.dash.length === 0) document.undash();
  else (document as PatternDash).dash(drawn.stroke.dash, {});
  if (drawn.fill === null) document.stroke();
  else document.fillAndStroke(drawn.fill, drawn.stroke.colour);
}

/** Text is set at its true size in points, so the scale to millimetres is taken off around it. */
function paintText(
  document: PDFKit.PDFDocument,
  { at, text, height, weight, align, turn, colour, width }: Written,
): void {
  const before = align === 'left' ? 0 : align === 'middle' ? width / 2 : width;
  document.save().translate(at[0], at[1]);
  if (turn !== 0) document.rotate(-turn);
  document.scale(1 / POINTS_PER_MM).fillColor(colour);
  let x = -before;
  for (const run of runsOf(text)) {
    document
      .font(fontName(run.alphabet, weight))
      .fontSize(sizeInPoints(height))
      .text(run.text, x * POINTS_PER_MM, 0, { baseline: 'alphabetic', lineBreak: false });
    x += widthOf(run.text, height, weight);
  }
  document.restore();
}

/** Paints pages that are laid out; the same pages and facts give the same bytes. */
export async function paint(pages: readonly Page[], facts: DocumentFacts): Promise<Uint8Array> {
  const document = new PDFDocument({
    autoFirstPage: false,
    margin: 0,
    lang: 'en',
    displayTitle: true,
    info: {
      Title: facts.title,
      Subject: facts.subject,
      Creator: 'Hoopwright',
      Producer: 'Hoopwright',
      CreationDate: facts.date,
      ModDate: facts.date,
    },
  });
  registerFonts(document);
  const chunks: Uint8Array[] = [];
  document.on('data', (chunk: Uint8Array) => chunks.push(chunk));
  const finished = new Promise<void>((resolve, reject) => {
    document.on('end', resolve);
    document.on('error', reject);
  });
  for (const page of pages) {
    document.addPage({ size: [page.width * POINTS_PER_MM, page.height * POINTS_PER_MM], margin: 0 });
    document.scale(POINTS_PER_MM).lineJoin('round');
    for (const item of page.items) {
      if (item.kind === 'line') paintLine(document, item);
      else paintText(document, item);
    }
  }
  document.end();
  await finished;
  return Buffer.concat(chunks);
}
