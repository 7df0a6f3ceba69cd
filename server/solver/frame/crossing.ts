import type { Frame } from '../../job/frame.ts';
import type { Finding } from '../../plan/finding.ts';
import { finding } from '../finding.ts';
import { finenessOf, leastDistance } from '../geometry/least-distance.ts';
import { clearStretches } from './clear-length.ts';
import type { FrameGeometry, MemberGeometry } from './frame-geometry.ts';
import { selfDistance } from './self-crossing.ts';
import type { ShapeContext } from './shape-context.ts';

/** Tubes that just touch do not cross: distances count up to this share of the diameter. */
const TOUCHING = 1 - 1e-6;

/**
 * Tubes that run through each other, or through themselves: centrelines nearer than one outside diameter where no
 * saddle joins them.
 */
export function crossings(frame: Frame, geometry: FrameGeometry, context: ShapeContext): Finding[] {
  const { outsideDiameter } = context;
  const limit = outsideDiameter * TOUCHING;
  const { members } = geometry;
  const fine = finenessOf(outsideDiameter, Math.max(...members.map(({ centreline }) => centreline.length)));
  const clear = members.map((member) => clearStretches(member, outsideDiameter));
  const findings: Finding[] = [];
  for (const [index, member] of members.entries()) {
    const itself = selfDistance(member, outsideDiameter, limit);
    if (itself < limit) {
      const data = { member: member.name, value: itself, low: outsideDiameter };
      findings.push(finding('member-crosses-itself', 'stop', pathField(frame, index, context.root), data));
    }
    for (const [later, other] of members.entries()) {
      if (later <= index) continue;
      const own = sitsOn(member, other) ? clearStretches(member, outsideDiameter, other) : clear[index];
      const others = sitsOn(other, member) ? clearStretches(other, outsideDiameter, member) : clear[later];
      let least = limit;
      for (const a of own ?? []) for (const b of others ?? []) least = leastDistance(a.stretch, b.stretch, least, fine);
      if (least >= limit) continue;
      const data = { first: member.name, second: other.name, value: least, low: outsideDiameter };
      findings.push(finding('members-cross', 'stop', memberField(frame, later, context.root), data));
    }
  }
  return findings;
}

const sitsOn = (member: MemberGeometry, partner: MemberGeometry): boolean =>
  [member.start, member.finish].some((end) => end.kind === 'saddle' && end.onto === partner.name);

/** The field that puts a member where it is. A hoop's first member is the hoop itself. */
function memberField(frame: Frame, index: number, root: string): string {
  if (frame.shape === 'hoop') return index === 0 ? root : `${root}/innerCrossbars/${String(index - 1)}/fromFoot/value`;
  return frame.shape === 'members' ? `${root}/members/${String(index)}` : root;
}

/** The field that gives a member its path. */
function pathField(frame: Frame, index: number, root: string): string {
  if (frame.shape === 'members') return `${root}/members/${String(index)}/path`;
  return frame.shape === 'run' ? `${root}/points` : memberField(frame, index, root);
}
