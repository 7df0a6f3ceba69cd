import { doubtKey } from '../doubt-key.ts';
import type { Finding } from '../../../plan/finding.ts';
import { finding } from '../../finding.ts';
import type { DoubtPart } from '../site-study.ts';
import type { LegStudy } from './leg-study.ts';

/** A leg that is cut once should be known to within this [mm]: our own choice. */
const WELL_KNOWN = 1;

/** A leg that is known no better than this is measured again before it is cut [mm]: our own choice. */
const BADLY_KNOWN = 2;

/**
 * The part of a length's doubt that is worth measuring again: the one that makes up more than half of it, squared, where
 * the whole is over 1 mm. Sawing and welding cannot be measured before.
 */
export function worthMeasuring(parts: readonly DoubtPart[]): DoubtPart | null {
  const [largest] = parts;
  const whole = Math.hypot(...parts.map(({ plusMinus }) => plusMinus));
  return largest === undefined ||
    largest.from === 'cutting' ||
    whole <= WELL_KNOWN ||
    largest.plusMinus ** 2 <= whole ** 2 / 2
    ? null
    : largest;
}

/** What is said before a leg is cut: that a part is worth measuring again, that its adjustment does not take up the rest. */
export function doubtFindings(
  { laid: { field, name }, leg: { adjust } }: LegStudy,
  cut: number,
  parts: readonly DoubtPart[],
): Finding[] {
  const whole = Math.hypot(...parts.map(({ plusMinus }) => plusMinus));
  const again = worthMeasuring(parts);
  const travel = adjust?.travel ?? Infinity;
  const findings: Finding[] = [];
  if (again !== null) {
    const grade = whole > BADLY_KNOWN || whole > travel ? 'caution' : 'note';
    const of = again.name === '' ? {} : { which: again.name };
    const data = { name, cut, band: whole, part: again.plusMinus, doubt: doubtKey(again), ...of };
    findings.push(finding('leg-measure-again', grade, field, { ...data, value: whole, high: WELL_KNOWN }));
  }
  if (whole > travel)
    findings.push(
      finding('leg-outside-adjustment', 'caution', `${field}/adjust`, { name, value: whole, high: travel }),
    );
  return findings;
}
