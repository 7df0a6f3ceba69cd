import type { Frame } from '../../job/frame.ts';
import { finding } from '../finding.ts';
import { crossings } from './crossing.ts';
import { expandHoop } from './expand-hoop.ts';
import { expandMembers, expandRun } from './expand-members.ts';
import { expandOffset } from './expand-offset.ts';
import { expandRing } from './expand-ring.ts';
import { expandStraight } from './expand-straight.ts';
import type { DrawnFrame, ShapeContext } from './shape-context.ts';

/** Straights and arcs in all, so that the search for tubes that cross ends in time; our own choice. */
const MOST_PIECES = 300;

/**
 * A typed frame in space: members, sizes to check, feet and corners, in the frame's own axes. Total: what cannot be
 * made gives stops at the fields that cause it, with the allowed range in the reference that was typed.
 *
 * @param context outside diameter and centreline radius of a die bend after release [mm]; the frame's JSON pointer
 * @returns geometry null where it cannot be drawn; one whose tubes run through each other is drawn, with the stops
 */
export function frameGeometry(frame: Frame, context: ShapeContext): DrawnFrame {
  const drawn = drawFrame(frame, context);
  if (drawn.geometry === null) return drawn;
  const pieces = drawn.geometry.members.reduce((sum, { centreline }) => sum + centreline.pieces.length, 0);
  if (pieces > MOST_PIECES) {
    const large = finding('frame-too-large', 'stop', context.root, { value: pieces, high: MOST_PIECES });
    return { geometry: null, findings: [...drawn.findings, large] };
  }
  return { ...drawn, findings: [...drawn.findings, ...crossings(frame, drawn.geometry, context)] };
}

/** The frame without the search for tubes that cross: for frames that nobody means to make. */
export function drawFrame(frame: Frame, context: ShapeContext): DrawnFrame {
  switch (frame.shape) {
    case 'hoop':
      return expandHoop(frame, context);
    case 'ring':
      return expandRing(frame, context);
    case 'offset':
      return expandOffset(frame, context);
    case 'straight':
      return expandStraight(frame, context);
    case 'run':
      return expandRun(frame, context);
    case 'members':
      return expandMembers(frame, context);
  }
}
