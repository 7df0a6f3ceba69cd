import type { PointFound } from '../../../job/site-point.ts';
import type { Band, Figure } from '../../../plan/figure.ts';
import { figure, input } from '../../figure.ts';
import type { Vector3 } from '../../geometry/vector.ts';
import { numbered } from '../../numbered-symbols.ts';
import type { SiteStudy } from '../site-study.ts';
import { levelAxes } from './plumb-place.ts';

/** One coordinate of a point in the structure's axes [mm], with how it came about. */
export function coordinateFigure(
  at: PointFound,
  axis: keyof Vector3,
  value: number,
  { laid }: SiteStudy,
  band: Band | null,
): Figure {
  switch (at.by) {
    case 'typed':
      return figure(value, 'mm', axis, [input(axis, 'coordinate', value, 'mm')], ['typed'], band);
    case 'plumb': {
      const axes = levelAxes(laid.levels[at.set - 1]?.up ?? { x: 0, y: 0, z: 1 });
      const inputs = [
        input('A', 'coordinate-of-known-point', laid.points.get(at.from)?.[axis] ?? 0, 'mm'),
        input('a', 'level-ahead', at.ahead, 'mm'),
        input('h', 'share-of-level-ahead', axes?.ahead[axis] ?? 0, 'ratio'),
        input('b', 'level-to-port', at.port, 'mm'),
        input('p', 'share-of-level-to-port', axes?.port[axis] ?? 0, 'ratio'),
        input('c', 'up-the-plumb-line', at.up, 'mm'),
        input('u', 'share-of-plumb', axes?.up[axis] ?? 0, 'ratio'),
      ];
      return figure(value, 'mm', `${axis} = A + a h + b p + c u`, inputs, ['site-plumb'], band);
    }
    case 'distances': {
      const inputs = at.distances.map(({ distance }, index) =>
        input(numbered('d', index + 1), 'measured-distance', distance, 'mm'),
      );
      const formula = `${axis}: |P − Aᵢ| = dᵢ, dᵢ = ${inputs.map(({ symbol }) => symbol).join('; ')}`;
      return figure(value, 'mm', formula, inputs, ['site-distances', 'first-order'], band);
    }
  }
}
