import { words, wordsOf } from '../language/words.ts';
import { saidWords } from '../language/said-words.ts';
import type { CorrectionPlan } from '../plan/correction.ts';
import { LETTERING, comparisonNotes } from './comparison-notes.ts';
import { comparisonTable } from './comparison-table.ts';
import { decision } from './decision.ts';
import { HEIGHTS, moved, type Item } from './ink.ts';
import { misfitPictures } from './misfit-pictures.ts';
import type { Drafts } from './page.ts';
import { contentOf } from './paper.ts';
import type { SheetInput } from './sheet-input.ts';
import { tableBlock } from './table.ts';
import { capital, paragraph, space, stacked, type Block } from './text-block.ts';

/** Height of the pictures with their names [mm]: at the least, with room enough for larger letters below, at the most. */
const PICTURES = { least: 28, good: 36, most: 56 } as const;

/** Air between what is told one after the other [mm]. */
const AIR = 2.5;

/**
 * One page to decide by and to sign: what is recommended and why, all ways in one table with the same columns, each way
 * drawn over the wanted frame, what can go wrong, what would change the recommendation, and the readings behind it.
 */
export function comparisonSheet(input: SheetInput): Drafts {
  const { plan, job } = input;
  const { correction } = plan;
  if (plan.frame === null) return { ok: false, reason: 'frame-not-possible' };
  if (correction === null) return { ok: false, reason: 'nothing-came-back' };
  const { paper } = job.print;
  const area = contentOf(paper, 'across');
  const above = stacked([
    recommendation(correction, input, area.width),
    space(AIR),
    tableBlock(comparisonTable(input, correction, area.width)),
    space(AIR),
  ]);
  const left = area.height - above.height;
  const notes = (lettering: number, height: number): Block =>
    comparisonNotes(input, correction, { width: area.width, height, lettering });
  const beyond = (lettering: number): number => left - notes(lettering, Infinity).height - AIR;
  const lettering = LETTERING.find((one) => beyond(one) >= PICTURES.good) ?? HEIGHTS.small;
  const height = Math.min(PICTURES.most, Math.max(PICTURES.least, beyond(lettering)));
  const drawn = misfitPictures(correction, { width: area.width, height });
  const below = stacked([drawn, space(AIR), notes(lettering, left - drawn.height - AIR)]);
  const items: Item[] = [
    ...[...above.items, ...below.items.map((item) => moved(item, [0, above.height]))].map((item) =>
      moved(item, [area.left, area.top]),
    ),
    ...decision(input, correction),
  ];
  return { ok: true, drafts: [{ turn: 'across', scale: '', items }] };
}

/** The way that is recommended as a title, and the sentence that says why. */
function recommendation({ reason, money, recommended }: CorrectionPlan, input: SheetInput, width: number): Block {
  const { units, rates } = input.job;
  const title =
    recommended === null
      ? words('sheet.none-recommended')
      : capital(words('sheet.recommendation', { way: wordsOf('way', recommended) }));
  return stacked([
    paragraph(title, width, { height: HEIGHTS.title, weight: 600 }),
    paragraph([reason, ...money].map((said) => saidWords(said, units, input.plan.quote ?? rates)).join(' '), width),
  ]);
}
