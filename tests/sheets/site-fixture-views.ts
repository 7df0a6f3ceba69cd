import type { Point } from '../../server/plan/figure.ts';
import type { SiteView } from '../../server/plan/site-view.ts';
import type { FlatPoint, ViewMember } from '../../server/plan/view.ts';

const at = (x: number, y: number, z: number): Point => ({ x, y, z });

/** Centrelines in the structure's axes [mm]: a hoop aft of the transom, its crossbar, and three legs. */
const TUBES = {
  hoop: [
    at(0, 455, 0),
    at(-600, 455, -24),
    at(-700, 355, -28),
    at(-700, -355, -28),
    at(-600, -455, -24),
    at(0, -455, 0),
  ],
  'crossbar 1': [at(-350, 455, -14), at(-350, -455, -14)],
};
const LEGS = {
  'port strut': [at(0, 420, -610), at(-480, 455, -19)],
  'starboard strut': [at(0, -420, -610), at(-480, -455, -19)],
  'middle post': [at(-650, 0, -612), at(-700, 0, -28)],
};
const POINTS = {
  'transom port': at(0, 420, -610),
  'transom starboard': at(0, -420, -610),
  'pontoon pad': at(-650, 0, -612),
};

/** Surfaces that the legs stand on: the transom for two of them, a pontoon for the third. */
const SURFACES = {
  'port strut': [at(0, 420, -540), at(0, 420, -680)],
  'starboard strut': [at(0, -420, -540), at(0, -420, -680)],
  'middle post': [at(-720, 0, -612), at(-580, 0, -612)],
};

const VIEWS: readonly { key: SiteView['key']; right: Point; up: Point }[] = [
  { key: 'from-starboard', right: at(1, 0, 0), up: at(0, 0, 1) },
  { key: 'from-back', right: at(0, -1, 0), up: at(0, 0, 1) },
  { key: 'from-above', right: at(0, -1, 0), up: at(1, 0, 0) },
];

/** What is level where she is down by the bow by 0.8 and port is up by 1.7 degrees: rise for each millimetre. */
const RISES = { 'from-starboard': 0.01396, 'from-back': 0.02967 };

export const siteViews = (diameter: number): SiteView[] =>
  VIEWS.map(({ key, right, up }) => {
    const flat = (p: Point): FlatPoint => [
      p.x * right.x + p.y * right.y + p.z * right.z,
      p.x * up.x + p.y * up.y + p.z * up.z,
    ];
    const tubes = (list: Readonly<Record<string, readonly Point[]>>): ViewMember[] =>
      Object.entries(list).map(([member, points]) => tube(member, points.map(flat), diameter));
    const post = [at(-250, 70, -700), at(-250, 70, 300), at(-250, 130, 300), at(-250, 130, -700), at(-250, 70, -700)];
    const rise = key === 'from-starboard' || key === 'from-back' ? RISES[key] : null;
    const members = tubes(TUBES);
    const legs = tubes(LEGS).map((leg, index) => ({ ...leg, field: `/site/legs/${String(index)}` }));
    const everything = [...members, ...legs].flatMap(({ edges }) => edges.flat());
    const xs = everything.map(([x]) => x);
    const ys = everything.map(([, y]) => y);
    return {
      key,
      right,
      up,
      bounds: [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)],
      members,
      legs,
      things: [{ name: 'rudder post', field: '/site/things/0', swung: false, lines: [post.map(flat)] }],
      points: Object.entries(POINTS).map(([name, point], index) => ({
        name,
        field: `/site/points/${String(index)}`,
        at: flat(point),
      })),
      feet: Object.entries(SURFACES).map(([leg, surface], index) => ({
        field: `/site/legs/${String(index)}`,
        at: flat(LEGS[leg as keyof typeof LEGS][0]!),
        surface: [flat(surface[0]!), flat(surface[1]!)],
      })),
      hinge: [flat(at(0, 455, 0)), flat(at(0, -455, 0))],
      level:
        rise === null
          ? null
          : [
              [-2000, -300 - 2000 * rise],
              [2000, -300 + 2000 * rise],
            ],
      gaps: [
        {
          thing: 'rudder post',
          field: '/site/things/0',
          from: flat(at(-250, 100, -14)),
          to: flat(at(-350, 100, -14)),
          value: 61,
        },
      ],
    };
  });

function tube(member: string, centreline: FlatPoint[], diameter: number): ViewMember {
  const edge = (by: number): FlatPoint[] =>
    centreline.map(([x, y], index): FlatPoint => {
      const [x0, y0] = centreline[Math.max(0, index - 1)]!;
      const [x1, y1] = centreline[Math.min(centreline.length - 1, index + 1)]!;
      const length = Math.hypot(x1 - x0, y1 - y0);
      return length < 1e-9 ? [x + by, y] : [x - ((y1 - y0) / length) * by, y + ((x1 - x0) / length) * by];
    });
  return { member, edges: [edge(diameter / 2), edge(-diameter / 2)], centreline };
}
