import type { Vector3 } from '../../geometry/vector.ts';
import type { LaidSite, LaidThing, Off, SiteSource } from '../laid-site.ts';
import { framePlace } from '../standing/frame-place.ts';
import type { DirectionContext } from './directions.ts';

/** What directions are told by once the whole site is laid. */
export const laidContext = (
  laid: Pick<LaidSite, 'levels' | 'points' | 'frame' | 'things'>,
  { wanted }: Pick<SiteSource, 'wanted'>,
  off: Off,
): DirectionContext => ({
  levels: laid.levels,
  points: laid.points,
  frame: laid.frame,
  placeOnFrame: framePlace(laid.frame, wanted),
  alongOf: (name) => alongOf(laid.things.find((thing) => thing?.name === name)),
  off,
});

const alongOf = (thing: LaidThing | null | undefined): Vector3 | undefined => {
  switch (thing?.body.shape) {
    case 'plane':
      return thing.body.normal;
    case 'cylinder':
      return thing.body.axis;
    default:
      return undefined;
  }
};
