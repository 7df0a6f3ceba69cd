import type { WeldSettings } from '../../job/welding.ts';
import type { Figure, Unit, WorkingInput } from '../../plan/figure.ts';
import type { Procedure } from '../../plan/welding.ts';
import { band, figure, input } from '../figure.ts';
import type { SourceKey } from '../sources.ts';
import { currentFigures } from './current-figures.ts';
import { ELECTRODE_CODE } from './electrodes.ts';
import { arcEnergy, TIG_FACTOR } from './heat.ts';
import { ARC_VOLTAGE, POST_FLOW, TORCH_FLOW, TRAVEL, type SettingWork, type WeldSetting } from './settings.ts';
import { sectionFigures } from './section-figures.ts';

/** A start: how it is found, from what, and how far it may be off. */
type Start = {
  readonly formula: string;
  readonly inputs: readonly WorkingInput[];
  readonly sources: readonly [SourceKey, ...SourceKey[]];
  readonly doubt?: number;
};

/** A setting: typed, or one to begin with. */
function settingFigure(
  typed: number | null,
  { value, unit, symbol, name }: { value: number; unit: Unit; symbol: string; name: string },
  start: Start,
): Figure {
  if (typed !== null) return figure(value, unit, symbol, [input(symbol, name, value, unit)], ['typed']);
  const { formula, inputs, sources, doubt } = start;
  return figure(
    value,
    unit,
    formula,
    inputs,
    sources,
    doubt === undefined ? null : band(doubt, 'setting-to-begin-with'),
  );
}

/** Settings of one form of weld, with what each rests on. */
export function procedureOf(setting: WeldSetting, work: SettingWork): Procedure {
  const typed = work.welding[setting.form];
  const thickness = input('t', 'wall', work.tube.wall, 'mm');
  return {
    form: setting.form,
    proved: typed.provedOn,
    process: setting.process,
    ...currentFigures(setting, typed.current, {
      wall: work.tube.wall,
      plate: setting.form === 'pad' ? (work.plate ?? 0) : 0,
    }),
    ...arcFigures(setting, typed, thickness),
    ...torchFigures(setting, typed, thickness),
    electrodeCode: ELECTRODE_CODE,
    filler: setting.filler,
    fillerDiameter:
      setting.fillerDiameter === null
        ? null
        : settingFigure(
            typed.fillerDiameter,
            { value: setting.fillerDiameter, unit: 'mm', symbol: 'd', name: 'filler-diameter' },
            { formula: 'd(t)', inputs: [thickness], sources: ['filler-size'] },
          ),
    runs: settingFigure(
      typed.runs,
      { value: setting.runs, unit: 'count', symbol: 'n', name: 'runs' },
      {
        formula: 'n(t, A)',
        inputs: [thickness, input('A', 'weld-section', setting.area, 'mm2')],
        sources: ['run-count'],
      },
    ),
    interpass: settingFigure(
      typed.interpass,
      { value: setting.interpass, unit: 'degC', symbol: 'θ', name: 'interpass-temperature' },
      {
        formula: 'θ',
        inputs: [input('θ', 'interpass-temperature', setting.interpass, 'degC')],
        sources: ['interpass'],
      },
    ),
    ...sectionFigures(setting, work),
  };
}

