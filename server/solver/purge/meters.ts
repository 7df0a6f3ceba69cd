import type { MeterReading } from '../../job/purge.ts';
import type { Finding } from '../../plan/finding.ts';
import type { MeterVerdict } from '../../plan/purge.ts';
import { figure, input } from '../figure.ts';
import { finding } from '../finding.ts';
import { AIR_OXYGEN } from './argon.ts';
import type { ChamberFlow } from './chamber-flow.ts';
import { longWays } from './chamber-times.ts';
import type { Filling, PurgeContext } from './purge-context.ts';
import { longOxygen, wellMixedOxygen, type TubesInRow } from './purge-models.ts';
import { holdingLeak, leakLimit } from './vent.ts';

/** A reading that is off a model by no more than this share of it agrees with it: a good meter's accuracy; our own choice. */
const METER_SHARE = 0.02;
/** A front that hardly mixes comes after the time on the way, by a flowmeter that may be off by a fifth; our own choice. */
const NOT_YET = 1.2;
/** Until so many times the time on the way the front itself may still pass the meter, and well mixed is not the latest. */
const FRONT = 2;
/** Nearer to each other than this share of the time on the way two readings say nothing about where oxygen settles. */
const APART = 0.5;

type Read = MeterReading & { readonly index: number };
type Work = { readonly context: PurgeContext; readonly filling: Filling; readonly chambers: readonly ChamberFlow[] };

/** Meter readings beside what the models would have had by then, in the order in which they were typed. */
export function meterVerdicts(work: Work): { meters: MeterVerdict[]; findings: Finding[] } {
  const readings = work.context.purge.meter.map((reading, index): Read => ({ ...reading, index }));
  const findings: Finding[] = [];
  const meters = readings.map((reading): MeterVerdict => {
    const chamber = work.chambers.find(({ number }) => number === reading.chamber);
    const read = chamber === undefined ? noChamber(reading, work) : against(reading, chamber, readings, work);
    findings.push(...read.findings);
    return read.meter;
  });
  return { meters, findings };
}

type Judged = { readonly meter: MeterVerdict; readonly findings: Finding[] };

const fieldOf = ({ index }: Read): string => `/purge/meter/${String(index)}`;

function noChamber(reading: Read, { chambers, filling }: Work): Judged {
  const { chamber, minutes, oxygen } = reading;
  const field = `${fieldOf(reading)}/chamber`;
  const wayOut = chambers.length === 1 ? { field, value: chambers[0]?.number ?? 1 } : null;
  const start = input('C₀', 'air-oxygen', filling.step.start, 'ppm');
  return {
    meter: {
      field: fieldOf(reading),
      chamber,
      minutes,
      oxygen,
      wellMixed: figure(filling.step.start, 'ppm', 'C = C₀', [start], ['typed']),
      longTube: null,
      remaining: null,
      leak: null,
      verdict: 'no-chamber',
    },
    findings: [finding('meter-no-chamber', 'caution', field, { number: chamber }, wayOut)],
  };
}

/** A reading of a chamber: what was to be expected, how long it still takes, and the leak that would hold it there. */
function against(reading: Read, chamber: ChamberFlow, readings: readonly Read[], work: Work): Judged {
  const { step } = work.filling;
  const { minutes, oxygen } = reading;
  const { prePurgeFlow: flow } = work.context.purge;
  const seconds = 60 * minutes;
  const wellMixed = wellMixedOxygen(step, seconds / chamber.mixing);
  const long = latestOxygen(chamber, work, seconds);
  const settles = settlesAt(reading, chamber, readings);
  const held = settles !== null && settles > step.target ? settles : null;
  const longTube = long?.oxygen ?? null;
  const verdict = verdictOf(oxygen, { wellMixed, longTube, ways: seconds / chamber.mixing }, step);
  const at = input('t', 'since-the-gas-was-on', seconds, 's');
  const way = input('τ', 'time-well-mixed', chamber.mixing, 's');
  const start = input('C₀', 'air-oxygen', step.start, 'ppm');
  const supply = input('Cᵢ', 'gas-oxygen', step.supply, 'ppm');
  const target = input('C₂', 'target-oxygen', step.target, 'ppm');
  const shown = input('C', 'oxygen-on-the-meter', oxygen, 'ppm');
  const air = input('C_air', 'air-oxygen', AIR_OXYGEN, 'ppm');
  const gas = input('Q', 'pre-purge-flow', flow, 'L/min');
  const left =
    oxygen <= step.target ? 0 : chamber.mixing * Math.log((oxygen - step.supply) / (step.target - step.supply));
  const leak = holdingLeak({ flow, supply: step.supply, oxygen });
  const meter: MeterVerdict = {
    field: fieldOf(reading),
    chamber: chamber.number,
    minutes,
    oxygen,
    wellMixed: figure(wellMixed, 'ppm', 'C = Cᵢ + (C₀ − Cᵢ) exp(−t/τ)', [supply, start, at, way], ['sweep-through']),
    longTube:
      long === null
        ? null
        : figure(
            long.oxygen,
            'ppm',
            'C = Cᵢ + (C₀ − Cᵢ) erfc(q)/2 with t = τ (−f ln(erfc(q)/2) + (1 − f)(b + √(1 + b²))²), b = q/√Bo',
            [
              supply,
              start,
              at,
              input('τ', 'time-on-the-latest-way', long.row.residence, 's'),
              input('f', 'mixed-share', long.row.mixedShare, 'ratio'),
              input('Bo', 'bodenstein', long.row.bodenstein, 'ratio'),
            ],
            ['taylor-aris', 'dispersion-in-row', 'inlet-jet', 'sweep-through'],
          ),
    remaining:
      held === null
        ? figure(
            left,
            's',
            't = τ ln((C − Cᵢ)/(C₂ − Cᵢ)), not under 0',
            [way, shown, target, supply],
            ['sweep-through', 'meter-reading'],
          )
        : null,
    leak:
      leak === null || verdict === 'below-gas'
        ? null
        : figure(leak, 'mL/min', 'q = 1000 Q (C − Cᵢ)/(C_air − C)', [gas, shown, supply, air], ['oxygen-balance']),
    verdict,
  };
  return { meter, findings: said(reading, meter, { held, work }) };
}

