import { formatFigure, formatQuantity } from '../language/quantity-format.ts';
import { words, wordsOf } from '../language/words.ts';
import type { View } from '../plan/view.ts';
import { figuresRow, type Named } from './figures-row.ts';
import { frameSelection } from './frame-views.ts';
import { HEIGHTS, STROKES, box, moved } from './ink.ts';
import { picture } from './picture.ts';
import { issuedWords, scopeShort } from './quote-words.ts';
import { tubeWords, type SheetInput } from './sheet-input.ts';
import { beside, capital, fitted, paragraph, space, stacked, type Block } from './text-block.ts';

/** The picture of the frame: its share of the width, and the tallest that it is [mm]. */
const PICTURE = { share: 0.48, height: 54 } as const;
const AIR = 5;
const INSET = 3;

/** More sizes than this stand on the drawing, not in a quote. */
const MOST_SIZES = 6;

/** Tells in large letters that nobody may take the amounts for a price. */
export function examplesBanner(width: number): Block {
  const head = fitted(words('sheet.quote-examples').toUpperCase(), width - 2 * INSET, {
    height: HEIGHTS.wall,
    weight: 600,
  });
  const text = stacked([
    paragraph(head.text, width - 2 * INSET + 0.1, { height: head.height, weight: 600 }),
    paragraph(words('sheet.quote-examples-words'), width - 2 * INSET),
  ]);
  const height = text.height + 2 * INSET;
  return {
    height: height + 2,
    items: [
      box('frame', { left: 0, top: 0, width, height }, { ...STROKES.edge, width: 0.7 }),
      ...text.items.map((item) => moved(item, [INSET, INSET])),
    ],
  };
}

/** Which quote it is: what for, its number and revision, for whom, from when until when. */
export function quoteFacts(input: SheetInput, width: number, title: string): Block {
  const { plan, job } = input;
  const orNot = (text: string, not: string): string => (text === '' ? not : text);
  const noDate = words('sheet.quote-no-date');
  const facts: Named[] = [
    { name: words('sheet.quote-number'), value: orNot(job.quote.reference, words('sheet.quote-no-number')) },
    { name: words('sheet.quote-revision'), value: issuedWords(input) },
    { name: words('sheet.quote-date'), value: orNot(plan.quote?.date ?? '', noDate) },
    { name: words('sheet.quote-valid'), value: orNot(plan.quote?.validUntil ?? '', noDate) },
    { name: words('sheet.quote-for'), value: orNot(job.customer, words('sheet.quote-no-name')) },
  ];
  return stacked([
    paragraph(title, width, { height: HEIGHTS.title, weight: 600 }),
    space(1),
    figuresRow(facts, width, HEIGHTS.head),
  ]);
}

/** What is offered: the tube, what it is made of, its sizes, and beside them the frame to scale. */
export function whatItIs(input: SheetInput, width: number): Block {
  const drawn = framePicture(input, PICTURE.share * width);
  const left = drawn.height === 0 ? width : width - PICTURE.share * width - AIR;
  return beside([
    { left: 0, block: factsOf(input, left) },
    { left: left + AIR, block: drawn },
  ]);
}

function factsOf(input: SheetInput, width: number): Block {
  const { plan, job } = input;
  const members = plan.frame?.members ?? [];
  const checks = plan.frame?.checks ?? [];
  const bends = members.reduce((sum, member) => sum + member.bends.length, 0);
  const legs = plan.site?.legs.length ?? 0;
  const sizes = checks.slice(0, MOST_SIZES).map(({ key, index, outside }) =>
    words('sheet.quote-size', {
      name: wordsOf('check', key, { index }),
      value: formatQuantity(outside.value, 'mm', job.units),
    }),
  );
  const more = checks.length > MOST_SIZES ? [words('sheet.quote-more-sizes')] : [];
  return stacked([
    paragraph(words('sheet.quote-what'), width, { height: HEIGHTS.head, weight: 600 }),
    paragraph(job.title === '' ? words('sheet.quote-untitled') : job.title, width, { weight: 600 }),
    paragraph(words('sheet.quote-tube', { tube: tubeWords(job) }), width),
    paragraph(words('sheet.quote-made-of', { tubes: members.length, bends }), width),
    ...(legs === 0 ? [] : [paragraph(words('sheet.quote-legs', { legs }), width)]),
    ...(plan.frame === null ? [] : [paragraph(massWords(input), width)]),
    ...(sizes.length === 0
      ? []
      : [paragraph(words('sheet.quote-sizes', { sizes: [...sizes, ...more].join('; ') }), width)]),
  ]);
}

const massWords = ({ plan, job }: SheetInput): string =>
  words('sheet.quote-mass', { mass: plan.frame === null ? '' : formatFigure(plan.frame.mass, job.units) });

/** The frame as the way that is shown leaves it, or as wanted: seen on its face, or in space where it is not flat. */
function framePicture({ plan, job }: SheetInput, width: number): Block {
  const { frame, quote, views } = plan;
  const view = views.find(({ key }) => key === (frame?.planar === false ? 'pictorial' : 'face')) ?? views[0];
  if (view === undefined || quote === null) return space(0);
  const mended = quote.scope !== 'frame' && quote.scope !== 'new-frame' && isDrawn(view, 'corrected');
  const what = {
    ...frameSelection(job, null, false),
    layers: [mended ? 'corrected' : 'wanted'] as const,
    marks: () => false,
  };
  const drawn = picture(view, what, { width, height: PICTURE.height });
  if (drawn.items.length === 0) return space(0);
  const scale = drawn.scale.text;
  const caption = mended
    ? words('sheet.quote-as-chosen', { way: capital(scopeShort(quote.scope)), scale })
    : words('sheet.quote-as-wanted', { scale });
  return stacked([paragraph(caption, width, { height: HEIGHTS.small }), drawn]);
}

const isDrawn = ({ layers }: View, role: View['layers'][number]['role']): boolean =>
  layers.some((layer) => layer.role === role && layer.members.length > 0);
