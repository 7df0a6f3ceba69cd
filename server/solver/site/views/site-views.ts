import type { GapPlan } from '../../../plan/gap.ts';
import type { SiteView } from '../../../plan/site-view.ts';
import type { FlatPoint } from '../../../plan/view.ts';
import { RADIANS } from '../../geometry/angle.ts';
import { add, cross, scale, unit, type Vector3 } from '../../geometry/vector.ts';
import type { Bounds } from '../../views/dimension-lines.ts';
import { outlineOf } from '../../views/outline.ts';
import { widened } from '../../views/plan-views.ts';
import { project, rounded, type Projection } from '../../views/projection.ts';
import type { LaidLeg } from '../laid-site.ts';
import type { SiteStudy } from '../site-study.ts';
import { framePlace } from '../standing/frame-place.ts';
import { drawnSite, type DrawnSite } from './drawn-site.ts';
import { gapLines } from './gap-lines.ts';
import { levelLine } from './level-line.ts';
import { SITE_PROJECTIONS } from './site-projections.ts';
import { swungAtGaps } from './swung-at-gaps.ts';
import { bodiesOf, outlineOfBody } from './thing-outline.ts';

/** Half the least width and height of a drawing [mm]: one of nothing, or of one point, has to have a scale as well; our own choice. */
const LEAST_HALF = 50;
/** How far the line of a hinge is drawn beyond its two places, as a share of their distance; our own choice. */
const HINGE_BEYOND = 0.1;

type Parts = Omit<SiteView, 'key' | 'right' | 'up' | 'bounds' | 'level'>;

/** The site from starboard, from the back, from above and from a corner, as the frame stands. */
export function siteViews(study: SiteStudy, gaps: readonly GapPlan[]): SiteView[] {
  const drawn = drawnSite(study, gaps);
  const hinge = hingeEnds(study);
  const swung = swungAtGaps(study, gaps);
  const { outsideDiameter } = study.source.tube;
  return (['from-starboard', 'from-back', 'from-above', 'pictorial'] as const).map((key): SiteView => {
    const view = SITE_PROJECTIONS[key];
    const parts: Parts = {
      members: drawn.members.map((member) => outlineOf(member, view, outsideDiameter)),
      legs: drawn.legs.map(({ laid, tube }) => ({
        ...outlineOf(tube, view, laid.outsideDiameter),
        field: laid.field,
      })),
      things: [
        ...thingsOf(drawn, gaps, view),
        ...swung.map((tube) => ({
          name: tube.name,
          field: '',
          swung: true,
          lines: outlineOf(tube, view, outsideDiameter).edges,
        })),
      ],
      points: drawn.points.map(({ name, field, point }) => ({ name, field, at: rounded(project(view, point)) })),
      feet: drawn.legs.map(({ laid }) => footOf(laid, view)),
      hinge: hinge === null ? null : [rounded(project(view, hinge[0])), rounded(project(view, hinge[1]))],
      gaps: gapLines(gaps, drawn, outsideDiameter, view),
    };
    const bounds = boundsOf(parts);
    const { right, up } = view;
    return { key, right, up, bounds, ...parts, level: levelLine(study.laid.up, view, bounds) };
  });
}

function thingsOf(
  { extent, legs, things, points }: DrawnSite,
  gaps: readonly GapPlan[],
  view: Projection,
): SiteView['things'] {
  const standing = [...legs.map(({ laid }) => laid.foot), ...points.map(({ point }) => point)];
  return things.flatMap((thing) => {
    const least = gaps.find(({ field }) => field === thing.field)?.rows[0]?.thingSwing?.value ?? 0;
    return bodiesOf(thing, least * RADIANS).map(({ swung, body }) => ({
      name: thing.name,
      field: thing.field,
      swung,
      lines: outlineOfBody(body, view, { extent, standing: swung ? [] : standing }),
    }));
  });
}

/** A foot with a line in its surface, as wide as two tubes: the one line of the surface that the eye sees in its length. */
function footOf({ field, foot, surface, outsideDiameter }: LaidLeg, view: Projection): SiteView['feet'][number] {
  const along = unit(cross(surface, cross(view.right, view.up))) ?? view.right;
  const end = (side: 1 | -1): FlatPoint => rounded(project(view, add(foot, scale(along, side * outsideDiameter))));
  return { field, at: rounded(project(view, foot)), surface: [end(-1), end(1)] };
}

/** The line of the hinge, a little longer than its two places are apart. */
function hingeEnds({ source, laid: { frame } }: SiteStudy): readonly [Vector3, Vector3] | null {
  const { hinge } = source.site.standing;
  if (hinge === null || frame?.hinge === null) return null;
  const placeOf = framePlace(frame, source.wanted);
  const [from, to] = [placeOf(hinge.from)?.point, placeOf(hinge.to)?.point];
  if (from === undefined || to === undefined) return null;
  const share = (part: number): Vector3 => add(scale(from, 1 - part), scale(to, part));
  return [share(-HINGE_BEYOND), share(1 + HINGE_BEYOND)];
}

/** left, bottom, right, top of everything drawn, never without a width and a height. */
function boundsOf({ members, legs, things, points, feet, hinge, gaps }: Parts): SiteView['bounds'] {
  const all: (readonly FlatPoint[])[] = [
    ...[...members, ...legs].flatMap(({ edges, centreline }) => [...edges, centreline]),
    ...things.flatMap(({ lines }) => lines),
    points.map(({ at }) => at),
    ...feet.map(({ at, surface }) => [at, ...surface]),
    hinge ?? [],
    ...gaps.map(({ from, to }) => [from, to]),
  ];
  let bounds: Bounds = [Infinity, Infinity, -Infinity, -Infinity];
  for (const line of all) bounds = widened(bounds, line);
  const [left, bottom, right, top] = bounds;
  if (left > right) return [-LEAST_HALF, -LEAST_HALF, LEAST_HALF, LEAST_HALF];
  const [x, y] = [(left + right) / 2, (bottom + top) / 2];
  return widened(bounds, [
    [x - LEAST_HALF, y - LEAST_HALF],
    [x + LEAST_HALF, y + LEAST_HALF],
  ]);
}
