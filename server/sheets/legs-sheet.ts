import { words } from '../language/words.ts';
import type { LegPlan } from '../plan/leg.ts';
import type { SitePlan } from '../plan/site.ts';
import { Flow } from './flow.ts';
import { legPage } from './leg-page.ts';
import { legEnds, legWrapNames } from './leg-wraps.ts';
import type { Draft, Drafts } from './page.ts';
import { finely, type SheetInput } from './sheet-input.ts';
import { legName } from './site-words.ts';
import { templatePages } from './template-pages.ts';

/** A page for each leg, in the order in which they are cut and set up, each with its wraps behind it. */
export function legsSheet(input: SheetInput): Drafts {
  const { frame, site } = input.plan;
  if (frame === null) return { ok: false, reason: 'frame-not-possible' };
  if (site === null || site.legs.length === 0) return { ok: false, reason: 'no-legs' };
  const legs = site.legs.toSorted((one, other) => one.order - other.order);
  return { ok: true, drafts: legs.flatMap((leg) => legDrafts(leg, site, finely(input))) };
}

function legDrafts(leg: LegPlan, site: SitePlan, input: SheetInput): Draft[] {
  const { print, units, closing } = input.job;
  const about = legName(leg);
  const flow = new Flow(print.paper, 'upright');
  flow.begin(about, words('sheet.leg-continued', { leg: about }));
  legPage(flow, leg, site, input);
  const setting = { paper: print.paper, units, paperThickness: closing.paperThickness };
  const wraps = legEnds(leg).flatMap((end) => templatePages(end.template, legWrapNames(leg, end), setting));
  return [...flow.drafts(), ...wraps.map((page) => ({ ...page, about }))];
}
