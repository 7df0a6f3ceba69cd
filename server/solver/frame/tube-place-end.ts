import type { TubePlace } from '../../job/tube-place.ts';
import type { MemberGeometry } from './frame-geometry.ts';

/** The end of a member that a place on it is; undefined for a place between its ends, or on a member without ends. */
export function tubePlaceEnd({ spot }: TubePlace, member: MemberGeometry): 'start' | 'finish' | undefined {
  if (member.closed) return undefined;
  return spot === 'start' || spot === 'finish' ? spot : undefined;
}
