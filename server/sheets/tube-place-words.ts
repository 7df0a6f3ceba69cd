import { formatLength } from '../language/length-format.ts';
import { words } from '../language/words.ts';
import type { GasSpot } from '../plan/purge.ts';
import type { Weld } from '../plan/welding.ts';
import type { SheetInput } from './sheet-input.ts';

/** A station this near to an end is the end: finer than a tape reads [mm]. */
const NEAR = 0.1;

type Place = { readonly member: string; readonly station: number };

/** Which end of its member a place is; null where it lies between them. */
export function endOf({ member, station }: Place, { plan }: SheetInput): 'start' | 'finish' | null {
  if (station <= NEAR) return 'start';
  const members = [...(plan.correction?.members ?? []), ...(plan.frame?.members ?? [])];
  const lengths = members.filter(({ name }) => name === member).map(({ developedLength }) => developedLength.value);
  return lengths.some((length) => Math.abs(station - length) <= NEAR) ? 'finish' : null;
}

/** Where on a member a thing sits: an end by its name, else the distance from the datum end. */
export function placeWords(spot: Place, input: SheetInput): string {
  const { member, station } = spot;
  const end = endOf(spot, input);
  if (end !== null) return words(end === 'start' ? 'sheet.place-start' : 'sheet.place-finish', { member });
  return words('sheet.place-on', { member, distance: formatLength(station, input.job.units) });
}

/** Where a weld is, with the tube or the pad that it sits on. */
export function weldPlace(weld: Weld, input: SheetInput): string {
  const place = placeWords(weld, input);
  return weld.onto === '' ? place : words('sheet.weld-onto', { place, onto: weld.onto });
}

/** Whether an opening is only where one would have to be drilled: nothing else opens the chamber. */
export const isMissing = ({ kind, name }: GasSpot): boolean => kind === 'hole' && name === '';

/** An opening in words: 'hoop, datum end', 'gap of weld 2A', 'hole 1, hoop at 120 mm'. */
export function openingWords(spot: GasSpot, input: SheetInput): string {
  const place = placeWords(spot, input);
  switch (spot.kind) {
    case 'end':
      return place;
    case 'gap':
      return words('sheet.opening-gap', { weld: spot.name });
    case 'hole':
      return isMissing(spot)
        ? words('sheet.opening-missing', { place })
        : words('sheet.opening-hole', { hole: spot.name, place });
    case 'plate':
      return words('sheet.opening-plate', { place });
    case 'dam':
      return words('sheet.opening-dam', { place });
  }
}
