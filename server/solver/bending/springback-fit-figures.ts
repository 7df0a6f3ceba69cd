import type { SpringbackPlan } from '../../plan/bending.ts';
import type { Figure } from '../../plan/figure.ts';
import { band, figure, input } from '../figure.ts';
import { DEGREES } from '../geometry/angle.ts';
import type { SpringbackLaw } from './springback-law.ts';

const QUARTER = Math.PI / 2;

/** The line through the test bends as the plan shows it: a, b, what is left over, and how sure the line is at 90°. */
export function fitFigures(
  fit: NonNullable<SpringbackLaw['fit']>,
  law: SpringbackLaw,
): NonNullable<SpringbackPlan['fit']> {
  const { line, used } = fit;
  const { bends } = used;
  const count = input('n', 'test-bends', bends.length, 'count');
  const command = law.commandFor(QUARTER);
  const confidence = law.lawBandFor(QUARTER) * DEGREES;
  return {
    fixed: figure(line.at0 * DEGREES, 'deg', 's = a + b c, Σ (s − a − b c)² least', [count], ['springback-fit']),
    share: figure(line.slope, 'ratio', 's = a + b c, Σ (s − a − b c)² least', [count], ['springback-fit']),
    residual:
      line.residual === undefined
        ? null
        : figure(line.residual * DEGREES, 'deg', 'σ = √(Σ (s − a − b c)² / (n − 2))', [count], ['line-fit']),
    confidence: figure(
      confidence,
      'deg',
      line.residual === undefined
        ? 'u = q √(1 / n + (c − c̄)² / Σ (c − c̄)²)'
        : 'u = t σ √(1 / n + (c − c̄)² / Σ (c − c̄)²)',
      [count, input('c', 'command', command * DEGREES, 'deg')],
      ['line-fit'],
    ),
    heat: used.heat,
    bends: bends.map(({ commandedAngle, measuredAngle }) => ({
      commanded: commandedAngle,
      springback: commandedAngle - measuredAngle,
    })),
  };
}

/** Growth of a bend of 90°: from scribed lines, or as typed. */
export function stretchFigure(law: SpringbackLaw): Figure {
  const command = law.commandFor(QUARTER);
  const value = law.stretchFor(command);
  return law.stretch !== null
    ? figure(
        value,
        'mm',
        'e = a + b c',
        [input('c', 'command', command * DEGREES, 'deg')],
        ['test-bends', 'line-fit'],
        band(law.stretch.plusMinus(command), 'test-bends'),
      )
    : figure(value, 'mm', 'e', [input('e', 'stretch', value, 'mm')], ['typed']);
}
