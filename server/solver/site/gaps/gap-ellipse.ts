import type { GapPlan } from '../../../plan/gap.ts';
import { figure, input } from '../../figure.ts';
import { DEGREES } from '../../geometry/angle.ts';
import { moved, turned } from '../../geometry/rigid-motion.ts';
import { cross, dot, length, subtract } from '../../geometry/vector.ts';
import type { LaidSite } from '../laid-site.ts';
import { siteBand, type SiteStudy } from '../site-study.ts';

/** An axis that is nearer to lying in the plane than this makes no ellipse there: cosine of its tilt; rounding. */
const ALONG = 1e-6;

/**
 * The ellipse that a cylinder makes in the plane of the frame as it stands: as wide as it is thick, and longer by the
 * tilt of its axis off the plane's normal, d / cos(tilt). Cosine and sine of the tilt are those parts of the axis that lie along
 * the normal and across it.
 *
 * @param index of the thing
 * @returns null for a frame in space, for other things, and where the cylinder ends before the plane or runs along it
 */
export function gapEllipse(study: SiteStudy, index: number): GapPlan['ellipse'] {
  const crossing = crossingIn(study, study.laid, index);
  if (crossing === null) return null;
  const { diameter, cosine, sine } = crossing;
  const tilt = Math.atan2(sine, cosine) * DEGREES;
  const d = input('d', 'diameter', diameter, 'mm');
  const c = input('c', 'axis-along-normal', cosine, 'ratio');
  const bandOf = (pick: (of: Crossing) => number) =>
    siteBand(study, (laid) => {
      const own = crossingIn(study, laid, index);
      return own === null ? undefined : pick(own);
    });
  return {
    long: figure(
      diameter / cosine,
      'mm',
      'l = d / c',
      [d, c],
      ['geometry', 'first-order'],
      bandOf((of) => of.diameter / of.cosine),
    ),
    short: figure(diameter, 'mm', 'd', [d], ['geometry']),
    tilt: figure(
      tilt,
      'deg',
      'τ = arctan (s / c)',
      [input('s', 'axis-across-normal', sine, 'ratio'), c],
      ['geometry', 'first-order'],
      // measured straight, so that it is right near square as well
      bandOf((of) => Math.atan2(of.sine, of.cosine) * DEGREES),
    ),
  };
}

type Crossing = { readonly diameter: number; readonly cosine: number; readonly sine: number };

/** Where the axis goes through the plane that the wanted frame lies in, and how squarely. */
function crossingIn({ source }: SiteStudy, { frame, things }: LaidSite, index: number): Crossing | null {
  const body = things[index]?.body;
  const { planeNormal, members } = source.wanted;
  const start = members[0]?.centreline.pieces[0]?.start;
  if (body?.shape !== 'cylinder' || frame === null || planeNormal === null || start === undefined) return null;
  const normal = turned(frame.motion, planeNormal);
  const cosine = dot(body.axis, normal);
  if (Math.abs(cosine) < ALONG) return null;
  const through = dot(subtract(moved(frame.motion, start), body.at), normal) / cosine;
  const { from = through, to = through } = body.ends ?? {};
  if (through < from || through > to) return null;
  return { diameter: 2 * body.radius, cosine: Math.abs(cosine), sine: length(cross(body.axis, normal)) };
}
