import type { Finding } from '../../server/plan/finding.ts';
import type { Plan } from '../../server/plan/plan.ts';
import type { Chamber } from '../../server/plan/purge.ts';

/** What is said of one chamber. */
export const findingsOfChamber = ({ number }: Pick<Chamber, 'number'>, findings: readonly Finding[]) =>
  findings.filter(({ data }) => data['chamber'] === number);

const ROOM = '/purge/room';

/** What is said of the air in the room. */
export const isOfRoom = ({ field }: Finding): boolean => field === ROOM || field.startsWith(`${ROOM}/`);

/** What keeps gas from being used as typed, whichever chamber: it stands over their numbers, whatever is folded away. */
export const stopsGas = (finding: Finding): boolean =>
  finding.grade === 'stop' &&
  finding.field.startsWith('/purge/') &&
  finding.data['chamber'] === undefined &&
  !isOfRoom(finding);

/** That settings are only to begin with: it stands with them, not before the numbers that are needed at the bench. */
export const isOfProof = ({ code }: Finding): boolean => code === 'settings-not-proved';

/** Whether a finding stands beside what it speaks of, so that the head of the stage leaves it out. */
export function standsBeside(finding: Finding, { purge, welding }: Pick<Plan, 'purge' | 'welding'>): boolean {
  if (stopsGas(finding)) return true;
  if (isOfProof(finding)) return welding !== null && welding.welds.length > 0;
  if (purge === null || purge.chambers.length === 0) return false;
  return isOfRoom(finding) || purge.chambers.some(({ number }) => finding.data['chamber'] === number);
}
