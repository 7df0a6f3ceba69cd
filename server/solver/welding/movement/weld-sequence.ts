import type { FrameGeometry } from '../../frame/frame-geometry.ts';
import { length, ORIGIN, subtract, type Vector3 } from '../../geometry/vector.ts';
import { middleOf } from '../../joints/outside.ts';
import type { PlacedWeld } from './placed-welds.ts';

type Standing = Pick<PlacedWeld, 'name' | 'kind' | 'member' | 'station' | 'point'>;

/** Distances that differ by less are the same [mm]; rounding. */
const SAME = 1e-3;

/**
 * The order in which welds follow each other: those inside the frame first, then those that only a free end hangs on,
 * pads last; begun next to the middle, and each as far from the one before as it can be, so that it has cooled and the
 * other side follows. Common practice, no source.
 */
export function weldSequence<Weld extends Standing>(welds: readonly Weld[], frame: FrameGeometry): Weld[] {
  const middle = middleOf(frame.members) ?? ORIGIN;
  const fromMiddle = ({ point }: Weld): number => length(subtract(point, middle));
  const inside = welds.filter((weld) => weld.kind !== 'pad' && !isLast(weld, welds, frame));
  const outer = welds.filter((weld) => weld.kind !== 'pad' && !inside.includes(weld));
  const pads = welds.filter(({ kind }) => kind === 'pad');
  const order: Weld[] = [];
  for (const group of [inside, outer, pads]) {
    const left = [...group];
    while (left.length > 0) {
      const before: Vector3 | undefined = order.at(-1)?.point;
      let best = 0;
      for (const [index, weld] of left.entries()) {
        const chosen = left[best];
        if (chosen === undefined) continue;
        const further =
          before === undefined ? 0 : length(subtract(weld.point, before)) - length(subtract(chosen.point, before));
        const nearer = fromMiddle(chosen) - fromMiddle(weld);
        if (further > SAME || (further > -SAME && nearer > SAME)) best = index;
      }
      order.push(...left.splice(best, 1));
    }
  }
  return order;
}

/** Whether on one side of a weld there is nothing but tube up to a free end. */
function isLast(weld: Standing, welds: readonly Standing[], { members }: FrameGeometry): boolean {
  const own = members.find(({ name }) => name === weld.member);
  if (own === undefined || own.closed) return false;
  const others = [
    ...welds.flatMap((one) => (one !== weld && one.member === own.name && one.kind !== 'pad' ? [one.station] : [])),
    ...members.flatMap(({ start, finish }) =>
      [start, finish].flatMap((end) => (end.kind === 'saddle' && end.onto === own.name ? [end.station] : [])),
    ),
  ];
  const freeBefore = own.start.kind === 'free' && others.every((station) => station > weld.station - SAME);
  const freeBeyond = own.finish.kind === 'free' && others.every((station) => station < weld.station + SAME);
  return freeBefore || freeBeyond;
}
