import type { Standing } from '../../../job/standing.ts';
import type { Finding } from '../../../plan/finding.ts';
import { dot, subtract, type Vector3 } from '../../geometry/vector.ts';
import type { Off, SiteSource } from '../laid-site.ts';
import { sitePlace } from '../points/site-places.ts';
import { madePlace } from './frame-place.ts';
import { placeMissing } from './place-missing.ts';
import { uprightOf } from './upright.ts';

/** The height that is asked for: the place in the frame's axes, over what and along what in the structure's [mm]. */
export type AskedHeight = {
  readonly place: Vector3;
  readonly over: Vector3;
  readonly along: Vector3;
  readonly value: number;
};

type Known = { readonly up: Vector3; readonly points: ReadonlyMap<string, Vector3>; readonly off: Off };

/** What is asked for as a height; null where nothing is, and findings alone where its place cannot be told. */
export function askedHeight(
  height: Standing['height'],
  source: Pick<SiteSource, 'wanted' | 'made'>,
  { up, points, off }: Known,
): AskedHeight | null | { readonly findings: readonly Finding[] } {
  if (height === null) return null;
  const field = '/site/standing/height';
  const place = madePlace(height.at, source.wanted, source.made);
  const over = sitePlace(height.over, `${field}/over`, points, off);
  if (place === undefined || 'finding' in over) {
    return {
      findings: [
        ...(place === undefined ? [placeMissing(height.at, `${field}/at`)] : []),
        ...('finding' in over ? [over.finding] : []),
      ],
    };
  }
  return { place: place.point, over: over.point, along: uprightOf(height.to, up), value: height.value };
}

/** How high a point of the structure's axes stands as a height counts [mm]. */
export const heightOf = ({ over, along }: Pick<AskedHeight, 'over' | 'along'>, point: Vector3): number =>
  dot(subtract(point, over), along);
