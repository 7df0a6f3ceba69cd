import * as models from '../../server/solver/purge/purge-models.ts';

/** Volumes until the far end of one tube has the target by the long-tube model; null where it does not hold. */
export function longTubeVolumes(tube: models.SweptTube, step: models.OxygenStep): number | null {
  const row = models.tubesInRow([tube]);
  const quantile = models.stepQuantile(step);
  return row === null ? null : models.longVolumes(row, { wellMixed: models.wellMixedVolumes(step), quantile });
}
