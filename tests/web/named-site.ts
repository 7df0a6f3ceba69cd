import type { Job } from '../../server/job/job.ts';
import { levelRead } from './level-read.ts';
import { withSite } from './made-up-site.ts';

export const typedPoint = (x: number, y: number, z: number) => ({
  by: 'typed' as const,
  point: { x, y, z },
  accuracy: null,
});
const cylinder = (name: string): Job['site']['things'][number] => ({
  name,
  shape: {
    shape: 'cylinder',
    at: { named: 'A' },
    axis: { by: 'points', from: 'A', to: 'B' },
    diameter: 60,
    ends: null,
  },
  clearance: 5,
  swing: null,
});

/** Points, things and a direction that name each other; a direction and a thing share their name with a point. */
export const namedSite = withSite(
  {
    points: [
      { name: 'A', at: typedPoint(0, 0, 0) },
      { name: 'B', at: typedPoint(0, 0, 900) },
      {
        name: 'C',
        at: {
          by: 'distances',
          distances: ['A', 'B', 'B'].map((from) => ({ from, distance: 700, accuracy: null })),
          on: 'post',
          towards: 'up',
        },
      },
    ],
    things: [
      cylinder('post'),
      {
        name: 'wall',
        shape: { shape: 'plane', plane: { by: 'points', points: ['C', 'B', 'A'] } },
        clearance: null,
        swing: null,
      },
      { name: 'A', shape: { shape: 'point', at: { x: 0, y: 0, z: 0 }, radius: 5 }, clearance: null, swing: null },
    ],
    directions: [{ name: 'A', direction: { by: 'thing', thing: 'post' } }],
  },
  levelRead,
);
