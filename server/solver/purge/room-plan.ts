import type { Purge } from '../../job/purge.ts';
import type { WorkingInput } from '../../plan/figure.ts';
import type { Finding } from '../../plan/finding.ts';
import type { RoomPlan } from '../../plan/purge.ts';
import { figure, input } from '../figure.ts';
import { roomFindings } from './room-findings.ts';
import {
  ALARM_OXYGEN,
  airing,
  airToHold,
  minutesUntil,
  mixedRelease,
  NIGHT,
  oxygenAfter,
  recoveryMinutes,
  ROOM_OXYGEN,
  SAFE_OXYGEN,
  slowReleaseMinutes,
  suddenDisplaced,
  type Aired,
} from './room-oxygen.ts';

/** Oxygen C after t minutes, by how the room is aired. */
const LEVEL = {
  still: 'C = C₀ exp(−R t/(1000 V))',
  in: 'C = C₀/(F + R) (F + R exp(−(F + R) t/(1000 V)))',
  out: 'C = C₀ (1 − (R/F)(1 − exp(−F t/(1000 V))))',
} as const;
/** The time in seconds until oxygen C, likewise. */
const TIME = {
  still: 't = 60 (1000 V/R) ln(C₀/C)',
  in: 't = −60 (1000 V/(F + R)) ln((C (F + R)/C₀ − F)/R)',
  out: 't = −60 (1000 V/F) ln(1 − (F/R)(1 − C/C₀))',
} as const;

const START = input('C₀', 'room-oxygen', ROOM_OXYGEN, 'percent');
const ALARM = input('C', 'alarm-oxygen', ALARM_OXYGEN, 'percent');
const HELD = input('C', 'oxygen-held', SAFE_OXYGEN, 'percent');

/**
 * Oxygen in the room that the job's argon ends up in, and in its low space: when the job is done, until the alarm, if
 * the gas were left on or the bottle emptied. Everything is mixed alike; layers make it worse.
 *
 * @param work.litres let out into the room by the job [L]
 * @param work.seconds the time that it takes [s]; 0: all at once, so that no fan helps
 * @param work.largestFlow into the room [L/min], over 0
 * @param work.bottleLitres whole contents of the bottle [L]
 */
export function planRoom(work: {
  readonly purge: Purge;
  readonly litres: number;
  readonly seconds: number;
  readonly largestFlow: number;
  readonly bottleLitres: number;
}): { readonly room: RoomPlan; readonly findings: Finding[] } {
  const { litres, largestFlow } = work;
  const { volume, lowVolume, fanFlow: fan, fanWay: way } = work.purge.room;
  const minutes = work.seconds / 60;
  const release = minutes > 0 ? litres / minutes : Infinity;
  const gas = litres / 1000;
  const job: Aired = { volume, release, fan, way };
  const kept: Aired = { volume, release: largestFlow, fan, way };
  const still: Aired = { ...kept, fan: 0 };
  const space = input('V', 'room-volume', volume, 'm3');
  const released = input('V_g', 'gas-into-the-room', gas, 'm3');
  const flow = input('R', 'largest-flow', largestFlow, 'L/min');
  const air = input('F', 'fresh-air', fan, 'L/min');
  const aired = (room: Aired): WorkingInput[] => (airing(room) === 'still' ? [] : [air]);

  const after = minutes > 0 ? oxygenAfter(job, minutes) : mixedRelease({ volume }, gas);
  const alarm = minutesUntil(kept, ALARM_OXYGEN);
  // without a fan, or with next to none, it never does
  const recovery = recoveryMinutes({ volume, fan, end: after }, SAFE_OXYGEN);
  const time = input('t', 'job-time', minutes, 'min');
  const oxygenStill = figure(
    mixedRelease({ volume }, gas),
    'percent',
    'C = C₀ exp(−V_g/V)',
    [START, released, space],
    ['oxygen-balance'],
  );
  const room: RoomPlan = {
    oxygenStill,
    oxygenFan:
      airing(job) === 'still' || minutes === 0
        ? oxygenStill
        : figure(
            after,
            'percent',
            `${LEVEL[airing(job)]}, R = 1000 V_g/t`,
            [START, released, time, space, ...aired(job)],
            ['oxygen-balance', 'typed'],
          ),
    alarmStill: figure(
      60 * slowReleaseMinutes(still, ALARM_OXYGEN),
      's',
      TIME.still,
      [START, ALARM, flow, space],
      ['oxygen-balance', 'oxygen-alarm'],
    ),
    alarmFan:
      alarm === null
        ? null
        : figure(
            60 * alarm,
            's',
            TIME[airing(kept)],
            [START, ALARM, flow, space, ...aired(kept)],
            ['oxygen-balance', 'oxygen-alarm', 'typed'],
          ),
    leftOn: figure(
      oxygenAfter(kept, NIGHT),
      'percent',
      `${LEVEL[airing(kept)]}, fan as typed`,
      [START, flow, input('t', 'a-night', NIGHT, 'min'), space, ...aired(kept)],
      ['oxygen-balance', 'typed'],
    ),
    bottleOut: figure(
      suddenDisplaced({ volume }, work.bottleLitres / 1000),
      'percent',
      'C = C₀ (V − V_b)/V, never under 0; mixing, C₀ exp(−V_b/V), leaves more',
      [START, space, input('V_b', 'bottle-contents', work.bottleLitres / 1000, 'm3')],
      ['sudden-release', 'oxygen-balance'],
    ),
    airToStaySafe: figure(
      airToHold({ release: largestFlow, oxygen: SAFE_OXYGEN }, way),
      'L/min',
      way === 'in' ? 'F = R C/(C₀ − C)' : 'F = R C₀/(C₀ − C)',
      [START, HELD, flow],
      ['oxygen-balance', 'oxygen-held'],
    ),
    recovers:
      after >= SAFE_OXYGEN || !Number.isFinite(recovery)
        ? null
        : figure(
            60 * recovery,
            's',
            't = 60 (1000 V/F) ln((C₀ − C_end)/(C₀ − C))',
            [START, HELD, input('C_end', 'oxygen-when-the-gas-is-shut-off', after, 'percent'), space, air],
            ['oxygen-balance', 'oxygen-held', 'typed'],
          ),
    low: lowVolume === null ? null : lowSpace(Math.min(lowVolume, volume), { gas, largestFlow }),
  };
  return { room, findings: roomFindings(room, { ...job, lowVolume, minutes, largestFlow }) };
}

/** The low space, never more than the room it is a part of, as if none of the gas left it and no fan reached it. */
function lowSpace(
  volume: number,
  { gas, largestFlow }: { readonly gas: number; readonly largestFlow: number },
): NonNullable<RoomPlan['low']> {
  const space = input('V', 'low-space', volume, 'm3');
  return {
    alarm: figure(
      60 * slowReleaseMinutes({ volume, release: largestFlow }, ALARM_OXYGEN),
      's',
      TIME.still,
      [START, ALARM, input('R', 'largest-flow', largestFlow, 'L/min'), space],
      ['oxygen-balance', 'oxygen-alarm'],
    ),
    oxygen: figure(
      mixedRelease({ volume }, gas),
      'percent',
      'C = C₀ exp(−V_g/V)',
      [START, input('V_g', 'gas-into-the-room', gas, 'm3'), space],
      ['oxygen-balance'],
    ),
  };
}
