import type { ReadingCheck, ReadingDimension, ReadingRow } from '../../plan/reading-check.ts';
import { figure, input } from '../figure.ts';
import { extraFor, measureCheck, type Check, type FrameGeometry } from '../frame/frame-geometry.ts';
import type { Misreading } from './misreadings.ts';
import { readingsOn } from './readings-on.ts';

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
export function planReadingCheck(wanted: FrameGeometry, found: readonly Misreading[]): ReadingCheck | null {
  // one bend turned over is seen without a tape
  const shownSlips = found.filter(({ slips }) => slips[0].bend === null);
  if (shownSlips.length === 0) return null;
  const measured = shownSlips.map(({ slips: [slip], made }) => {
    const frame = made?.frame() ?? null;
    return { slip, frame, sizes: wanted.checks.map((check) => sizeOn(frame, check)) };
  });
  const offs = measured.map(({ sizes }) => wanted.checks.map((check, place) => offOf(check, sizes[place])));
  const shown = tellingSizes(offs, wanted.checks.length);
  const checks = shown.flatMap((place) => wanted.checks[place] ?? []);
  return {
    dimensions: checks.map(dimensionOf),
    rows: measured.map(({ slip, frame, sizes }, row): ReadingRow => {
      const off = shown.map((place) => offs[row]?.[place] ?? null);
      const all = off.flatMap((one) => (one === null ? [] : [Math.abs(one)]));
      return {
        slip: slip.key,
        fields: [...slip.fields],
        dieRadius: slip.dieRadius,
        gets: shown.map((place) => {
          const size = sizes[place];
          return size === undefined ? null : sizeFigure(size);
        }),
        off,
        worst: all.length === 0 ? null : Math.max(...all),
        readings: frame === null ? null : readingsOn(frame, wanted),
      };
    }),
  };
}

/** The same size of the misread frame, in the reference that the sketch has it in. */
function sizeOn(frame: FrameGeometry | null, { key, index, reference }: Check): Check | undefined {
  const own = frame?.checks.find((check) => check.key === key && check.index === index);
  return own === undefined ? undefined : { ...own, reference };
}

const valueOf = (check: Check): number => measureCheck(check) + extraFor(check, check.reference);

const offOf = (check: Check, size: Check | undefined): number | null =>
  size === undefined ? null : valueOf(size) - valueOf(check);

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
  wanted: sizeFigure(check),
});

/** A size in the reference that the sketch has it in. */
function sizeFigure(check: Check) {
  const centre = measureCheck(check);
  const extra = extraFor(check, check.reference);
  return figure(
    centre + extra,
    'mm',
    'w = c + e',
    [input('c', 'centre-to-centre', centre, 'mm'), input('e', 'reference-extra', extra, 'mm')],
    ['path-model'],
  );
}
