import type { Frame } from '../../job/frame.ts';
import { expandHoop } from './expand-hoop.ts';
import { expandStraight } from './expand-straight.ts';
import type { DrawnFrame, ShapeContext } from './shape-context.ts';

/**
 * A typed frame in space: members, sizes to check, feet and corners, in the frame's own axes. Total: what cannot be
 * made gives stops at the fields that cause it, with the allowed range in the reference that was typed.
 *
 * @param context outside diameter and centreline radius of a die bend after release [mm]; the frame's JSON pointer
 * @returns geometry null where it cannot be drawn
 */
export function frameGeometry(frame: Frame, context: ShapeContext): DrawnFrame {
  switch (frame.shape) {
    case 'hoop':
      return expandHoop(frame, context);
    case 'straight':
      return expandStraight(frame, context);
    default:
      throw new Error(frame.shape);
  }
}
