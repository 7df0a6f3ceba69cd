import type { Finding } from '../../../plan/finding.ts';
import type { StandingPlan } from '../../../plan/site.ts';
import { figure, input } from '../../figure.ts';
import { finding } from '../../finding.ts';
import { DEGREES } from '../../geometry/angle.ts';
import { moved, turned } from '../../geometry/rigid-motion.ts';
import { AXES, dot, ORIGIN, subtract, unit, type Vector3 } from '../../geometry/vector.ts';
import { MOST_DEVIATIONS } from '../deviations.ts';
import { EXACT, type LaidFrame, type LaidSite, type Off } from '../laid-site.ts';
import { madeWith } from '../made-doubts.ts';
import { ownAxes } from '../level/own-axes.ts';
import { riseBand, riseOf } from '../rise.ts';
import { siteBand, type SiteStudy } from '../site-study.ts';
import { sizeBand } from '../size-band.ts';
import { UPRIGHT } from '../structure-axes.ts';
import { askedHeight, heightOf, type AskedHeight } from './asked-height.ts';
import { madePlace } from './frame-place.ts';
import { standFrame } from './stand-frame.ts';
import { turnFigure } from './turn-figure.ts';

/** How the frame stands: where its axes are, what it was turned by, its slopes and its height, each with its band. */
export function planStanding(study: SiteStudy): { standing: StandingPlan | null; findings: Finding[] } {
  const { frame } = study.laid;
  const { standing } = study.source.site;
  const findings =
    standing.swing !== null && standing.hinge === null
      ? [finding('swing-without-hinge', 'caution', '/site/standing/swing')]
      : [];
  if (frame === null) return { standing: null, findings };
  const misfits = misfitsOf(study, frame);
  const [x, y, z] = AXES.map((axis) => turned(frame.motion, axis));
  if (x === undefined || y === undefined || z === undefined) return { standing: null, findings };
  return {
    standing: {
      origin: moved(frame.motion, ORIGIN),
      x,
      y,
      z,
      misfits: misfits.misfits,
      turn: asksForTurn(study) && isReached(study) ? turnFigure(study, frame) : null,
      slopes: slopesOf(study),
      height: heightFigure(study),
    },
    findings: [...findings, ...misfits.findings],
  };
}

const asksForTurn = ({ source: { site } }: SiteStudy): boolean =>
  site.standing.slopes.length > 0 || (site.standing.hinge !== null && site.standing.height !== null);

/** Whether the frame stands as it was asked for: a turn that was not found is not one of 0°. */
const isReached = ({ source, laid: { levels, up, points } }: SiteStudy): boolean =>
  standFrame(source, { levels, up, points, off: EXACT }).findings.every(({ grade }) => grade !== 'stop');

function misfitsOf(study: SiteStudy, frame: LaidFrame): { misfits: StandingPlan['misfits']; findings: Finding[] } {
  const { source } = study;
  const { placing, tapeAccuracy } = source.site;
  if (placing.by !== 'points') return { misfits: [], findings: [] };
  const { pairs } = placing;
  const most = MOST_DEVIATIONS * tapeAccuracy;
  const misfits = pairs.map(({ at, point: name }, index) => ({
    field: `/site/placing/pairs/${String(index)}`,
    name,
    misfit: figure(
      frame.misfits[index] ?? 0,
      'mm',
      'e = |R p + t − q|, Σ e² → min over n places',
      [input('n', 'places', pairs.length, 'count')],
      ['horn'],
      sizeBand(study, ({ frame: laid, points }, off) => {
        const place = madePlace(at, source.wanted, madeWith(source, off).made);
        const point = points.get(name);
        if (laid === null || place === undefined || point === undefined) return undefined;
        return subtract(moved(laid.placed, place.point), point);
      }),
    ),
  }));
  const findings = misfits.flatMap(({ field, name, misfit: { value } }) =>
    value > most ? [finding('placing-misfit', 'caution', field, { name, value, high: most })] : [],
  );
  return { misfits, findings };
}

/** What is asked for, then x and y of the frame. */
function slopesOf(study: SiteStudy): StandingPlan['slopes'] {
  const asked = study.source.site.standing.slopes.map(({ along }, index) => ({
    field: `/site/standing/slopes/${String(index)}`,
    axis: 'asked' as const,
    along: unit(along),
  }));
  const own = (['x', 'y'] as const).map((axis, index) => ({ field: '', axis, along: AXES[index] }));
  return [...asked, ...own].flatMap(({ field, axis, along }) =>
    along === undefined
      ? []
      : [
          {
            field,
            axis,
            toStructure: slopeFigure(study, along, () => UPRIGHT, 'z'),
            toLevel: slopeFigure(study, along, ({ up }) => up, 'u'),
          },
        ],
  );
}

/** How far a direction of the frame's axes rises as the frame stands [degrees]. */
function slopeFigure(study: SiteStudy, along: Vector3, upOf: (laid: LaidSite) => Vector3, symbol: 'z' | 'u') {
  const read = (laid: LaidSite) =>
    laid.frame === null ? undefined : { direction: turned(laid.frame.motion, along), up: upOf(laid) };
  const { direction, up } = read(study.laid) ?? { direction: along, up: UPRIGHT };
  return figure(
    riseOf(direction, up) * DEGREES,
    'deg',
    `a = arcsin(d · ${symbol})`,
    [input(`d · ${symbol}`, 'rise-of-the-direction', dot(direction, up), 'ratio')],
    ['standing-turn', ...(symbol === 'u' ? ownAxes(study) : [])],
    riseBand(study, read),
  );
}

/** How high the place stands whose height is asked for; null where none is, or its place cannot be told. */
function heightFigure(study: SiteStudy): StandingPlan['height'] {
  const { source, laid } = study;
  const askedOn = ({ up, points }: LaidSite, off: Off): AskedHeight | null => {
    const height = askedHeight(source.site.standing.height, madeWith(source, off), { up, points, off });
    return height === null || 'findings' in height ? null : height;
  };
  const asked = askedOn(laid, EXACT);
  const place = asked === null || laid.frame === null ? null : moved(laid.frame.motion, asked.place);
  if (asked === null || place === null) return null;
  return figure(
    heightOf(asked, place),
    'mm',
    'h = p · v − o · v',
    [
      input('p · v', 'place-along-the-upright', dot(place, asked.along), 'mm'),
      input('o · v', 'what-it-counts-from', dot(asked.over, asked.along), 'mm'),
    ],
    ['standing-turn', ...(source.site.standing.height?.to === 'level' ? ownAxes(study) : [])],
    siteBand(study, (site, off) => {
      const on = askedOn(site, off);
      return on === null || site.frame === null ? undefined : heightOf(on, moved(site.frame.motion, on.place));
    }),
  );
}
