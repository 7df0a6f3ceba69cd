import type { Job } from '../../job/job.ts';
import type { Reference } from '../../job/quantities.ts';
import type { Finding } from '../../plan/finding.ts';
import type { CheckDimension, FramePlan } from '../../plan/frame.ts';
import { planMember } from '../bending/plan-member.ts';
import type { SpringbackLaw } from '../bending/springback-law.ts';
import { extraFor, measureCheck } from '../correction/measured-frame.ts';
import { figure, input } from '../figure.ts';
import type { ResolvedGrade } from '../tube/grades.ts';
import type { Check, FrameGeometry } from './frame-geometry.ts';

/**
 * Members, sizes to check and mass of a frame.
 *
 * @param field JSON pointer of the frame in the job, for findings about its members
 */
export function planFrame(
  job: Job,
  geometry: FrameGeometry,
  bending: { grade: ResolvedGrade; law: SpringbackLaw },
  field: '/frame' | '/cameBack/frame',
): { frame: FramePlan; findings: Finding[] } {
  const partners = new Map(geometry.members.map((member) => [member.name, member]));
  const planned = geometry.members.map((member) =>
    planMember(member, {
      tube: job.tube,
      grade: bending.grade,
      machine: job.machine,
      law: bending.law,
      paperThickness: job.closing.paperThickness,
      templateStations: job.print.templateStations,
      partners,
      field,
    }),
  );
  const members = planned.map((one) => one.plan);
  const total = (pick: (member: (typeof members)[number]) => number) =>
    members.reduce((sum, member) => sum + pick(member), 0);
  const count = input('n', 'members', members.length, 'count');
  return {
    frame: {
      members,
      checks: geometry.checks.map(checkDimension),
      mass: figure(
        total((member) => member.mass.value),
        'kg',
        'm = Σ m_i',
        [count],
        ['geometry'],
      ),
      tubeLength: figure(
        total((member) => member.cutLength.value),
        'mm',
        'L = Σ L_i',
        [count],
        ['geometry'],
      ),
      planar: geometry.planeNormal !== null,
    },
    findings: planned.flatMap((one) => one.findings),
  };
}

function checkDimension(check: Check): CheckDimension {
  const centre = measureCheck(check);
  const size = (reference: Reference) =>
    figure(
      centre + extraFor(check, reference),
      'mm',
      reference === 'centre' ? 'c' : 'c + e',
      [input('c', 'centre-to-centre', centre, 'mm'), input('e', 'reference-extra', extraFor(check, reference), 'mm')],
      ['geometry'],
    );
  return {
    key: check.key,
    index: check.index,
    field: check.field,
    outside: size('outside'),
    centre: size('centre'),
    inside: size('inside'),
  };
}
