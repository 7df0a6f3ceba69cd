import type { Stretch } from '../../plan/purge.ts';
import type { MemberGeometry } from '../frame/frame-geometry.ts';
import type { Bore } from './bores.ts';

/** Rounding of stations [mm]. */
const ROUNDING = 1e-9;

/** A stretch along a bore as stations of its member; one that runs over the seam of a closed member is two. */
export function onStations(
  member: MemberGeometry,
  { from, to }: { readonly from: number; readonly to: number },
): Stretch[] {
  const { name: named, centreline } = member;
  const { length } = centreline;
  if (from > to)
    return onStations(member, { from: to, to: from })
      .reverse()
      .map((one) => ({ member: named, from: one.to, to: one.from }));
  if (!member.closed || to <= length + ROUNDING) return [{ member: named, from, to: Math.min(to, length) }];
  if (from >= length - ROUNDING) return [{ member: named, from: Math.max(0, from - length), to: to - length }];
  return [
    { member: named, from, to: length },
    { member: named, from: 0, to: to - length },
  ];
}

/** Stretches one after another, with those that run on along the same bore as one. */
export function joined(
  parts: readonly { readonly bore: number; readonly from: number; readonly to: number }[],
  bores: readonly Bore[],
  members: readonly MemberGeometry[],
): Stretch[] {
  const runs: { bore: number; from: number; to: number }[] = [];
  for (const part of parts) {
    const last = runs.at(-1);
    const onward = last !== undefined && last.bore === part.bore && isOn(last, part);
    if (last !== undefined && onward) last.to = part.to;
    else runs.push({ ...part });
  }
  return runs.flatMap(({ bore, from, to }) => {
    const member = members[bores[bore]?.member ?? -1];
    return member === undefined ? [] : onStations(member, { from, to });
  });
}

type Run = { readonly from: number; readonly to: number };

const isOn = (before: Run, after: Run): boolean =>
  Math.abs(before.to - after.from) <= ROUNDING && before.to > before.from === after.to > after.from;
