import type { TubeTolerance } from '../../server/job/tube.ts';
import type { ToleranceStandard } from '../api/client.ts';

export const TOLERANCE_STANDARDS = [
  'iso-1127-d2-t3',
  'iso-1127-d3-t3',
  'iso-1127-d4-t3',
  'iso-1127-d4-t4',
  'astm-a554',
  'astm-a269',
  'astm-a249',
  'astm-a312',
] as const satisfies readonly ToleranceStandard[];

export type ToleranceChoice = ToleranceStandard | 'own';

/** Own limits start as the least ± of ISO 1127, D3 and T3 [mm] (secondary copies), to be typed over. */
const OWN: TubeTolerance = { by: 'own', outsideDiameter: 0.3, wall: 0.2 };

export const toleranceFrom = (choice: ToleranceChoice): TubeTolerance =>
  choice === 'own' ? OWN : { by: 'standard', standard: choice };
