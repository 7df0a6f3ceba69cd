import type { Band, Figure } from '../../plan/figure.ts';
import type { Procedure } from '../../plan/welding.ts';
import { band, figure, input } from '../figure.ts';
import type { SourceKey } from '../sources.ts';
import { FILLET_RUNS, HANDBOOK_RUNS, MAKER_RUNS, tableCurrent } from './run-tables.ts';
import type { WeldSetting } from './settings.ts';
import { CLOSED_BUTT, FUSED_UP_TO, IN_USE } from './start-current.ts';

/** Where a table has nothing for a wall, what is taken from its nearest row may be off by half; our own judgement. */
const BEYOND_TABLE = 0.5;

/** What each kind of band rests on. */
const SOURCES_OF: Readonly<Record<WeldSetting['start']['basis'], readonly [SourceKey, ...SourceKey[]]>> = {
  rule: ['tube-weld-current'],
  runs: ['run-table-handbook', 'run-table-maker', 'tube-weld-current'],
  fillet: ['fillet-table'],
};

/** The band of current to begin with, and what is used: typed, or its middle. */
export function currentFigures(
  { start, current }: Pick<WeldSetting, 'start' | 'current'>,
  typed: number | null,
  wall: number,
): Pick<Procedure, 'currentLow' | 'currentHigh' | 'current'> {
  const beyond = (value: number): Band | null =>
    start.beyond ? band(BEYOND_TABLE * value, 'wall-beyond-the-tables') : null;
  const [currentLow, currentHigh] = bandOf(start, wall, beyond);
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
  wall: number,
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
      const ends = [
        input('I_a', 'low-end-of-first-table', tableCurrent(HANDBOOK_RUNS, wall).low, 'A'),
        input('I_b', 'low-end-of-second-table', tableCurrent(MAKER_RUNS, wall).low, 'A'),
      ];
      return [
        figure(
          low,
          'A',
          'I₁ = (i₁/i₂) (I_a + I_b)/2',
          [
            input('i₁', 'current-for-wall', IN_USE.low, 'A/mm'),
            input('i₂', 'current-for-wall', IN_USE.high, 'A/mm'),
            ...ends,
          ],
          SOURCES_OF.runs,
          beyond(low),
        ),
        figure(high, 'A', 'I₂ = (I_a + I_b)/2', ends, SOURCES_OF.runs, beyond(high)),
      ];
    }
    case 'fillet': {
      const of = (value: number, pick: 'low' | 'high') =>
        figure(
          value,
          'A',
          'I(t)',
          [
            input('t', 'wall', wall, 'mm'),
            ...FILLET_RUNS.map((row, index) =>
              input(`I(${String(row.wall)})`, `row-${String(index + 1)}-of-table`, row[pick], 'A'),
            ),
          ],
          SOURCES_OF.fillet,
          beyond(value),
        );
      return [of(low, 'low'), of(high, 'high')];
    }
  }
}
