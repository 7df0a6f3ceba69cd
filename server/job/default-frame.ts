import type { Frame } from './frame.ts';

export type Shape = Frame['shape'];

/** Every shape that a new job can start with, in the order in which they are offered. */
export const SHAPES: readonly Shape[] = ['hoop', 'ring', 'offset', 'straight', 'run', 'members'];

const outside = (value: number) => ({ value, reference: 'outside' as const });
const centre = (value: number) => ({ value, reference: 'centre' as const });
const at = (x: number, y: number, z: number) => ({ x, y, z, radius: null });

/** Sizes to begin with: a frame of each shape that a common die can bend. Examples to replace, no source. */
export function newFrame(shape: Shape): Frame {
  switch (shape) {
    case 'hoop':
      return {
        shape,
        width: outside(900),
        widthAtFeet: null,
        leftLeg: outside(600),
        rightLeg: outside(600),
        crossbar: { form: 'straight' },
        innerCrossbars: [],
      };
    case 'ring':
      return { shape, width: outside(900), height: outside(600) };
    case 'offset':
      return { shape, across: centre(200), angle: 45, first: centre(400), last: centre(400) };
    case 'straight':
      return { shape, length: 1000 };
    case 'run':
      return { shape, points: [at(0, 0, 0), at(600, 0, 0), at(600, 600, 0), at(600, 600, 600)] };
    case 'members':
      return {
        shape,
        members: [
          {
            name: 'tube',
            path: { by: 'points', points: [at(0, 0, 0), at(600, 0, 0), at(600, 600, 0)], closed: false },
            start: { end: 'free' },
            finish: { end: 'free' },
          },
        ],
      };
  }
}
