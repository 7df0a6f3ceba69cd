import type { SiteView } from '../../../plan/site-view.ts';
import { PROJECTIONS, type Projection } from '../../views/projection.ts';

const AHEAD = { x: 1, y: 0, z: 0 };
const STARBOARD = { x: 0, y: -1, z: 0 };
const UP = { x: 0, y: 0, z: 1 };

/**
 * Where somebody looks from at the site, in the structure's axes: from starboard to port, from the back ahead, down, and
 * isometric (ISO 5456-3) from behind on the starboard side, which is between the first two.
 */
export const SITE_PROJECTIONS = {
  'from-starboard': { right: AHEAD, up: UP },
  'from-back': { right: STARBOARD, up: UP },
  'from-above': { right: STARBOARD, up: AHEAD },
  pictorial: PROJECTIONS.pictorial,
} as const satisfies Record<SiteView['key'], Projection>;
