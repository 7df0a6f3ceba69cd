import { EigenvalueDecomposition, Matrix } from 'ml-matrix';
import type { Band } from '../../plan/figure.ts';
import { dot, length, ORIGIN, subtract, type Vector3 } from '../geometry/vector.ts';
import { EXACT } from './laid-site.ts';
import { bandOfChanges, readEach, type Read, type SiteStudy } from './site-study.ts';

/**
 * The ± of the size of a vector: of an angle or a distance that has no sign, as how far a line is off plumb, or how far a
 * place is from its point [its units]. Where the vector is longer than all its doubts together, it is the change of its
 * length. A shorter one may as well lie the other way: its length would then change by too little, and its ± is that of
 * the vector along the way in which it is doubted most. Derived; held against random readings.
 */
export function sizeBand(study: SiteStudy, read: Read<Vector3>): Band | null {
  const exact = read(study.laid, EXACT);
  if (exact === undefined) return null;
  const each = readEach(study, read).map(({ doubt, value }) => ({
    doubt,
    value,
    change: value === undefined ? ORIGIN : subtract(value, exact),
  }));
  const size = length(exact);
  const isLong = size >= Math.hypot(...each.map(({ change }) => length(change)));
  const most = isLong ? ORIGIN : mostDoubted(each.map(({ change }) => change));
  return bandOfChanges(
    each.map(({ doubt, value, change }) => ({
      doubt,
      change: value === undefined ? undefined : isLong ? length(value) - size : dot(change, most),
    })),
  );
}

/** The way in which changes come to most: the eigenvector of the largest eigenvalue of Σ δ δᵀ, a unit vector. */
function mostDoubted(changes: readonly Vector3[]): Vector3 {
  let [xx, xy, xz, yy, yz, zz] = [0, 0, 0, 0, 0, 0];
  for (const { x, y, z } of changes) {
    [xx, xy, xz] = [xx + x * x, xy + x * y, xz + x * z];
    [yy, yz, zz] = [yy + y * y, yz + y * z, zz + z * z];
  }
  const { realEigenvalues, eigenvectorMatrix } = new EigenvalueDecomposition(
    new Matrix([
      [xx, xy, xz],
      [xy, yy, yz],
      [xz, yz, zz],
    ]),
    { assumeSymmetric: true },
  );
  const [x = 0, y = 0, z = 0] = eigenvectorMatrix.getColumn(realEigenvalues.indexOf(Math.max(...realEigenvalues)));
  return { x, y, z };
}
