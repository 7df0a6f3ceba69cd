import type { Finding, FindingCode, FindingGrade } from '../../plan/finding.ts';
import { finding } from '../finding.ts';
import { DEGREES } from '../geometry/angle.ts';
import { FLATTENING_LIMIT, flatteningGuidance, mandrelAdvice } from './forming.ts';
import type { BendContext, PlannedArc } from './planned-arc.ts';
import { outerElongation } from './wall.ts';

/** A command this far outside the tested angles is an extrapolation [rad]: 5°, common practice, no source. */
const BESIDE_TESTS = 5 / DEGREES;
/** Rounding of lengths that add up [mm]. */
const NOTHING = 1e-6;

const WEIGHT: Readonly<Record<FindingGrade, number>> = { note: 0, caution: 1, stop: 2 };

/** What each arc of a member gives to say. Bends that say the same are one finding that names them all. */
export function bendFindings(
  arcs: readonly PlannedArc[],
  member: { readonly name: string; readonly field: string },
  context: BendContext,
): Finding[] {
  const said = new Map<FindingCode, { worst: Finding; bends: number[] }>();
  for (const arc of arcs) {
    for (const each of arc.piece.made === 'die'
      ? dieFindings(arc, member.field, context)
      : rolledFindings(arc, member.field)) {
      const before = said.get(each.code);
      if (before === undefined) said.set(each.code, { worst: each, bends: [arc.number] });
      else {
        before.bends.push(arc.number);
        if (WEIGHT[each.grade] > WEIGHT[before.worst.grade]) before.worst = each;
      }
    }
  }
  return [...said.values()].map(({ worst, bends }) => ({
    ...worst,
    data: { ...worst.data, member: member.name, bends: bends.join(', ') },
  }));
}

const rolledFindings = (arc: PlannedArc, field: string): Finding[] =>
  arc.feed < -NOTHING ? [finding('straight-negative', 'stop', field, { value: arc.feed, low: 0 })] : [];

function dieFindings(arc: PlannedArc, field: string, context: BendContext): Finding[] {
  return [
    ...straightFindings(arc, field, context),
    ...angleFindings(arc, field, context),
    ...formFindings(arc, field, context),
  ];
}

function straightFindings(arc: PlannedArc, field: string, { machine }: BendContext): Finding[] {
  if (arc.feed < -NOTHING) return [finding('straight-negative', 'stop', field, { value: arc.feed, low: 0 })];
  if (!arc.afterDieBend) return [];
  const low = machine.leastStraight;
  if (arc.sinceDieBend < low - NOTHING) {
    return [finding('straight-short-for-machine', 'caution', field, { value: arc.sinceDieBend, low })];
  }
  const gripsCrown = arc.rolledBetween && arc.feed < low - NOTHING;
  return gripsCrown ? [finding('crowned-bar-gripped', 'note', field, { value: arc.feed, low })] : [];
}

function angleFindings(arc: PlannedArc, field: string, { law, machine }: BendContext): Finding[] {
  const findings: Finding[] = [];
  const command = arc.command * DEGREES;
  if (command > machine.largestAngle) {
    const range = { value: command, high: machine.largestAngle };
    findings.push(finding('angle-over-machine', 'stop', field, range));
  }
  const { tested } = law;
  if (tested !== null && (arc.command < tested.low - BESIDE_TESTS || arc.command > tested.high + BESIDE_TESTS)) {
    const range = { value: command, low: tested.low * DEGREES, high: tested.high * DEGREES };
    findings.push(finding('springback-extrapolated', 'note', '/machine/springback/bends', range));
  }
  if (!arc.ofDie) {
    const gives = law.radiusAfterRelease;
    const data = { value: arc.piece.radius, low: gives, high: gives, die: arc.dieRadius };
    findings.push(finding('radius-not-of-die', 'caution', field, data));
  }
  return findings;
}

/** How much of the tube is held from inside, least first. */
const TOOLING = { none: 0, plug: 1, mandrel: 2, 'mandrel-and-wiper': 3 } as const;
const ADVISED = { plug: 1, ball: 2, 'ball-and-wiper': 3, special: 4, 'not-needed': 0 } as const;

function formFindings(arc: PlannedArc, field: string, { tube, grade, machine }: BendContext): Finding[] {
  const { outsideDiameter, wall } = tube;
  const findings: Finding[] = [];
  const ratio = arc.dieRadius / outsideDiameter;
  const elongation = 100 * outerElongation({ outsideDiameter, radius: arc.dieRadius });
  if (elongation > grade.elongation) {
    findings.push(finding('elongation-over-grade', 'caution', field, { value: elongation, high: grade.elongation }));
  }
  const flattening = flatteningGuidance(ratio);
  if (flattening > FLATTENING_LIMIT.note) {
    const over = flattening > FLATTENING_LIMIT.caution;
    const high = over ? FLATTENING_LIMIT.caution : FLATTENING_LIMIT.note;
    findings.push(finding('flattening-likely', over ? 'caution' : 'note', field, { value: flattening, high }));
  }
  const wallFactor = outsideDiameter / wall;
  const mandrel = mandrelAdvice({ wallFactor, bendRatio: ratio });
  if (mandrel !== 'none' && mandrel !== 'none-or-plug') {
    const { tooling } = machine.die;
    const missing = tooling !== 'unknown' && TOOLING[tooling] < ADVISED[mandrel];
    const data = { mandrel, value: wallFactor, ratio };
    findings.push(
      missing
        ? finding('mandrel-not-on-die', 'caution', `${machine.dieField}/tooling`, { ...data, tooling })
        : finding('mandrel-advised', 'note', field, data),
    );
  }
  return findings;
}
