import type { FrameGeometry } from '../frame/frame-geometry.ts';
import { isDieBend, type Centreline } from '../geometry/centreline.ts';
import { reverseCentreline } from '../geometry/reverse-centreline.ts';
import type { Bent } from './made-frame.ts';
import type { Slip } from './slip.ts';

/** How a member comes out of the machine; null where it cannot be bent so. */
export type Bends = (line: Centreline, member: string) => Centreline | null;

/** A slip at the marks or at the machine: every member with a die bend goes through it. */
export type BendSlip = {
  readonly slip: Slip;
  readonly excludes: readonly string[];
  readonly order: number;
  readonly bends: Bends;
};

/**
 * Bends the members of a frame on top of what happened to them before; marks are laid out from the end that is bent
 * first, and the slip runs on from there.
 *
 * @returns null where one of them cannot be bent so
 */
export function bentBy(
  drawn: FrameGeometry,
  before: Bent,
  bends: Bends,
  from: (member: string) => 'start' | 'finish',
): Bent | null {
  const bent = new Map(before);
  for (const { name, centreline } of drawn.members) {
    if (!centreline.pieces.some(isDieBend)) continue;
    const line = before.get(name) ?? centreline;
    const back = from(name) === 'finish';
    const made = bends(back ? reverseCentreline(line) : line, name);
    if (made === null) return null;
    bent.set(name, back ? reverseCentreline(made) : made);
  }
  return bent;
}
