import { words } from '../language/words.ts';
import type { Tacks } from '../plan/welding.ts';
import { HEIGHTS, STROKES, line, shape, write, type Item, type Spot } from './ink.ts';
import type { Block } from './text-block.ts';

const CHORDS = 72;

/** Radius of the tube, its bore's share of it, and room round it for the names of its sides [mm]. */
const RADIUS = 7.5;
const BORE = 0.8;
const SIDES = 13;
const ENDS = 6.6;

/** Width of a clock without the names of its sides [mm]. */
export const BARE = 2 * (RADIUS + 4.5);

/** Size of a clock [mm]. */
export const CLOCK = { width: 2 * (RADIUS + SIDES), height: 2 * (RADIUS + ENDS) } as const;

/**
 * The tube seen along its run, away from its datum end: its four quarters with their numbers, the four sides by name, and
 * where it is tacked, numbered in the order of tacking.
 *
 * Quarters and tacks go round right-handed about the run, which is clockwise as seen along it: 1 lies from the outside on
 * to the top. The outside stands on the left, so that the top stands on top.
 */
export function quarterClock({ angles }: Pick<Tacks, 'angles'>, sides = true): Block {
  const centre: Spot = sides ? [CLOCK.width / 2, CLOCK.height / 2] : [BARE / 2, CLOCK.height / 2];
  const at = (degrees: number, share: number): Spot => {
    const angle = (degrees * Math.PI) / 180;
    return [centre[0] - share * RADIUS * Math.cos(angle), centre[1] - share * RADIUS * Math.sin(angle)];
  };
  const ring = (share: number): Spot[] =>
    Array.from({ length: CHORDS }, (_, index) => at((360 * index) / CHORDS, share));
  const small = { height: HEIGHTS.small } as const;
  const items: Item[] = [
    shape('quarter', ring(1), { stroke: STROKES.edge, fill: null }),
    shape('quarter', ring(BORE), { stroke: STROKES.narrow, fill: null }),
    line('quarter', [at(0, BORE), at(180, BORE)], STROKES.thin),
    line('quarter', [at(90, BORE), at(270, BORE)], STROKES.thin),
    ...[1, 2, 3, 4].map((quarter) => {
      const [x, y] = at(90 * quarter - 45, 0.45);
      return write([x, y + HEIGHTS.text / 2], String(quarter), { height: HEIGHTS.text, weight: 600, align: 'middle' });
    }),
    ...angles.flatMap((angle, index): Item[] => {
      const [x, y] = at(angle, 1.32);
      return [
        line('mark', [at(angle, BORE - 0.06), at(angle, 1.06)], { ...STROKES.edge, width: 1.1 }),
        write([x, y + HEIGHTS.small / 2], words('sheet.tack-number', { number: index + 1 }), {
          ...small,
          weight: 600,
          align: 'middle',
        }),
      ];
    }),
    ...(sides ? sideNames(centre) : []),
  ];
  return { height: CLOCK.height, items };
}

function sideNames(centre: Spot): Item[] {
  const small = { height: HEIGHTS.small } as const;
  return [
    write([centre[0] - RADIUS - 4.6, centre[1] + 0.9], words('generator.outside'), { ...small, align: 'right' }),
    write([centre[0] + RADIUS + 4.6, centre[1] + 0.9], words('generator.inside'), small),
    write([centre[0], centre[1] - RADIUS - 4.3], words('generator.top'), { ...small, align: 'middle' }),
    write([centre[0], centre[1] + RADIUS + 5.8], words('generator.bottom'), { ...small, align: 'middle' }),
  ];
}
