import { words } from '../../server/language/words.ts';
import type { Site } from '../../server/job/site.ts';
import type { Point } from '../../server/plan/figure.ts';
import type { Side } from '../../server/plan/site.ts';
import { alongKey } from './level-readings.ts';

/** Ways that an axis of the frame runs in most jobs. */
const WAYS = ['ahead', 'port', 'back', 'starboard', 'up', 'down'] as const satisfies readonly Side[];

const DIRECTIONS: Readonly<Record<Side, Point>> = {
  ahead: { x: 1, y: 0, z: 0 },
  back: { x: -1, y: 0, z: 0 },
  port: { x: 0, y: 1, z: 0 },
  starboard: { x: 0, y: -1, z: 0 },
  up: { x: 0, y: 0, z: 1 },
  down: { x: 0, y: 0, z: -1 },
};

export const directionOfSide = (side: Side): Point => ({ ...DIRECTIONS[side] });

/** The side of the structure that a vector points to, whatever its length; null for any other direction, and none. */
export function sideOfDirection({ x, y, z }: Point): Side | null {
  const size = Math.abs(x) + Math.abs(y) + Math.abs(z);
  if (size === 0) return null;
  const is = (side: Side): boolean => {
    const way = DIRECTIONS[side];
    return x / size === way.x && y / size === way.y && z / size === way.z;
  };
  return WAYS.find(is) ?? null;
}

/** Any other way is typed. */
export const OTHER_WAY = 'other';

export const wayOptions = (
  sides: Site['sides'],
): readonly { readonly value: Side | typeof OTHER_WAY; readonly words: string }[] => [
  ...WAYS.map((value) => ({ value, words: words(`towards.${sides}.${value}`) })),
  { value: OTHER_WAY, words: words('standing.otherWay') },
];

/** A line of the frame along which a slope is asked for: one of its axes, or any other. */
export type SlopeAlong = 'x' | 'y' | typeof OTHER_WAY;

export const ALONG: Readonly<Record<'x' | 'y', Point>> = { x: { x: 1, y: 0, z: 0 }, y: { x: 0, y: 1, z: 0 } };

export function alongOf(line: Point): SlopeAlong {
  const key = alongKey(line);
  return key === null ? OTHER_WAY : key === 'ahead' ? 'x' : 'y';
}
