import type { SlipScore } from '../../plan/correction.ts';
import { figure, input } from '../figure.ts';
import type { FrameGeometry } from '../frame/frame-geometry.ts';
import type { SolvedReadings } from '../returned/solved-readings.ts';
import type { Made, Misreading } from './misreadings.ts';
import type { SetFrom } from './saddle-seat.ts';
import { slipPairs } from './slip-pairs.ts';

/** Root mean square, in accuracies, up to which a slip explains the readings: two standard deviations (common practice). */
const EXPLAINED = 2;

/** A pair must be so many times nearer than the best slip by itself, since among many pairs one comes near by chance; our own choice. */
const CLEARLY = 2;

/** Fewer readings than this are met by some pair or other; our own choice. */
const LEAST_FOR_PAIRS = 3;

/** Slips that are shown; our own choice. */
const MOST_SHOWN = 12;

/**
 * Ranks the known slips by how well each predicts the readings of a frame that came back. Each was computed by bending
 * the wrong marks through the path model, or by reading the sketch the wrong way; a leg that the slip leaves longer than
 * wanted is compared as it left the machine. Two slips together are looked at only where none explains the readings by
 * itself, and shown only where they do.
 *
 * @param found every single misreading of the wanted frame with the frame that it makes
 * @param leftOut fields of readings that disagree with all the others
 * @returns best first; empty where the frame came back as wanted as far as the readings can tell
 */
export function scoreSlips(
  found: readonly Misreading[],
  readings: SolvedReadings,
  wanted: FrameGeometry,
  leftOut: ReadonlySet<string> = new Set(),
): SlipScore[] {
  const all = readings.readings;
  const asWanted = readings.predictAll(wanted);
  // a reading that says nothing about the wanted frame says nothing about a slip
  const usable = all.flatMap(({ field }, place) =>
    asWanted[place] === undefined || leftOut.has(field) ? [] : [place],
  );
  const off = (predicted: readonly (number | undefined)[], place: number): number => {
    const [one, value] = [all[place], predicted[place]];
    return one === undefined || value === undefined ? Infinity : (value - one.measured) / one.accuracy;
  };
  if (usable.every((place) => Math.abs(off(asWanted, place)) <= 1)) return [];
  const misfit = (predicted: readonly (number | undefined)[]): number =>
    Math.sqrt(usable.reduce((sum, place) => sum + off(predicted, place) ** 2, 0) / usable.length);
  const scored = (one: Misreading): Scored[] => {
    if (one.made === null) return [];
    const best = nearest(one.made, (frame) => {
      const predicted = readings.predictAll(frame);
      return { predicted, misfit: misfit(predicted) };
    });
    return Number.isFinite(best.misfit) ? [{ slips: one.slips, predicted: best.predicted, misfit: best.misfit }] : [];
  };
  const ranked = (some: readonly Scored[]): Scored[] => [...some].sort((a, b) => a.misfit - b.misfit);
  const singles = ranked(found.flatMap(scored));
  const best = singles[0]?.misfit ?? Infinity;
  const pairs: Scored[] = [];
  if (best > EXPLAINED && usable.length >= LEAST_FOR_PAIRS) {
    for (const pair of slipPairs(found))
      pairs.push(...scored(pair).filter((one) => one.misfit <= EXPLAINED && one.misfit * CLEARLY <= best));
  }
  return [...ranked(pairs), ...singles]
    .filter(({ slips }, place, every) => every.findIndex((other) => nameOf(other.slips) === nameOf(slips)) === place)
    .slice(0, MOST_SHOWN)
    .map((one) => scoreOf(one, readings, usable));
}

type Scored = {
  readonly slips: Misreading['slips'];
  readonly predicted: readonly (number | undefined)[];
  readonly misfit: number;
};

/** The made frame as far as readings look at it: where its members are. */
const standing = ({ drawn, members }: Made, setFrom: SetFrom): FrameGeometry => ({
  members: members(setFrom),
  checks: drawn.checks,
  feet: drawn.feet,
  corners: drawn.corners,
  planeNormal: drawn.planeNormal,
});

/** Tubes that sit on others are set down after bending, from the ends of those or from their bends: the nearer counts. */
function nearest<T extends { readonly misfit: number }>(made: Made, score: (frame: FrameGeometry) => T): T {
  const first = score(standing(made, 'ends'));
  const sits = made.drawn.members.some(({ start, finish }) => start.kind === 'saddle' || finish.kind === 'saddle');
  if (!sits || made.bent.size === 0) return first;
  const second = score(standing(made, 'bends'));
  return second.misfit < first.misfit ? second : first;
}

/** What makes two scores the same slip: another die or another bend does not, the better of them is shown. */
const nameOf = (slips: Misreading['slips']): string =>
  slips.map(({ key, fields }) => `${key} ${fields.join(' ')}`).join(', ');

function scoreOf(
  { slips, predicted, misfit }: Scored,
  { readings }: SolvedReadings,
  usable: readonly number[],
): SlipScore {
  return {
    keys: slips.map(({ key }) => key),
    fields: slips.flatMap(({ fields }) => fields),
    dieRadius: slips.find(({ dieRadius }) => dieRadius !== null)?.dieRadius ?? null,
    bend: slips.find(({ bend }) => bend !== null)?.bend ?? null,
    misfit: figure(
      misfit,
      'ratio',
      'm = √(Σ ((p − r) / a)² / n)',
      [input('n', 'readings', usable.length, 'count')],
      ['path-model'],
    ),
    explains: misfit <= EXPLAINED,
    predicted: usable.flatMap((place) => {
      const [one, value] = [readings[place], predicted[place]];
      if (one === undefined || value === undefined) return [];
      const { field, name, unit, measured } = one;
      return [{ field, name, unit, value, measured }];
    }),
  };
}
