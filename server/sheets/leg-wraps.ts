import { words } from '../language/words.ts';
import type { WrapTemplate } from '../plan/frame.ts';
import type { LegPlan } from '../plan/leg.ts';
import { legName } from './site-words.ts';
import type { TemplateNames } from './template-pages.ts';
import { isWorthPrinting } from './wraps-for.ts';

/** The wrap of one end of a leg. Its ring lies on the sawn end. */
export type LegEnd = { readonly at: 'foot' | 'head'; readonly template: WrapTemplate };

/** The wraps of a leg, foot first; an end that is cut square needs none. */
export function legEnds({ templates }: LegPlan): LegEnd[] {
  const worth = templates.filter(isWorthPrinting);
  const foot = worth.find(({ scrap }) => scrap === 'start');
  const head = worth.find(({ scrap }) => scrap === 'finish');
  return [
    ...(foot === undefined ? [] : [{ at: 'foot' as const, template: foot }]),
    ...(head === undefined ? [] : [{ at: 'head' as const, template: head }]),
  ];
}

/** What the pages of an end's wrap are called, and how it is used. */
export function legWrapNames(leg: LegPlan, { at }: LegEnd): TemplateNames {
  const name = legName(leg);
  return {
    title: words(at === 'foot' ? 'sheet.template-foot' : 'sheet.template-head', { name }),
    piece: words(at === 'foot' ? 'sheet.template-piece-foot' : 'sheet.template-piece-head', { name }),
    leg: { name, end: at },
  };
}

/** Round the tube from the scribed line, clockwise as seen from the foot, to a place on the paper [degrees]. */
export const roundTo = ({ wrapLength, edge }: WrapTemplate, girth: number): number =>
  (edge + (360 * girth) / wrapLength) % 360;
