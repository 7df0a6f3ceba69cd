import type { Purge, Welding } from '../../job/purge.ts';
import type { Chamber, PurgePlan } from '../../plan/purge.ts';
import { band, figure, input } from '../figure.ts';
import { ATMOSPHERE, contents, LEFT_IN_BOTTLE, taken } from './bottle.ts';
import type { Pocket } from './pockets.ts';
import type { PurgeJoint } from './sites.ts';

/** The fits of Z are within this share of it. */
const FIT_SHARE = 0.0009;

type Used = Pick<PurgePlan, 'purgeGas' | 'torchGas' | 'jobGas'> & {
  /** From the first gas to the last, set-ups one after another with nothing between them [s]. */
  readonly seconds: number;
};

/** Gas for all set-ups and all arcs. */
export function gasUsed(work: {
  readonly purge: Purge;
  readonly welding: Welding;
  readonly chambers: readonly Chamber[];
  readonly pockets: readonly Pocket[];
  readonly joints: readonly PurgeJoint[];
}): Used {
  const { purge, welding, chambers, pockets, joints } = work;
  const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);
  const before = sum(chambers.map(({ printed }) => printed.gas.value));
  const arcs = sum(pockets.flatMap(({ sites }) => sites.map(({ arcTime }) => arcTime)));
  const flowing = arcs + chambers.length * purge.hold;
  const purgeGas = before + (purge.weldingFlow * flowing) / 60;
  const burning = sum(joints.map(({ arcTime }) => arcTime));
  const torch = (welding.torchFlow * (burning + joints.length * welding.postFlow)) / 60;
  return {
    purgeGas: figure(
      purgeGas,
      'L',
      'V_p = V_pre + Q (t + n h)/60',
      [
        input('V_pre', 'gas-before-welding', before, 'L'),
        input('Q', 'welding-flow', purge.weldingFlow, 'L/min'),
        input('t', 'arc-time-purged', arcs, 's'),
        input('n', 'chambers', chambers.length, 'count'),
        input('h', 'hold', purge.hold, 's'),
      ],
      ['geometry', 'typed'],
    ),
    torchGas: figure(
      torch,
      'L',
      'V_t = Q (t + n p)/60',
      [
        input('Q', 'torch-flow', welding.torchFlow, 'L/min'),
        input('t', 'arc-time', burning, 's'),
        input('n', 'joints', joints.length, 'count'),
        input('p', 'post-flow', welding.postFlow, 's'),
      ],
      ['geometry', 'typed'],
    ),
    jobGas: figure(
      purgeGas + torch,
      'L',
      'V = V_p + V_t',
      [input('V_p', 'purge-gas', purgeGas, 'L'), input('V_t', 'torch-gas', torch, 'L')],
      ['geometry'],
    ),
    seconds: sum(chambers.map(({ printed }) => printed.time.value)) + flowing,
  };
}

/** What the bottle holds, the share of it that the job takes, and what it can give before it is left to itself [L]. */
export function bottleFigures(
  { waterVolume, gaugePressure, temperature }: Purge['bottle'],
  jobGas: number,
): Pick<PurgePlan, 'bottleContents' | 'bottleShare'> & { readonly usable: number } {
  const bottle = { waterVolume, celsius: temperature };
  const whole = contents(bottle, gaugePressure + ATMOSPHERE);
  return {
    bottleContents: figure(
      whole,
      'L',
      'V = V_w ((p + 1.013)/Z)(288.15/(T + 273.15)) Z₀/p₀, p₀ = 1 bar',
      [
        input('V_w', 'bottle-water-volume', waterVolume, 'L'),
        input('p', 'bottle-pressure', gaugePressure, 'bar'),
        input('T', 'bottle-temperature', temperature, 'degC'),
      ],
      ['argon-state', 'typed'],
      band(FIT_SHARE * whole, 'fit-of-compressibility'),
    ),
    bottleShare: figure(
      (100 * jobGas) / whole,
      'percent',
      '100 V_job / V',
      [input('V_job', 'job-gas', jobGas, 'L'), input('V', 'bottle-contents', whole, 'L')],
      ['geometry'],
    ),
    usable: gaugePressure > LEFT_IN_BOTTLE ? taken(bottle, { from: gaugePressure, to: LEFT_IN_BOTTLE }) : 0,
  };
}
