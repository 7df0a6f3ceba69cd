import type { Purge } from '../../job/purge.ts';
import type { PurgePlan } from '../../plan/purge.ts';
import { figure, input } from '../figure.ts';
import { AIR_OXYGEN, ARGON_DENSITY } from './argon.ts';
import { reynolds } from './purge-models.ts';
import { DISCHARGE_COEFFICIENT, leakLimit, USUAL_PRESSURE, ventBore, ventPressure } from './vent.ts';

type FlowFigures = Pick<
  PurgePlan,
  'prePurgeFlow' | 'weldingFlow' | 'hold' | 'ventPressure' | 'ventBoreFor100Pa' | 'leakLimit' | 'reynolds'
>;

/**
 * What the flows do. The pressure under the weld pool and the leak that the purge bears are those of the welding flow:
 * before that there is no pool, and the smaller flow bears the smaller leak. The Reynolds number is the pre-purge's.
 */
export function flowFigures(purge: Purge, { bore, supply }: { bore: number; supply: number }): FlowFigures {
  const { prePurgeFlow, weldingFlow, targetOxygen } = purge;
  const welding = input('Q', 'welding-flow', weldingFlow, 'L/min');
  const filling = input('Q', 'pre-purge-flow', prePurgeFlow, 'L/min');
  const density = input('ρ', 'argon-density', ARGON_DENSITY, 'kg/m3');
  const discharge = input('C_d', 'discharge-coefficient', DISCHARGE_COEFFICIENT, 'ratio');
  return {
    prePurgeFlow: figure(prePurgeFlow, 'L/min', 'Q', [filling], ['typed']),
    weldingFlow: figure(weldingFlow, 'L/min', 'Q', [welding], ['typed']),
    hold: figure(purge.hold, 's', 'h', [input('h', 'hold', purge.hold, 's')], ['typed']),
    ventPressure: figure(
      ventPressure({ flow: weldingFlow, bore: purge.ventBore }),
      'Pa',
      'Δp = ½ ρ (4 Q/(π C_d d²))², Q in m³/s, d in m',
      [density, welding, discharge, input('d', 'vent-bore', purge.ventBore, 'mm')],
      ['orifice', 'argon-data'],
    ),
    ventBoreFor100Pa: figure(
      ventBore({ flow: weldingFlow, pressure: USUAL_PRESSURE }),
      'mm',
      'd = √(4 Q/(π C_d √(2 Δp/ρ))), Q in m³/s, d in m',
      [density, welding, discharge, input('Δp', 'usual-pressure', USUAL_PRESSURE, 'Pa')],
      ['orifice', 'root-pressure', 'argon-data'],
    ),
    leakLimit: figure(
      leakLimit({ flow: weldingFlow, supply, target: targetOxygen }),
      'mL/min',
      'q = 1000 Q (C₂ − Cᵢ)/(C_air − C₂)',
      [
        welding,
        input('C₂', 'target-oxygen', targetOxygen, 'ppm'),
        input('Cᵢ', 'gas-oxygen', supply, 'ppm'),
        input('C_air', 'air-oxygen', AIR_OXYGEN, 'ppm'),
      ],
      ['oxygen-balance'],
    ),
    reynolds: figure(
      reynolds({ bore, flow: prePurgeFlow }),
      'ratio',
      'Re = 4 ρ Q/(π d µ), µ = 22.31·10⁻⁶ Pa·s, Q in m³/s, d in m',
      [density, filling, input('d', 'bore', bore, 'mm')],
      ['argon-data'],
    ),
  };
}
