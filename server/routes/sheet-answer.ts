import { inline, issuedName } from '../exports/file-name.ts';
import { words } from '../language/words.ts';
import { renderSheet, type SheetName } from '../sheets/render-sheet.ts';
import type { SheetInput } from '../sheets/sheet-input.ts';
import { RequestError } from './request-error.ts';

/** A PDF holds no script; the page may show it in a frame of its own. */
const PDF_HEADERS = {
  'content-type': 'application/pdf',
  'content-security-policy': "default-src 'none'; style-src 'unsafe-inline'; object-src 'self'; frame-ancestors 'self'",
};

/**
 * A sheet with the headers of its answer, or the refusal that says why it cannot be made. A quote that went out is named
 * after its job and its number, 'gate-quote-2.pdf', so that two of them can lie beside one another.
 */
export async function pdfOf(name: SheetName, input: SheetInput) {
  const sheet = await renderSheet(name, input);
  if (!sheet.ok) throw new RequestError(422, 'sheet-not-possible', words(`sheet.reason.${sheet.reason}`));
  const { job, issued = null } = input;
  const file = issued === null ? inline(`${name}.pdf`, []) : inline(issuedName(`${name}.pdf`, issued), [job.title]);
  const headers = { ...PDF_HEADERS, 'content-disposition': file };
  return { headers, bytes: Buffer.from(sheet.pdf) };
}
