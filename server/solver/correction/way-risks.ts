import type { Way } from '../../plan/correction.ts';
import type { QuoteLine, QuoteOption } from '../../plan/quote.ts';
import { HIDDEN_KINK } from './compare-ways.ts';

/** Opening a formed bend by less than this is within what a bend moves by itself [deg]: common practice, no source. */
const OPENED = 0.1;
/** Closer to where a bend keeps joints away than this share of the diameter is near it: common practice, no source. */
const NEAR_BEND = 0.5;
/** A piece narrower than this many kerfs is sawn to dust or falls into the second cut: common practice, no source. */
const KERFS = 2;

/** What of a way tells its risks. */
type Risky = Pick<
  Way,
  'key' | 'fixingMisfit' | 'cornerMisfit' | 'largestKink' | 'welds' | 'joints' | 'rebends' | 'packing'
>;

/** What the way's surroundings tell. */
export type RiskContext = {
  readonly outsideDiameter: number;
  /** Width that the saw takes [mm]. */
  readonly kerf: number;
  /** What the frame may miss by, ± [mm]. */
  readonly tolerance: number;
  /** Whether the frame has free ends, which a weld can pull together or apart. */
  readonly open: boolean;
  /** Whether a slip is known that explains the readings: the bender can be told. */
  readonly slipKnown: boolean;
  /** Saddles that are parted and fitted again. */
  readonly saddlesRefitted: number;
};

/** What can go wrong with a way, by language key `risk.<key>`; the graver first. */
export const risksOf = (way: Risky, context: RiskContext): string[] =>
  RISKS.filter(([, applies]) => applies(way, context)).map(([key]) => key);

const RISKS: readonly (readonly [string, (way: Risky, context: RiskContext) => boolean])[] = [
  ['opening-wrinkles', ({ rebends }) => rebends.some((row) => row.made === 'die' && row.turn.value < -OPENED)],
  ['work-hardened', ({ rebends }) => rebends.some((row) => row.made === 'die' && Math.abs(row.turn.value) > OPENED)],
  ['same-slip-again', ({ key }, { slipKnown }) => key === 'new-frame' && !slipKnown],
  ['tape-doubt', isDoubtful],
  ['weld-pull', ({ key, welds }, { open }) => open && key !== 'new-frame' && welds.value > 0],
  ['kink-shows', ({ largestKink }) => largestKink.value > HIDDEN_KINK],
  ['step-to-grind', ({ joints }) => joints.some(({ hiLoGrade }) => hiLoGrade === 'standard' || hiLoGrade === 'over')],
  ['joint-near-bend', isNearBend],
  ['saddle-refit', (_, { saddlesRefitted }) => saddlesRefitted > 0],
  ['narrow-slug', hasNarrowSlug],
  ['root-sugars', ({ welds }) => welds.value > 0],
  ['packing-comes-loose', ({ packing }) => packing.length > 0],
];

/** What can go wrong with the money of a way, likewise. */
export const priceRisksOf = ({ lines, open, examples }: Pick<QuoteOption, 'lines' | 'open' | 'examples'>): string[] => [
  ...(open.length > 0 ? ['price-open'] : []),
  ...(lines.some(isReckoned) ? ['offer-not-asked'] : []),
  ...(examples > 0 ? ['price-on-examples'] : []),
];

/** A bender outside whose price goes by rates, and not by what he asks for this frame. */
const isReckoned = ({ key, rateField }: QuoteLine): boolean =>
  key === 'outside-bending' && !rateField.startsWith('/quote/');

/** The readings leave more doubt than the frame may miss by. */
function isDoubtful({ fixingMisfit, cornerMisfit }: Risky, { tolerance }: RiskContext): boolean {
  return [fixingMisfit, cornerMisfit].some(({ band }) => band !== null && band.plusMinus > tolerance);
}

/** A joint on a bend, or nearly as near to one as may be. */
function isNearBend({ joints }: Risky, { outsideDiameter }: RiskContext): boolean {
  const near = NEAR_BEND * outsideDiameter;
  return joints.some(
    ({ on, place, range, bounds }) =>
      on === 'die' ||
      (bounds.from === 'bend' && place - range.from < near) ||
      (bounds.to === 'bend' && range.to - place < near),
  );
}

/** A piece that falls out and is narrower than what two saw cuts take. A dart is one by its nature: it is not judged. */
function hasNarrowSlug({ joints }: Risky, { kerf }: RiskContext): boolean {
  return joints.some(
    ({ kind, removed, letIn }) =>
      letIn === null && kind !== 'dart' && removed.value > 0 && removed.value < KERFS * kerf,
  );
}
