import type { Purge } from '../../job/purge.ts';
import type { Band, WorkingInput } from '../../plan/figure.ts';
import type { Finding } from '../../plan/finding.ts';
import type { BottlePlan } from '../../plan/purge.ts';
import { band, figure, input } from '../figure.ts';
import { ATMOSPHERE, compressibility, contentsAtGauge, gaugeHolding, REFERENCE_Z, taken } from './bottle.ts';
import { bottleFindings } from './room-findings.ts';

/** How far a bottle may be from the warmth typed [K]: sun, a cold floor, gas just drawn; our own choice. */
const WARMTH = 10;
/** How far two settled readings may be apart in warmth [K]; our own choice. */
const SETTLED = 2;

type TypedBottle = Purge['bottle'];

/** The ± from a bottle that is so many kelvin warmer or colder than `celsius`: half of what both make together. */
const warmthBand = (celsius: number, off: number, at: (celsius: number) => number): Band =>
  band(Math.abs(at(celsius + off) - at(celsius - off)) / 2, `bottle-${String(off)}-K-warmer-or-colder`);

/** A share of next to nothing is beyond all numbers; it stays one, so that a plan can be written down. */
const bounded = (value: number): number => Math.min(value, Number.MAX_VALUE);

const gauge = (symbol: string, name: string, value: number): WorkingInput => input(symbol, name, value, 'bar');

/** What can be taken from a bottle before its reserve is reached [L at 15 °C, 1 bar]. */
export const usableGas = ({ waterVolume, gaugePressure, temperature, reserve }: TypedBottle): number =>
  gaugePressure > reserve ? taken({ waterVolume, celsius: temperature }, { from: gaugePressure, to: reserve }) : 0;

/**
 * What a bottle holds and what the job takes of it. Litres are at 15 °C and 1 bar, pressures by the gauge. Bands are for
 * a bottle 10 K off the warmth typed, some 5 % at 200 bar; the fit of Z adds nothing to see. Whether it lasts goes by the
 * last reading, as if the whole job were still to do: how much of it is done, a gauge does not say.
 *
 * @param bottle as typed: water volume [L], readings and reserve [bar gauge], temperature [°C]
 * @param jobGas gas of the whole job [L]
 */
export function planBottle(
  bottle: TypedBottle,
  jobGas: number,
): { readonly bottle: BottlePlan; readonly findings: Finding[] } {
  const { waterVolume, gaugePressure, temperature, reserve } = bottle;
  const at = (celsius: number) => ({ waterVolume, celsius });
  const warmth = (value: (celsius: number) => number): Band => warmthBand(temperature, WARMTH, value);
  const usableAt = (celsius: number): number => usableGas({ ...bottle, temperature: celsius });
  const whole = contentsAtGauge(at(temperature), gaugePressure);
  const usable = usableAt(temperature);
  const share = whole > 0 ? bounded((100 * jobGas) / whole) : 0;
  const bottles = usable > 0 ? Math.ceil(jobGas / usable) : Infinity;
  const { taken: used, left } = readAgain(bottle);
  const last = readsTrue(bottle) ? bottle.gaugeNow : gaugePressure;
  const giving = left?.value ?? usable;
  const afterAt = (celsius: number): number =>
    jobGas > 0 ? (gaugeHolding(at(celsius), contentsAtGauge(at(celsius), last) - jobGas) ?? last) : last;
  const after = jobGas > giving ? null : afterAt(temperature);

  const size = input('V_w', 'bottle-water-volume', waterVolume, 'L');
  const warm = input('T', 'bottle-temperature', temperature, 'degC');
  const reserved = gauge('p_r', 'reserve', reserve);
  const held = input('V', 'bottle-contents', whole, 'L');
  const job = input('V_job', 'job-gas', jobGas, 'L');
  const plan: BottlePlan = {
    contents: figure(
      whole,
      'L',
      'V = V_w ((p + 1.013)/Z)(288.15/(T + 273.15)) Z₀/p₀, p₀ = 1 bar',
      [size, gauge('p', 'bottle-pressure', gaugePressure), warm, compressed(gaugePressure, temperature), REFERRED],
      ['argon-state', 'bottle-warmth', 'typed'],
      warmth((celsius) => contentsAtGauge(at(celsius), gaugePressure)),
    ),
    usable: figure(
      usable,
      'L',
      'V_u = V − V(p_r), never under 0',
      [held, reserved, input('V(p_r)', 'contents-at-the-reserve', contentsAtGauge(at(temperature), reserve), 'L')],
      ['argon-state', 'bottle-warmth', 'typed'],
      warmth(usableAt),
    ),
    share: figure(
      share,
      'percent',
      '100 V_job/V',
      [job, held],
      ['argon-state', 'bottle-warmth'],
      warmth((celsius) => (whole > 0 ? bounded((100 * jobGas) / contentsAtGauge(at(celsius), gaugePressure)) : 0)),
    ),
    bottles: Number.isFinite(bottles)
      ? figure(bottles, 'count', 'n = ⌈V_job/V_u⌉', [job, input('V_u', 'usable-gas', usable, 'L')], ['argon-state'])
      : null,
    gaugeAfter:
      after === null
        ? null
        : figure(
            after,
            'bar',
            'p₂ where V_w ((p₂ + 1.013)/Z)(288.15/(T + 273.15)) Z₀/p₀ = V − V_job, p₀ = 1 bar',
            [
              left === null ? held : input('V', 'contents-now', contentsAtGauge(at(temperature), last), 'L'),
              job,
              size,
              warm,
              compressed(after, temperature),
              REFERRED,
            ],
            ['argon-state', 'bottle-warmth'],
            warmth(afterAt),
          ),
    taken: used,
    left,
  };
  return { bottle: plan, findings: bottleFindings(bottle, { jobGas, usable: giving, bottles }) };
}

