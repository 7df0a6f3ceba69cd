import type { Site } from '../../../job/site.ts';
import { RADIANS } from '../../geometry/angle.ts';
import type { Turning } from '../../geometry/turning.ts';
import type { LaidFrame } from '../laid-site.ts';
import { travelOf } from './thing-gap.ts';

/** How the frame swings on its hinge from where it stands; null where it does not. */
export function frameTravel({ hinge }: Pick<LaidFrame, 'hinge'>, { standing }: Pick<Site, 'standing'>): Turning | null {
  const { swing } = standing;
  if (hinge === null || swing === null) return null;
  return travelOf({ about: hinge.at, axis: hinge.axis, from: swing.from * RADIANS, to: swing.to * RADIANS });
}
