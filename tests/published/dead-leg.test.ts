/** A leg that clears by diffusion alone: the first term of the series, D 1.89e-5 m²/s, computed beforehand. */
import { describe, expect, it } from 'vitest';
import { clearingTime } from '../../server/solver/purge/dead-legs.ts';
import { fromAir } from '../../server/solver/purge/purge-models.ts';

const AT_50 = fromAir({ target: 50, supply: 0 });

describe('dead leg', () => {
  it.each([
    [0.1, '31', 60],
    [0.2, '2.0', 3600],
    [0.3, '4.6', 3600],
  ])('of %d m to 50 ppm', (length, printed, unit) => {
    const time = clearingTime(1000 * length, AT_50) / unit;
    expect(time.toFixed(printed.includes('.') ? 1 : 0)).toBe(printed);
  });

  it('is as late as the equation solved cell by cell from a clean mouth to a closed end', () => {
    // ∂c/∂t = D ∂²c/∂x², explicit steps of a fifth of what is stable; half cells at both ends
    const solved = (cells: number): number => {
      const [length, diffusivity] = [0.1, 1.89e-5];
      const cell = length / cells;
      const step = cell ** 2 / diffusivity / 10;
      let left = new Float64Array(cells).fill(1);
      let time = 0;
      while (left[cells - 1]! > 50 / 209_500) {
        const next = left.slice();
        for (let at = 0; at < cells; at += 1) {
          const before = at === 0 ? -left[0]! : left[at - 1]!;
          const after = at === cells - 1 ? left[at]! : left[at + 1]!;
          next[at] = left[at]! + 0.1 * (before - 2 * left[at]! + after);
        }
        left = next;
        time += step;
      }
      return time;
    };
    expect(Math.abs(clearingTime(100, AT_50) / solved(60) - 1)).toBeLessThan(1e-3);
  });
});
