import { expect } from 'vitest';
import type { Site } from '../../../server/job/site.ts';
import type { GapPlan } from '../../../server/plan/gap.ts';
import type { SiteView } from '../../../server/plan/site-view.ts';
import type { FlatPoint } from '../../../server/plan/view.ts';
import type { Vector3 } from '../../../server/solver/geometry/vector.ts';
import type { LaidLeg, LaidThing, SiteSource } from '../../../server/solver/site/laid-site.ts';
import { siteViews } from '../../../server/solver/site/views/site-views.ts';
import { at, AXES, studyOf, type Around } from './standing-site.ts';

/** The hoop of the starting values lying level, its feet at y = 0 to the back: x of the frame to starboard, y ahead. */
export const PLACED = { placing: { ...AXES, origin: at(0, 0, 600), x: at(0, -1, 0), y: at(1, 0, 0) } };
export const thing = (name: string, body: LaidThing['body'], swing: LaidThing['swing'] = null): LaidThing => ({
  field: `/site/things/${name}`,
  name,
  clearance: null,
  body,
  swing,
});
export const leg = (foot: Vector3, head: Vector3): LaidLeg => ({
  field: '/site/legs/0',
  name: 'leg',
  foot,
  surface: at(0, 0, 1),
  head,
  member: 'hoop',
  station: 0,
  outsideDiameter: 30,
  wall: 2,
});
export function views(
  source: SiteSource,
  around: Around = {},
  gaps: readonly GapPlan[] = [],
): Record<string, SiteView> {
  const points: Site['points'] = Object.entries(around.points ?? {}).map(([name, point]) => ({
    name,
    at: { by: 'typed', point: { ...point }, accuracy: null },
  }));
  const typed = { ...source, site: { ...source.site, points } };
  return Object.fromEntries(siteViews(studyOf(typed, around), gaps).map((view) => [view.key, view]));
}

/** Every point that a view draws. */
const drawn = ({ members, legs, things, points, feet, hinge, level, gaps }: SiteView): FlatPoint[] => [
  ...[...members, ...legs].flatMap(({ edges, centreline }) => [...edges.flat(), ...centreline]),
  ...things.flatMap(({ lines }) => lines.flat()),
  ...points.map((one) => one.at),
  ...feet.flatMap((foot) => [foot.at, ...foot.surface]),
  ...(hinge ?? []),
  ...(level ?? []),
  ...gaps.flatMap(({ from, to }) => [from, to]),
];

export function expectInside(view: SiteView): void {
  const [left, bottom, right, top] = view.bounds;
  expect(view.bounds.every(Number.isFinite)).toBe(true);
  expect(right).toBeGreaterThan(left);
  expect(top).toBeGreaterThan(bottom);
  for (const [x, y] of drawn(view)) {
    expect(x).toBeGreaterThanOrEqual(left);
    expect(x).toBeLessThanOrEqual(right);
    expect(y).toBeGreaterThanOrEqual(bottom);
    expect(y).toBeLessThanOrEqual(top);
  }
}

export const POST = thing('post', {
  shape: 'cylinder',
  at: at(700, 200, 100),
  axis: at(0, 0, 1),
  radius: 40,
  ends: { from: 0, to: 900 },
});
export const ENDLESS = thing('mast', {
  shape: 'cylinder',
  at: at(300, -900, 40_000),
  axis: at(0, 0, 1),
  radius: 60,
  ends: null,
});
