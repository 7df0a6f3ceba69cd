import type { Reading } from '../../job/came-back.ts';
import { extraFor, measureCheck, type FrameGeometry, type MemberGeometry } from '../frame/frame-geometry.ts';
import { DEGREES } from '../geometry/angle.ts';
import type { Piece } from '../geometry/centreline.ts';
import { chainOf } from '../geometry/chain.ts';

/** A tape shows no more than this [mm], a level or a bevel no more than that [degrees]; as tens of what is shown. */
const SHOWN = 10;

/** What a job takes for a reading [mm, degrees], and how many of them; a test holds these equal to the job's own. */
export const TAKES = {
  length: { least: 0.001, most: 50_000 },
  piece: { least: 0.001, most: 1_000_000 },
  turn: { least: -360, most: 3600 },
  readings: 400,
} as const;

/**
 * What a tape would find on a frame with the pieces of the wanted one: every size of that in the reference that it has,
 * and where those do not say it all, every straight and every bend of its members.
 *
 * @returns those that can be typed, no more than a job takes; null where there are none
 */
export function readingsOn(frame: FrameGeometry, wanted: FrameGeometry): Reading[] | null {
  const sizes = wanted.checks.flatMap(({ key, index, reference }): Reading[] => {
    const own = frame.checks.find((check) => check.key === key && check.index === index);
    if (own === undefined) return [];
    const value = shown(measureCheck(own) + extraFor(own, reference));
    return [{ reading: 'size', check: key, index, reference, value, accuracy: null }];
  });
  // a shape that is typed by sizes has each of them; one by points or pieces has none of its own
  const bySizes = wanted.checks.some(({ field }) => field !== '');
  const all = bySizes ? sizes : [...sizes, ...frame.members.flatMap(piecesOf)];
  const typed = all.filter((one) => !('value' in one) || one.value === null || isTaken(one, one.value));
  return typed.length === 0 ? null : typed.slice(0, TAKES.readings);
}

const shown = (value: number): number => Math.round(value * SHOWN) / SHOWN;

function isTaken({ reading }: Reading, value: number): boolean {
  const { least, most } = reading === 'turn' || reading === 'piece' ? TAKES[reading] : TAKES.length;
  return value >= least && value <= most;
}

/** Every straight, and every arc's angle and rotation since the arc before it; a rolled one's radius too. */
function piecesOf({ name, centreline }: MemberGeometry): Reading[] {
  const links = chainOf(centreline)?.links ?? [];
  const first = links.findIndex(({ kind }) => kind === 'arc');
  if (first < 0) return [];
  return links.flatMap((link, index): Reading[] => {
    const of = { member: name, piece: index + 1, accuracy: null };
    const is: Piece | undefined = centreline.pieces[index];
    if (link.kind === 'straight' || is === undefined)
      return is === undefined ? [] : [{ reading: 'piece', what: 'length', value: shown(is.length), ...of }];
    const turn = (what: 'angle' | 'rotation', angle: number): Reading => ({
      reading: 'turn',
      what,
      value: shown(angle * DEGREES),
      ...of,
    });
    return [
      turn('angle', link.angle),
      ...(index === first ? [] : [turn('rotation', link.rotation)]),
      ...(link.made === 'rolled'
        ? [{ reading: 'piece' as const, what: 'radius' as const, value: shown(link.radius), ...of }]
        : []),
    ];
  });
}
