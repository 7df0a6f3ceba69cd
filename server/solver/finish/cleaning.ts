import type { Finish } from '../../job/finish.ts';
import type { Figure } from '../../plan/figure.ts';
import type { CleaningPlan } from '../../plan/finish.ts';
import { figure, input } from '../figure.ts';
import type { SourceKey } from '../sources.ts';

type Cleaning = Finish['cleaning'];
type Bath = {
  /** [°C]; null: the maker's sheet. */
  readonly temperature: readonly [low: number, high: number] | null;
  /** At least, and at most [min]; null: only a least time is given. */
  readonly minutes: readonly [least: number, most: number | null];
  readonly source: SourceKey;
};

/** ASTM A967 immersion baths and ASTM A380 pickles; what is in them is told in words (`finish.bath.<key>`). */
const BATHS: Readonly<Record<Exclude<Cleaning, 'none'>, Bath>> = {
  'pickle-paste': { temperature: null, minutes: [15, 60], source: 'pickle-paste' },
  'pickle-bath': { temperature: [20, 60], minutes: [5, 30], source: 'astm-a380-memory' },
  'citric-1': { temperature: [60, 71], minutes: [4, null], source: 'astm-a967-memory' },
  'citric-2': { temperature: [49, 60], minutes: [10, null], source: 'astm-a967-memory' },
  'citric-3': { temperature: [21, 49], minutes: [20, null], source: 'astm-a967-memory' },
  'nitric-1': { temperature: [49, 54], minutes: [20, null], source: 'astm-a967' },
  'nitric-2': { temperature: [21, 32], minutes: [30, null], source: 'astm-a967' },
  'nitric-3': { temperature: [49, 60], minutes: [20, null], source: 'astm-a967' },
  'nitric-4': { temperature: [49, 54], minutes: [30, null], source: 'astm-a967' },
};

export const isPickle = (cleaning: Cleaning): boolean => cleaning === 'pickle-paste' || cleaning === 'pickle-bath';

/** Temperature and time of a bath or paste; null where nothing is cleaned. */
export function cleaningPlan(cleaning: Cleaning): CleaningPlan | null {
  if (cleaning === 'none') return null;
  const { temperature, minutes, source } = BATHS[cleaning];
  const [least, most] = minutes;
  const warmth = (name: string, value: number): Figure =>
    figure(value, 'degC', 'T', [input('T', name, value, 'degC')], [source]);
  const time = (name: string, value: number): Figure =>
    figure(value, 'min', 't', [input('t', name, value, 'min')], [source]);
  return {
    key: cleaning,
    temperatureLow: temperature === null ? null : warmth('lowest-temperature', temperature[0]),
    temperatureHigh: temperature === null ? null : warmth('highest-temperature', temperature[1]),
    timeLeast: time('least-time', least),
    timeMost: most === null ? null : time('longest-time', most),
  };
}
