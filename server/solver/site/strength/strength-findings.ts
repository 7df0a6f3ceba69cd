import type { Leg } from '../../../job/leg.ts';
import type { Finding } from '../../../plan/finding.ts';
import type { LoadPlan, SpanPlan, StrengthPlan, StrutPlan } from '../../../plan/strength.ts';
import { finding } from '../../finding.ts';

/** Slenderness K L/i that a strut should not pass: AISC 360, E2, user note, from memory. */
const MOST_SLENDER = 200;

/** Loads of a list from the smallest on, point loads first; of equal ones the first. */
const smallestFirst = (loads: readonly LoadPlan[]): LoadPlan[] => {
  const isPoint = ({ load }: LoadPlan): boolean => load.unit === 'N';
  return [...loads].sort((a, b) => Number(isPoint(b)) - Number(isPoint(a)) || a.load.value - b.load.value);
};

/** Legs that are adjusted by a thread or a slip piece: nothing is told of what they carry, and that is said. */
export const adjustedFindings = ({ struts }: StrengthPlan): Finding[] =>
  struts.flatMap(({ leg: name, field, adjusted }) =>
    adjusted === null ? [] : [finding('strut-adjusted', 'caution', `${field}/adjust`, { name })],
  );

/** Legs that are slender, and those that a load of the list would overload, each once with the smallest that does. */
export function strutFindings({ struts, loads }: StrengthPlan): Finding[] {
  return struts.flatMap((strut) => [...slender(strut), ...overloaded(strut, loads)]);
}

function slender({ leg, field, slenderness }: StrutPlan): Finding[] {
  if (slenderness.value <= MOST_SLENDER) return [];
  return [finding('leg-slender', 'caution', field, { name: leg, value: slenderness.value, high: MOST_SLENDER })];
}

function overloaded({ leg, field, reduced }: StrutPlan, loads: readonly LoadPlan[]): Finding[] {
  if (reduced === null) return [];
  for (const { key, legs } of smallestFirst(loads)) {
    const pressed = legs.find((one) => one.field === field && one.overReduced === true);
    if (pressed === undefined) continue;
    const data = { name: leg, load: key, value: pressed.force.value, high: reduced.value };
    return [finding('strut-over-load', 'caution', field, data)];
  }
  return [];
}

/** Members that a load of the list would bend beyond their proof stress, each once with the smallest load that does. */
export function spanFindings({ spans, loads }: StrengthPlan, proofStress: number): Finding[] {
  const ordered = smallestFirst(loads);
  return [...new Set(spans.map(({ member }) => member))].flatMap((member) => {
    const own = spans.filter((span) => span.member === member);
    for (const { key } of ordered) {
      const stress = Math.max(0, ...own.flatMap((span) => overStress(span, key)));
      if (stress > 0)
        return [finding('load-over-proof', 'caution', '', { member, load: key, value: stress, high: proofStress })];
    }
    return [];
  });
}

const overStress = ({ loads }: SpanPlan, key: LoadPlan['key']): number[] =>
  loads.flatMap((load) => (load.key === key && load.overProof ? [load.stress.value] : []));

/**
 * Legs whose heads nothing typed keeps from going sideways: reckoned as such where one of their ends is fixed; pinned at
 * both ends they hold nothing, and what is told of them is for heads that something else holds.
 */
export function swayFindings(legs: readonly Leg[], sways: readonly boolean[]): Finding[] {
  const swaying = legs.filter((_, index) => sways[index] === true);
  const isPinned = ({ foot, head }: Leg): boolean => foot.held === 'pinned' && head.held === 'pinned';
  const told = (code: 'legs-sway' | 'legs-hold-nothing', of: readonly Leg[]): Finding[] =>
    of.length === 0
      ? []
      : [finding(code, 'caution', '/site/standing/hinge', { names: of.map(({ name }) => name).join(', ') })];
  return [
    ...told(
      'legs-sway',
      swaying.filter((leg) => !isPinned(leg)),
    ),
    ...told('legs-hold-nothing', swaying.filter(isPinned)),
  ];
}
