import type { StraightTube } from '../../job/frame.ts';
import { centrelineFromChain } from '../geometry/centreline.ts';
import type { Vector3 } from '../geometry/vector.ts';
import type { Spot } from './frame-geometry.ts';
import type { DrawnFrame, ShapeContext } from './shape-context.ts';

const X: Vector3 = { x: 1, y: 0, z: 0 };
const Z: Vector3 = { x: 0, y: 0, z: 1 };

/** A straight tube along x from the origin. */
export function expandStraight(frame: StraightTube, context: ShapeContext): DrawnFrame {
  const { length } = frame;
  const start: Spot = { member: 'tube', station: 0, point: { x: 0, y: 0, z: 0 } };
  const finish: Spot = { member: 'tube', station: length, point: { x: length, y: 0, z: 0 } };
  return {
    geometry: {
      members: [
        {
          name: 'tube',
          centreline: centrelineFromChain({ point: start.point, direction: X, normal: Z }, [
            { kind: 'straight', length },
          ]),
          closed: false,
          closing: null,
          start: { kind: 'free' },
          finish: { kind: 'free' },
        },
      ],
      checks: [
        {
          key: 'length',
          index: 0,
          field: `${context.root}/length`,
          reference: 'centre',
          outsideExtra: 0,
          insideExtra: 0,
          bothEnds: false,
          from: start,
          to: finish,
        },
      ],
      feet: [start, finish],
      corners: [],
      planeNormal: Z,
    },
    findings: [],
  };
}
