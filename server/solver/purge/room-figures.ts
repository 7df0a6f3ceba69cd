import type { Purge, Welding } from '../../job/purge.ts';
import type { PurgePlan } from '../../plan/purge.ts';
import { figure, input } from '../figure.ts';
import {
  airToHold,
  ALARM_OXYGEN,
  fanBlowingIn,
  minutesUntil,
  mixedRelease,
  ROOM_OXYGEN,
  SAFE_OXYGEN,
} from './room-oxygen.ts';

type RoomFigures = Pick<PurgePlan, 'roomOxygenStill' | 'roomOxygenFan' | 'timeToAlarm' | 'airToStaySafe'>;

/**
 * Oxygen in the room when a job's gas [L] has been let out over a time [s]: in still air, and with the fresh air that a
 * fan blows in. The time to the alarm and the air to stay safe are for the largest flow of the job, kept on.
 */
export function roomFigures(
  { purge, welding }: { readonly purge: Purge; readonly welding: Welding },
  used: { readonly litres: number; readonly seconds: number },
): RoomFigures {
  const { volume, fanFlow } = purge.room;
  const minutes = used.seconds / 60;
  const release = used.litres / minutes;
  const largest = Math.max(purge.prePurgeFlow, purge.weldingFlow + welding.torchFlow);
  const start = input('C₀', 'room-oxygen', ROOM_OXYGEN, 'percent');
  const room = input('V', 'room-volume', volume, 'm3');
  const fan = input('F', 'fresh-air', fanFlow, 'L/min');
  const gas = input('V_g', 'job-gas', used.litres / 1000, 'm3');
  const flow = input('R', 'largest-flow', largest, 'L/min');
  const alarm = minutesUntil({ volume, release: largest, fan: fanFlow }, ALARM_OXYGEN);
  return {
    roomOxygenStill: figure(
      mixedRelease({ volume }, used.litres / 1000),
      'percent',
      'C = C₀ exp(−V_g/V)',
      [start, gas, room],
      ['oxygen-balance'],
    ),
    roomOxygenFan: figure(
      fanBlowingIn({ volume, release, fan: fanFlow }, minutes),
      'percent',
      'C = C₀/(F + R) (F + R exp(−(F + R) t/(1000 V))), R = 1000 V_g/t',
      [start, fan, gas, input('t', 'job-time', minutes, 'min'), room],
      ['oxygen-balance'],
    ),
    timeToAlarm:
      alarm === null
        ? null
        : figure(
            60 * alarm,
            's',
            't = −60 (1000 V/(F + R)) ln((C (F + R)/C₀ − F)/R)',
            [start, input('C', 'alarm-oxygen', ALARM_OXYGEN, 'percent'), flow, fan, room],
            ['oxygen-balance', 'oxygen-alarm'],
          ),
    airToStaySafe: figure(
      airToHold({ release: largest, oxygen: SAFE_OXYGEN }),
      'L/min',
      'F = R C/(C₀ − C)',
      [start, input('C', 'safe-oxygen', SAFE_OXYGEN, 'percent'), flow],
      ['oxygen-balance', 'practice'],
    ),
  };
}
