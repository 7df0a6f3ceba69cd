import type { Member, MemberFrame, Run } from '../../job/frame.ts';
import type { Finding } from '../../plan/finding.ts';
import { finding } from '../finding.ts';
import type { Centreline } from '../geometry/centreline.ts';
import { betweenPoints, check } from './check.ts';
import { dieCorners, freeEnds } from './die-corners.ts';
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
  return { geometry: assembled([member]), findings };
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
  return { geometry: stopped ? null : assembled(members), findings };
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

/** A frame of members: free ends in order, the distance from each to the next, corners and plane. */
function assembled(members: readonly MemberGeometry[]): FrameGeometry {
  const feet = members.flatMap(freeEnds);
  return {
    members,
    checks: feet.slice(1).flatMap((to, index): Check[] => {
      const from: Spot | undefined = feet[index];
      if (from === undefined) return [];
      const several = feet.length > 2 ? index + 1 : 0;
      return [check('end-to-end', { extra: betweenPoints, reference: 'centre', index: several, from, to })];
    }),
    feet,
    corners: members.flatMap(dieCorners),
    planeNormal: planeOf(members),
  };
}
