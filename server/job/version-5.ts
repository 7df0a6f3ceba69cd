import { isPlainObject, type Document } from './check-value.ts';
import { newJob } from './default-job.ts';
import type { Site } from './site.ts';

/**
 * Version 4 knew nothing of the site but posts among the fixing points, in the axes of the frame. They are things of the
 * site now; the frame stands in its own axes until it is placed, so that they are where they were.
 */
export function withSite(document: Document): Document {
  const site: Site = { ...newJob('straight').site, placing: OWN_AXES };
  const { fixing } = document;
  if (!Array.isArray(fixing)) return { ...document, site };
  const points: readonly unknown[] = fixing;
  const places = placesOf(points);
  return {
    ...document,
    fixing: points.filter((point) => !isPost(point)),
    site: { ...site, things: points.filter(isPost).map(thingOf) },
    asTyped: movedTexts(document['asTyped'], places),
  };
}

const OWN_AXES: Site['placing'] = {
  by: 'axes',
  origin: { x: 0, y: 0, z: 0 },
  x: { x: 1, y: 0, z: 0 },
  y: { x: 0, y: 1, z: 0 },
};

const isPost = (point: unknown): point is Document => isPlainObject(point) && point['fixing'] === 'post';

/** Damage in a post stays damage in the thing, to be refused by the check of the whole. */
const thingOf = ({ fixing: _, name, at, axis, diameter, clearance, ...unknown }: Document): Document => ({
  ...unknown,
  name,
  shape: { shape: 'cylinder', at, axis: { by: 'axes', vector: axis }, diameter, ends: null },
  clearance,
  swing: null,
});

/** Where each fixing point is found now. */
function placesOf(points: readonly unknown[]): readonly string[] {
  let [kept, things] = [0, 0];
  return points.map((point) => (isPost(point) ? `/site/things/${String(things++)}` : `/fixing/${String(kept++)}`));
}

/** Where the fields of a post are in the thing that it is now. */
const FIELDS: readonly (readonly [string, string])[] = [
  ['/axis', '/shape/axis/vector'],
  ['/at', '/shape/at'],
  ['/diameter', '/shape/diameter'],
];

function movedTexts(texts: unknown, places: readonly string[]): unknown {
  if (!isPlainObject(texts)) return texts;
  return Object.fromEntries(
    Object.entries(texts).map(([field, text]) => {
      const [, index, rest = ''] = /^\/fixing\/(\d+)(\/.*)?$/.exec(field) ?? [];
      const place = index === undefined ? undefined : places[Number(index)];
      if (place === undefined) return [field, text];
      const [from, to] = FIELDS.find(([start]) => rest === start || rest.startsWith(`${start}/`)) ?? ['', ''];
      return [place + (place.startsWith('/site') ? to + rest.slice(from.length) : rest), text];
    }),
  );
}
