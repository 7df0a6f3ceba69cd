import type { Job } from '../job/job.ts';
import { formatClosely, formatLength } from '../language/length-format.ts';
import { words } from '../language/words.ts';
import type { Finding } from '../plan/finding.ts';
import type { LegPlan } from '../plan/leg.ts';
import type { SiteView } from '../plan/site-view.ts';
import type { SitePlan } from '../plan/site.ts';
import { cautionFrame } from './cautions.ts';
import type { Flow } from './flow.ts';
import { HEIGHTS } from './ink.ts';
import { legClock } from './leg-clock.ts';
import { legDoubts, legStrength } from './leg-doubts.ts';
import { legNumbers, legTable } from './leg-numbers.ts';
import { legPicture, THICKNESSES } from './leg-picture.ts';
import { legSteps } from './leg-steps.ts';
import { stopFrame } from './set-up-page.ts';
import { findingBlocks, type SheetInput } from './sheet-input.ts';
import { signatureLine } from './sign.ts';
import { sitePicture } from './site-picture.ts';
import { seenFrom } from './site-seen.ts';
import { legTitle } from './site-words.ts';
import { beside, paragraph, space, stacked, type Block } from './text-block.ts';
import { drawnLength } from './view-places.ts';

/** Air between two columns [mm]. */
const AIR = 4;

/** Widths of the list of lengths and of the clock; the site has what is left [mm]. */
const LIST = 66;
const CLOCK = 36;

/** Width of what is done with it [mm]. */
const STEPS = 104;

/** The site is drawn no lower than this, and no higher [mm]. */
const SITE = { least: 40, most: 88 } as const;

/** What stands for a leg of those that hold a person, in the frame. */
const CAUTIONS = ['sheet.leg-caution-1', 'sheet.leg-caution-2', 'sheet.leg-caution-3'] as const;

/** Everything about one leg on one page; what the plan found of it runs over to the next where it must. */
export function legPage(flow: Flow, leg: LegPlan, site: SitePlan, input: SheetInput): void {
  const { job } = input;
  const { width } = flow;
  const found = input.plan.findings.filter((finding) => concerns(finding, leg));
  const above = (thickest: number): Block =>
    stacked([
      paragraph(legTitle(leg, job), width, { height: HEIGHTS.title, weight: 600 }),
      paragraph(`${orderWords(leg, site.legs)} ${tubeOf(leg, job)}`, width, { weight: 600 }),
      ...stopFrame(
        found.filter(({ grade }) => grade === 'stop'),
        input,
        width,
      ),
      legNumbers(leg, job, width),
      legPicture(leg, job, { width, thickest }),
    ]);
  const below = [workBlock(leg, site, job, width), closingBlock(width)];
  const notes = findingBlocks(
    found.filter(({ grade }) => grade !== 'stop'),
    job,
    width,
  );
  const pointer =
    notes.length === 0
      ? space(0)
      : paragraph(words('sheet.leg-notes-follow'), width, { height: HEIGHTS.small, weight: 600 });
  const lists = listsOf(leg, job);
  const least = Math.max(SITE.least, lists.height);
  const left = (thickest: number): number => flow.left - above(thickest).height - stacked(below).height - 0.1;
  // notes go over to a page of their own before the pictures become smaller
  const fitting = THICKNESSES.find((one) => left(one) - pointer.height >= least);
  const thickest = fitting ?? THICKNESSES[2];
  const noted = stacked(notes).height;
  const here = left(thickest) - noted >= least;
  const height = Math.max(least, Math.min(SITE.most, left(thickest) - (here ? noted : pointer.height)));
  flow.add(above(thickest));
  flow.add(middle(leg, site, job, lists, { width, height }));
  if (!here) flow.add(pointer);
  for (const block of below) flow.add(block);
  if (notes.length > 0 && !here && fitting !== undefined) flow.runOver();
  for (const block of notes) flow.add(block);
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

const closingBlock = (width: number): Block =>
  stacked([
    cautionFrame(
      CAUTIONS.map((key, index) => ({ text: words(key), bold: index === 0 })),
      { width, height: HEIGHTS.small, inset: 2, head: HEIGHTS.text },
    ),
    signatureLine([words('sheet.leg-cut-by'), words('sheet.leg-set-up-by'), words('sheet.level-read-again')], width),
  ]);

/** Whether a finding is about this leg, typed there or told with its name, and is not told beside its doubts anyway. */
const concerns = ({ code, field, data }: Finding, leg: LegPlan): boolean =>
  !(code === 'leg-measure-again' && leg.measureAgain !== null) &&
  (field === leg.field ||
    field.startsWith(`${leg.field}/`) ||
    (field.startsWith('/site') && data['name'] === leg.name));

/** What it is sawn from. */
const tubeOf = ({ outsideDiameter, wall }: LegPlan, { units }: Job): string =>
  words('sheet.leg-tube', { diameter: formatLength(outsideDiameter, units), wall: formatClosely(wall, units) });

/** Which of the legs this is in the order of work, and what that is good for. */
function orderWords({ order }: LegPlan, legs: readonly LegPlan[]): string {
  if (legs.length === 1) return words('sheet.leg-only');
  const of = { order, of: legs.length };
  return order === 1 ? words('sheet.leg-first', of) : words('sheet.leg-later', of);
}

type Lists = { readonly clock: Block | null; readonly table: Block; readonly height: number };

function listsOf(leg: LegPlan, job: Job): Lists {
  const [clock, list] = [legClock(leg, job, CLOCK), legTable(leg, job, LIST)];
  return { clock, table: list, height: Math.max(clock?.height ?? 0, list.height) };
}

/** Beside one another: the leg among the rest, how its ends are turned, and its lengths. */
function middle(
  leg: LegPlan,
  site: SitePlan,
  job: Job,
  { clock, table, height: least }: Lists,
  room: { readonly width: number; readonly height: number },
): Block {
  const beyond = LIST + AIR + (clock === null ? 0 : CLOCK + AIR);
  const picture = legInSite(leg, site, job, { width: room.width - beyond, height: Math.max(room.height, least) });
  return beside([
    { left: 0, block: picture },
    ...(clock === null ? [] : [{ left: room.width - beyond + AIR, block: clock }]),
    { left: room.width - LIST, block: table },
  ]);
}

const SIDEWAYS: readonly SiteView['key'][] = ['from-starboard', 'from-back'];

/** The site from the side from which this leg is seen longest, the leg thick. */
function legInSite(leg: LegPlan, { views }: SitePlan, job: Job, room: { width: number; height: number }): Block {
  const length = (view: SiteView): number =>
    drawnLength(view.legs.find(({ member }) => member === leg.name)?.centreline ?? []);
  const [view] = views
    .filter(({ key }) => SIDEWAYS.includes(key))
    .toSorted((one, other) => length(other) - length(one));
  if (view === undefined) return space(0);
  const what = {
    leg: leg.name,
    named: false,
    gap: (value: number): string => formatLength(value, job.units),
    level: words('sheet.level-line'),
  };
  const captionAt = (scale: string): Block =>
    paragraph(`${seenFrom(view, job)}, ${words('sheet.scale-is', { scale })}`, room.width, { height: HEIGHTS.small });
  const drawn = sitePicture(view, what, { width: room.width, height: room.height - captionAt('1:1000').height });
  return stacked([captionAt(drawn.scale.text), drawn]);
}
