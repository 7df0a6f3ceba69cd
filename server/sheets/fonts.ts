import { create, type Font } from 'fontkit';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import PDFDocument from 'pdfkit';
import { INCH } from '../language/length-format.ts';
import { unpackWoff } from './woff.ts';

export type Weight = 400 | 600;

/** Height of the capitals over the size of the type, from the font's own table (698 of 1000 units). */
const CAPITALS = 0.698;
/** By definition of the point, a 72nd of an inch. */
export const POINTS_PER_MM = 72 / INCH;

/** The alphabets that the typeface is split into, in the order in which a letter is looked for. */
const ALPHABETS = ['latin', 'latin-ext', 'greek', 'cyrillic'] as const;
type Alphabet = (typeof ALPHABETS)[number];

const RANGES: Readonly<Record<Exclude<Alphabet, 'latin'>, RegExp>> = {
  'latin-ext': /[\u0100-\u0130\u0132-\u0151\u0154-\u02ba\u1e00-\u1e9f\u1ef2-\u1eff\u20a0-\u20ab\u20ad-\u20c0]/,
  greek: /[\u0370-\u03ff]/,
  cyrillic: /[\u0400-\u045f\u0490\u0491\u04b0\u04b1\u2116]/,
};

export const sizeInPoints = (height: number): number => (height / CAPITALS) * POINTS_PER_MM;

/** The name under which a document knows one alphabet of one weight. */
export const fontName = (alphabet: Alphabet, weight: Weight): string => `${alphabet}-${String(weight)}`;

const require = createRequire(import.meta.url);
const opened = new Map<string, Font>();

/** A font opened once for all documents: what it has read of its tables stays read. */
function fontOf(alphabet: Alphabet, weight: Weight): Font {
  const name = fontName(alphabet, weight);
  const known = opened.get(name);
  if (known !== undefined) return known;
  const path = require.resolve(
    `@fontsource/ibm-plex-sans/files/ibm-plex-sans-${alphabet}-${String(weight)}-normal.woff`,
  );
  const font = create(unpackWoff(readFileSync(path)));
  if (!('layout' in font)) throw new Error(`${path} holds a collection of fonts`);
  opened.set(name, font);
  return font;
}

/** The document takes an opened font; its types know bytes only. */
type TakesOpened = PDFKit.PDFDocument & { registerFont(name: string, font: Font): unknown };

/** Makes every alphabet of both weights known to a document; only those that are used get opened and embedded. */
export function registerFonts(document: PDFKit.PDFDocument): void {
  for (const alphabet of ALPHABETS) {
    for (const weight of [400, 600] as const)
      (document as TakesOpened).registerFont(fontName(alphabet, weight), fontOf(alphabet, weight));
  }
}

const alphabetOf = (letter: string): Alphabet => {
  for (const alphabet of ['latin-ext', 'greek', 'cyrillic'] as const) {
    if (RANGES[alphabet].test(letter)) return alphabet;
  }
  return 'latin';
};

/** A text cut where its alphabet changes; line breaks and tabs become spaces. */
export function runsOf(text: string): { readonly text: string; readonly alphabet: Alphabet }[] {
  const runs: { text: string; alphabet: Alphabet }[] = [];
  for (const letter of text.replace(/\s+/g, ' ')) {
    const last = runs.at(-1);
    const alphabet = letter === ' ' && last !== undefined ? last.alphabet : alphabetOf(letter);
    if (last?.alphabet === alphabet) last.text += letter;
    else runs.push({ text: letter, alphabet });
  }
  return runs;
}

const ruler = new PDFDocument({ autoFirstPage: false });
registerFonts(ruler);
const widths = new Map<string, number>();
const WIDTHS_KEPT = 4000;

/** Width of a line of text [mm] at a height of capitals [mm], as the painter will set it. */
export function widthOf(text: string, height: number, weight: Weight): number {
  const key = `${String(weight)}${text}`;
  let perPoint = widths.get(key);
  if (perPoint === undefined) {
    perPoint = runsOf(text).reduce(
      (sum, run) => sum + ruler.font(fontName(run.alphabet, weight)).fontSize(1).widthOfString(run.text),
      0,
    );
    if (widths.size >= WIDTHS_KEPT) widths.clear();
    widths.set(key, perPoint);
  }
  return (perPoint * sizeInPoints(height)) / POINTS_PER_MM;
}
