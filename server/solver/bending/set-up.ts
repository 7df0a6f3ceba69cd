import type { Accuracy, Die, Machine } from '../../job/machine.ts';
import type { Finding } from '../../plan/finding.ts';
import { finding } from '../finding.ts';

/** The machine with the die that is set up on it, and where that die stands in the job. */
export type SetUp = Omit<Machine, 'accuracy' | 'die'> &
  Accuracy & {
    readonly die: Die;
    readonly dieField: string;
    readonly dieRadius: number;
    readonly gripLength: number;
    readonly largestAngle: number;
  };

/**
 * Two printed diameters that are one tube [mm]: 48.26 and 48.3 are, 42.16 and 42.4 or 33.4 and 33.7 are not; ASME B36.19
 * beside ISO 1127.
 */
const SAME_TUBE = 0.1;

/** Whether a die's groove, or a test bend's tube, is of this outside diameter [mm]. */
export const isOfDiameter = (one: number, other: number): boolean => Math.abs(one - other) <= SAME_TUBE + 1e-9;

/**
 * Takes the die that is set up out of the machine's own.
 *
 * @returns set-up null with the stop 'die-missing' where the list has no such die; 'die-for-other-tube' where its
 *   groove is for another tube, with the die of the list that fits, or else this one's diameter, as the way out
 */
export function setUpOf(
  machine: Machine,
  tube: { readonly outsideDiameter: number },
): { setUp: SetUp | null; findings: Finding[] } {
  const { dies, die: place, accuracy, ...rest } = machine;
  const die = dies[place];
  if (die === undefined) {
    const range = { value: place + 1, low: 1, high: dies.length };
    const stop = finding('die-missing', 'stop', '/machine/die', range, { field: '/machine/die', value: 0 });
    return { setUp: null, findings: [stop] };
  }
  const dieField = `/machine/dies/${String(place)}`;
  const findings: Finding[] = [];
  if (!isOfDiameter(die.tubeDiameter, tube.outsideDiameter)) {
    const field = `${dieField}/tubeDiameter`;
    const other = dies.findIndex(({ tubeDiameter }) => isOfDiameter(tubeDiameter, tube.outsideDiameter));
    const wayOut = other < 0 ? { field, value: tube.outsideDiameter } : { field: '/machine/die', value: other };
    const data = { value: die.tubeDiameter, low: tube.outsideDiameter, high: tube.outsideDiameter };
    findings.push(finding('die-for-other-tube', 'stop', field, data, wayOut));
  }
  const setUp: SetUp = {
    ...rest,
    ...accuracy,
    dies,
    die,
    dieField,
    dieRadius: die.radius,
    gripLength: die.gripLength,
    largestAngle: die.largestAngle,
  };
  return { setUp, findings };
}
