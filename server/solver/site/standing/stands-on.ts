import type { Site } from '../../../job/site.ts';
import { length, subtract, type Vector3 } from '../../geometry/vector.ts';
import type { Off } from '../laid-site.ts';
import { placingDoubts } from './placing-doubts.ts';

/** What a frame stands by, but for itself and what is asked of it. */
type StandsBy = { readonly up: Vector3; readonly points: ReadonlyMap<string, Vector3> };

/** Whether nothing that a frame is placed, turned and lifted by differs from before: then it stands as it did. */
export function standsOnTheSame(
  site: Pick<Site, 'placing' | 'standing' | 'tapeAccuracy'>,
  { up, points, off }: StandsBy & { readonly off: Off },
  before: StandsBy,
): boolean {
  if (placingDoubts(site).some(({ field }) => off(field) !== 0)) return false;
  return isSame(up, before.up) && pointsOf(site).every((name) => isSame(points.get(name), before.points.get(name)));
}

/** Names of the points that a frame is placed by, or its height counts from. */
function pointsOf({ placing, standing: { height } }: Pick<Site, 'placing' | 'standing'>): string[] {
  const places = [...(placing.by === 'axes' ? [placing.origin] : []), ...(height === null ? [] : [height.over])];
  return [
    ...(placing.by === 'points' ? placing.pairs.map(({ point }) => point) : []),
    ...places.flatMap((place) => ('named' in place ? [place.named] : [])),
  ];
}

const isSame = (one: Vector3 | undefined, other: Vector3 | undefined): boolean =>
  one === other || (one !== undefined && other !== undefined && length(subtract(one, other)) === 0);
