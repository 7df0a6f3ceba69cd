import type { Purge } from '../../job/purge.ts';
import type { Finding } from '../../plan/finding.ts';
import type { RoomPlan } from '../../plan/purge.ts';
import { finding } from '../finding.ts';
import { contentsAtGauge, gaugeHolding } from './bottle.ts';
import { ALARM_OXYGEN, airToHold, oxygenAfter, SAFE_OXYGEN, type Aired } from './room-oxygen.ts';

/** Most fresh air that a job can have [L/min]; server/job/purge.ts. */
const MOST_AIR = 1_000_000;
/** A time until the alarm that is still worth telling [min]: a day. */
const WORTH_TELLING = 1440;

/** A bottle that does not last, with how many like it would and the reading that would; and one whose gauge rose. */
export function bottleFindings(
  { waterVolume, gaugePressure, gaugeNow, temperature, reserve }: Purge['bottle'],
  { jobGas, usable, bottles }: { readonly jobGas: number; readonly usable: number; readonly bottles: number },
): Finding[] {
  const findings: Finding[] = [];
  if (jobGas > usable) {
    const bottle = { waterVolume, celsius: temperature };
    const gauge = gaugeHolding(bottle, contentsAtGauge(bottle, reserve) + jobGas);
    findings.push(
      finding('bottle-not-enough', 'caution', '/purge/bottle/gaugePressure', {
        value: jobGas,
        high: usable,
        ...(Number.isFinite(bottles) ? { bottles } : {}),
        ...(gauge === null ? {} : { gauge: Math.ceil(gauge) }),
      }),
    );
  }
  if (gaugeNow !== null && gaugeNow > gaugePressure) {
    const field = '/purge/bottle/gaugeNow';
    const data = { value: gaugeNow, high: gaugePressure };
    findings.push(finding('bottle-gauge-rose', 'caution', field, data, { field, value: null }));
  }
  return findings;
}

/**
 * What the air of the room has to say.
 *
 * @param room the room with the job's mean release, the time of it [min], and its largest flow [L/min]
 */
export function roomFindings(
  plan: RoomPlan,
  room: Aired & { readonly minutes: number; readonly largestFlow: number },
): Finding[] {
  const { fan, way, largestFlow } = room;
  const findings: Finding[] = [];
  if (plan.oxygenFan.value < ALARM_OXYGEN) {
    const data = { value: plan.oxygenFan.value, low: ALARM_OXYGEN };
    findings.push(finding('room-oxygen-low', 'stop', '/purge/room/fanFlow', data, moreAir(room)));
  }
  if (way === 'out' && fan > 0 && fan <= largestFlow) {
    const data = { value: fan, low: largestFlow };
    findings.push(finding('room-fan-short', 'caution', '/purge/room/fanFlow', data, moreAir(room)));
  }
  if (plan.low !== null && plan.low.oxygen.value < ALARM_OXYGEN) {
    const data = { value: plan.low.alarm.value, oxygen: Math.floor(10 * plan.low.oxygen.value) / 10 };
    findings.push(finding('low-space-fills', 'caution', '/purge/room/lowVolume', data));
  }
  findings.push(argonCaution(plan));
  return findings;
}

/** Fresh air that holds the room clear of the alarm whatever the release does; null where no fan in time could. */
function moreAir(room: Aired & { readonly minutes: number; readonly largestFlow: number }): Finding['wayOut'] {
  const release = Math.max(room.release, room.largestFlow);
  const fan = Math.ceil(airToHold({ release, oxygen: SAFE_OXYGEN }, room.way));
  const clears = fan <= MOST_AIR && oxygenAfter({ ...room, fan }, room.minutes) >= ALARM_OXYGEN;
  return clears ? { field: '/purge/room/fanFlow', value: fan } : null;
}

/** Always said: argon gives no sign of itself. Numbers are rounded to the worse side. */
function argonCaution({ oxygenStill, alarmStill, leftOn }: RoomPlan): Finding {
  const minutes = alarmStill.value / 60;
  return finding('argon-caution', 'note', '/purge/room/volume', {
    value: oxygenStill.value,
    low: ALARM_OXYGEN,
    night: Math.floor(10 * leftOn.value) / 10,
    ...(minutes > WORTH_TELLING ? {} : { minutes: minutes < 10 ? Math.floor(10 * minutes) / 10 : Math.floor(minutes) }),
  });
}
