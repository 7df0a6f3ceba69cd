import type { Frame } from '../../job/frame.ts';
import type { ReadingCheck, ReadingDimension, ReadingRow } from '../../plan/reading-check.ts';
import { figure, input } from '../figure.ts';
import type { Check, FrameGeometry } from '../frame/frame-geometry.ts';
import { extraFor, measureCheck } from './measured-frame.ts';
import type { Misreading } from './misreadings.ts';
import { misreadFrame } from './misread-frame.ts';
import { remeasure } from './remeasure.ts';

/** Sizes that a tape checks after bending: as many as one looks at; our own choice. */
const SHOWN = 3;
/** A size tells a misreading where it is off by more than a tape is: two readings of 1 mm; common practice, no source. */
const TELLS = 2;

/**
 * What a frame becomes where its sketch is read another way, at the three sizes that tell the misreadings apart best:
 * one after the other, each time the size that tells most of those that no size before it tells.
 *
 * @param found every misreading with the frame that it makes
 * @returns null where nothing can be taken wrong
 */
export function planReadingCheck(
  frame: Frame,
  wanted: FrameGeometry,
  found: readonly Misreading[],
): ReadingCheck | null {
  if (found.length === 0) return null;
  const measured = found.map((misreading) => ({ misreading, sizes: sizesOf(misreading, wanted) }));
  const offs = measured.map(({ sizes }) => wanted.checks.map((check, place) => offOf(check, sizes[place])));
  const shown = tellingSizes(offs, wanted.checks.length);
  const checks = shown.flatMap((place) => wanted.checks[place] ?? []);
  return {
    dimensions: checks.map(dimensionOf),
    rows: measured.map(({ misreading, sizes }, row): ReadingRow => {
      const off = shown.map((place) => offs[row]?.[place] ?? null);
      const all = off.flatMap((one) => (one === null ? [] : [Math.abs(one)]));
      return {
        slip: misreading.slip,
        field: misreading.field,
        dieRadius: misreading.dieRadius,
        gets: shown.map((place) => {
          const [check, size] = [wanted.checks[place], sizes[place]];
          return check === undefined || size === undefined ? null : sizeFigure(check, size);
        }),
        off,
        worst: all.length === 0 ? null : Math.max(...all),
        frame: misreading.made === null ? null : misreadFrame(frame, wanted.checks, sizes),
      };
    }),
  };
}

/** Every size of the misread frame centre to centre [mm], in the order of the wanted frame's checks. */
function sizesOf({ made }: Misreading, wanted: FrameGeometry): (number | undefined)[] {
  if (made === null) return wanted.checks.map(() => undefined);
  return wanted.checks.map((check) => {
    const own = made.drawn.checks.find(({ key, index }) => key === check.key && index === check.index);
    return own === undefined ? undefined : remeasure(own, made.drawn, made.rebent);
  });
}

const offOf = (check: Check, size: number | undefined): number | null =>
  size === undefined ? null : size - measureCheck(check);

function tellingSizes(offs: readonly (readonly (number | null)[])[], count: number): number[] {
  const shown: number[] = [];
  const told = new Set<number>();
  const tells = (row: number, place: number): number => Math.abs(offs[row]?.[place] ?? 0);
  while (shown.length < Math.min(SHOWN, count)) {
    const worth = (place: number): number => {
      const news = offs.filter((_, row) => !told.has(row) && tells(row, place) > TELLS).length;
      // where nothing new is told, the size that moves furthest beyond those that are shown is worth looking at
      const beyond = offs.map((_, row) => tells(row, place) - Math.max(0, ...shown.map((one) => tells(row, one))));
      return news * 1e9 + Math.max(0, ...beyond);
    };
    const places = Array.from({ length: count }, (_, place) => place).filter((place) => !shown.includes(place));
    const best = places.reduce((a, b) => (worth(b) > worth(a) ? b : a));
    shown.push(best);
    for (const row of offs.keys()) if (tells(row, best) > TELLS) told.add(row);
  }
  return shown.sort((a, b) => a - b);
}

const dimensionOf = (check: Check): ReadingDimension => ({
  key: check.key,
  index: check.index,
  field: check.field,
  reference: check.reference,
  wanted: sizeFigure(check, measureCheck(check)),
});

/** A size in the reference that the sketch has it in. */
function sizeFigure(check: Check, centre: number) {
  const extra = extraFor(check, check.reference);
  return figure(
    centre + extra,
    'mm',
    'w = c + e',
    [input('c', 'centre-to-centre', centre, 'mm'), input('e', 'reference-extra', extra, 'mm')],
    ['path-model'],
  );
}
