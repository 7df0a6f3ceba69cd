import type { WorkingInput } from '../../plan/figure.ts';
import type { Chamber, PurgeTime } from '../../plan/purge.ts';
import { figure, input } from '../figure.ts';
import type { SourceKey } from '../sources.ts';
import { ARGON_AIR_DIFFUSIVITY } from './argon.ts';
import type { ChamberFlow } from './chamber-flow.ts';
import type { ChamberTimes } from './chamber-times.ts';
import type { Filling, PurgeContext } from './purge-context.ts';
import { closedFormVolumes } from './purge-models.ts';
import { CLEARLY_MORE } from './rounding.ts';

type Sources = readonly [SourceKey, ...SourceKey[]];

type TimeFigures = Pick<Chamber, 'plug' | 'longTube' | 'wellMixed' | 'printed'>;

/** A time with its working, and the volumes and the gas that it comes to at the flow [L/min] of the pre-purge. */
function purgeTime(
  time: { readonly value: number; readonly formula: string; readonly inputs: readonly WorkingInput[] },
  sources: Sources,
  { litres, flow }: { readonly litres: number; readonly flow: number },
): PurgeTime {
  const gas = (time.value * flow) / 60;
  const inputs = [input('Q', 'pre-purge-flow', flow, 'L/min'), input('t', 'wait', time.value, 's')];
  return {
    volumes: figure(
      litres > 0 ? gas / litres : 0,
      'ratio',
      'N = Q t/(60 V)',
      [...inputs, input('V', 'chamber-volume', litres, 'L')],
      sources,
    ),
    time: figure(time.value, 's', time.formula, time.inputs, sources),
    gas: figure(gas, 'L', 'V_gas = Q t/60', inputs, sources),
  };
}

const WELL_MIXED = 't = τ ln((C₀ − Cᵢ)/(C₂ − Cᵢ))';
/** Well mixed, and not before the dead legs bleed little enough into the stream. */
const BLED =
  't = max(τ ln((C₀ − Cᵢ)/(C₂ − Cᵢ)), t_b); t_b: D (π/4) d² C₀ Σ m b = Q (C₂ − Cᵢ), all in m and s, s = D t_b; ' +
  'b = 1/√(π s) while s < 0.1 l², then (2/l) Σ exp(−(n + ½)² π² s/l²)';
/** Likewise where one of them opens by a hole under a saddle. */
const BLED_BY_HOLE =
  `${BLED}; by a hole b = h exp(h² s) erfc(h √s), then Σ 2 h B exp(−µ² s/l²)/(B² + B + µ²), µ tan µ = B, B = h l, ` +
  'h = d_h²/(d² (w + π d_h/4))';

/** The times of a chamber by each model as figures. */
export function timeFigures(
  { litres, residence, mixing, dead }: ChamberFlow,
  { purge, bore, job }: PurgeContext,
  { step, volumes, quantile }: Filling,
  times: ChamberTimes,
): TimeFigures {
  const fill = { litres, flow: purge.prePurgeFlow };
  const slowest = input('τ', 'time-on-the-slowest-way', residence, 's');
  const once = (60 * litres) / purge.prePurgeFlow;
  const vessel = mixing > CLEARLY_MORE * once ? 'time-on-the-slowest-way-with-dead-ends' : 'volume-over-flow';
  const mixed = mixing > CLEARLY_MORE * residence ? input('τ', vessel, mixing, 's') : slowest;
  const plug = purgeTime({ value: times.plug, formula: 't = τ', inputs: [slowest] }, ['gas-network', 'geometry'], fill);
  const byHole = dead.some(({ behindHole }) => behindHole);
  const inputs = [
    mixed,
    input('C₀', 'air-oxygen', step.start, 'ppm'),
    input('C₂', 'target-oxygen', step.target, 'ppm'),
    input('Cᵢ', 'gas-oxygen', step.supply, 'ppm'),
  ];
  const wellMixed =
    times.bleed > 0
      ? purgeTime(
          {
            value: times.wellMixed,
            formula: byHole ? BLED_BY_HOLE : BLED,
            inputs: [
              ...inputs,
              input('t_b', 'until-dead-legs-bleed-little-enough', times.bleed, 's'),
              input('D', 'diffusivity', ARGON_AIR_DIFFUSIVITY, 'm2/s'),
              input('d', 'bore', bore, 'mm'),
              ...dead.flatMap((leg) => [
                input('l', 'dead-leg', leg.length, 'mm'),
                input('m', 'mouths-of-the-dead-leg', leg.mouths, 'count'),
              ]),
              ...(byHole
                ? [
                    input('d_h', 'bore-of-holes-under-saddles', Math.min(purge.holes.bore, bore), 'mm'),
                    input('w', 'wall', job.tube.wall, 'mm'),
                  ]
                : []),
              input('Q', 'pre-purge-flow', purge.prePurgeFlow, 'L/min'),
            ],
          },
          ['sweep-through', 'gas-network', 'dead-leg', 'argon-data'],
          fill,
        )
      : purgeTime({ value: times.wellMixed, formula: WELL_MIXED, inputs }, ['sweep-through', 'gas-network'], fill);
  const longTube = times.longTube === null ? null : longFigures(times.longTube, { volumes, quantile }, fill);
  return {
    plug,
    longTube,
    wellMixed,
    printed: purge.model === 'long-tube' && longTube !== null ? longTube : wellMixed,
  };
}

function longFigures(
  { time, row }: NonNullable<ChamberTimes['longTube']>,
  { volumes, quantile }: Pick<Filling, 'volumes' | 'quantile'>,
  fill: { readonly litres: number; readonly flow: number },
): PurgeTime {
  const closed = row.mixedShare < 1 ? closedFormVolumes({ bodenstein: row.bodenstein, quantile }) : 0;
  const inputs = [
    input('τ', 'time-on-the-latest-way', row.residence, 's'),
    input('N_m', 'volumes-well-mixed', volumes, 'ratio'),
    input('f', 'mixed-share', row.mixedShare, 'ratio'),
    input('N_c', 'volumes-closed-form', closed, 'ratio'),
    input('q', 'step-quantile', quantile, 'ratio'),
    input('Bo', 'bodenstein', row.bodenstein, 'ratio'),
  ];
  const formula = 't = τ min(N_m, f N_m + (1 − f) N_c), N_c = (b + √(1 + b²))², b = q/√Bo';
  const sources = ['taylor-aris', 'dispersion-in-row', 'inlet-jet', 'sweep-through', 'argon-data'] as const;
  return purgeTime({ value: time, formula, inputs }, sources, fill);
}
