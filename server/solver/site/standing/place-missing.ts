import type { TubePlace } from '../../../job/tube-place.ts';
import type { Finding } from '../../../plan/finding.ts';
import { finding } from '../../finding.ts';

/** The frame has no such place. */
export const placeMissing = ({ member, spot, number }: TubePlace, field: string): Finding =>
  finding('site-place-missing', 'stop', field, { member, place: spot, number });
