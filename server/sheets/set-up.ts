import type { Finding } from '../plan/finding.ts';
import type { Chamber } from '../plan/purge.ts';
import type { Weld } from '../plan/welding.ts';
import type { SheetInput } from './sheet-input.ts';

/** What is filled and welded at one go: a chamber, the welds that it is filled for, and what the plan has to tell about it. */
export type SetUp = {
  readonly chamber: Chamber;
  readonly welds: readonly Weld[];
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

/** Whether a finding is about a weld by its name. */
const isAbout = ({ data }: Finding, welds: readonly Weld[]): boolean =>
  welds.some(({ name }) => String(data['weld']) === name);

/** Chambers in the order in which they are filled. */
export function setUpsOf({ plan }: SheetInput): SetUp[] {
  const found = plan.findings.filter(({ field }) => WELDING_PARTS.test(field));
  return (plan.purge?.chambers ?? []).map((chamber) => {
    const welds = (plan.welding?.welds ?? []).filter(({ name }) => chamber.welds.includes(name));
    const own = found.filter((one) =>
      one.data['weld'] === undefined
        ? chamberOf(one) === chamber.number
        : isAbout(one, welds) || chamberOf(one) === chamber.number,
    );
    const common = found.filter((one) => one.grade === 'stop' && isCommon(one));
    return {
      chamber,
      welds,
      stops: [...own.filter(({ grade }) => grade === 'stop'), ...common],
      told: own.filter(({ grade }) => grade !== 'stop'),
    };
  });
}

/** Whether a finding is about no single set-up. */
export const isCommon = (finding: Finding): boolean =>
  finding.data['weld'] === undefined && chamberOf(finding) === null;
