import type { BentFrom } from '../bent-frame.ts';
import type { Reference } from '../../job/quantities.ts';
import type { Finding } from '../../plan/finding.ts';
import type { Figure } from '../../plan/figure.ts';
import type { CheckDimension, FramePlan, MemberPlan } from '../../plan/frame.ts';
import type { MemberMaking } from '../../plan/making.ts';
import { planMember, type MemberContext, type PlannedMember } from '../bending/plan-member.ts';
import type { BendContext } from '../bending/planned-arc.ts';
import type { Misreading } from '../correction/misreadings.ts';
import { planReadingCheck } from '../correction/reading-check.ts';
import { band, figure, input } from '../figure.ts';
import { finding } from '../finding.ts';
import { holeWraps } from '../joints/hole-wrap.ts';
import { bendingOf, planMaking } from '../making/plan-making.ts';
import type { AllowedSize } from '../tube/tolerances.ts';
import { bentMember, type BentMember } from './bend-errors.ts';
import { extraFor, measureCheck, type Check, type FrameGeometry, type MemberGeometry } from './frame-geometry.ts';
import { linearTolerance } from './general-tolerances.ts';
import { bandOfParts, sizeBand } from './size-band.ts';
import { atLeast, wayOut } from './way-out.ts';

/** What a frame is made with: machine, springback, grade, and what the tube may be off its size. */
export type FrameContext = Omit<BendContext, 'tube' | 'tolerance'> & { readonly tolerance: AllowedSize | null };

/**
 * Members, sizes to check and mass of a frame, and what it becomes where its sketch is taken wrong; and its members by
 * name as they are bent.
 *
 * @param found the misreadings of the sketch with the frames that they make
 */
export function planFrame(
  job: BentFrom,
  geometry: FrameGeometry,
  bending: FrameContext,
  found: readonly Misreading[],
): { frame: FramePlan; planned: ReadonlyMap<string, PlannedMember>; findings: Finding[] } {
  const context = { ...memberContext(job, geometry.members, bending), holes: job.holes };
  const findings: Finding[] = unknownMembers(job, geometry);
  const bent = new Map<string, BentMember>();
  const asPlanned = new Map<string, PlannedMember>();
  const members = geometry.members.map((member): MemberPlan => {
    const asked = bendingOf(job.bending, member.name);
    bent.set(member.name, bentMember(member.centreline, asked.from));
    const planned = planMember(member, asked.from, context);
    asPlanned.set(member.name, planned);
    const making = planMaking(member, asked, planned, context, job.bending);
    findings.push(...withLargerDie(planned, making.plan, bending), ...making.findings);
    // a hole is made where the bore of a saddle end is to breathe; the others are welded on a whole wall
    const templates = [...planned.plan.templates, ...holeWraps(member, context)];
    return { ...planned.plan, templates, making: making.plan };
  });
  const count = input('n', 'members', members.length, 'count');
  const total = (pick: (member: MemberPlan) => Figure, unit: 'kg' | 'mm', formula: string): Figure => {
    const figures = members.map(pick);
    const sum = figures.reduce((all, { value }) => all + value, 0);
    // one tube and one die make them all, so what they are off by adds up
    const off = figures.reduce((all, one) => all + (one.band?.plusMinus ?? 0), 0);
    const from = [...new Set(figures.flatMap((one) => one.band?.from ?? []))];
    return figure(sum, unit, formula, [count], ['geometry'], off === 0 ? null : band(off, ...from));
  };
  const checks = geometry.checks.map((check) => checkDimension(check, job, bending, bent));
  findings.push(...doubtful(checks));
  return {
    frame: {
      members,
      checks,
      readingCheck: planReadingCheck(geometry, found),
      mass: total((member) => member.mass, 'kg', 'm = Σ m_i'),
      tubeLength: total((member) => member.cutLength, 'mm', 'L = Σ L_i'),
      planar: geometry.planeNormal !== null,
    },
    planned: asPlanned,
    findings,
  };
}

/** What members are planned with, on the partners that they sit on. */
const memberContext = (
  job: Pick<BentFrom, 'tube' | 'closing' | 'print'>,
  members: readonly MemberGeometry[],
  { tolerance, ...bending }: FrameContext,
): MemberContext => ({
  ...bending,
  tube: job.tube,
  tolerance: tolerance === null ? null : plusMinusOf(tolerance),
  paperThickness: job.closing.paperThickness,
  templateStations: job.print.templateStations,
  partners: new Map(members.map((member) => [member.name, member])),
  field: '/frame',
});

/**
 * What is sawn off a bar for a member that is made anew on a frame as it stands: throats off, trim and grips on, as for a
 * member of a new frame [mm].
 */
export const cutLengthOn = (
  member: MemberGeometry,
  members: readonly MemberGeometry[],
  job: Pick<BentFrom, 'tube' | 'closing' | 'print' | 'bending'>,
  bending: FrameContext,
): Figure =>
  planMember(member, bendingOf(job.bending, member.name).from, memberContext(job, members, bending)).plan.cutLength;

