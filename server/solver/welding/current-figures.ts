import type { Band, Figure } from '../../plan/figure.ts';
import type { Procedure } from '../../plan/welding.ts';
import { band, figure, input } from '../figure.ts';
import type { SourceKey } from '../sources.ts';
import { FILLET_RUNS, HANDBOOK_RUNS, MAKER_RUNS, tableCurrent } from './run-tables.ts';
import type { WeldSetting } from './settings.ts';
import { CLOSED_BUTT, FUSED_UP_TO, THICK_PLATE, THICKEST_FILLET } from './start-current.ts';

/** Where a table has nothing for a wall, what is taken from its nearest row may be off by half; our own judgement. */
const BEYOND_TABLE = 0.5;

/** What each kind of band rests on. */
const SOURCES_OF: Readonly<Record<WeldSetting['start']['basis'], readonly [SourceKey, ...SourceKey[]]>> = {
  rule: ['tube-weld-current'],
  runs: ['run-table-handbook', 'run-table-maker', 'tube-weld-current'],
  fillet: ['fillet-table'],
};

/** Wall, and the plate under a pad [mm]; 0: none. */
type Parts = { readonly wall: number; readonly plate: number };

/** The band of current to begin with, and what is used: typed, or its middle. */
export function currentFigures(
  { start, current }: Pick<WeldSetting, 'start' | 'current'>,
  typed: number | null,
  parts: Parts,
): Pick<Procedure, 'currentLow' | 'currentHigh' | 'current'> {
  const beyond = (value: number): Band | null =>
    start.beyond ? band(BEYOND_TABLE * value, 'wall-beyond-the-tables') : null;
  const [currentLow, currentHigh] = bandOf(start, parts, beyond);
  if (typed !== null)
    return {
      currentLow,
      currentHigh,
      current: figure(typed, 'A', 'I', [input('I', 'current', typed, 'A')], ['typed']),
    };
  const half = (start.high - start.low) / 2;
  const ends = [input('I₁', 'current-low', start.low, 'A'), input('I₂', 'current-high', start.high, 'A')];
  const doubt = start.beyond
    ? band(Math.hypot(half, BEYOND_TABLE * current), 'setting-to-begin-with', 'wall-beyond-the-tables')
    : band(half, 'setting-to-begin-with');
  return {
    currentLow,
    currentHigh,
    current: figure(current, 'A', 'I = (I₁ + I₂)/2', ends, SOURCES_OF[start.basis], doubt),
  };
}

/** The two ends of the band, by what they rest on. */
function bandOf(
  { low, high, basis }: WeldSetting['start'],
  { wall, plate }: Parts,
  beyond: (value: number) => Band | null,
): readonly [Figure, Figure] {
  switch (basis) {
    case 'rule': {
      const thickness = input('t', 'wall', Math.min(wall, FUSED_UP_TO), 'mm');
      const end = (value: number, perWall: number) =>
        figure(
          value,
          'A',
          'I = i t',
          [input('i', 'current-for-wall', perWall, 'A/mm'), thickness],
          SOURCES_OF.rule,
          beyond(value),
        );
      return [end(low, CLOSED_BUTT.low), end(high, CLOSED_BUTT.high)];
    }
    case 'runs': {
      const thickness = input('t', 'wall', Math.min(wall, FUSED_UP_TO), 'mm');
      const [first, second] = [tableCurrent(HANDBOOK_RUNS, wall), tableCurrent(MAKER_RUNS, wall)];
      return [
        figure(
          low,
          'A',
          'I₁ = i₁ t',
          [input('i₁', 'current-for-wall', CLOSED_BUTT.low, 'A/mm'), thickness],
          SOURCES_OF.rule,
          beyond(low),
        ),
        figure(
          high,
          'A',
          'I₂ = max(i₂ t, (I_a + I_b)/2)',
          [
            input('i₂', 'current-for-wall', CLOSED_BUTT.high, 'A/mm'),
            thickness,
            input('I_a', 'middle-of-first-table', (first.low + first.high) / 2, 'A'),
            input('I_b', 'middle-of-second-table', (second.low + second.high) / 2, 'A'),
          ],
          SOURCES_OF.runs,
          beyond(high),
        ),
      ];
    }
    case 'fillet': {
      const thickness = input('t', 'wall', wall, 'mm');
      const rows = (pick: 'low' | 'high') =>
        FILLET_RUNS.map((row, index) =>
          input(`I(${String(row.wall)})`, `row-${String(index + 1)}-of-table`, row[pick], 'A'),
        );
      const onPlate = [
        input('T', 'plate-thickness', plate, 'mm'),
        input('k', 'walls-of-plate', THICK_PLATE, 'ratio'),
        input('t₀', 'thickest-row-of-table', THICKEST_FILLET, 'mm'),
      ];
      const formula = plate > 0 ? 'I(max(t, min(t₀, (t + min(T, k t))/2)))' : 'I(t)';
      return [
        figure(low, 'A', 'I(t)', [thickness, ...rows('low')], SOURCES_OF.fillet, beyond(low)),
        figure(
          high,
          'A',
          formula,
          [thickness, ...(plate > 0 ? onPlate : []), ...rows('high')],
          plate > 0 ? ['fillet-table', 'plate-heat'] : SOURCES_OF.fillet,
          beyond(high),
        ),
      ];
    }
  }
}
