import type { Direction, SitePlace } from '../../../job/direction.ts';
import type { Site } from '../../../job/site.ts';
import { directionDoubts } from '../level/directions.ts';
import type { SiteDoubt } from '../laid-site.ts';
import { placeFields } from './site-places.ts';

/** The measured values of things: coordinates to the tape on site [mm], leans read by a level to the level [degrees]. */
export function thingDoubts({ things, tapeAccuracy, level }: Site): SiteDoubt[] {
  const place = (typed: SitePlace, field: string) =>
    placeFields(typed, field).map((one) => ({ field: one, plusMinus: tapeAccuracy }));
  const direction = (typed: Direction, field: string) => directionDoubts(typed, field, level.angleAccuracy);
  return things.flatMap(({ name, shape, swing }, index) => {
    const field = `/site/things/${String(index)}`;
    const plane = shape.shape === 'plane' && shape.plane.by === 'normal' ? shape.plane : null;
    return [
      ...(shape.shape === 'plane' ? [] : place(shape.at, `${field}/shape/at`)),
      ...(shape.shape === 'cylinder' ? direction(shape.axis, `${field}/shape/axis`) : []),
      ...(plane === null ? [] : place(plane.at, `${field}/shape/plane/at`)),
      ...(plane === null ? [] : direction(plane.normal, `${field}/shape/plane/normal`)),
      ...(swing === null ? [] : place(swing.about, `${field}/swing/about`)),
      ...(swing === null ? [] : direction(swing.axis, `${field}/swing/axis`)),
    ].map((doubt) => ({ ...doubt, from: 'thing' as const, name }));
  });
}
