import { words } from '../language/words.ts';
import type { SitePlan } from '../plan/site.ts';
import type { Flow } from './flow.ts';
import { HEIGHTS } from './ink.ts';
import { amongScale, legAmong } from './leg-among.ts';
import { AIR, CLOCK, LIST, type LegBlocks } from './leg-blocks.ts';
import { legPicture, legScale, THICKNESSES } from './leg-picture.ts';
import type { Scale } from './scale.ts';
import type { SheetInput } from './sheet-input.ts';
import { beside, paragraph, stacked, type Block } from './text-block.ts';

/** The site is drawn no lower than this, and no higher [mm]. */
const SITE = { least: 40, most: 88 } as const;

/** Heights are compared with so much to spare [mm]. */
const HAIR = 0.1;

/** How large everything is drawn, alike for all legs of a job: two of a pair are looked at side by side. */
export type LegSetting = { readonly leg: Scale; readonly height: number; readonly site: Scale | null };

type Page = { readonly width: number; readonly height: number };

/** What stands on the next page: nothing, the notes, all that is signed for with the cautions that stand for every leg, or its own cautions too. */
type Over = 'nothing' | 'notes' | 'signed' | 'closing';

/** What stands under the pictures on a leg's first page. */
function under({ work, own, closing, notes }: LegBlocks, over: Over, width: number): Block[] {
  const pointer = (key: 'sheet.leg-notes-follow' | 'sheet.leg-cautions-follow'): Block =>
    paragraph(words(key), width, { height: HEIGHTS.small, weight: 600 });
  switch (over) {
    case 'nothing':
      return [work, closing, ...notes];
    case 'notes':
      return [pointer('sheet.leg-notes-follow'), work, closing];
    case 'signed':
      return [work, ...own, pointer('sheet.leg-cautions-follow')];
    case 'closing':
      return [work, pointer('sheet.leg-cautions-follow')];
  }
}

/** The least that the pictures of the site take beside the lists. */
const leastOf = ({ clock, table }: LegBlocks): number => Math.max(SITE.least, clock?.height ?? 0, table.height);

/** What is left for the site on a leg's first page. */
const leftFor = (blocks: LegBlocks, scale: Scale, over: Over, { width, height }: Page, input: SheetInput): number =>
  height -
  blocks.head.height -
  legPicture(blocks.leg, input.job, { width, scale }).height -
  stacked(under(blocks, over, width)).height -
  HAIR;

/** What of a leg goes over to a next page: as little as leaves room for its pictures. */
function overOf(blocks: LegBlocks, scale: Scale, page: Page, input: SheetInput): Over | undefined {
  const ways: readonly Over[] = blocks.notes.length === 0 ? ['nothing'] : ['nothing', 'notes'];
  return ways.find((over) => leftFor(blocks, scale, over, page, input) >= leastOf(blocks));
}

/** The same where not even that does: its own cautions stay on its first page if they can. */
function overAnyway(blocks: LegBlocks, scale: Scale, page: Page, input: SheetInput): Over {
  const over = overOf(blocks, scale, page, input);
  if (over !== undefined) return over;
  const fits = blocks.own.length > 0 && leftFor(blocks, scale, 'signed', page, input) >= leastOf(blocks);
  return fits ? 'signed' : 'closing';
}

/** The scales of a job's legs: the largest at which every leg keeps its cautions on its own page, where any does. */
export function legSetting(all: readonly LegBlocks[], site: SitePlan, page: Page, input: SheetInput): LegSetting {
  const legs = all.map(({ leg }) => leg);
  const scales = THICKNESSES.map((thickest) => legScale(legs, page.width, thickest));
  const [smallest = legScale(legs, page.width, THICKNESSES[3])] = scales.slice(-1);
  // a leg whose cautions do not fit in any case does not make the others smaller
  const fitting = all.filter((blocks) => overOf(blocks, smallest, page, input) !== undefined);
  const leg =
    scales.find((scale) => fitting.every((blocks) => overOf(blocks, scale, page, input) !== undefined)) ?? smallest;
  const heights = all.map((blocks) => heightOf(blocks, leg, page, input));
  const height = Math.min(...heights);
  const among = all.flatMap((blocks) => {
    const room = { width: pictureWidth(blocks, page.width), height: Math.max(height, leastOf(blocks)) };
    return amongScale(blocks.leg, site.views, input.job, room) ?? [];
  });
  const least = among.toSorted((one, other) => one.factor - other.factor)[0] ?? null;
  return { leg, height, site: least };
}

function heightOf(blocks: LegBlocks, scale: Scale, page: Page, input: SheetInput): number {
  const over = overAnyway(blocks, scale, page, input);
  return Math.max(leastOf(blocks), Math.min(SITE.most, leftFor(blocks, scale, over, page, input)));
}

const pictureWidth = ({ clock }: LegBlocks, width: number): number =>
  width - LIST - AIR - (clock === null ? 0 : CLOCK + AIR);

/** Everything about one leg on one page; cautions and notes run over to the next where they must. */
export function legPage(flow: Flow, blocks: LegBlocks, site: SitePlan, setting: LegSetting, input: SheetInput): void {
  const { width } = flow;
  const page = { width, height: flow.left };
  const over = overAnyway(blocks, setting.leg, page, input);
  flow.add(blocks.head);
  flow.add(legPicture(blocks.leg, input.job, { width, scale: setting.leg }));
  flow.add(middle(blocks, site, setting, width, input));
  for (const block of under(blocks, over, width)) flow.add(block);
  if (over === 'nothing') return;
  flow.runOver();
  for (const block of over === 'notes' ? blocks.notes : [blocks.closing, ...blocks.notes]) flow.add(block);
}

/** Beside one another: the leg among the rest, how its ends are turned, and its lengths. */
function middle(
  blocks: LegBlocks,
  { views }: SitePlan,
  { height, site }: LegSetting,
  width: number,
  { job }: SheetInput,
): Block {
  const { leg, clock, table } = blocks;
  const room = { width: pictureWidth(blocks, width), height: Math.max(height, leastOf(blocks)) };
  return beside([
    ...(site === null ? [] : [{ left: 0, block: legAmong(leg, views, job, { ...room, scale: site }) }]),
    ...(clock === null ? [] : [{ left: room.width + AIR, block: clock }]),
    { left: width - LIST, block: table },
  ]);
}