/** The size whose band is furthest beyond what its class allows, where one is. */
function doubtful(checks: readonly CheckDimension[]): Finding[] {
  const over = ({ allowed, reference, ...sizes }: CheckDimension): number =>
    allowed === null ? 0 : (sizes[reference].band?.plusMinus ?? 0) / allowed.value;
  const worst = checks.reduce<CheckDimension | undefined>(
    (most, check) => (over(check) > (most === undefined ? 1 : over(most)) ? check : most),
    undefined,
  );
  const off = worst?.[worst.reference].band ?? null;
  if (worst === undefined || worst.allowed === null || off === null) return [];
  const data = {
    check: worst.key,
    index: worst.index,
    band: off.from[0] ?? 'tape',
    value: off.plusMinus,
    high: worst.allowed.value,
  };
  return [finding('size-doubtful', 'note', worst.field === '' ? '/frame' : worst.field, data)];
}

const ROUND_ENOUGH: readonly Finding['code'][] = ['elongation-over-grade', 'flattening-likely'];

/** The member's findings; where a larger die would do for the tube and still leave its corners, that is the way out. */
function withLargerDie(
  { findings, planned }: PlannedMember,
  { radii }: MemberMaking,
  { machine, law }: FrameContext,
): Finding[] {
  if (radii === null || planned.some(({ ofDie, piece }) => piece.made === 'die' && !ofDie)) return findings;
  const die = atLeast((radii.least.value * machine.dieRadius) / law.radiusAfterRelease);
  return findings.map((told) =>
    told.grade === 'caution' && told.wayOut === null && ROUND_ENOUGH.includes(told.code)
      ? { ...told, wayOut: wayOut(`${machine.dieField}/radius`, die, 5000) }
      : told,
  );
}

/** ± of a tube's size; where it may be further off one way than the other, the further. */
const plusMinusOf = ({ outsideDiameter, wall }: AllowedSize) => ({
  outsideDiameter: Math.max(outsideDiameter.plus, outsideDiameter.minus),
  wall: Math.max(wall.plus ?? 0, wall.minus),
});

/** Members that the job bends another way and the frame does not have. */
const unknownMembers = (job: BentFrom, geometry: FrameGeometry): Finding[] =>
  job.bending.members.flatMap(({ member }, index) =>
    geometry.members.some(({ name }) => name === member)
      ? []
      : [finding('bending-member-missing', 'note', `/bending/members/${String(index)}/member`, { member })],
  );

function checkDimension(
  check: Check,
  job: BentFrom,
  { law, machine, tolerance }: FrameContext,
  bent: ReadonlyMap<string, BentMember>,
): CheckDimension {
  const centre = measureCheck(check);
  const parts = sizeBand(check, bent, { machine, law });
  const { outsideDiameter } = job.tube;
  const worse = tolerance === null ? 0 : plusMinusOf(tolerance).outsideDiameter / outsideDiameter;
  const size = (reference: Reference) => {
    const extra = extraFor(check, reference);
    return figure(
      centre + extra,
      'mm',
      reference === 'centre' ? 'c' : 'c + e',
      [input('c', 'centre-to-centre', centre, 'mm'), input('e', 'reference-extra', extra, 'mm')],
      ['geometry', 'first-order'],
      bandOfParts(parts, law, Math.abs(extra) * worse),
    );
  };
  const allowed = linearTolerance(`iso-13920-${CLASSES[job.bending.toleranceClass]}`, centre);
  return {
    key: check.key,
    index: check.index,
    field: check.field,
    reference: check.reference,
    outside: size('outside'),
    centre: size('centre'),
    inside: size('inside'),
    allowed:
      allowed === undefined
        ? null
        : figure(allowed.plusMinus, 'mm', '±', [input('L', 'nominal', centre, 'mm')], [allowed.source]),
    worstTube: tolerance === null ? null : worstTube(check, centre, tolerance, outsideDiameter),
  };
}

const CLASSES = { A: 'a', B: 'b', C: 'c', D: 'd' } as const;

/** The size over the outside on the thinnest and the thickest tube that its tolerance lets through, bent alike. */
function worstTube(check: Check, centre: number, allowed: AllowedSize, outsideDiameter: number) {
  const { plus, minus } = allowed.outsideDiameter;
  const size = (off: number) =>
    figure(
      centre + check.outsideExtra * (1 + off / outsideDiameter),
      'mm',
      'w = c + e (1 + δ / D)',
      [
        input('c', 'centre-to-centre', centre, 'mm'),
        input('e', 'reference-extra', check.outsideExtra, 'mm'),
        input('δ', 'tube-off-size', off, 'mm'),
        input('D', 'outside-diameter', outsideDiameter, 'mm'),
      ],
      ['geometry', allowed.source],
    );
  return { least: size(-minus), most: size(plus) };
}
