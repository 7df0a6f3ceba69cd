import type { Direction, SitePlace } from '../../../job/direction.ts';
import type { SiteThing } from '../../../job/site-thing.ts';
import type { Finding } from '../../../plan/finding.ts';
import { finding } from '../../finding.ts';
import type { Vector3 } from '../../geometry/vector.ts';
import { directionOf } from '../level/directions.ts';
import type { Off, SolvedLevel } from '../laid-site.ts';
import type { NamedPlane } from './distance-odds.ts';
import { untold, type Told } from './named.ts';
import { typedPlace } from './site-places.ts';
import { thingDirections } from './thing-directions.ts';

type Before = {
  readonly levels: readonly (SolvedLevel | null)[];
  readonly off: Off;
  /** A point by its name, worked out when it is asked for. */
  readonly point: (name: string) => Told<Vector3>;
  readonly say: (finding: Finding) => void;
};

/**
 * The planes that points lie on, before the frame stands and while points are still being worked out. Only what keeps a
 * point from being told is said here: that a plane leads back to it, or follows the frame, which is laid from points.
 * What is wrong with the plane in itself is said when all things are laid.
 */
export function thingsBefore(
  things: readonly SiteThing[],
  { levels, off, point, say }: Before,
): { planeNamed: (name: string, field: string) => NamedPlane | null } {
  const points = new Map<string, Vector3>();
  const pointNamed = (name: string, field: string): Vector3 | null => {
    const told = point(name);
    if ('value' in told) {
      points.set(name, told.value);
      return told.value;
    }
    const why = untold(told, name, field);
    if (why?.code === 'site-point-circle') say(why);
    return null;
  };
  const resolved = (direction: Direction, field: string): Vector3 | null => {
    if (direction.by === 'tube') {
      say(finding('point-follows-frame', 'stop', field));
      return null;
    }
    if (direction.by === 'points') {
      const ends = [pointNamed(direction.from, `${field}/from`), pointNamed(direction.to, `${field}/to`)];
      if (ends.includes(null)) return null;
    }
    const none = { frame: null, placeOnFrame: () => undefined, alongOf: () => undefined };
    const told = directionOf(direction, field, { levels, points, off, ...none });
    return 'direction' in told ? told.direction : null;
  };
  const directions = thingDirections(things, { resolved, pointNamed, say: () => undefined });
  const place = (typed: SitePlace, field: string): Vector3 | null =>
    'named' in typed ? pointNamed(typed.named, `${field}/named`) : typedPlace(typed, field, off);

  const planeNamed = (name: string, field: string): NamedPlane | null => {
    const index = things.findIndex((thing) => thing.name === name);
    const shape = things[index]?.shape;
    if (shape?.shape !== 'plane') {
      say(finding('site-name-missing', 'stop', field, { name }));
      return null;
    }
    const told = directions.along(index);
    if ('untold' in told) return null;
    const one = `/site/things/${String(index)}/shape/plane`;
    const at =
      shape.plane.by === 'normal'
        ? place(shape.plane.at, `${one}/at`)
        : pointNamed(shape.plane.points[0] ?? '', `${one}/points/0`);
    return at && { name, at, normal: told.value };
  };
  return { planeNamed };
}
