import type { LegPlan } from '../../../plan/leg.ts';
import type { LaidLeg } from '../laid-site.ts';

/** Legs nearer to a middle than this stand in it, and legs no further apart than this stand at one place [mm]: our own choice. */
const MIDDLE = 1;

/** How far to port a leg stands, at the middle of its length [mm]. */
const portOf = ({ foot, head }: LaidLeg): number => (foot.y + head.y) / 2;

/**
 * On which side each leg stands. Where legs stand on both sides of the structure's middle, y = 0 is between the sides; where
 * all stand on one side of it, the middle between the outermost of them is; legs at one place go by the structure's again.
 */
export function legSides(legs: readonly (LaidLeg | null)[]): (LegPlan['side'] | null)[] {
  const all = legs.filter((leg) => leg !== null).map(portOf);
  const [least, most] = [Math.min(...all), Math.max(...all)];
  const isBothSides = least < -MIDDLE && most > MIDDLE;
  const middle = isBothSides || most - least <= MIDDLE ? 0 : (least + most) / 2;
  return legs.map((leg) => {
    if (leg === null) return null;
    const port = portOf(leg) - middle;
    return Math.abs(port) <= MIDDLE ? 'middle' : port > 0 ? 'port' : 'starboard';
  });
}
