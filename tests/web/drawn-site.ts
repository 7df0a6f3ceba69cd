import type { SiteView } from '../../server/plan/site-view.ts';
import type { Area } from '../../web/state/label-places.ts';
import { fit } from '../../web/state/screen.ts';

/** A view with one of each: a leg, a post at rest and swung, a point, a hinge, what is level and a gap. */
export const view: SiteView = {
  key: 'from-starboard',
  right: { x: 1, y: 0, z: 0 },
  up: { x: 0, y: 0, z: 1 },
  bounds: [0, 0, 1000, 500],
  members: [],
  legs: [
    {
      member: 'port leg',
      field: '/site/legs/0',
      edges: [],
      centreline: [
        [100, 100],
        [300, 400],
      ],
    },
  ],
  things: [
    {
      name: 'post',
      field: '/site/things/0',
      swung: false,
      lines: [
        [
          [500, 0],
          [540, 0],
          [540, 400],
          [500, 400],
          [500, 0],
        ],
      ],
    },
    {
      name: 'post',
      field: '/site/things/0',
      swung: true,
      lines: [
        [
          [600, 0],
          [640, 400],
        ],
      ],
    },
    { name: 'unseen', field: '/site/things/1', swung: false, lines: [] },
  ],
  points: [{ name: 'foot', field: '/site/points/0', at: [100, 100] }],
  feet: [],
  hinge: [
    [800, 450],
    [900, 450],
  ],
  level: [
    [0, 50],
    [1000, 60],
  ],
  gaps: [{ thing: 'post', field: '/site/things/0', from: [540, 200], to: [580, 200], value: 40 }],
};
export const said = {
  level: 'level',
  hinge: 'hinge',
  gap: (value: number) => `gap ${String(value)}`,
  swung: (name: string) => `${name}, swung`,
  called: (_: string, name: string) => name,
};
export const area = (width: number, height: number): Area => ({ left: 0, top: 0, right: width, bottom: height });
export const WHOLE = area(600, 340);
export const screen = fit(view.bounds, { width: 600, height: 340 }, 20);
