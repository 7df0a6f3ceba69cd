import type { Tacks } from '../../plan/welding.ts';
import { figure, input } from '../figure.ts';

/** Tacks are this far apart along a weld at most [mm], 60 to 80: common practice, no source. */
const SPACING = 80;
/** Tubes up to these outside diameters have 3 and 4 tacks [mm]: common practice, no source. */
const THREE_UP_TO = 40;
const FOUR_UP_TO = 100;
/** A dot without filler on thin tube [mm], 3 to 5, and the shortest tack with filler, 5 to 10: common practice. */
const DOT = 4;
const LEAST = 5;
/** A tack is at least so many times as long as the thicker part: EN 1011-1, as reprinted by a filler maker. */
const THICKNESSES = 4;
/** Tacks take up this share of a weld at most, so that something is left to weld; our own choice. */
const MOST_SHARE = 0.5;

/** Tacks by outside diameter [mm]: 3 at 120° up to 40, 4 at 90° up to 100, else one for every 60 to 80 mm. */
export function tacksRound(outsideDiameter: number): number {
  if (outsideDiameter <= THREE_UP_TO) return 3;
  return outsideDiameter <= FOUR_UP_TO ? 4 : Math.ceil((Math.PI * outsideDiameter) / SPACING);
}

/**
 * Where tacks are set, evenly, as angles from the outside [degrees] in the order in which they are set: each one
 * farthest from all before it, and of several such the one farthest from the last, so that they pull in turn.
 */
export function tackAngles(count: number): number[] {
  const apart = (a: number, b: number): number => Math.min(Math.abs(a - b), count - Math.abs(a - b));
  const set = [0];
  const left = Array.from({ length: count - 1 }, (_, index) => index + 1);
  while (left.length > 0) {
    const last = set[set.length - 1] ?? 0;
    const nearest = (place: number): number => Math.min(...set.map((one) => apart(place, one)));
    const next = left.reduce((best, place) => {
      const better = nearest(place) - nearest(best) || apart(place, last) - apart(best, last);
      return better > 0 ? place : best;
    });
    set.push(next);
    left.splice(left.indexOf(next), 1);
  }
  return set.map((place) => (360 * place) / count);
}

/** Tacks of one weld. `thicker` is the thicker of the parts that it joins [mm]. */
export function tacksOf(weld: {
  readonly outsideDiameter: number;
  readonly thicker: number;
  readonly length: number;
  readonly process: '141' | '142';
}): Tacks {
  const { outsideDiameter, thicker, length, process } = weld;
  // a flat saddle is far longer than its tube is round
  const count = Math.max(tacksRound(outsideDiameter), Math.ceil(length / SPACING));
  const most = (MOST_SHARE * length) / count;
  const ends = [
    input('s', 'share-of-weld', MOST_SHARE, 'ratio'),
    input('l', 'weld-length', length, 'mm'),
    input('k', 'tacks', count, 'count'),
  ];
  const tack =
    process === '142'
      ? figure(
          Math.min(most, DOT),
          'mm',
          'a = min(a₀, s l/k)',
          [input('a₀', 'dot', DOT, 'mm'), ...ends],
          ['tack-length'],
        )
      : figure(
          Math.min(most, Math.max(LEAST, THICKNESSES * thicker)),
          'mm',
          'a = min(max(a₀, 4 t), s l/k)',
          [input('a₀', 'least-tack', LEAST, 'mm'), input('t', 'thicker-part', thicker, 'mm'), ...ends],
          ['tack-length'],
        );
  return {
    count: figure(
      count,
      'count',
      'k = max(k(D), l/e)',
      [
        input('D', 'outside-diameter', outsideDiameter, 'mm'),
        input('l', 'weld-length', length, 'mm'),
        input('e', 'tack-spacing', SPACING, 'mm'),
      ],
      ['tack-spacing'],
    ),
    length: tack,
    angles: tackAngles(count),
  };
}
