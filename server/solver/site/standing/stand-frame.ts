import type { TubePlace } from '../../../job/tube-place.ts';
import type { Finding } from '../../../plan/finding.ts';
import { finding } from '../../finding.ts';
import { middleOf } from '../../geometry/box.ts';
import { movedLine } from '../../geometry/moved-centreline.ts';
import { composed, moved, turnAbout, turned, type RigidMotion } from '../../geometry/rigid-motion.ts';
import { pieceEnds } from '../../geometry/slice.ts';
import { length, ORIGIN, scale, subtract, unit, type Vector3 } from '../../geometry/vector.ts';
import type { LaidFrame, LaidHinge, MadeLine, Off, SiteSource, SolvedLevel } from '../laid-site.ts';
import { askedHeight, heightOf, type AskedHeight } from './asked-height.ts';
import { askedSlopes, type AskedSlope } from './asked-slopes.ts';
import { madePlace } from './frame-place.ts';
import { freeTurn } from './free-turn.ts';
import { hingeTurn } from './hinge-turn.ts';
import { placeFrame, type PlacedFrame } from './place-frame.ts';
import { placeMissing } from './place-missing.ts';

type Known = {
  readonly levels: readonly (SolvedLevel | null)[];
  readonly up: Vector3;
  readonly points: ReadonlyMap<string, Vector3>;
  readonly off: Off;
};
type Asked = { readonly slopes: readonly AskedSlope[]; readonly height: AskedHeight | null };
/** The frame as it stands, before its lines follow it. */
type Stood = Pick<LaidFrame, 'motion' | 'hinge' | 'turn'> & { readonly findings: readonly Finding[] };

/** Two places of a hinge nearer than this are one [mm]; our own choice. */
const SHORTEST_HINGE = 1;

/**
 * The frame in the structure's axes: where it was placed, then turned and lifted to what is asked of how it stands. On a
 * hinge it turns about that alone; without one by the least turn, about the place whose height is asked for, else about
 * its middle. What cannot be had leaves it as it was placed, with a finding.
 *
 * @param known up by gravity, points and what the readings are taken off by
 * @returns frame null where it cannot be told where it was placed
 */
export function standFrame(
  source: SiteSource,
  known: Known,
): { frame: LaidFrame | null; findings: readonly Finding[] } {
  const placing = placeFrame(source, known);
  if ('findings' in placing) return { frame: null, findings: placing.findings };
  const { misfits, motion: placed } = placing.placed;
  const { motion, hinge, turn, findings } = stood(source, known, placing.placed);
  const lines = source.made.map(({ name, closed, centreline }) => ({
    name,
    closed,
    centreline: movedLine(motion, centreline),
  }));
  return { frame: { motion, placed, hinge, turn, misfits, lines }, findings };
}

function stood(source: SiteSource, known: Known, { motion }: PlacedFrame): Stood {
  const { standing } = source.site;
  const asked = askedSlopes(standing.slopes, motion, known.up);
  const height = askedHeight(standing.height, source, known);
  const hinge = standing.hinge === null ? null : hingeOf(standing.hinge, source, motion);
  const missing = [
    ...asked.findings,
    ...(height !== null && 'findings' in height ? height.findings : []),
    ...(hinge !== null && 'findings' in hinge ? hinge.findings : []),
  ];
  const line = hinge === null || 'findings' in hinge ? null : hinge;
  if (missing.length > 0 || (height !== null && 'findings' in height)) {
    return { motion, hinge: line, turn: 0, findings: missing };
  }
  const wishes = { slopes: asked.slopes, height };
  return line === null ? standsFree(wishes, source.made, motion) : standsOnHinge(line, wishes, motion);
}

function standsOnHinge(hinge: LaidHinge, asked: Asked, motion: RigidMotion): Stood {
  const { turn, findings } = hingeTurn(hinge, asked, motion);
  const about = turnAbout(hinge.at, scale(hinge.axis, turn), ORIGIN);
  return { motion: turn === 0 ? motion : composed(about, motion), hinge, turn, findings };
}

function standsFree({ slopes, height }: Asked, made: readonly MadeLine[], motion: RigidMotion): Stood {
  if (slopes.length === 0 && height === null) return { motion, hinge: null, turn: 0, findings: [] };
  const { turn, findings } = freeTurn(slopes);
  // what cannot be had is not had by half: the frame is not lifted either
  if (findings.some(({ grade }) => grade === 'stop')) return { motion, hinge: null, turn: 0, findings };
  const about = moved(motion, height?.place ?? middleOfMade(made));
  const lift = height === null ? ORIGIN : scale(height.along, height.value - heightOf(height, about));
  return { motion: composed(turnAbout(about, turn, lift), motion), hinge: null, turn: length(turn), findings };
}

/** The line through two places of the frame as it was placed, from the first to the second. */
function hingeOf(
  { from, to }: { from: TubePlace; to: TubePlace },
  source: SiteSource,
  motion: RigidMotion,
): LaidHinge | { readonly findings: readonly Finding[] } {
  const field = '/site/standing/hinge';
  const [first, last] = [from, to].map((at) => madePlace(at, source.wanted, source.made));
  if (first === undefined || last === undefined) {
    return {
      findings: [
        ...(first === undefined ? [placeMissing(from, `${field}/from`)] : []),
        ...(last === undefined ? [placeMissing(to, `${field}/to`)] : []),
      ],
    };
  }
  const between = subtract(last.point, first.point);
  const [apart, way] = [length(between), unit(between)];
  return way === undefined || apart < SHORTEST_HINGE
    ? { findings: [finding('hinge-too-short', 'stop', field, { value: apart, low: SHORTEST_HINGE })] }
    : { at: moved(motion, first.point), axis: turned(motion, way) };
}

/** The middle of the box round all ends of pieces, in the frame's axes [mm]: it does not move with what is measured. */
const middleOfMade = (made: readonly MadeLine[]): Vector3 =>
  middleOf(made.flatMap(({ centreline }) => pieceEnds(centreline))) ?? ORIGIN;
