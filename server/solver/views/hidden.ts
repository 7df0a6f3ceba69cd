import type { EndGeometry, MemberGeometry } from '../frame/frame-geometry.ts';

/** Saddles flatter than this sine, some 12°, are drawn as if they were no flatter, so that no tube vanishes; our own choice. */
const LEAST_SINE = 0.2;

/** How much of each end of a member disappears in the tube that it sits on [mm]. */
export function hiddenOf(
  member: MemberGeometry | undefined,
  outsideDiameter: number,
): { readonly start: number; readonly finish: number } {
  const hide = (end: EndGeometry | undefined) =>
    end?.kind === 'saddle' ? outsideDiameter / 2 / Math.max(Math.sin(end.axisAngle), LEAST_SINE) : 0;
  return { start: hide(member?.start), finish: hide(member?.finish) };
}
