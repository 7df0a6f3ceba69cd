import type { FrameGeometry } from '../../frame/frame-geometry.ts';
import { length, ORIGIN, subtract, type Vector3 } from '../../geometry/vector.ts';
import { middleOf } from '../../joints/outside.ts';
import type { PlacedWeld } from './placed-welds.ts';

type Standing = Pick<PlacedWeld, 'name' | 'kind' | 'member' | 'station' | 'point'>;

/** Distances that differ by less are the same [mm]; rounding. */
const SAME = 1e-3;

/**
 * The order in which welds follow each other: joints between bars, which are welded before anything is bent, then those
 * inside the frame, then those that only a free end hangs on, pads last; begun next to the middle, and each as far from the one before as it can be, so that it has cooled and the
 * other side follows. Common practice, no source.
 */
export function weldSequence<Weld extends Standing>(welds: readonly Weld[], frame: FrameGeometry): Weld[] {
  const middle = middleOf(frame.members) ?? ORIGIN;
  const fromMiddle = ({ point }: Weld): number => length(subtract(point, middle));
  const before = welds.filter(({ kind }) => kind === 'bar-joint');
  const holding = welds.filter(holdsFrame);
  const inside = holding.filter((weld) => !isLast(weld, holding, frame));
  const outer = holding.filter((weld) => !inside.includes(weld));
  const pads = welds.filter(({ kind }) => kind === 'pad');
  const order: Weld[] = [];
  for (const group of [before, inside, outer, pads]) {
    const left = [...group];
    while (left.length > 0) {
      const last: Vector3 | undefined = order.at(-1)?.point;
      let best = 0;
      for (const [index, weld] of left.entries()) {
        const chosen = left[best];
        if (chosen === undefined) continue;
        const further =
          last === undefined ? 0 : length(subtract(weld.point, last)) - length(subtract(chosen.point, last));
        const nearer = fromMiddle(chosen) - fromMiddle(weld);
        if (further > SAME || (further > -SAME && nearer > SAME)) best = index;
      }
      order.push(...left.splice(best, 1));
    }
  }
  return order;
}

/**
 * Whether a weld is made while the tacked frame hangs on it: pads hold none of it, and joints between bars are made before
 * there is a frame.
 */
export const holdsFrame = ({ kind }: Pick<PlacedWeld, 'kind'>): boolean => kind !== 'pad' && kind !== 'bar-joint';

/** Whether on one side of a weld there is nothing but tube up to a free end. */
function isLast(weld: Standing, welds: readonly Standing[], { members }: FrameGeometry): boolean {
  const own = members.find(({ name }) => name === weld.member);
  if (own === undefined || own.closed) return false;
  const others = [
    ...welds.flatMap((one) => (one !== weld && one.member === own.name ? [one.station] : [])),
    ...members.flatMap(({ start, finish }) =>
      [start, finish].flatMap((end) => (end.kind === 'saddle' && end.onto === own.name ? [end.station] : [])),
    ),
  ];
  const freeBefore = own.start.kind === 'free' && others.every((station) => station > weld.station - SAME);
  const freeBeyond = own.finish.kind === 'free' && others.every((station) => station < weld.station + SAME);
  return freeBefore || freeBeyond;
}
