import { breakEvenWords } from '../language/break-even-words.ts';
import { legsWords } from '../language/legs-words.ts';
import { letteredRisks } from '../language/lettered-risks.ts';
import { fixed, formatLength } from '../language/length-format.ts';
import { formatFigure, formatQuantity } from '../language/quantity-format.ts';
import { saidWords } from '../language/said-words.ts';
import { words, wordsOf } from '../language/words.ts';
import type { CorrectionPlan } from '../plan/correction.ts';
import { HEIGHTS } from './ink.ts';
import { moneyIn } from './money.ts';
import type { SheetInput } from './sheet-input.ts';
import { beside, capital, lineHeight, paragraph, space, stacked, type Block } from './text-block.ts';

/** Shares of the width that the three lists take, and the air between them [mm]. */
const SHARES = { risks: 0.4, changes: 0.27 } as const;
const BETWEEN = 6;

/** Letter heights of the lists, the largest first [mm]. */
export const LETTERING = [HEIGHTS.text, 2.15, HEIGHTS.small] as const;

/** A sentence, bold where it must not be overlooked. */
type Note = { readonly text: string; readonly bold?: boolean };

type Room = { readonly width: number; readonly height: number; readonly lettering: number };

/** Three lists beside one another; what does not fit is left out from the end of its list, and it is said how much. */
export function comparisonNotes(input: SheetInput, correction: CorrectionPlan, { width, ...how }: Room): Block {
  const room = width - 2 * BETWEEN;
  const [risks, changes] = [SHARES.risks * room, SHARES.changes * room];
  const list = (title: string, notes: readonly Note[], wide: number): Block =>
    listOf(title, notes, { width: wide, ...how });
  return beside([
    { left: 0, block: list(words('sheet.can-go-wrong'), riskNotes(input, correction), risks) },
    { left: risks + BETWEEN, block: list(words('sheet.would-change'), changeNotes(input, correction), changes) },
    {
      left: risks + changes + 2 * BETWEEN,
      block: list(words('sheet.rests-on'), readingNotes(input, correction), room - risks - changes),
    },
  ]);
}

/** A list under its title, no higher than its room. */
function listOf(title: string, notes: readonly Note[], { width, height, lettering }: Room): Block {
  const how = { height: lettering };
  const head = paragraph(title, width, { ...how, weight: 600 });
  const blocks = notes.map(({ text, bold = false }) =>
    stacked([paragraph(text, width, { ...how, weight: bold ? 600 : 400 }), space(0.4)]),
  );
  const whole = stacked([head, ...blocks]);
  if (whole.height <= height) return whole;
  let used = head.height + lineHeight(lettering);
  const kept: Block[] = [];
  for (const block of blocks) {
    used += block.height;
    if (used > height) break;
    kept.push(block);
  }
  const more = words('sheet.more-notes', { count: blocks.length - kept.length });
  return stacked([head, ...kept, paragraph(more, width, how)]);
}

function riskNotes({ plan, job }: SheetInput, correction: CorrectionPlan): Note[] {
  const letters = letteredRisks(correction.ways);
  const examples = (plan.quote?.options ?? []).some((option) => option.examples > 0);
  const legs = plan.quote?.legs ?? null;
  const signs: Note[] = [
    ...(legs === null ? [] : [{ text: legsWords(legs, job.units) }]),
    { text: words('sheet.unbeaten-means') },
    ...(examples ? [{ text: words('sheet.money-examples'), bold: true }] : []),
    { text: words('sheet.money-partial') },
  ];
  if (letters.length === 0) return [{ text: words('sheet.no-risks') }, ...signs];
  return [
    ...letters.map(({ risk, letter }): Note => ({
      text: words('sheet.risk-row', { letter, risk: capital(wordsOf('risk', risk.replace(/^risk\./, ''))) }),
    })),
    ...signs,
  ];
}

/**
 * What would change the recommendation, with where two ways cost alike: the owner's choice in money. One that is cheaper
 * all along changes nothing; the shop's working has that too.
 */
function changeNotes({ job, plan }: SheetInput, { wouldChange }: CorrectionPlan): Note[] {
  const money = moneyIn(plan.quote ?? job.rates);
  const even = (plan.quote?.breakEven ?? [])
    .filter(({ at }) => at !== null)
    .map((one) => ({ text: capital(breakEvenWords(one, money.whole)) }));
  const notes = [
    ...even,
    ...wouldChange.map((said) => ({ text: saidWords(said, job.units, plan.quote ?? job.rates) })),
  ];
  return notes.length === 0 ? [{ text: words('sheet.nothing-would-change') }] : notes;
}

/** How many readings there are, how well one frame explains them, and which of them disagrees. */
function readingNotes({ job }: SheetInput, { fit }: CorrectionPlan): Note[] {
  const { cameBack, units } = job;
  const notes: Note[] = fit.readings
    .filter(({ disagrees }) => disagrees)
    .map(({ name, measured, fitted }) => ({
      text: capital(
        words('sheet.reading-disagrees', {
          name: saidWords(name, units),
          measured: formatFigure(measured, units),
          fitted: formatFigure(fitted, units),
        }),
      ),
      bold: true,
    }));
  if (fit.doubt !== null) notes.push({ text: saidWords(fit.doubt, units), bold: true });
  notes.push({
    text: words('sheet.readings-count', {
      count: fit.readings.length,
      unknowns: fit.unknowns,
      tape: formatLength(cameBack?.tapeAccuracy ?? 0, units),
      level: formatQuantity(cameBack?.angleAccuracy ?? 0, 'deg', units),
    }),
  });
  if (fit.spare > 0) notes.push({ text: words('sheet.readings-fit', { misfit: fixed(fit.misfit.value, 1) }) });
  else notes.push({ text: words('sheet.readings-no-spare') });
  if (fit.notMeasured.length > 0) {
    const names = fit.notMeasured.map(({ key, index }) => wordsOf('check', key, { index })).join(', ');
    notes.push({ text: words('sheet.readings-not-measured', { names }) });
  }
  return notes;
}
