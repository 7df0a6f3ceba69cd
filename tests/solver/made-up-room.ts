import { newJob } from '../../server/job/default-job.ts';
import type { Purge } from '../../server/job/purge.ts';
import type { Finding, FindingCode } from '../../server/plan/finding.ts';
import { planRoom } from '../../server/solver/purge/room-plan.ts';

export type Room = Purge['room'];
export type Used = Omit<Parameters<typeof planRoom>[0], 'purge'>;

const { purge } = newJob('hoop');
export const STILL: Room = { volume: 3, lowVolume: null, fanFlow: 0, fanWay: 'in', receives: 'all' };
/** An hour at 10 L/min, from a bottle of 50 L at 200 bar. */
export const HOUR: Used = { litres: 600, seconds: 3600, largestFlow: 10, bottleLitres: 10_670 };

export const planned = (room: Partial<Room>, used: Partial<Used> = {}) =>
  planRoom({ purge: { ...purge, room: { ...STILL, ...room } }, ...HOUR, ...used });

type Planned = ReturnType<typeof planned>;

export const said = (made: Planned, code: FindingCode): Finding | undefined =>
  made.findings.find((one) => one.code === code);
export const codes = (made: Planned) => made.findings.map(({ code }) => code).sort();
