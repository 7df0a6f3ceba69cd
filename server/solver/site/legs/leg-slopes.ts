import type { LegPlan } from '../../../plan/leg.ts';
import { middleOf } from '../../geometry/box.ts';
import { moved, turned } from '../../geometry/rigid-motion.ts';
import { pieceEnds } from '../../geometry/slice.ts';
import { cross, dot, length, ORIGIN, scale, subtract, unit, type Vector3 } from '../../geometry/vector.ts';
import type { LaidFrame, LaidHinge, LaidSite, SiteSource } from '../laid-site.ts';
import { riseOf } from '../rise.ts';
import type { SiteStudy } from '../site-study.ts';
import { framePlace } from '../standing/frame-place.ts';
import { uprightOf } from '../standing/upright.ts';

/** A line of the frame whose rise counts as its slope: as it stands, and the way up that it is held against. */
type Rising = { readonly along: Vector3; readonly up: Vector3 };

/** What a frame turns about while one slope changes, and how much of the slope a turn is [rad per rad]. */
type SlopeTurn = LaidHinge & { readonly rate: number };

/** A slope that legs set, on any laying of the site. */
export type LegSlope = Pick<LegPlan['slopes'][number], 'axis' | 'field'> & {
  /** Null where the turn itself counts. */
  readonly rising: (laid: LaidSite) => Rising | null;
  readonly turn: (laid: LaidSite) => SlopeTurn | undefined;
};

/** A hinge that gives less slope than this for its turn does not set it [rad per rad]: our own choice. */
const LEAST_RATE = 0.02;

/** Two slopes whose turns lie nearer than this are turned as if each were alone [1 − cos² between them]: our own choice. */
const APART = 0.01;

type LineOfFrame = Pick<LegSlope, 'axis' | 'field'> & { readonly rising: (laid: LaidSite) => Rising | null };

/**
 * The slopes that the legs of a frame set. On a hinge it is the first that is asked for; where none is, or the hinge does
 * not give it, the turn about the hinge itself. Legs alone set every slope that is asked for, and without any those of the
 * frame's x and y, by the least turn that changes one and keeps the other, about the place whose height is asked for, else
 * about the frame's middle: as a frame without a hinge is turned to what is asked of it.
 */
export function legSlopes({ source, laid }: SiteStudy): LegSlope[] {
  const hinge = laid.frame?.hinge ?? null;
  const asked = askedLines(source);
  if (hinge === null) {
    const lines = asked.length > 0 ? asked : [lineOf('x', { x: 1, y: 0, z: 0 }), lineOf('y', { x: 0, y: 1, z: 0 })];
    const about = placeAbout(source);
    return lines.map((line, index) => ({
      ...line,
      turn: (site) => leastTurn(lines, index, site, about),
    }));
  }
  const [first] = asked;
  const given = first === undefined ? 0 : rateOf(hinge, first.rising(laid));
  return first === undefined || Math.abs(given) < LEAST_RATE
    ? [turnAbout]
    : [{ ...first, turn: onHinge(first.rising) }];
}

const turnAbout: LegSlope = {
  axis: 'turn',
  field: '',
  rising: () => null,
  turn: ({ frame }) => (frame?.hinge ? { ...frame.hinge, rate: 1 } : undefined),
};

const onHinge =
  (rising: LegSlope['rising']): LegSlope['turn'] =>
  (laid) => {
    const hinge = laid.frame?.hinge ?? null;
    return hinge === null ? undefined : { ...hinge, rate: rateOf(hinge, rising(laid)) };
  };

function askedLines({ site: { standing } }: SiteSource): LineOfFrame[] {
  return standing.slopes.flatMap(({ along, to }, index): LineOfFrame[] => {
    const way = unit(along);
    if (way === undefined) return [];
    const field = `/site/standing/slopes/${String(index)}`;
    return [{ axis: 'asked', field, rising: (laid) => risingOf(laid, way, uprightOf(to, laid.up)) }];
  });
}

const lineOf = (axis: 'x' | 'y', way: Vector3): LineOfFrame => ({
  axis,
  field: '',
  rising: (laid) => risingOf(laid, way, laid.up),
});

const risingOf = ({ frame }: LaidSite, way: Vector3, up: Vector3): Rising | null =>
  frame === null ? null : { along: turned(frame.motion, way), up };

/** Slope for a turn about an axis [rad per rad]: (h × v) · u / cos s; derived. */
const rateOf = ({ axis }: LaidHinge, rising: Rising | null): number =>
  rising === null ? 0 : dot(axis, gradientOf(rising) ?? ORIGIN);

/** What a turn is multiplied with to give the change of a slope: (v × u) / cos s, a unit vector; none of an upright line. */
const gradientOf = ({ along, up }: Rising): Vector3 | undefined =>
  Math.abs(riseOf(along, up)) > (89.9 * Math.PI) / 180 ? undefined : unit(cross(along, up));

/** The least turn that changes one slope by a radian, and keeps the other of the first two where that can be. */
function leastTurn(
  lines: readonly LineOfFrame[],
  index: number,
  laid: LaidSite,
  about: (laid: LaidSite) => Vector3 | undefined,
): SlopeTurn | undefined {
  const gradient = (line: LineOfFrame | undefined): Vector3 | undefined => {
    const rising = line?.rising(laid) ?? null;
    return rising === null ? undefined : gradientOf(rising);
  };
  const own = gradient(lines[index]);
  const at = about(laid);
  if (own === undefined || at === undefined) return undefined;
  const other = index > 1 ? undefined : gradient(lines[1 - index]);
  const kept = other === undefined ? own : subtract(own, scale(other, dot(own, other)));
  // of what is left square to the other slope's turn, as much as makes one radian of its own
  const share = dot(kept, own);
  const turn = share < APART ? own : scale(kept, 1 / share);
  const size = length(turn);
  return { at, axis: scale(turn, 1 / size), rate: 1 / size };
}

/** What a frame on legs alone turns about, in the structure's axes. */
function placeAbout(source: SiteSource): (laid: LaidSite) => Vector3 | undefined {
  const { height } = source.site.standing;
  const middle = middleOf(source.made.flatMap(({ centreline }) => pieceEnds(centreline))) ?? ORIGIN;
  const onFrame = (frame: LaidFrame): Vector3 | undefined =>
    height === null ? undefined : framePlace(frame, source.wanted)(height.at)?.point;
  return ({ frame }) => (frame === null ? undefined : (onFrame(frame) ?? moved(frame.motion, middle)));
}
