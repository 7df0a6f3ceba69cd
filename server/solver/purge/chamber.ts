import type { Purge } from '../../job/purge.ts';
import type { WorkingInput } from '../../plan/figure.ts';
import type { Chamber, PurgeTime } from '../../plan/purge.ts';
import { figure, input } from '../figure.ts';
import { placeAt } from '../geometry/centreline.ts';
import type { SourceKey } from '../sources.ts';
import type { Pocket } from './pockets.ts';
import { longTubeVolumes, wellMixedVolumes, type OxygenStep } from './purge-models.ts';

/** What all chambers of a job share: bore [mm] and the step in oxygen [ppm]. */
export type Filling = { readonly purge: Purge; readonly bore: number; readonly step: OxygenStep };

type Sources = readonly [SourceKey, ...SourceKey[]];

/** A number of volumes, with the time and the gas that it takes at a flow [L/min]. */
function purgeTime(
  volumes: { readonly value: number; readonly formula: string; readonly inputs: readonly WorkingInput[] },
  sources: Sources,
  { litres, flow }: { readonly litres: number; readonly flow: number },
): PurgeTime {
  const inputs = [input('N', 'volumes', volumes.value, 'ratio'), input('V', 'chamber-volume', litres, 'L')];
  const gas = volumes.value * litres;
  const timeInputs = [...inputs, input('Q', 'pre-purge-flow', flow, 'L/min')];
  return {
    volumes: figure(volumes.value, 'ratio', volumes.formula, volumes.inputs, sources),
    time: figure((60 * gas) / flow, 's', 't = 60 N V / Q', timeInputs, sources),
    gas: figure(gas, 'L', 'V_gas = N V', inputs, sources),
  };
}

const stepInputs = ({ start, target, supply }: OxygenStep) => [
  input('C₀', 'air-oxygen', start, 'ppm'),
  input('C₂', 'target-oxygen', target, 'ppm'),
  input('Cᵢ', 'gas-oxygen', supply, 'ppm'),
];

/** The long-tube estimate; null in short pockets and where the flow is turbulent. */
function longTube(pocket: Pocket, { purge, bore, step }: Filling, litres: number): PurgeTime | null {
  if (purge.extent === 'dams') return null;
  const { length, ways } = pocket;
  const flow = purge.prePurgeFlow;
  const estimate = longTubeVolumes({ length: length / ways, bore, flow: flow / ways }, step);
  if (estimate === null) return null;
  const inputs = [
    input('N_m', 'volumes-well-mixed', estimate.wellMixed, 'ratio'),
    input('f', 'mixed-share', estimate.mixedShare, 'ratio'),
    input('q', 'step-quantile', estimate.quantile, 'ratio'),
    input('Bo', 'bodenstein', estimate.bodenstein, 'ratio'),
    input('d', 'bore', bore, 'mm'),
    input('L', 'sweep-length', length / ways, 'mm'),
  ];
  const formula = 'N = min(N_m, f N_m + (1 − f)(b + √(1 + b²))²), b = q/√Bo, f = min(1, 5 d/L)';
  const sources = ['taylor-aris', 'inlet-jet', 'sweep-through', 'argon-data'] as const;
  return purgeTime({ value: estimate.volumes, formula, inputs }, sources, { litres, flow });
}

/** A pocket as a chamber: volume, the three times, and where gas goes in and out. */
export function chamberOf(pocket: Pocket, number: number, filling: Filling): Chamber {
  const { purge, bore, step } = filling;
  const { member, length } = pocket;
  const litres = (Math.PI * bore ** 2 * length) / 4e6;
  const lengthInput = input('l', 'chamber-length', length, 'mm');
  const fill = { litres, flow: purge.prePurgeFlow };
  const formula = 'N = ln((C₀ − Cᵢ)/(C₂ − Cᵢ))';
  const mixed = { value: wellMixedVolumes(step), formula, inputs: stepInputs(step) };
  const wellMixed = purgeTime(mixed, ['sweep-through'], fill);
  const longTime = longTube(pocket, filling, litres);
  const spot = (station: number) => ({
    member: member.name,
    station,
    point: placeAt(member.centreline, station)?.point ?? { x: 0, y: 0, z: 0 },
  });
  return {
    number,
    stretches: pocket.stretches.map((stretch) => ({ member: member.name, ...stretch })),
    joints: pocket.sites.map(({ joint }) => joint),
    volume: figure(litres, 'L', 'V = π d² l / 4', [input('d', 'bore', bore, 'mm'), lengthInput], ['geometry']),
    length: figure(length, 'mm', 'l', [lengthInput], ['geometry']),
    plug: purgeTime({ value: 1, formula: 'N = 1', inputs: [] }, ['geometry'], fill),
    longTube: longTime,
    wellMixed,
    printed: purge.model === 'long-tube' && longTime !== null ? longTime : wellMixed,
    feed: spot(pocket.feed),
    vent: spot(pocket.vent),
    dams: pocket.dams.map(spot),
    plugs: plugsOf(pocket).map((end) => ({
      member: member.name,
      end,
      point: spot(end === 'start' ? 0 : member.centreline.length).point,
    })),
  };
}

/** Open ends of the member that bound the pocket: stopped, with the hose or the vent hole in the plug. */
function plugsOf({ member, stretches }: Pocket): ('start' | 'finish')[] {
  const { length } = member.centreline;
  return [
    ...(member.start.kind === 'free' && stretches.some(({ from }) => from === 0) ? (['start'] as const) : []),
    ...(member.finish.kind === 'free' && stretches.some(({ to }) => to === length) ? (['finish'] as const) : []),
  ];
}
