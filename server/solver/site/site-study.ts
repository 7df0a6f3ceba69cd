import type { Band } from '../../plan/figure.ts';
import type { Doubt, DoubtSource } from '../../plan/leg.ts';
import { band, figure, input } from '../figure.ts';
import type { LaidSite, SiteDoubt, SiteSource } from './laid-site.ts';

/** One number of a laid site; undefined where that site has none. */
export type Pick = (laid: LaidSite) => number | undefined;

/** What a number's doubt comes from, one part for each source and name [units of the number], largest first. */
export type DoubtPart = Omit<Doubt, 'plusMinus'> & { readonly plusMinus: number };

/** The site as typed, and once more with each doubtful value off by its accuracy. */
export type SiteStudy = {
  readonly source: SiteSource;
  readonly laid: LaidSite;
  readonly varied: readonly { readonly doubt: SiteDoubt; readonly laid: LaidSite }[];
};

/** Parts below this are rounding. */
const NOTHING = 1e-9;

/** How far each doubtful value takes a number [its units], gathered by source and name, largest first. */
export function doubtParts({ laid, varied }: SiteStudy, pick: Pick): DoubtPart[] {
  const value = pick(laid);
  if (value === undefined) return [];
  const parts = new Map<string, { from: DoubtSource; name: string; field: string; squares: number; most: number }>();
  for (const { doubt, laid: off } of varied) {
    const other = pick(off);
    const change = other === undefined ? 0 : Math.abs(other - value);
    if (change < NOTHING) continue;
    const key = `${doubt.from} ${doubt.name}`;
    const part = parts.get(key) ?? { from: doubt.from, name: doubt.name, field: '', squares: 0, most: 0 };
    parts.set(key, {
      ...part,
      squares: part.squares + change ** 2,
      // the value that does most is the one to go back to
      ...(change > part.most ? { field: doubt.field, most: change } : {}),
    });
  }
  return [...parts.values()]
    .map(({ from, name, field, squares }) => ({ from, name, field, plusMinus: Math.sqrt(squares) }))
    .sort((a, b) => b.plusMinus - a.plusMinus);
}

/** The ± of a number that follows from the site; null where nothing doubtful moves it. */
export function siteBand(study: SiteStudy, pick: Pick): Band | null {
  const parts = doubtParts(study, pick);
  if (parts.length === 0) return null;
  const names = [...new Set(parts.map(({ from }) => `site-${from}`))];
  return band(Math.hypot(...parts.map(({ plusMinus }) => plusMinus)), ...names);
}

/** A part as the plan has it. */
export const doubtOf = ({ plusMinus, ...part }: DoubtPart, unit: 'mm' | 'deg'): Doubt => ({
  ...part,
  plusMinus: figure(
    plusMinus,
    unit,
    '± = √Σ (∂L/∂q · q±)²',
    [input('±', 'part-of-band', plusMinus, unit)],
    ['first-order'],
  ),
});
