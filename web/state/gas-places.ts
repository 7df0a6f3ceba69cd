import type { Units } from '../../server/job/job.ts';
import type { GasPlace, Purge } from '../../server/job/purge.ts';
import { formatLength } from '../../server/language/length-format.ts';
import { words } from '../../server/language/words.ts';
import type { GasSpot, Spot, Stretch } from '../../server/plan/purge.ts';
import { placeWords } from './tube-places.ts';
import type { Tube } from './tubes.ts';

/** Nearer to a datum end than this is the end itself [mm]: finer than a tape reads. */
const NEAR = 0.1;

type End = 'start' | 'finish';

/** An end of a member as a person calls it: 'hoop, left foot', 'crossbar 1, finish'. */
export const endWords = (member: string, end: End, tubes: readonly Tube[]): string =>
  words('purge.atEnd', {
    member,
    end: placeWords(
      { spot: end, number: 1 },
      tubes.find(({ name }) => name === member),
    ),
  });

/** A place on a tube by its distance from the datum end. */
export const spotWords = ({ member, station }: Pick<Spot, 'member' | 'station'>, units: Units): string =>
  words('purge.at', { member, distance: formatLength(station, units) });

/** Where gas passes, in words: an open end by its name, everything else by what it is and where. */
export function gasSpotWords(spot: GasSpot, tubes: readonly Tube[], units: Units): string {
  const at = spotWords(spot, units);
  const end = endWords(spot.member, spot.station < NEAR ? 'start' : 'finish', tubes);
  switch (spot.kind) {
    case 'end':
      return end;
    case 'plate':
      return words('purge.spot.plate', { at: end });
    case 'dam':
      return words('purge.spot.dam', { at });
    case 'gap':
      return words('purge.spot.gap', { name: spot.name, at });
    case 'hole':
      return words('purge.spot.hole', { name: spot.name, at });
  }
}

/** A stretch of bore as it lies along its member, whichever way the gas runs. */
export const stretchWords = ({ member, from, to }: Stretch, units: Units): string =>
  words('purge.deadLegAt', {
    member,
    from: formatLength(Math.min(from, to), units),
    to: formatLength(Math.max(from, to), units),
  });

/** Names of welds in a sentence: 'weld 1', 'welds 1, 2A, S1'. */
export const weldNames = (names: readonly string[]): string =>
  words(names.length === 1 ? 'purge.weldName' : 'purge.weldNames', { names: names.join(', ') });

export const samePlace = (one: GasPlace, other: GasPlace): boolean =>
  'hole' in one
    ? 'hole' in other && one.hole === other.hole
    : !('hole' in other) && one.member === other.member && one.end === other.end;

export type GasOption = { readonly place: GasPlace; readonly words: string };

/**
 * Where gas can be led in or let out: the ends of the tubes that have any, and the vent holes to the air; the place
 * that is chosen too where the frame no longer has it, so that it stays to be seen.
 */
export function gasOptions(
  tubes: readonly Tube[],
  { toAir }: Purge['holes'],
  chosen: GasPlace | null,
): readonly GasOption[] {
  const ends = tubes.flatMap(({ name: member, closed }): GasPlace[] =>
    closed ? [] : (['start', 'finish'] as const).map((end) => ({ member, end })),
  );
  const holes = toAir.map((_, index): GasPlace => ({ hole: index + 1 }));
  const all = [...ends, ...holes];
  const known = chosen === null || all.some((one) => samePlace(one, chosen));
  return (known ? all : [...all, chosen]).map((place) => ({
    place,
    words:
      'hole' in place ? words('purge.airHoleNumber', { number: place.hole }) : endWords(place.member, place.end, tubes),
  }));
}