/** Oxygen at the vent by the long-tube model [ppm], on the way that has most of it; null where the model does not hold. */
function latestOxygen(chamber: ChamberFlow, { context, filling }: Work, seconds: number) {
  let latest: { oxygen: number; row: TubesInRow } | null = null;
  for (const row of longWays(chamber, context) ?? []) {
    const oxygen = longOxygen(row, filling.step, seconds / row.residence);
    if (latest === null || oxygen > latest.oxygen) latest = { oxygen, row };
  }
  return latest;
}

/**
 * What a reading says. Well mixed is the latest that is reckoned with once the front is through; before that a front
 * that hardly mixes has not come yet.
 *
 * @param models oxygen by both [ppm], and how many times the gas could have been through
 */
function verdictOf(
  oxygen: number,
  models: { readonly wellMixed: number; readonly longTube: number | null; readonly ways: number },
  { supply, target, start }: Filling['step'],
): MeterVerdict['verdict'] {
  const { wellMixed, longTube, ways } = models;
  if (oxygen < supply) return 'below-gas';
  if (oxygen <= target) return 'reached';
  const early = ways < NOT_YET ? start : (longTube ?? wellMixed);
  const latest = ways < FRONT ? Math.max(wellMixed, early) : wellMixed;
  if (oxygen > latest * (1 + METER_SHARE)) return 'later';
  return oxygen < Math.min(wellMixed, longTube ?? wellMixed) * (1 - METER_SHARE) ? 'sooner' : 'as-reckoned';
}

/**
 * Where oxygen settles [ppm], by a reading and the one before it of the same chamber: what is left over the level where
 * it settles goes down by exp(−Δt/τ), C∞ = (C − C′ e)/(1 − e). Null without an earlier reading some way before, when
 * the front was through.
 */
function settlesAt(reading: Read, { residence, number }: ChamberFlow, readings: readonly Read[]): number | null {
  const apart = (earlier: Read): number => (60 * (reading.minutes - earlier.minutes)) / residence;
  const before = readings
    .filter((one) => one.chamber === number && apart(one) >= APART && (60 * one.minutes) / residence >= FRONT)
    .reduce<Read | null>((last, one) => (last === null || one.minutes >= last.minutes ? one : last), null);
  if (before === null) return null;
  const share = Math.exp(-apart(before));
  return (reading.oxygen - before.oxygen * share) / (1 - share);
}

function said(
  reading: Read,
  { chamber, oxygen, wellMixed, verdict }: MeterVerdict,
  { held, work }: { readonly held: number | null; readonly work: Work },
): Finding[] {
  const field = `${fieldOf(reading)}/oxygen`;
  const { step } = work.filling;
  const { purge } = work.context;
  const findings: Finding[] = [];
  if (verdict === 'below-gas')
    findings.push(finding('meter-below-gas', 'note', field, { chamber, value: oxygen, low: step.supply }));
  if (verdict === 'later')
    findings.push(finding('meter-later', 'caution', field, { chamber, value: oxygen, high: wellMixed.value }));
  if (held !== null && verdict !== 'reached' && verdict !== 'below-gas') {
    const leak = holdingLeak({ flow: purge.prePurgeFlow, supply: step.supply, oxygen: held });
    const most = leakLimit({ flow: purge.prePurgeFlow, supply: step.supply, target: step.target });
    const data = {
      chamber,
      value: held,
      high: step.target,
      ...(leak === null ? {} : { leak: Number(leak.toPrecision(2)), most: Number(most.toPrecision(2)) }),
    };
    findings.push(finding('target-unreachable-leak', 'caution', field, data));
  }
  return findings;
}
