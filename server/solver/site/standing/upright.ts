import type { Slope } from '../../../job/standing.ts';
import type { Vector3 } from '../../geometry/vector.ts';
import { UPRIGHT } from '../structure-axes.ts';

/** What a slope or a height counts along: up by gravity, or the structure's own upright. */
export const uprightOf = (to: Slope['to'], up: Vector3): Vector3 => (to === 'level' ? up : UPRIGHT);
