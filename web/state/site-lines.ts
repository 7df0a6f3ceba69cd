import type { SiteView } from '../../server/plan/site-view.ts';
import type { FlatPoint } from '../../server/plan/view.ts';
import { insideOf, type Area } from './label-places.ts';
import { arrowhead, onScreen, type Screen } from './screen.ts';

/** Longer than any screen [px]. */
const ENDLESS = 1e5;

/** The line of what is level, on the screen [px], right across an area; null where there is none. */
export function levelAcross(
  { level }: Pick<SiteView, 'level'>,
  screen: Screen,
  area: Area,
): readonly [FlatPoint, FlatPoint] | null {
  if (level === null) return null;
  const [from, to] = [onScreen(level[0], screen), onScreen(level[1], screen)];
  const size = Math.hypot(to[0] - from[0], to[1] - from[1]);
  if (size === 0) return null;
  const at = (far: number): FlatPoint => [
    from[0] + ((to[0] - from[0]) * far) / size,
    from[1] + ((to[1] - from[1]) * far) / size,
  ];
  const [start, end] = [at(-ENDLESS), at(ENDLESS)];
  const inside = insideOf(start, end, area);
  if (inside === null) return null;
  const [first, last] = inside.map((share) => at((2 * share - 1) * ENDLESS));
  return first === undefined || last === undefined ? null : [first, last];
}

/** Shorter than this a gap has no room for two arrowheads between its ends [px]; they point at it from outside. */
const ROOM = 24;
/** How far an arrow from outside comes from [px]. */
const TAIL = 18;
/** Half size of the mark of a gap that one looks along [px]. */
const SPOT = 3;

const tenth = (value: number): string => value.toFixed(1);
const lineOf = (a: FlatPoint, b: FlatPoint): string => `M${tenth(a[0])} ${tenth(a[1])}L${tenth(b[0])} ${tenth(b[1])}`;

/** A gap with its arrowheads, for the d of an SVG path; a small square where one looks along it. */
export function gapPath({ from, to }: Pick<SiteView['gaps'][number], 'from' | 'to'>, screen: Screen): string {
  const [a, b] = [onScreen(from, screen), onScreen(to, screen)];
  const size = Math.hypot(b[0] - a[0], b[1] - a[1]);
  if (size < SPOT) {
    const [left, top] = [tenth(a[0] - SPOT), tenth(a[1] - SPOT)];
    return `M${left} ${top}h${String(2 * SPOT)}v${String(2 * SPOT)}h${String(-2 * SPOT)}Z`;
  }
  if (size > ROOM) return lineOf(a, b) + arrowhead(a, b) + arrowhead(b, a);
  const beyond = (end: FlatPoint, other: FlatPoint): FlatPoint => [
    end[0] + ((end[0] - other[0]) / size) * TAIL,
    end[1] + ((end[1] - other[1]) / size) * TAIL,
  ];
  const [outA, outB] = [beyond(a, b), beyond(b, a)];
  return lineOf(outA, outB) + arrowhead(a, outA) + arrowhead(b, outB);
}

/** What is being typed on the site, by its field: a leg, a point, a thing, or a part of what stands there. */
export type SitePart = 'level' | 'hinge' | 'frame';

const PARTS: readonly (readonly [string, SitePart])[] = [
  ['/site/level', 'level'],
  ['/site/standing/hinge', 'hinge'],
  ['/site/standing', 'frame'],
  ['/site/placing', 'frame'],
];

/** What of the drawing a field of the job belongs to: the field of a leg, a point or a thing, or a part; empty for none. */
export function drawnPart(field: string): string {
  const own = /^\/site\/(?:legs|points|things)\/\d+(?=\/|$)/.exec(field)?.[0];
  return own ?? PARTS.find(([start]) => field === start || field.startsWith(`${start}/`))?.[1] ?? '';
}
