import type { MemberPlan } from '../../plan/frame.ts';
import type { Figure } from '../../plan/figure.ts';
import type { Finding } from '../../plan/finding.ts';
import { band, figure, input } from '../figure.ts';
import { finding } from '../finding.ts';
import type { MemberGeometry } from '../frame/frame-geometry.ts';
import { cornerTangent } from '../geometry/bend-table.ts';
import type { Centreline } from '../geometry/centreline.ts';
import { planPieces } from '../geometry/plan-pieces.ts';
import { reverseCentreline } from '../geometry/reverse-centreline.ts';
import { massPerMetre } from '../tube/section.ts';
import { arcsOf, type Arc } from './arcs.ts';
import { bendCheck } from './bend-check.ts';
import { bendFindings } from './bend-findings.ts';
import { bendRow } from './bend-row.ts';
import { leftOn } from './left-on.ts';
import { planEnd, type EndContext, type PlannedEnd } from './member-ends.ts';
import { lengthSlope, planArcs, radiusBand, setbackFactor, withTape, type PlannedArc } from './planned-arc.ts';

export type MemberContext = EndContext;

/** Rounding of lengths that add up [mm]. */
const NOTHING = 1e-6;

/**
 * How one member is made: its bend table, marks, lengths, mass and the wraps of its ends.
 *
 * Marks count from the sawn end at the end that is bent first. Where a saddle sits there the sawn end is the saddle's nearest
 * point to the partner's axis; where the clamp needs more than the first straight, the extra is left on there, and
 * where it needs more than the last straight, at the far end.
 *
 * @returns the plan; a bend whose radius is no more than the tube's own has no row, and the stop
 *   'die-radius-under-tube-radius' tells of it
 */
export function planMember(member: MemberGeometry, from: 'start' | 'finish', context: MemberContext): PlannedMember {
  const { tube, machine, field } = context;
  const line = from === 'start' ? member.centreline : reverseCentreline(member.centreline);
  const { arcs, lastStraight } = arcsOf(line);
  const start = planEnd(member, 'start', context);
  const finish = planEnd(member, 'finish', context);
  const findings: Finding[] = [...start.findings, ...finish.findings];
  // the end that sticks out of the clamp, and the other one
  const [first, last] = from === 'start' ? [start, finish] : [finish, start];

  const ends = { lastStraight, firstThroat: first.throat, lastThroat: last.throat };
  const { grip, extraFirst: extra, held, extraLast } = leftOn(arcs, ends, machine);
  if (extra > NOTHING) {
    const data = { value: grip, low: machine.gripLength, extra, member: member.name };
    findings.push(finding('grip-short', 'note', field, data));
  }
  const planned = planArcs(arcs, context, extra - first.throat);
  const possible = (arc: PlannedArc) => arc.dieRadius > tube.outsideDiameter / 2;
  const tight = planned.find((arc) => !possible(arc));
  if (tight !== undefined) {
    const data = { value: tight.dieRadius, low: tube.outsideDiameter / 2, member: member.name };
    findings.push(finding('die-radius-under-tube-radius', 'stop', field, data));
  }
  findings.push(...bendFindings(planned.filter(possible), { name: member.name, field }, context));
  findings.push(...lastStraightFindings({ lastStraight, held, extraLast }, arcs, member, context));

  const [leading] = planned;
  const bends = planned.filter(possible).map((arc) => {
    const before = planned[arc.number - 2];
    const neighbours = {
      before,
      after: planned[arc.number],
      second: planned[arc.number - 3],
      firstStraight: leading?.mark ?? 0,
    };
    return bendRow(arc, before, context, bendCheck(arc, neighbours, context));
  });
  const plan: Omit<MemberPlan, 'making'> = {
    name: member.name,
    closed: member.closed,
    start: start.plan,
    finish: finish.plan,
    pieces: planPieces(member.centreline),
    ...lengths(member, { planned, start, finish, extra, extraLast }, context),
    bends,
    lastStraight: figure(
      lastStraight - last.throat,
      'mm',
      'Y = P − T − a',
      [
        input('P', 'corner-to-end', lastStraight + tangentOfLast(planned), 'mm'),
        input('T', 'tangent-length', tangentOfLast(planned), 'mm'),
        input('a', 'saddle-throat', last.throat, 'mm'),
      ],
      ['geometry'],
      withTape(radiusBand(lastSlope(planned), context), context),
    ),
    templates: [start.template, finish.template].filter((template) => template !== null),
  };
  return {
    plan,
    findings,
    line,
    planned,
    extra,
    firstThroat: first.throat,
    lastThroat: last.throat,
    lastStraight,
  };
}

