import type { Site } from '../../server/job/site.ts';
import type { SiteThing, ThingShape } from '../../server/job/site-thing.ts';
import { words } from '../../server/language/words.ts';
import { uprightLean } from './site-directions.ts';
import { freshName } from './site-names.ts';

export const THINGS = '/site/things';

export const SHAPES = ['cylinder', 'plane', 'point'] as const satisfies readonly ThingShape['shape'][];

const origin = { x: 0, y: 0, z: 0 };

/** A post of this size, and as much room round it [mm]: places to type over, our own choice. */
const POST = { diameter: 60, clearance: 20 } as const;

/** Begins and ends here, counted from its place [mm]: to type over, our own choice. */
export const FRESH_ENDS = { from: 0, to: 1000 } as const;

/** Points that a plane goes through. */
const THREE = 3;

export function freshShape(shape: ThingShape['shape']): ThingShape {
  if (shape === 'point') return { shape, at: origin, radius: 0 };
  if (shape === 'plane') return { shape, plane: { by: 'normal', at: origin, normal: uprightLean } };
  return { shape, at: origin, axis: uprightLean, diameter: POST.diameter, ends: null };
}

type Plane = Extract<ThingShape, { shape: 'plane' }>['plane'];

/** The other way to say a plane; null for points where there are not three of them. */
export function freshPlane(by: Plane['by'], { points }: Site): Plane | null {
  if (by === 'normal') return { by, at: origin, normal: uprightLean };
  const names = points.slice(0, THREE).map(({ name }) => name);
  return names.length < THREE ? null : { by, points: names };
}

/** A turn about an upright through the thing's place [degrees]; our own choice. */
export const freshSwing = (): NonNullable<SiteThing['swing']> => ({
  about: origin,
  axis: uprightLean,
  from: 0,
  to: 30,
});

const namesOf = ({ things }: Site): readonly string[] => things.map(({ name }) => name);

/** A post with room round it, or a surface that tubes stand on and nothing keeps clear of. */
export function freshThing(kind: 'post' | 'surface', site: Site): SiteThing {
  const name = freshName(words(`thing.fresh.${kind}`), namesOf(site));
  return kind === 'post'
    ? { name, shape: freshShape('cylinder'), clearance: POST.clearance, swing: null }
    : { name, shape: freshShape('plane'), clearance: null, swing: null };
}

/** Whether nothing of a thing was typed yet but its name. */
export const isFreshThing = ({ shape, clearance, swing }: SiteThing): boolean =>
  swing === null &&
  JSON.stringify(shape) === JSON.stringify(freshShape(shape.shape)) &&
  (clearance === null || clearance === POST.clearance);
