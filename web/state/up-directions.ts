import type { Frame } from '../../server/job/frame.ts';
import { words } from '../../server/language/words.ts';

type Vector = { readonly x: number; readonly y: number; readonly z: number };

const AXES = ['z', '-z', 'y', '-y', 'x', '-x'] as const;
export type UpKey = (typeof AXES)[number];

/** Each way to lay a frame down square, as the direction in its own axes that points up then. */
const UP: Readonly<Record<UpKey, Vector>> = {
  z: { x: 0, y: 0, z: 1 },
  '-z': { x: 0, y: 0, z: -1 },
  y: { x: 0, y: 1, z: 0 },
  '-y': { x: 0, y: -1, z: 0 },
  x: { x: 1, y: 0, z: 0 },
  '-x': { x: -1, y: 0, z: 0 },
};

export const upOf = (key: UpKey): Vector => UP[key];

/** Which of the six a direction is, however long it is; null for any other. */
export function upKey({ x, y, z }: Vector): UpKey | null {
  const size = Math.hypot(x, y, z);
  const found = AXES.find((key) => {
    const up = UP[key];
    return size > 0 && x / size === up.x && y / size === up.y && z / size === up.z;
  });
  return found ?? null;
}

/** The six ways in words: a hoop has feet and a crossbar, every other frame the sides of its drawing. */
export const upOptions = (shape: Frame['shape']): readonly { readonly value: UpKey; readonly words: string }[] =>
  AXES.map((value) => ({
    value,
    words:
      shape === 'hoop' && value !== 'z' && value !== '-z'
        ? words(`choice.upHoop.${value}`)
        : words(`choice.up.${value}`),
  }));