/** Voltage and travel, and the heat that they make with the current. */
function arcFigures(
  setting: WeldSetting,
  typed: WeldSettings,
  thickness: WorkingInput,
): Pick<Procedure, 'voltage' | 'travelSpeed' | 'heatInput' | 'arcEnergy'> {
  const { current, voltage, travelSpeed, start } = setting;
  const arc = [
    input('U', 'arc-voltage', voltage, 'V'),
    input('I', 'current', current, 'A'),
    input('v', 'travel-speed', travelSpeed, 'mm/s'),
  ];
  const energy = arcEnergy(setting) / 1000;
  // first order: each by its own share, the typed ones not at all
  const share = Math.hypot(
    typed.current === null ? (start.high - start.low) / 2 / current : 0,
    typed.voltage === null ? (ARC_VOLTAGE.high - ARC_VOLTAGE.low) / 2 / voltage : 0,
    typed.travelSpeed === null ? TRAVEL.doubt / travelSpeed : 0,
  );
  const doubt = (value: number) => (share > 0 ? band(share * value, 'setting-to-begin-with') : null);
  const heat = TIG_FACTOR * energy;
  return {
    voltage: settingFigure(
      typed.voltage,
      { value: voltage, unit: 'V', symbol: 'U', name: 'arc-voltage' },
      {
        formula: 'U = (U₁ + U₂)/2',
        inputs: [input('U₁', 'arc-voltage', ARC_VOLTAGE.low, 'V'), input('U₂', 'arc-voltage', ARC_VOLTAGE.high, 'V')],
        sources: ['arc-voltage'],
        doubt: (ARC_VOLTAGE.high - ARC_VOLTAGE.low) / 2,
      },
    ),
    travelSpeed: settingFigure(
      typed.travelSpeed,
      { value: travelSpeed, unit: 'mm/s', symbol: 'v', name: 'travel-speed' },
      { formula: 'v(t)', inputs: [thickness], sources: ['hand-travel'], doubt: TRAVEL.doubt },
    ),
    heatInput: figure(
      heat,
      'kJ/mm',
      'Q = k U I/(1000 v)',
      [input('k', 'tig-factor', TIG_FACTOR, 'ratio'), ...arc],
      ['en-1011-1'],
      doubt(heat),
    ),
    arcEnergy: figure(energy, 'kJ/mm', 'E = U I/(1000 v)', arc, ['iso-18491'], doubt(energy)),
  };
}

/** Electrode, cup and the gas of the torch. */
function torchFigures(
  setting: WeldSetting,
  typed: WeldSettings,
  thickness: WorkingInput,
): Pick<Procedure, 'electrode' | 'cup' | 'torchFlow' | 'preFlow' | 'postFlow'> {
  const current = input('I', 'current', setting.current, 'A');
  return {
    electrode: settingFigure(
      typed.electrode,
      { value: setting.electrode, unit: 'mm', symbol: 'd', name: 'electrode-diameter' },
      { formula: 'd(I)', inputs: [current], sources: ['electrode-ranges'] },
    ),
    cup: settingFigure(
      typed.cup,
      { value: setting.cup, unit: 'mm', symbol: 'c', name: 'cup-bore' },
      { formula: 'c(t)', inputs: [thickness], sources: ['torch-gas'], doubt: 2 }, // cups of 8 to 12 mm all serve
    ),
    torchFlow: settingFigure(
      typed.torchFlow,
      { value: setting.torchFlow, unit: 'L/min', symbol: 'Q', name: 'torch-flow' },
      {
        formula: 'Q = min(q₂, max(q₁, q c))',
        inputs: [
          input('q', 'flow-per-cup-bore', TORCH_FLOW.perBore, 'ratio'),
          input('c', 'cup-bore', setting.cup, 'mm'),
          input('q₁', 'least-torch-flow', TORCH_FLOW.least, 'L/min'),
          input('q₂', 'most-torch-flow', TORCH_FLOW.most, 'L/min'),
        ],
        sources: ['torch-gas'],
        doubt: (TORCH_FLOW.most - TORCH_FLOW.least) / 2,
      },
    ),
    preFlow: settingFigure(
      typed.preFlow,
      { value: setting.preFlow, unit: 's', symbol: 't₁', name: 'pre-flow' },
      { formula: 't₁', inputs: [input('t₁', 'pre-flow', setting.preFlow, 's')], sources: ['torch-gas'] },
    ),
    postFlow: settingFigure(
      typed.postFlow,
      { value: setting.postFlow, unit: 's', symbol: 't₂', name: 'post-flow' },
      {
        formula: 't₂ = max(t₀, p I)',
        inputs: [
          input('t₀', 'least-post-flow', POST_FLOW.least, 's'),
          input('p', 'post-flow-per-ampere', POST_FLOW.perAmpere, 'ratio'),
          current,
        ],
        sources: ['torch-gas'],
      },
    ),
  };
}
