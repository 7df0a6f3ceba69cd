import { words } from '../language/words.ts';
import type { SitePlan } from '../plan/site.ts';
import { Flow } from './flow.ts';
import { legBlocks, type LegBlocks } from './leg-blocks.ts';
import { legPage, legSetting, type LegSetting } from './leg-page.ts';
import { legEnds, legWrapNames } from './leg-wraps.ts';
import { legsOverview } from './legs-overview.ts';
import type { Draft, Drafts } from './page.ts';
import { finely, type SheetInput } from './sheet-input.ts';
import { legName } from './site-words.ts';
import { templatePages } from './template-pages.ts';

/** Of so many legs each is found by turning a page; more of them have one page in front with all. */
const FEW = 2;

/** A page for each leg, in the order in which they are cut and set up, each with its wraps behind it. */
export function legsSheet(asked: SheetInput): Drafts {
  const { frame, site } = asked.plan;
  if (frame === null) return { ok: false, reason: 'frame-not-possible' };
  if (site === null || site.legs.length === 0) return { ok: false, reason: 'no-legs' };
  const input = finely(asked);
  const legs = site.legs.toSorted((one, other) => one.order - other.order);
  const { width, left: height } = new Flow(input.job.print.paper, 'upright');
  const all = legs.map((leg) => legBlocks(leg, site, input, width));
  const setting = legSetting(all, site, { width, height }, input);
  const front = legs.length > FEW ? legsOverview(legs, site, input) : [];
  return { ok: true, drafts: [...front, ...all.flatMap((blocks) => legDrafts(blocks, site, setting, input))] };
}

function legDrafts(blocks: LegBlocks, site: SitePlan, setting: LegSetting, input: SheetInput): Draft[] {
  const { print, units, closing } = input.job;
  const { leg } = blocks;
  const about = legName(leg);
  const flow = new Flow(print.paper, 'upright');
  flow.begin(about, words('sheet.leg-continued', { leg: about }));
  legPage(flow, blocks, site, setting, input);
  const paper = { paper: print.paper, units, paperThickness: closing.paperThickness };
  const wraps = legEnds(leg).flatMap((end) => templatePages(end.template, legWrapNames(leg, end), paper));
  return [...flow.drafts(), ...wraps.map((page) => ({ ...page, about }))];
}
