import type { Job } from '../job/job.ts';
import { formatLength } from '../language/length-format.ts';
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
import { legPicture } from './leg-picture.ts';
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

/** The site is drawn no lower than this, and no higher [mm]. */
const SITE = { least: 42, most: 88 } as const;

/** What stands for a leg of those that hold a person, in the frame. */
const CAUTIONS = ['sheet.leg-caution-1', 'sheet.leg-caution-2', 'sheet.leg-caution-3', 'sheet.leg-caution-4'] as const;

/** Everything about one leg on one page; what the plan found of it runs over to the next where it must. */
export function legPage(flow: Flow, leg: LegPlan, site: SitePlan, input: SheetInput): void {
  const { job } = input;
  const { width } = flow;
  const found = input.plan.findings.filter((finding) => concerns(finding, leg));
  const stopped = found.filter(({ grade }) => grade === 'stop');
  const above = stacked([
    paragraph(legTitle(leg, job), width, { height: HEIGHTS.title, weight: 600 }),
    paragraph(orderWords(leg, site.legs), width, { weight: 600 }),
    ...stopFrame(stopped, input, width),
    legNumbers(leg, job, width),
    legPicture(leg, job, width),
  ]);
  const half = (width - AIR) / 2;
  const strength = legStrength(leg, site, job, half - AIR);
  const below = stacked([
    space(1),
    beside([
      { left: 0, block: legSteps(leg, job, half + AIR) },
      {
        left: half + 2 * AIR,
        block: stacked([
          legDoubts(leg, site.legs.length, job, half - AIR),
          ...(strength === null ? [] : [space(1), strength]),
        ]),
      },
    ]),
    space(1.5),
    cautionFrame(
      CAUTIONS.map((key, index) => ({ text: words(key), bold: index === 0 })),
      { width, height: HEIGHTS.small, inset: 2, head: HEIGHTS.text },
    ),
    signatureLine([words('sheet.leg-cut-by'), words('sheet.leg-set-up-by'), words('sheet.level-read-again')], width),
  ]);
  const notes = findingBlocks(
    found.filter(({ grade }) => grade !== 'stop'),
    job,
    width,
  );
  const pointer = paragraph(words('sheet.notes-follow'), width, { height: HEIGHTS.small, weight: 600 });
  const noted = stacked(notes).height;
  const lists = listsOf(leg, job);
  // notes go over to a page of their own before the picture of the site becomes too small to read
  const left = flow.left - above.height - below.height - 0.1;
  const here = left - noted >= Math.max(SITE.least, lists.height);
  const room = Math.min(SITE.most, left - (here ? noted : pointer.height));
  flow.add(above);
  flow.add(middle(leg, site, job, lists, { width, height: Math.max(SITE.least, room) }));
  if (!here) flow.add(pointer);
  flow.add(below);
  for (const block of notes) flow.add(block);
}

/** Whether a finding is about this leg: typed there, or told with its name. */
const concerns = ({ field, data }: Finding, leg: LegPlan): boolean =>
  field === leg.field || field.startsWith(`${leg.field}/`) || (field.startsWith('/site') && data.name === leg.name);

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
  const caption = 9;
  const drawn = sitePicture(view, what, { width: room.width, height: room.height - caption });
  const said = `${seenFrom(view, job)}, ${words('sheet.scale-is', { scale: drawn.scale.text })}`;
  return stacked([paragraph(said, room.width, { height: HEIGHTS.small }), drawn]);
}
