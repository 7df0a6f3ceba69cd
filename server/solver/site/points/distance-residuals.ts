import { CholeskyDecomposition, Matrix } from 'ml-matrix';
import type { PointFound } from '../../../job/site-point.ts';
import type { SiteResidual } from '../../../plan/site.ts';
import { figure, input } from '../../figure.ts';
import { dot, scale, subtract, unit, type Vector3 } from '../../geometry/vector.ts';
import { MOST_DEVIATIONS } from '../deviations.ts';
import { residualAt, type KnownDistance } from './known-distance.ts';

/** It explains more than any other would, by so much of the sum of squares: two deviations, squared; our own choice. */
const CLEARLY = 4;
/** A distance that alone decides something has nothing to be compared with; our own choice. */
const LEAST_SHARE = 1e-4;
/** Residuals below this are rounding [mm]. */
const ROUNDING = 1e-6;
/** Keeps the normal equations from being singular where a place is free to first order; far below what a distance weighs: our own choice. */
const RIDGE = 1e-9;

export type DistanceResidual = SiteResidual & {
  /** How far it is off what the others alone say, to first order [mm]. */
  readonly offOthers: number;
};

/**
 * The distances of a point beside what they are at the place that was found; none where there are as many as it takes
 * and they meet. Residuals are what a fit leaves of an error, and it spreads over all; which distance disagrees is told by
 * r / √(1 − h), as it would be spread if all were good (Draper & Smith, Applied Regression Analysis, chapter 8; from
 * memory): the largest, and those that would explain it as well.
 *
 * @param field JSON pointer of the way it was found
 * @param known where the known points are, all that it is measured from among them, and the normal of the plane that it
 * lies on
 */
export function distanceResiduals(
  { distances, on }: Extract<PointFound, { by: 'distances' }>,
  field: string,
  place: Vector3,
  known: { readonly points: ReadonlyMap<string, Vector3>; readonly normal: Vector3 | null },
  tapeAccuracy: number,
): DistanceResidual[] {
  const measured = distances.flatMap(({ from: name, distance, accuracy }): KnownDistance[] => {
    const from = known.points.get(name);
    return from === undefined ? [] : [{ from, distance, accuracy: accuracy ?? tapeAccuracy }];
  });
  const spare = measured.length > (on === null ? 3 : 2);
  const residuals = measured.map((one) => residualAt(place, one));
  if (!spare && residuals.every((residual) => Math.abs(residual) < ROUNDING)) return [];
  const shares = leverages(measured, place, known.normal).map((leverage) => 1 - leverage);
  const spread = measured.map(({ accuracy }, index) => {
    const share = shares[index] ?? 0;
    return !spare || share < LEAST_SHARE ? 0 : Math.abs(residuals[index] ?? 0) / accuracy / Math.sqrt(share);
  });
  const most = Math.max(...spread);
  return measured.map(({ distance, accuracy }, index) => {
    const off = spread[index] ?? 0;
    const residual = residuals[index] ?? 0;
    return {
      field: `${field}/distances/${String(index)}/distance`,
      ...residualFigures(distance, accuracy, residual),
      disagrees: off > MOST_DEVIATIONS && most ** 2 - off ** 2 < CLEARLY,
      offOthers: Math.abs(residual) / Math.max(shares[index] ?? 1, LEAST_SHARE),
    };
  });
}

function residualFigures(distance: number, accuracy: number, residual: number) {
  const measured = input('d', 'measured-distance', distance, 'mm');
  return {
    measured: figure(distance, 'mm', 'd', [measured], ['typed'], { plusMinus: accuracy, from: ['site-point'] }),
    residual: figure(
      residual,
      'mm',
      'r = d − |P − A|',
      [measured, input('|P − A|', 'distance-found', distance - residual, 'mm')],
      ['site-distances'],
    ),
  };
}

/** How much of each distance the place follows, 0 to 1: h = jᵀ (Σ j jᵀ)⁻¹ j, j its direction over its accuracy. */
function leverages(measured: readonly KnownDistance[], place: Vector3, normal: Vector3 | null): number[] {
  const rows = measured.map(({ from, accuracy }) => {
    const way = unit(subtract(place, from)) ?? { x: 0, y: 0, z: 0 };
    const { x, y, z } = normal === null ? way : subtract(way, scale(normal, dot(way, normal)));
    return [x / accuracy, y / accuracy, z / accuracy];
  });
  const slopes = new Matrix(rows);
  const normalMatrix = slopes.transpose().mmul(slopes);
  normalMatrix.add(Matrix.eye(3, 3).mul(RIDGE * normalMatrix.trace()));
  const solved = new CholeskyDecomposition(normalMatrix).solve(slopes.transpose());
  return rows.map((row, index) => row.reduce((sum, slope, axis) => sum + slope * solved.get(axis, index), 0));
}
