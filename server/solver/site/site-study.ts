import type { Band } from '../../plan/figure.ts';
import type { Doubt, DoubtSource } from '../../plan/leg.ts';
import { band, figure, input } from '../figure.ts';
import { numbered } from '../numbered-symbols.ts';
import { bandKey, doubtKey } from './doubt-key.ts';
import { EXACT, type LaidSite, type Off, type SiteDoubt, type SiteSource } from './laid-site.ts';

/** Something of a laid site; undefined where that site has none. `off` is what the site was laid with. */
export type Read<Of> = (laid: LaidSite, off: Off) => Of | undefined;

/** One number of a laid site, whatever it was laid with. */
export type Pick = (laid: LaidSite) => number | undefined;

/** A site with one value off, and by how much it is off [mm or degrees]. */
export type OffSite = { readonly off: number; readonly laid: LaidSite };

/** A site with one doubtful value off by its accuracy. */
export type VariedSite = OffSite & {
  readonly doubt: SiteDoubt;
  /** Off the other way, for numbers that it has not; null where it cannot be laid so. Left out: never. */
  readonly otherWay?: () => OffSite | null;
};

/** The site as typed, and once more with each doubtful value off by its accuracy. */
export type SiteStudy = {
  readonly source: SiteSource;
  readonly laid: LaidSite;
  readonly varied: readonly VariedSite[];
};

/** How far one doubtful value moves a number [its units], and the ± of that value; null where it is not one value. */
type DoubtShare = {
  readonly change: number;
  readonly offBy: { readonly plusMinus: number; readonly unit: 'mm' | 'deg' } | null;
};

/** What a number's doubt comes from, one part for each source and name [units of the number], largest first. */
export type DoubtPart = Omit<Doubt, 'plusMinus' | 'words'> & {
  readonly plusMinus: number;
  /** Of the values that it is made up of, largest first; left out where it is none of the site. */
  readonly shares?: readonly DoubtShare[];
};

/** What one doubtful value changes a number by; undefined where that cannot be told. */
type DoubtChange = { readonly doubt: SiteDoubt; readonly change: number | undefined };

/** Changes below this are rounding [units of the number]. */
const NOTHING = 1e-9;
/** A ± below this is rounding [units of the number]. */
const ROUNDING = 1e-6;
/** A part of a ± that is a smaller share of the whole is not named with it: our own choice. */
const WORTH_NAMING = 1e-3;
/** Most values of a part that its working lists one by one; our own choice. */
const LISTED = 4;

/** What was read of a varied site, and which way its value is off there. */
type ReadOff<Of> = { readonly doubt: SiteDoubt; readonly off: number; readonly value: Of | undefined };

function readOn<Of>({ field }: SiteDoubt, { off, laid }: OffSite, read: Read<Of>): Of | undefined {
  return read(laid, (one) => (one === field ? off : 0));
}

/** The same of a varied site; of the one that is off the other way where it lacks it, and undefined where both do. */
function readOff<Of>(varied: VariedSite, read: Read<Of>): ReadOff<Of> {
  const { doubt, off } = varied;
  const value = readOn(doubt, varied, read);
  const other = value === undefined ? (varied.otherWay?.() ?? null) : null;
  return other === null ? { doubt, off, value } : { doubt, off: other.off, value: readOn(doubt, other, read) };
}

/** The same of every varied site. */
export const readEach = <Of>({ varied }: SiteStudy, read: Read<Of>): ReadOff<Of>[] =>
  varied.map((one) => readOff(one, read));

/**
 * What each doubtful value, off by its accuracy upwards, changes a number by, in the order of `varied`, with its sign: to be
 * compared with the same of another number. 0 where it cannot be told either way.
 */
export function signedChanges(study: SiteStudy, pick: Read<number>): number[] {
  const exact = pick(study.laid, EXACT) ?? 0;
  return readEach(study, pick).map(({ value, off }) => ((value ?? exact) - exact) * Math.sign(off));
}

/** What changes a number, and what cannot be told to: most values of a site change nothing of it. */
function changesOf(study: SiteStudy, pick: Read<number>): DoubtChange[] {
  const exact = pick(study.laid, EXACT);
  const changes: DoubtChange[] = [];
  if (exact === undefined) return changes;
  for (const varied of study.varied) {
    const { doubt, value } = readOff(varied, pick);
    if (value !== exact) changes.push({ doubt, change: value === undefined ? undefined : value - exact });
  }
  return changes;
}

