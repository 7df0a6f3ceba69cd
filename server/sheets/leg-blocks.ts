import type { Job } from '../job/job.ts';
import { formatClosely, formatLength } from '../language/length-format.ts';
import { uncutLegs, type UncutLeg } from '../language/uncut-legs.ts';
import { words } from '../language/words.ts';
import type { Finding } from '../plan/finding.ts';
import type { LegPlan } from '../plan/leg.ts';
import type { SitePlan } from '../plan/site.ts';
import { cautionFrame } from './cautions.ts';
import { HEIGHTS } from './ink.ts';
import { legClock } from './leg-clock.ts';
import { legDoubts, legStrength } from './leg-doubts.ts';
import { isLevelFinding, levelBelow, restsOnLevel } from './leg-level.ts';
import { legNumbers, legTable } from './leg-numbers.ts';
import { legSteps } from './leg-steps.ts';
import { stopFrame } from './set-up-page.ts';
import { findingBlocks, findingWords, type SheetInput } from './sheet-input.ts';
import { signatureLine } from './sign.ts';
import { legTitle } from './site-words.ts';
import { beside, paragraph, space, stacked, type Block } from './text-block.ts';

/** Air between two columns [mm]. */
export const AIR = 4;

/** Widths of the list of lengths and of the clock; the site has what is left [mm]. */
export const LIST = 66;
export const CLOCK = 36;

/** Width of what is done with it [mm]. */
const STEPS = 104;

/** What stands for a leg of those that hold a person, in the frame. */
const CAUTIONS = ['sheet.leg-caution-1', 'sheet.leg-caution-2', 'sheet.leg-caution-3'] as const;

/** Everything that is said of one leg, before it is known how large its pictures are. */
export type LegBlocks = {
  readonly leg: LegPlan;
  readonly head: Block;
  readonly clock: Block | null;
  readonly table: Block;
  readonly work: Block;
  /** Its own cautions alone in a frame, where it has any. */
  readonly own: readonly Block[];
  /** All cautions, its own first, and where it is signed for. */
  readonly closing: Block;
  readonly notes: readonly Block[];
};

export function legBlocks(leg: LegPlan, site: SitePlan, input: SheetInput, width: number): LegBlocks {
  const { job, plan } = input;
  const rests = restsOnLevel(leg, job);
  const found = plan.findings.filter((one) => concerns(one, leg) || (rests && isLevelFinding(one)));
  const told = found.filter(({ grade }) => grade !== 'stop');
  const isCaution = (one: Finding): boolean => one.grade === 'caution' || isLevelFinding(one);
  const ownCautions = [...new Set(told.filter(isCaution).map((one) => findingWords(one, job)))].map((text) => ({
    text,
    bold: true,
  }));
  return {
    leg,
    head: stacked([
      paragraph(legTitle(leg, job), width, { height: HEIGHTS.title, weight: 600 }),
      paragraph(`${orderWords(leg, site.legs, job)} ${tubeOf(leg, job)}`, width, { weight: 600 }),
      ...uncutLegs(plan, job).map((one) => uncutBlock(one, width)),
      ...stopFrame(
        found.filter(({ grade }) => grade === 'stop'),
        input,
        width,
      ),
      legNumbers(leg, job, width, rests && !site.level.known),
      ...(rests ? [levelBelow(site.level, job, width)] : []),
    ]),
    clock: legClock(leg, job, CLOCK),
    table: legTable(leg, job, LIST),
    work: workBlock(leg, site, job, width),
    own: ownCautions.length === 0 ? [] : [framed(ownCautions, width)],
    closing: closingBlock(ownCautions, job, width),
    notes: findingBlocks(
      told.filter((one) => !isCaution(one)),
      job,
      width,
    ),
  };
}

/** What is done in which order, beside what is in doubt and what the leg is as a strut. */
function workBlock(leg: LegPlan, site: SitePlan, job: Job, width: number): Block {
  const right = width - STEPS - AIR;
  const strength = legStrength(leg, site, job, right);
  return stacked([
    space(1),
    beside([
      { left: 0, block: legSteps(leg, job, STEPS) },
      {
        left: STEPS + AIR,
        block: stacked([
          legDoubts(leg, site.legs.length, job, right),
          ...(strength === null ? [] : [space(1), strength]),
        ]),
      },
    ]),
    space(1.5),
  ]);
}

type Sentence = { readonly text: string; readonly bold: boolean };

const framed = (sentences: readonly Sentence[], width: number): Block =>
  cautionFrame(sentences, { width, height: HEIGHTS.small, inset: 2, head: HEIGHTS.text });

const closingBlock = (own: readonly Sentence[], job: Job, width: number): Block =>
  stacked([
    framed([...own, ...CAUTIONS.map((key, index) => ({ text: words(key), bold: index === 0 }))], width),
    signatureLine(
      [words('sheet.leg-cut-by'), words('sheet.leg-set-up-by'), words(`sheet.level-read-again.${job.site.sides}`)],
      width,
    ),
  ]);

/** Whether a finding is about this leg, typed there or told with its name; a note that its doubts say too is left out. */
const concerns = ({ code, grade, field, data }: Finding, leg: LegPlan): boolean =>
  !(code === 'leg-measure-again' && grade === 'note' && leg.measureAgain !== null) &&
  (field === leg.field ||
    field.startsWith(`${leg.field}/`) ||
    (leg.name !== '' && field.startsWith('/site') && [data['name'], data['other']].includes(leg.name)));

/** What it is sawn from. */
const tubeOf = ({ outsideDiameter, wall }: LegPlan, { units }: Job): string =>
  words('sheet.leg-tube', { diameter: formatLength(outsideDiameter, units), wall: formatClosely(wall, units) });

/** Which of the legs this is in the order of work, and what that is good for; of those typed where some cannot be cut. */
function orderWords({ order }: LegPlan, legs: readonly LegPlan[], { site }: Job): string {
  const typed = Math.max(site.legs.length, legs.length);
  const of = { order, of: typed };
  if (typed > legs.length) return words('sheet.leg-of-typed', of);
  if (typed === 1) return words('sheet.leg-only');
  return order === 1 ? words('sheet.leg-first', of) : words('sheet.leg-later', of);
}

/** A leg that cannot be cut, and why. */
export const uncutBlock = ({ number, name, why }: UncutLeg, width: number): Block =>
  paragraph(
    name === '' ? words('sheet.leg-uncut', { number, why }) : words('sheet.leg-uncut-named', { number, name, why }),
    width,
    { height: 2.1, weight: 600 },
  );
