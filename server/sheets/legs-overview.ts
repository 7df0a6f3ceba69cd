import { formatClosely, formatLength } from '../language/length-format.ts';
import { formatFigure } from '../language/quantity-format.ts';
import { uncutLegs } from '../language/uncut-legs.ts';
import { words } from '../language/words.ts';
import type { LegPlan } from '../plan/leg.ts';
import type { SitePlan } from '../plan/site.ts';
import { Flow } from './flow.ts';
import { HEIGHTS } from './ink.ts';
import { uncutBlock } from './leg-blocks.ts';
import { levelBelow, restsOnLevel } from './leg-level.ts';
import { sureWords } from './leg-numbers.ts';
import { levelPictures } from './level-pictures.ts';
import type { Draft } from './page.ts';
import type { SheetInput } from './sheet-input.ts';
import { bandOf, legName, legSide } from './site-words.ts';
import { table, type Cell } from './table.ts';
import { paragraph, space } from './text-block.ts';

/** The site takes what is left of the page, within these [mm]. */
const PICTURES = { least: 60, most: 150 } as const;

/** All legs on one page, in the order in which they are cut and set up: what to saw off the bars, and how sure it is. */
export function legsOverview(legs: readonly LegPlan[], site: SitePlan, input: SheetInput): Draft[] {
  const { job, plan } = input;
  const { units } = job;
  const flow = new Flow(job.print.paper, 'upright');
  const { width } = flow;
  const about = words('sheet.legs-all');
  flow.begin(about, about);
  flow.add(paragraph(about, width, { height: HEIGHTS.title, weight: 600 }));
  const rests = legs.some((leg) => restsOnLevel(leg, job));
  const unread = rests && !site.level.known;
  flow.addTable(
    table(
      [
        { head: words('sheet.legs-order'), align: 'right' },
        { head: words('sheet.legs-leg'), align: 'left' },
        { head: words('sheet.legs-side'), align: 'left' },
        { head: words('sheet.legs-tube'), align: 'right' },
        { head: words('sheet.saw-off-at'), align: 'right' },
        { head: sureWords(unread), align: 'right' },
        { head: words('sheet.legs-head'), align: 'left' },
      ],
      legs.map((leg): Cell[] => [
        String(leg.order),
        { text: legName(leg), weight: 600 },
        legSide(leg, job),
        `${formatLength(leg.outsideDiameter, units)} × ${formatClosely(leg.wall, units)}`,
        { text: formatFigure(leg.cutLength, units), weight: 600 },
        bandOf(leg.cutLength, job),
        leg.head.member,
      ]),
      { width, height: HEIGHTS.text },
    ),
    [],
    true,
  );
  flow.add(space(2));
  for (const one of uncutLegs(plan, job)) flow.add(uncutBlock(one, width));
  if (rests) flow.add(levelBelow(site.level, job, width));
  flow.add(space(3));
  const height = Math.max(PICTURES.least, Math.min(PICTURES.most, flow.left));
  flow.add(levelPictures(site, job, { width, height }));
  return flow.drafts();
}