/** How far each doubtful value takes a number [its units], gathered by source and name, largest first. */
export const doubtParts = (study: SiteStudy, pick: Read<number>): DoubtPart[] => partsOf(changesOf(study, pick));

function partsOf(changes: readonly DoubtChange[]): DoubtPart[] {
  const parts = new Map<string, { from: DoubtSource; name: string; shares: (DoubtShare & { field: string })[] }>();
  for (const { doubt, change } of changes) {
    if (change === undefined || !(Math.abs(change) >= NOTHING)) continue;
    const { from, name, plusMinus, unit = 'mm' } = doubt;
    // the frame as it will be made is in doubt as a whole
    const offBy: DoubtShare['offBy'] = from === 'made' ? null : { plusMinus, unit };
    const field = doubt.goBackTo ?? doubt.field;
    const key = `${bandKey({ from, field })} ${name}`;
    const part = parts.get(key) ?? { from, name, shares: [] };
    part.shares.push({ field, offBy, change: Math.abs(change) });
    parts.set(key, part);
  }
  return [...parts.values()]
    .map(({ from, name, shares }) => {
      shares.sort((a, b) => b.change - a.change);
      const plusMinus = Math.hypot(...shares.map(({ change }) => change));
      // the value that does most is the one to go back to
      return { from, name, field: shares[0]?.field ?? '', plusMinus, shares };
    })
    .sort((a, b) => b.plusMinus - a.plusMinus);
}

/** The ± of all parts together, with the names of those that count; null where it is rounding. */
export function bandOfParts(parts: readonly DoubtPart[]): Band | null {
  const whole = Math.hypot(...parts.map(({ plusMinus }) => plusMinus));
  if (!(whole >= ROUNDING)) return null;
  return band(whole, ...new Set(parts.filter(({ plusMinus }) => plusMinus >= WORTH_NAMING * whole).map(bandKey)));
}

/** The ± that changes come to. Where one cannot be told the band says that it is left out, instead of passing for sure. */
export function bandOfChanges(changes: readonly DoubtChange[]): Band | null {
  const told = bandOfParts(partsOf(changes));
  if (changes.every(({ change }) => change !== undefined)) return told;
  return band(told?.plusMinus ?? 0, ...(told?.from ?? []), 'site-left-out');
}

/** The ± of a number that follows from the site; null where nothing doubtful moves it. */
export const siteBand = (study: SiteStudy, pick: Read<number>): Band | null => bandOfChanges(changesOf(study, pick));

/** A part as the plan has it: what each value of it moves the number by, the largest one by one. */
export function doubtOf({ shares, plusMinus, ...part }: DoubtPart, unit: 'mm' | 'deg'): Doubt {
  const all = shares ?? [{ change: plusMinus, offBy: null }];
  const rest = Math.hypot(...all.slice(LISTED).map(({ change }) => change));
  const listed = all.slice(0, LISTED).map(({ change, offBy }, index) => {
    const [c, q] = ['c', 'q'].map((symbol) => numbered(symbol, index + 1));
    const moves = input(c ?? '', 'moves-it-by', change, unit);
    return offBy === null
      ? { moves, inputs: [moves], by: [] }
      : {
          moves,
          inputs: [moves, input(q ?? '', 'off-by', offBy.plusMinus, offBy.unit)],
          by: [`${c ?? ''} by ${q ?? ''}`],
        };
  });
  const terms = [...listed.map(({ moves }) => moves.symbol), ...(rest > 0 ? ['r'] : [])];
  const root = terms.length === 1 ? terms.join('') : `√(${terms.map((one) => `${one}²`).join(' + ')})`;
  const inputs = [
    ...listed.flatMap((one) => one.inputs),
    ...(rest > 0 ? [input('r', 'all-others-together', rest, unit)] : []),
  ];
  const formula = [`± = ${root}`, ...listed.flatMap(({ by }) => by)].join(', ');
  return { ...part, words: doubtKey(part), plusMinus: figure(plusMinus, unit, formula, inputs, ['site-first-order']) };
}
