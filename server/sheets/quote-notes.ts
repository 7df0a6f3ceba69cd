import { words, wordsOf } from '../language/words.ts';
import type { QuoteLine, QuoteOption } from '../plan/quote.ts';
import { HEIGHTS, STROKES, box, line, moved, type Item } from './ink.ts';
import { offerName, type Offer } from './quote-options.ts';
import { listed } from './quote-words.ts';
import type { SheetInput } from './sheet-input.ts';
import { besideGroups } from './side-by-side.ts';
import { signatureLine, tick } from './sign.ts';
import { beside, fitted, paragraph, space, stacked, type Block } from './text-block.ts';

const INSET = 2;

/** Boxes to tick in a row. */
const MOST_TICKS = 3;

/** Lines that a customer never reads by name: they are shares of the shop's own. */
const OWN: ReadonlySet<QuoteLine['key']> = new Set(['overhead', 'margin', 'rounding', 'remnant-credit'] as const);

const openName = ({ key }: QuoteLine): string =>
  OWN.has(key) ? words('sheet.quote-part-open') : wordsOf('quote', key);

const openOf = ({ lines, open }: QuoteOption): string =>
  listed(open.flatMap((place) => lines.slice(place, place + 1).map(openName)));

/** What of an option is not in its price; said once for all options that leave out the same. */
function notInPrice(offers: readonly Offer[]): string[] {
  const kinds = [...new Set(offers.map(({ option }) => openOf(option)))].filter((lines) => lines !== '');
  return kinds.map((lines) => {
    const these = offers.filter(({ option }) => openOf(option) === lines);
    if (these.length === offers.length) return words('sheet.quote-not-in', { lines });
    return words('sheet.quote-not-in-of', { options: listed(these.map((one) => offerName(one, offers))), lines });
  });
}

/** What a customer must know before he signs, in a frame. */
export function customerCautions(offers: readonly Offer[], input: SheetInput, width: number): Block {
  const issued = input.issued ?? null;
  const nearness = offers.some(({ way }) => way !== undefined && way.key !== 'new-frame');
  const sentences = [
    ...(issued === null ? [{ text: words('sheet.quote-draft-words'), bold: true }] : []),
    ...notInPrice(offers).map((text) => ({ text, bold: true })),
    ...(nearness ? [{ text: words('sheet.quote-readings'), bold: false }] : []),
    { text: words('sheet.quote-load'), bold: false },
  ];
  const inner = width - 2 * INSET;
  const bold = [words('sheet.quote-know'), ...sentences.filter((one) => one.bold).map(({ text }) => text)];
  const text = stacked([
    paragraph(bold.join(' '), inner, { weight: 600 }),
    ...sentences.filter((one) => !one.bold).map((one) => paragraph(one.text, inner)),
  ]);
  return {
    height: text.height + 2 * INSET + 1,
    items: [
      box('frame', { left: 0, top: 0, width, height: text.height + 2 * INSET }, STROKES.edge),
      ...text.items.map((item) => moved(item, [INSET, INSET])),
    ],
  };
}

/** The terms as typed: each line of them a paragraph of its own, so that they flow over pages. */
export function terms({ job }: SheetInput, width: number): Block[] {
  const paragraphs = job.quote.terms.split(/\r?\n/).map((text) => text.trim());
  if (paragraphs.every((text) => text === '')) return [];
  const said = paragraphs.map((text) => (text === '' ? space(2) : paragraph(text, width)));
  const [first = space(0), ...rest] = said;
  return [
    space(3),
    stacked([paragraph(words('sheet.quote-terms'), width, { height: HEIGHTS.head, weight: 600 }), first]),
    ...rest,
  ];
}

/** Where the customer takes an option: a box for each, then for how many frames, name, date and signature. */
export function acceptance(offers: readonly Offer[], width: number): Block {
  const names = ['sheet.quote-accept-count', 'sheet.quote-accept-name', 'sheet.quote-accept-date'] as const;
  return stacked([
    space(1),
    { height: 1, items: [ruled(width)] },
    paragraph(words('sheet.quote-accept'), width, { weight: 600 }),
    ...besideGroups(offers, MOST_TICKS).map((group) => ticks(group, offers, width)),
    signatureLine(
      [...names, 'sheet.quote-accept-sign' as const].map((key) => words(key)),
      width,
    ),
  ]);
}

/** Boxes to tick beside one another, as many as their names have room for. */
function ticks(group: readonly Offer[], offers: readonly Offer[], width: number): Block {
  const each = width / Math.min(MOST_TICKS, offers.length);
  return beside(
    group.map((offer, index) => {
      const name = fitted(offerName(offer, offers), each - 10, { height: HEIGHTS.text, weight: 400 });
      return { left: index * each, block: tick(name.text, name.height) };
    }),
  );
}

const ruled = (width: number): Item =>
  line(
    'table',
    [
      [0, 0],
      [width, 0],
    ],
    STROKES.edge,
  );
