import type { Units } from '../job/job.ts';
import { formatQuantity } from '../language/quantity-format.ts';
import type { ViewDimension } from '../plan/view.ts';

/** What a dimension on a drawing says: its value with its unit, R before a radius. */
export const dimensionWords =
  (units: Units) =>
  ({ value, unit, radius }: ViewDimension): string =>
    `${radius ? 'R ' : ''}${formatQuantity(value, unit, units)}`;