/** A member with its arcs in the order of bending, for what else is to be said about bending it. */
export type PlannedMember = {
  readonly plan: Omit<MemberPlan, 'making'>;
  readonly findings: Finding[];
  /** The centreline from the end that is bent first. */
  readonly line: Centreline;
  readonly planned: readonly PlannedArc[];
  /** Left on before the first bend for the clamp, and what saddles take off the two ends [mm]. */
  readonly extra: number;
  readonly firstThroat: number;
  readonly lastThroat: number;
  readonly lastStraight: number;
};

/** Change of the last straight for 1 mm more radius, its corner staying where it is: −tan(θ/2). */
const lastSlope = (planned: readonly PlannedArc[]): number => {
  const last = planned.at(-1);
  return last?.ofDie === true ? -setbackFactor(last) : 0;
};

/** R tan(θ/2) of the last arc, 0 where it has no corner. */
const tangentOfLast = (planned: readonly PlannedArc[]): number => cornerTangent(planned.at(-1)?.piece);

function lastStraightFindings(
  of: { readonly lastStraight: number; readonly held: number; readonly extraLast: number },
  arcs: readonly Arc[],
  member: MemberGeometry,
  { machine, field }: MemberContext,
): Finding[] {
  const { lastStraight, held, extraLast } = of;
  if (lastStraight < -NOTHING) {
    const bends = String(arcs.length);
    return [finding('straight-negative', 'stop', field, { value: lastStraight, low: 0, member: member.name, bends })];
  }
  if (extraLast <= machine.trimAllowance + NOTHING) return [];
  const short = { value: held, low: machine.leastStraight, extra: extraLast, member: member.name };
  return [finding('last-straight-short', 'note', field, short)];
}

/** Developed length axis to axis, cut length, and mass of the finished member. */
function lengths(
  member: MemberGeometry,
  made: { planned: readonly PlannedArc[]; start: PlannedEnd; finish: PlannedEnd; extra: number; extraLast: number },
  context: MemberContext,
): { developedLength: Figure; cutLength: Figure; mass: Figure } {
  const { planned, start, finish, extra, extraLast } = made;
  const developed = member.centreline.length;
  const stretch = planned.reduce((sum, arc) => sum + arc.stretch, 0);
  const throats = start.throat + finish.throat;
  const spread = radiusBand(lengthSlope(planned), context);
  const length = input('L', 'developed-length', developed, 'mm');
  const perMetre = massPerMetre({ ...context.tube, density: context.grade.density });
  const finished = developed - start.mean - finish.mean;
  return {
    developedLength: figure(developed, 'mm', 'L = Σ Y + Σ R θ', [length], ['geometry'], spread),
    cutLength: figure(
      developed - stretch + extraLast + extra - throats,
      'mm',
      'B = L − Σ e + z + g − Σ a',
      [
        length,
        input('Σ e', 'stretch', stretch, 'mm'),
        input('z', 'left-on-last', extraLast, 'mm'),
        input('g', 'grip-extra', extra, 'mm'),
        input('Σ a', 'saddle-throat', throats, 'mm'),
      ],
      ['geometry', 'typed'],
      withTape(spread, context),
    ),
    mass: figure(
      (perMetre * finished) / 1000,
      'kg',
      'M = m (L − Σ ā) / 1000',
      [
        input('m', 'mass-per-metre', perMetre, 'kg/m'),
        length,
        input('Σ ā', 'saddle-mean', start.mean + finish.mean, 'mm'),
      ],
      ['geometry', context.grade.sources.density],
      context.tolerance === null
        ? null
        : band((finished / 1000) * perMetre * massShare(context.tube, context.tolerance), 'tube-tolerance'),
    ),
  };
}

/** ± of the mass as a share of it, m ~ (D − t) t: first order in the diameter and in the wall. */
const massShare = (
  { outsideDiameter, wall }: MemberContext['tube'],
  doubt: { readonly outsideDiameter: number; readonly wall: number },
): number => {
  const across = outsideDiameter - wall;
  return Math.hypot(doubt.outsideDiameter / across, doubt.wall * (1 / wall - 1 / across));
};
