import type { Member, MemberFrame, Run } from '../../job/frame.ts';
import type { Finding } from '../../plan/finding.ts';
import { finding } from '../finding.ts';
import type { Centreline } from '../geometry/centreline.ts';
import { betweenPoints, check, toCorner } from './check.ts';
import { dieCorners, freeEnds, spotAt } from './die-corners.ts';
import type { Check, FrameGeometry, MemberGeometry, Spot } from './frame-geometry.ts';
import { memberPath, pathByPoints } from './member-path.ts';
import { planeOf } from './plane-of.ts';
import { seatEnd } from './saddle-ends.ts';
import type { DrawnFrame, ShapeContext } from './shape-context.ts';

/** One tube through typed points. */
export function expandRun(run: Run, context: ShapeContext): DrawnFrame {
  const path = pathByPoints({ points: run.points, closed: false }, context, `${context.root}/points`);
  const findings = [...path.findings];
  if (path.centreline === null) return { geometry: null, findings };
  const free = { kind: 'free' as const };
  const member: MemberGeometry = {
    name: 'run',
    centreline: path.centreline,
    closed: false,
    closing: null,
    start: free,
    finish: free,
  };
  return { geometry: assembled([member], context.outsideDiameter), findings };
}

/** Any frame, member by member; ends that sit on another member are run to its axis. */
export function expandMembers(frame: MemberFrame, context: ShapeContext): DrawnFrame {
  const findings: Finding[] = sameNames(frame.members, context);
  const lines = new Map<string, Centreline>();
  const paths = frame.members.map((member, index) => {
    const field = `${context.root}/members/${String(index)}`;
    const path = memberPath(member.path, context, `${field}/path`, { member: member.name });
    findings.push(...path.findings);
    if (path.centreline !== null) lines.set(member.name, path.centreline);
    return { member, field, ...path };
  });
  // an end on a member that could not be drawn is not to blame
  if (findings.some(({ grade }) => grade === 'stop')) return { geometry: null, findings };
  const members = paths.flatMap(({ member, field, centreline, closed, closing }): MemberGeometry[] => {
    if (centreline === null) return [];
    const { name } = member;
    const ring = { kind: 'closed' as const };
    if (closed) return [{ name, centreline, closed, closing, start: ring, finish: ring }];
    const started = seatEnd(member, 'start', centreline, lines, context, `${field}/start`);
    const finished = seatEnd(member, 'finish', started.centreline, lines, context, `${field}/finish`);
    findings.push(...started.findings, ...finished.findings);
    return [{ name, centreline: finished.centreline, closed, closing, start: started.end, finish: finished.end }];
  });
  const stopped = findings.some(({ grade }) => grade === 'stop');
  return { geometry: stopped ? null : assembled(members, context.outsideDiameter), findings };
}

/** Names are what saddles and purge ends call members by, so each must be its own. */
function sameNames(members: readonly Member[], context: ShapeContext): Finding[] {
  return members.flatMap(({ name }, index) => {
    const first = members.findIndex((other) => other.name === name);
    return first === index
      ? []
      : [finding('member-name-twice', 'stop', `${context.root}/members/${String(index)}/name`, { name })];
  });
}

/** A frame of members: free ends in order, what a tape finds of it, corners and plane. */
function assembled(members: readonly MemberGeometry[], outsideDiameter: number): FrameGeometry {
  const feet = members.flatMap(freeEnds);
  const several = members.length > 1;
  return {
    members,
    checks: [
      ...feet.slice(1).flatMap((to, index): Check[] => {
        const from: Spot | undefined = feet[index];
        if (from === undefined) return [];
        const place = feet.length > 2 ? index + 1 : 0;
        return [check('end-to-end', { extra: betweenPoints, reference: 'centre', index: place, from, to })];
      }),
      ...members.flatMap((member, index) => endLegs(member, several ? index + 1 : 0, outsideDiameter)),
      ...members.flatMap((member, index) => endsOf(member, index + 1)),
    ],
    feet,
    corners: members.flatMap(dieCorners),
    planeNormal: planeOf(members),
  };
}

/** From end to end of a member that sits on others, axis to axis: what a tape finds between the free ends leaves it out. */
function endsOf(member: MemberGeometry, index: number): Check[] {
  if (member.closed || (member.start.kind === 'free' && member.finish.kind === 'free')) return [];
  const from = spotAt(member, 0);
  const to = spotAt(member, member.centreline.length);
  return [check('end-to-end-of', { extra: betweenPoints, reference: 'centre', index, from, to })];
}

/** From each free end of a member to the outside of the corner nearest to it, where a straightedge finds one. */
function endLegs(member: MemberGeometry, index: number, outsideDiameter: number): Check[] {
  const bends = member.centreline.pieces.filter((piece) => piece.kind === 'arc');
  const corners = dieCorners(member);
  const leg = (key: 'first-leg' | 'last-leg', from: Spot | undefined, place: 0 | -1): Check[] => {
    const [bend, to] = [bends.at(place), corners.at(place)];
    // a crown next to the end has no corner, and past a right angle no straightedge reaches one
    if (from === undefined || to === undefined || bend?.made !== 'die' || bend.angle > RIGHT) return [];
    const extra = toCorner({ angle: bend.angle, outsideDiameter });
    return [check(several(key, index), { extra, reference: 'outside', index, from, to })];
  };
  const ends = { start: spotAt(member, 0), finish: spotAt(member, member.centreline.length) };
  return [
    ...leg('first-leg', member.start.kind === 'free' ? ends.start : undefined, 0),
    ...leg('last-leg', member.finish.kind === 'free' ? ends.finish : undefined, -1),
  ];
}

const several = (key: 'first-leg' | 'last-leg', index: number): string => (index === 0 ? key : `${key}-of`);

/** A right angle, with rounding [rad]. */
const RIGHT = Math.PI / 2 + 1e-6;
