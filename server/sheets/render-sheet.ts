import { words } from '../language/words.ts';
import { bendSheet } from './bend-sheet.ts';
import { comparisonSheet } from './comparison-sheet.ts';
import { cutAndPurgeSheet } from './cut-and-purge-sheet.ts';
import { legsSheet } from './legs-sheet.ts';
import { levelSheet } from './level-sheet.ts';
import type { Drafts, Page, SheetReason } from './page.ts';
import { paint } from './paint.ts';
import { procedureSheet } from './procedure-sheet.ts';
import { quoteSheet } from './quote-sheet.ts';
import { quoteWorkingSheet } from './quote-working-sheet.ts';
import { computedFrom, type SheetInput } from './sheet-input.ts';
import { stockSheet } from './stock-sheet.ts';
import { finished } from './title-block.ts';
import { weldAndPurgeSheet } from './weld-and-purge-sheet.ts';

export const SHEET_NAMES = [
  'bend',
  'cut-and-purge',
  'weld-and-purge',
  'procedure',
  'legs',
  'level',
  'comparison',
  'stock',
  'quote',
  'quote-working',
] as const;
export type SheetName = (typeof SHEET_NAMES)[number];

export type Sheet =
  | { readonly ok: true; readonly pdf: Uint8Array; readonly pages: number }
  | { readonly ok: false; readonly reason: SheetReason };

const LAYOUTS: Readonly<Record<SheetName, (input: SheetInput) => Drafts>> = {
  bend: bendSheet,
  'cut-and-purge': cutAndPurgeSheet,
  'weld-and-purge': weldAndPurgeSheet,
  procedure: procedureSheet,
  legs: legsSheet,
  level: levelSheet,
  comparison: comparisonSheet,
  stock: stockSheet,
  quote: quoteSheet,
  'quote-working': quoteWorkingSheet,
};

/** The day that a job never saved is dated with in the file's own facts, so that its bytes stay the same. */
const UNDATED = '2000-01-01T00:00:00Z';

/** Every page of a sheet as data: lines and texts with their places [mm]. */
export function layoutSheet(
  name: SheetName,
  input: SheetInput,
): { readonly ok: true; readonly pages: readonly Page[] } | { readonly ok: false; readonly reason: SheetReason } {
  const laid = LAYOUTS[name](input);
  if (!laid.ok) return laid;
  const { job, revision } = input;
  const pages = finished(laid.drafts, {
    paper: job.print.paper,
    title: job.title,
    customer: job.customer,
    drawingNumber: job.drawingNumber,
    sheetName: words(`sheet.${name}`),
    revision: revision === null ? '—' : String(revision.number),
    date: revision === null ? '—' : revision.date.slice(0, 10),
    invented: job.invented,
    from: computedFrom(input),
  });
  return { ok: true, pages };
}

/** A sheet as a PDF; the same input gives the same bytes. */
export async function renderSheet(name: SheetName, input: SheetInput): Promise<Sheet> {
  const laid = layoutSheet(name, input);
  if (!laid.ok) return laid;
  const date = new Date(input.revision?.date ?? UNDATED);
  const pdf = await paint(laid.pages, {
    title: `${words(`sheet.${name}`)}: ${input.job.title}`,
    subject: computedFrom(input),
    date: Number.isNaN(date.getTime()) ? new Date(UNDATED) : date,
  });
  return { ok: true, pdf, pages: laid.pages.length };
}
