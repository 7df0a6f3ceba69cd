import type { PurgePlan } from '../../plan/purge.ts';
import { band, figure, input } from '../figure.ts';
import { AUSTENITIC, AUSTENITIC_DIFFUSIVITY } from '../tube/heat-properties.ts';
import { AIR_OXYGEN, ARGON_DENSITY } from './argon.ts';
import { DAM_DOUBT, peakRise, peakTime } from './dam-heat.ts';
import type { Filling, PurgeContext } from './purge-context.ts';
import { reynolds } from './purge-models.ts';
import { coolingOf, holdTime, mostHeat } from './purge-work.ts';
import { COOLED, COOLING_DOUBT, SURFACE_LOSS, SURROUNDINGS } from './root-cooling.ts';
import { DISCHARGE_COEFFICIENT, leakLimit, USUAL_PRESSURE, ventBore } from './vent.ts';
import type { VentLoad } from './vent-load.ts';

type FlowFigures = Pick<
  PurgePlan,
  | 'prePurgeFlow'
  | 'weldingFlow'
  | 'closingFlow'
  | 'ventPressure'
  | 'ventBoreFor100Pa'
  | 'leakLimit'
  | 'reynolds'
  | 'hold'
  | 'cooling'
  | 'damRise'
  | 'damPeak'
>;

/**
 * What the flows do. The pressure under the weld pool and the leak that the purge bears are those of the welding flow:
 * before that there is no pool, and the smaller flow bears the smaller leak. The Reynolds number is the pre-purge's.
 *
 * @param load what the vents bear
 * @param tubeFlow most gas in any tube before welding [L/min]
 */
export function flowFigures(
  context: PurgeContext,
  { step }: Filling,
  { load, tubeFlow }: { readonly load: VentLoad; readonly tubeFlow: number },
): FlowFigures {
  const { purge, bore } = context;
  const { prePurgeFlow, weldingFlow, targetOxygen } = purge;
  const welding = input('Q', 'welding-flow', weldingFlow, 'L/min');
  const density = input('ρ', 'argon-density', ARGON_DENSITY, 'kg/m3');
  const discharge = input('C_d', 'discharge-coefficient', DISCHARGE_COEFFICIENT, 'ratio');
  const passed = load.holes.flatMap(({ flow, bore: width, vent }, index) => {
    const hole = vent === null && load.pool !== null ? `hole-under-a-saddle-${String(index + 1)}` : 'vent';
    return [input('qᵢ', `flow-through-${hole}`, flow, 'L/min'), input('dᵢ', `bore-of-${hole}`, width, 'mm')];
  });
  const usual = input('Δp', 'usual-pressure', USUAL_PRESSURE, 'Pa');
  return {
    prePurgeFlow: figure(prePurgeFlow, 'L/min', 'Q', [input('Q', 'pre-purge-flow', prePurgeFlow, 'L/min')], ['typed']),
    weldingFlow: figure(weldingFlow, 'L/min', 'Q', [welding], ['typed']),
    closingFlow: figure(
      Math.min(weldingFlow, load.flowFor100Pa),
      'L/min',
      'Q_c = min(Q, Q₁), Q₁: the flow that makes Δp behind the pool of most pressure',
      [welding, input('Q₁', 'flow-for-the-usual-pressure', load.flowFor100Pa, 'L/min'), usual],
      ['orifice', 'gas-network', 'root-pressure', 'argon-data'],
    ),
    ventPressure: figure(
      load.pressure,
      'Pa',
      'Δp = Δp_b + Σ ½ ρ (4 qᵢ/(π C_d dᵢ²))², each hole from the pool to the air, in m³/s and m; qᵢ of the network at Q',
      [density, discharge, welding, input('Δp_b', 'lost-in-bores', load.inBores, 'Pa'), ...passed],
      ['orifice', 'gas-network', 'argon-data'],
    ),
    ventBoreFor100Pa: figure(
      ventBore({ flow: weldingFlow, pressure: USUAL_PRESSURE }),
      'mm',
      'd = √(4 Q/(π C_d √(2 Δp/ρ))), Q in m³/s, d in m',
      [density, welding, discharge, usual],
      ['orifice', 'root-pressure', 'argon-data'],
    ),
    leakLimit: figure(
      leakLimit({ flow: weldingFlow, supply: step.supply, target: targetOxygen }),
      'mL/min',
      'q = 1000 Q (C₂ − Cᵢ)/(C_air − C₂)',
      [
        welding,
        input('C₂', 'target-oxygen', targetOxygen, 'ppm'),
        input('Cᵢ', 'gas-oxygen', step.supply, 'ppm'),
        input('C_air', 'air-oxygen', AIR_OXYGEN, 'ppm'),
      ],
      ['oxygen-balance'],
    ),
    reynolds: figure(
      reynolds({ bore, flow: tubeFlow }),
      'ratio',
      'Re = 4 ρ Q/(π d µ), µ = 22.31·10⁻⁶ Pa·s, Q in m³/s, d in m',
      [density, input('Q', 'most-flow-in-a-tube', tubeFlow, 'L/min'), input('d', 'bore', bore, 'mm')],
      ['argon-data', 'gas-network'],
    ),
    ...heatFigures(context),
  };
}

/** How long the root and the dams stay hot, by the weld with the most heat. */
function heatFigures(context: PurgeContext): Pick<FlowFigures, 'hold' | 'cooling' | 'damRise' | 'damPeak'> {
  const { purge, welds, job } = context;
  const { wall } = job.tube;
  const weld = { heat: mostHeat(welds), wall };
  const heat = input('H', 'heat-input', weld.heat, 'J/mm');
  const thickness = input('w', 'wall', wall, 'mm');
  const capacity = input('ρc', 'heat-capacity', AUSTENITIC.heatCapacity, 'J/m3K');
  const spread = input('α', 'heat-diffusivity', AUSTENITIC_DIFFUSIVITY, 'm2/s');
  const distance = input('x', 'dam-distance', purge.damDistance, 'mm');
  const cooling = coolingOf(context);
  const rise = peakRise(weld, purge.damDistance);
  const hold = holdTime(purge.hold, cooling);
  const reckoned = input('t', 'root-cooling-time', cooling, 's');
  return {
    hold:
      purge.hold === null
        ? figure(hold, 's', 'h = 5 ⌈t/5⌉', [reckoned], ['root-cooling'], band(COOLING_DOUBT * cooling, 'surface-loss'))
        : figure(hold, 's', 'h', [input('h', 'hold', hold, 's')], ['typed']),
    cooling: figure(
      cooling,
      's',
      'T = T₀ + H/(ρc w √(4 π α t)) exp(−h t/(ρc w))',
      [
        input('T', 'cooled', COOLED, 'degC'),
        input('T₀', 'surroundings', SURROUNDINGS, 'degC'),
        heat,
        capacity,
        thickness,
        spread,
        input('h', 'surface-loss', SURFACE_LOSS, 'W/m2K'),
      ],
      ['root-cooling', 'heat-tint'],
      band(COOLING_DOUBT * cooling, 'surface-loss'),
    ),
    damRise: figure(
      rise,
      'K',
      'ΔT = H/(√(2πe) ρc w x)',
      [heat, capacity, thickness, distance],
      ['dam-heat'],
      band(DAM_DOUBT * rise, 'heat-share'),
    ),
    damPeak: figure(peakTime(purge.damDistance), 's', 't = x²/(2 α)', [distance, spread], ['dam-heat']),
  };
}
