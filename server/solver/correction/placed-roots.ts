import type { EndGeometry, FrameGeometry } from '../frame/frame-geometry.ts';
import type { RigidMotion } from '../geometry/rigid-motion.ts';
import { layOn, type JudgeContext } from './outcome.ts';
import { relaidFrame, type FrameChange } from './relaid-frame.ts';

/** Targets that a member needs to be laid by them: with fewer it stays where its first end is. */
const LEAST_TARGETS = 2;

/**
 * Of several members that sit on no other, one that is bent again comes apart from the others, since what sits on both is
 * parted and fitted again: it is laid by its own targets. A frame on one such member is laid as a whole, later.
 */
export function withPlacedRoots(
  { wanted, actual, targets }: Pick<JudgeContext, 'wanted' | 'actual' | 'targets'>,
  change: FrameChange,
): FrameChange {
  const roots = rootsOf(actual);
  if (roots.length < 2 || change.members.size === 0) return change;
  const laid = relaidFrame(actual, change);
  const placed = new Map<string, RigidMotion>();
  for (const name of roots) {
    const own = change.members.has(name)
      ? targets.filter(({ spot, kind }) => spot.member === name && kind !== 'guide')
      : [];
    if (own.length >= LEAST_TARGETS) placed.set(name, layOn(wanted, actual, own, laid));
  }
  return { members: change.members, fromFinish: change.fromFinish, placed };
}

const rootsOf = ({ members }: FrameGeometry): string[] => {
  const sits = (end: EndGeometry) => end.kind === 'saddle';
  return members.filter(({ start, finish }) => !sits(start) && !sits(finish)).map(({ name }) => name);
};
