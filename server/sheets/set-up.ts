import type { Figure } from '../plan/figure.ts';
import type { Finding } from '../plan/finding.ts';
import type { Chamber } from '../plan/purge.ts';
import type { Weld } from '../plan/welding.ts';
import type { SheetInput } from './sheet-input.ts';

/**
 * What is filled and welded at one go: its chambers, each with a hose of its own, the welds that they are filled for, the
 * wait until the last of them is full, and what the plan has to tell about it.
 */
export type SetUp = {
  readonly number: number;
  readonly chambers: readonly Chamber[];
  readonly welds: readonly Weld[];
  readonly wait: Figure;
  /** What keeps it from being welded as typed. */
  readonly stops: readonly Finding[];
  readonly told: readonly Finding[];
};

/** Fields whose findings a welder has to know. */
export const WELDING_PARTS = /^\/(purge|welding)(\/|$)|^\/fixing(\/.*)?\/plate(\/|$)|^\/closing\/(gap|shrinkage)$/;

/** Fields whose findings somebody who grinds has to know. */
export const FINISH_PARTS = /^\/finish(\/|$)/;

/** The number of the chamber that a finding is about; null: about no single one. */
function chamberOf({ data }: Finding): number | null {
  const { chamber } = data;
  return typeof chamber === 'number' && chamber > 0 ? chamber : null;
}

/** The welds that a finding is about, by name. */
const weldsOf = ({ data }: Finding): string[] =>
  [data['weld'], data['welds']].flatMap((names) => (names === undefined ? [] : String(names).split(/,\s*/)));

/** Set-ups in the order in which they are welded. */
export function setUpsOf({ plan }: SheetInput): SetUp[] {
  const { purge, welding } = plan;
  const found = plan.findings.filter(({ field }) => WELDING_PARTS.test(field));
  return (purge?.setups ?? []).map(({ number, chambers: numbers, welds: names, wait }) => {
    const chambers = (purge?.chambers ?? []).filter((chamber) => numbers.includes(chamber.number));
    const welds = (welding?.welds ?? []).filter(({ name }) => names.includes(name));
    const own = found.filter((one) => {
      const chamber = chamberOf(one);
      return chamber === null ? weldsOf(one).some((name) => names.includes(name)) : numbers.includes(chamber);
    });
    const common = found.filter((one) => one.grade === 'stop' && isCommon(one));
    return {
      number,
      chambers,
      welds,
      wait,
      stops: [...own.filter(({ grade }) => grade === 'stop'), ...common],
      told: own.filter(({ grade }) => grade !== 'stop'),
    };
  });
}

/** Whether a finding is about no single set-up. */
export const isCommon = (finding: Finding): boolean => weldsOf(finding).length === 0 && chamberOf(finding) === null;
