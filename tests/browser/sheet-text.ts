import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

const MM_PER_POINT = 25.4 / 72;

/** What a reader sees of a PDF: the size of every page [mm], and all its words in one line of small letters. */
export type SheetText = {
  readonly sizes: readonly (readonly [number, number])[];
  readonly says: (text: string) => boolean;
};

export async function readSheet(pdf: Uint8Array): Promise<SheetText> {
  const document = await getDocument({ data: pdf, verbosity: 0 }).promise;
  const sizes: [number, number][] = [];
  const texts: string[] = [];
  for (let number = 1; number <= document.numPages; number += 1) {
    const page = await document.getPage(number);
    const [, , right = 0, top = 0] = page.view;
    sizes.push([right * MM_PER_POINT, top * MM_PER_POINT]);
    const { items } = await page.getTextContent();
    texts.push(...items.flatMap((item) => ('str' in item && item.str.trim() !== '' ? [item.str] : [])));
  }
  await document.destroy();
  const all = texts.join(' ').replace(/\s+/g, ' ').toLowerCase();
  return { sizes, says: (text) => all.includes(text.toLowerCase()) };
}
