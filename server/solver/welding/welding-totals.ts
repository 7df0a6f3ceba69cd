import type { Figure, Unit } from '../../plan/figure.ts';
import type { Weld, WeldingPlan } from '../../plan/welding.ts';
import type { WeldForm } from '../../job/welding.ts';
import { band, figure, input } from '../figure.ts';
import type { SourceKey } from '../sources.ts';
import { FLOOR_DOUBT, floorTime, OPERATING_FACTOR } from './operating-factor.ts';
import { FORMS } from './settings.ts';

type Totals = Pick<WeldingPlan, 'weldLength' | 'arcTime' | 'floorTime' | 'count' | 'fillerMass' | 'fillerLength'>;

/** Signs of the forms behind a symbol in a formula. */
export const FORM_SIGNS: Readonly<Record<WeldForm, string>> = { butt: 'ᵇ', saddle: 'ˢ', pad: 'ᵖ' };

/** All welds of a job together. */
export function weldingTotals(welds: readonly Weld[]): Totals {
  const forms = FORMS.filter((form) => welds.some((weld) => weld.form === form));
  const total = (
    of: (weld: Weld) => Figure,
    {
      unit,
      symbol,
      name,
      sources,
    }: { unit: Unit; symbol: string; name: string; sources: readonly [SourceKey, ...SourceKey[]] },
  ): Figure => {
    const parts = forms.map((form) => ({
      form,
      sum: welds.reduce((sum, weld) => (weld.form === form ? sum + of(weld).value : sum), 0),
    }));
    // what they come from is the same for all of them, so they are added up whole
    const plusMinus = welds.reduce((sum, weld) => sum + (of(weld).band?.plusMinus ?? 0), 0);
    const from = [...new Set(welds.flatMap((weld) => of(weld).band?.from ?? []))];
    return figure(
      parts.reduce((sum, part) => sum + part.sum, 0),
      unit,
      parts.length === 0
        ? `${symbol} = 0`
        : `${symbol} = ${parts.map(({ form }) => symbol + FORM_SIGNS[form]).join(' + ')}`,
      parts.map(({ form, sum }) => input(symbol + FORM_SIGNS[form], `${name}-of-${form}-welds`, sum, unit)),
      sources,
      plusMinus > 0 ? band(plusMinus, ...from) : null,
    );
  };
  const arcTime = total(({ arcTime: time }) => time, {
    unit: 's',
    symbol: 'T',
    name: 'arc-time',
    sources: ['geometry', 'hand-travel'],
  });
  const count = welds.length;
  return {
    weldLength: total(({ length }) => length, { unit: 'mm', symbol: 'l', name: 'length', sources: ['geometry'] }),
    arcTime,
    floorTime: floorTimeOf(arcTime),
    count: figure(count, 'count', 'n', [input('n', 'welds', count, 'count')], ['geometry']),
    fillerMass: total(({ fillerMass }) => fillerMass, {
      unit: 'g',
      symbol: 'm',
      name: 'filler-mass',
      sources: ['weld-metal', 'rod-allowance'],
    }),
    fillerLength: total(({ fillerLength }) => fillerLength, {
      unit: 'mm',
      symbol: 'L',
      name: 'rod-length',
      sources: ['weld-metal', 'rod-allowance'],
    }),
  };
}

/** Time from the first tack's arc to the last: arc time over the share of the time that an arc burns. */
function floorTimeOf(arcTime: Figure): Figure {
  const value = floorTime(arcTime.value);
  const ofArc = floorTime(arcTime.band?.plusMinus ?? 0);
  return figure(
    value,
    's',
    'T_f = T/f',
    [input('T', 'arc-time', arcTime.value, 's'), input('f', 'operating-factor', OPERATING_FACTOR.middle, 'ratio')],
    ['operating-factor'],
    value > 0 ? band(Math.hypot(FLOOR_DOUBT * value, ofArc), 'operating-factor', ...(arcTime.band?.from ?? [])) : null,
  );
}