const REFERRED = input('Z₀', 'compressibility-at-15-degrees-and-1-bar', REFERENCE_Z, 'ratio');
const compressed = (pressure: number, celsius: number): WorkingInput =>
  input('Z', 'compressibility', compressibility({ pressure: pressure + ATMOSPHERE, celsius }), 'ratio');

/** Whether the gauge was read again, and not more than before, since then one of the two is not this bottle's. */
const readsTrue = (bottle: TypedBottle): bottle is TypedBottle & { readonly gaugeNow: number } =>
  bottle.gaugeNow !== null && bottle.gaugeNow <= bottle.gaugePressure;

/** What the gauge read again says. */
function readAgain(bottle: TypedBottle): Pick<BottlePlan, 'taken' | 'left'> {
  if (!readsTrue(bottle)) return { taken: null, left: null };
  const { waterVolume, gaugePressure, gaugeNow, temperature, reserve } = bottle;
  const at = (celsius: number) => ({ waterVolume, celsius });
  const leftAt = (celsius: number): number =>
    gaugeNow > reserve ? taken(at(celsius), { from: gaugeNow, to: reserve }) : 0;
  const now = contentsAtGauge(at(temperature), gaugeNow);
  const used = taken(at(temperature), { from: gaugePressure, to: gaugeNow });
  const inputs = [input('V(p₂)', 'contents-now', now, 'L'), gauge('p₂', 'gauge-now', gaugeNow)];
  return {
    taken: figure(
      used,
      'L',
      'V(p₁) − V(p₂)',
      [input('V(p₁)', 'bottle-contents', now + used, 'L'), gauge('p₁', 'bottle-pressure', gaugePressure), ...inputs],
      ['argon-state', 'bottle-warmth', 'typed'],
      warmthBand(temperature, SETTLED, (celsius) => contentsAtGauge(at(celsius), gaugeNow)),
    ),
    left: figure(
      leftAt(temperature),
      'L',
      'V(p₂) − V(p_r), never under 0',
      [
        ...inputs,
        gauge('p_r', 'reserve', reserve),
        input('V(p_r)', 'contents-at-the-reserve', contentsAtGauge(at(temperature), reserve), 'L'),
      ],
      ['argon-state', 'bottle-warmth', 'typed'],
      warmthBand(temperature, WARMTH, leftAt),
    ),
  };
}
