import type { PointFound } from '../../../job/site-point.ts';
import type { Band, Figure } from '../../../plan/figure.ts';
import { figure, input } from '../../figure.ts';
import { dot, ORIGIN, type Vector3 } from '../../geometry/vector.ts';
import { numbered } from '../../numbered-symbols.ts';
import type { LaidSite } from '../laid-site.ts';
import type { SiteStudy } from '../site-study.ts';
import { UPRIGHT } from '../structure-axes.ts';
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
      return figure(value, 'mm', `${axis} as typed`, [input(axis, 'coordinate', value, 'mm')], ['typed'], band);
    case 'plumb': {
      const axes = levelAxes(laid.levels[at.set - 1]?.up ?? UPRIGHT);
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
      const { formula, inputs } = distanceWorking(at, axis, laid);
      return figure(value, 'mm', formula, inputs, ['site-distances', 'site-first-order'], band);
    }
  }
}

/** Every distance with the place that it is measured from, and the plane that the point lies on. */
function distanceWorking({ distances, on }: Extract<PointFound, { by: 'distances' }>, axis: string, laid: LaidSite) {
  const known = distances.map(({ from, distance }, index) => {
    const symbol = (letter: string) => numbered(letter, index + 1);
    const { x, y, z } = laid.points.get(from) ?? ORIGIN;
    return [
      input(symbol('d'), 'measured-distance', distance, 'mm'),
      input(symbol('x'), 'known-point-along-x', x, 'mm'),
      input(symbol('y'), 'known-point-along-y', y, 'mm'),
      input(symbol('z'), 'known-point-along-z', z, 'mm'),
    ];
  });
  const places = known.map((inputs) => {
    const [d, ...place] = inputs.map(({ symbol }) => symbol);
    return `|P − (${place.join(', ')})| = ${d ?? ''}`;
  });
  const body = laid.things.find((thing) => thing?.name === on)?.body;
  const plane = on !== null && body?.shape === 'plane' ? body : null;
  const lies =
    plane === null
      ? []
      : [
          input('nₓ', 'plane-normal-along-x', plane.normal.x, 'ratio'),
          input('n_y', 'plane-normal-along-y', plane.normal.y, 'ratio'),
          input('n_z', 'plane-normal-along-z', plane.normal.z, 'ratio'),
          input('e', 'plane-from-the-origin', dot(plane.normal, plane.at), 'mm'),
        ];
  return {
    formula: [`${axis} of P`, ...places, ...(plane === null ? [] : ['(nₓ, n_y, n_z) · P = e'])].join('; '),
    inputs: [...known.flat(), ...lies],
  };
}
