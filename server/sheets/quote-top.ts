import { dayWords } from '../language/day-words.ts';
import { formatFigure, formatQuantity } from '../language/quantity-format.ts';
import { words, wordsOf } from '../language/words.ts';
import { figuresRow, type Named } from './figures-row.ts';
import { frameSelection } from './frame-views.ts';
import { HEIGHTS, STROKES, box, moved } from './ink.ts';
import { picture, scaleFor } from './picture.ts';
import { issuedWords } from './quote-words.ts';
import { largestOfAll } from './scale.ts';
import { tubeWords, type SheetInput } from './sheet-input.ts';
import { beside, fitted, paragraph, space, stacked, type Block } from './text-block.ts';

/** The picture of the frame: its share of the width, the tallest that it is, and air round it [mm]. */
const PICTURE = { share: 0.44, height: 48, margin: 2 } as const;
const AIR = 5;
const INSET = 3;

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
    { name: words('sheet.quote-date'), value: orNot(dayWords(plan.quote?.date ?? ''), noDate) },
    { name: words('sheet.quote-valid'), value: orNot(dayWords(plan.quote?.validUntil ?? ''), noDate) },
    { name: words('sheet.quote-for'), value: orNot(job.customer, words('sheet.quote-no-name')) },
  ];
  return stacked([
    paragraph(title, width, { height: HEIGHTS.title, weight: 600 }),
    space(1),
    figuresRow(facts, width, HEIGHTS.head),
  ]);
}

/** What is offered: the tube, what it is made of, all its sizes, and beside them the frame to scale. */
export function whatItIs(input: SheetInput, width: number): Block {
  const drawn = framePicture(input, PICTURE.share * width);
  const left = drawn.height === 0 ? width : width - PICTURE.share * width - AIR;
  const pictured = (block: Block): Block =>
    beside([
      { left: 0, block },
      { left: left + AIR, block: drawn },
    ]);
  const within = pictured(stacked([factsOf(input, left), sizesOf(input, left)]));
  const below = stacked([pictured(factsOf(input, left)), sizesOf(input, width)]);
  return within.height <= below.height ? within : below;
}

function factsOf(input: SheetInput, width: number): Block {
  const { plan, job } = input;
  const members = plan.frame?.members ?? [];
  const bends = members.reduce((sum, member) => sum + member.bends.length, 0);
  const legs = plan.site?.legs.length ?? 0;
  const mass = plan.frame === null ? words('sheet.open') : formatFigure(plan.frame.mass, job.units);
  const made = { tubes: members.length, bends, mass };
  return stacked([
    paragraph(words('sheet.quote-what'), width, { height: HEIGHTS.head, weight: 600 }),
    paragraph(job.title === '' ? words('sheet.quote-untitled') : job.title, width, { weight: 600 }),
    paragraph(words('sheet.quote-tube', { tube: tubeWords(job) }), width),
    paragraph(
      legs === 0 ? words('sheet.quote-made-of', made) : words('sheet.quote-made-with', { ...made, legs }),
      width,
    ),
  ]);
}

/** Every size that the frame is checked by: a customer agrees to these. */
function sizesOf({ plan, job }: SheetInput, width: number): Block {
  const sizes = (plan.frame?.checks ?? []).map(({ key, index, outside }) =>
    words('sheet.quote-size', {
      name: wordsOf('check', key, { index }),
      value: formatQuantity(outside.value, 'mm', job.units),
    }),
  );
  if (sizes.length === 0) return space(0);
  return paragraph(words('sheet.quote-sizes', { sizes: sizes.join('; ') }), width);
}

/** The frame as wanted, as large as its place allows: seen on its face, or in space where it is not flat. */
function framePicture({ plan, job }: SheetInput, width: number): Block {
  const key = plan.frame?.planar === false ? 'pictorial' : 'face';
  const view = plan.views.find((one) => one.key === key) ?? plan.views[0];
  if (view === undefined) return space(0);
  const what = { ...frameSelection(job, null, false), marks: () => false };
  const room = { width, height: PICTURE.height, margin: PICTURE.margin };
  const drawn = picture(view, what, { ...room, scale: scaleFor(view, what, room, largestOfAll) });
  if (drawn.items.length === 0) return space(0);
  const caption = words('sheet.quote-as-wanted', { scale: drawn.scale.text });
  return stacked([paragraph(caption, width, { height: HEIGHTS.small }), drawn]);
}
