import type { Purge } from '../../job/purge.ts';
import type { Finding } from '../../plan/finding.ts';
import type { RoomPlan } from '../../plan/purge.ts';
import { finding } from '../finding.ts';
import { contentsAtGauge, gaugeHolding } from './bottle.ts';
import { ALARM_OXYGEN, airToHold, NIGHT, oxygenAfter, SAFE_OXYGEN, type Aired } from './room-oxygen.ts';

/** Most fresh air that a job can have [L/min]; server/job/purge.ts. */
const MOST_AIR = 1_000_000;
/** A time until the alarm that is still worth telling [min]: a day. */
const WORTH_TELLING = 1440;

/** Least and usual pressure that is left in a bottle [bar gauge]: 5 to 10, common practice, no source. */
const USUAL_RESERVE = { least: 5, most: 10 } as const;

/**
 * A bottle that does not last, with the reading that would and, before it is read again, how many like it would; a
 * reserve that it does not hold; and a gauge that rose.
 *
 * @param found.usable above the reserve by the last reading [L]; `bottles` is beyond all numbers where it is nothing
 */
export function bottleFindings(
  { waterVolume, gaugePressure, gaugeNow, temperature, reserve }: Purge['bottle'],
  { jobGas, usable, bottles }: { readonly jobGas: number; readonly usable: number; readonly bottles: number },
): Finding[] {
  const findings: Finding[] = [];
  const rose = gaugeNow !== null && gaugeNow > gaugePressure;
  const again = gaugeNow !== null && !rose;
  const last = again ? gaugeNow : gaugePressure;
  if (jobGas > usable) {
    const bottle = { waterVolume, celsius: temperature };
    const gauge = gaugeHolding(bottle, contentsAtGauge(bottle, reserve) + jobGas);
    findings.push(
      finding('bottle-not-enough', 'caution', again ? '/purge/bottle/gaugeNow' : '/purge/bottle/gaugePressure', {
        value: jobGas,
        high: usable,
        ...(again ? { now: gaugeNow } : Number.isFinite(bottles) ? { bottles } : {}),
        ...(gauge === null ? {} : { gauge: Math.ceil(gauge) }),
      }),
    );
  }
  if (reserve > last) {
    const field = '/purge/bottle/reserve';
    const { least, most } = USUAL_RESERVE;
    const value = last > most ? most : least;
    const out = last > value ? { field, value } : null;
    findings.push(finding('bottle-under-reserve', 'caution', field, { value: reserve, high: last }, out));
  }
  if (rose) {
    const field = '/purge/bottle/gaugeNow';
    const data = { value: gaugeNow, high: gaugePressure };
    findings.push(finding('bottle-gauge-rose', 'caution', field, data, { field, value: null }));
  }
  return findings;
}

/** A room with the job's mean release, the time of it [min], its largest flow [L/min], and the low space typed [m³]. */
type WorkedIn = Aired & {
  readonly lowVolume: number | null;
  readonly minutes: number;
  readonly largestFlow: number;
};

/** What the air of the room has to say. */
export function roomFindings(plan: RoomPlan, room: WorkedIn): Finding[] {
  const { fan, way, largestFlow, volume, lowVolume } = room;
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
    findings.push(finding('low-space-fills', 'stop', '/purge/room/lowVolume', data));
  }
  if (lowVolume !== null && lowVolume > volume) {
    const field = '/purge/room/lowVolume';
    const data = { value: lowVolume, high: volume };
    findings.push(finding('low-space-larger', 'caution', field, data, { field, value: volume }));
  }
  if (plan.bottleOut.value < ALARM_OXYGEN) {
    const data = { value: plan.bottleOut.value, low: ALARM_OXYGEN };
    findings.push(finding('bottle-in-room', 'caution', '/purge/room/volume', data));
  }
  findings.push(argonCaution(plan, room));
  return findings;
}

/** Fresh air that holds the room clear of the alarm whatever the release does; null where no fan in time could. */
function moreAir(room: WorkedIn): Finding['wayOut'] {
  const release = Math.max(room.release, room.largestFlow);
  const fan = Math.ceil(airToHold({ release, oxygen: SAFE_OXYGEN }, room.way));
  const clears = fan <= MOST_AIR && oxygenAfter({ ...room, fan }, room.minutes) >= ALARM_OXYGEN;
  return clears ? { field: '/purge/room/fanFlow', value: fan } : null;
}

/**
 * Always said, since argon gives no sign of itself: a caution where gas that is left on for a night makes the air of the
 * room or of its low space dangerous, or still air would be while the work goes on. Numbers are rounded to the worse side.
 */
function argonCaution({ oxygenStill, alarmStill, leftOn, low }: RoomPlan, { minutes }: WorkedIn): Finding {
  const still = alarmStill.value / 60;
  const below = low === null ? Infinity : low.alarm.value / 60;
  const dangerous = leftOn.value < ALARM_OXYGEN || still < minutes || below < Math.max(NIGHT, minutes);
  return finding('argon-caution', dangerous ? 'caution' : 'note', '/purge/room/volume', {
    value: oxygenStill.value,
    low: ALARM_OXYGEN,
    night: Math.floor(10 * leftOn.value) / 10,
    ...(still > WORTH_TELLING ? {} : { minutes: roundedDown(still) }),
    ...(below > WORTH_TELLING ? {} : { lowMinutes: roundedDown(below) }),
  });
}

const roundedDown = (minutes: number): number => (minutes < 10 ? Math.floor(10 * minutes) / 10 : Math.floor(minutes));
