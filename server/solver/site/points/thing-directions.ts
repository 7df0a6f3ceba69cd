import type { Direction } from '../../../job/direction.ts';
import type { SiteThing } from '../../../job/site-thing.ts';
import type { Finding } from '../../../plan/finding.ts';
import { finding } from '../../finding.ts';
import type { Vector3 } from '../../geometry/vector.ts';
import { lookup, untold, type Told } from './named.ts';
import { planeThrough } from './plane-through.ts';

/** What directions of things rest on. Whoever cannot tell one has said why. */
type DirectionGround = {
  /** A direction by anything but another thing; null where it cannot be told. */
  readonly resolved: (direction: Exclude<Direction, { by: 'thing' }>, field: string) => Vector3 | null;
  /** A point by its name, asked for at a field; null where it cannot be told. */
  readonly pointNamed: (name: string, field: string) => Vector3 | null;
  readonly say: (finding: Finding) => void;
};

export type ThingDirections = {
  /** A unit direction in the structure's axes, by another thing as well; null where it cannot be told. */
  readonly of: (direction: Direction, field: string) => Vector3 | null;
  /** The axis of a cylinder or the normal of a plane, by its place in the list. */
  readonly along: (index: number) => Told<Vector3>;
};

/** The axes and normals of things, each of which may be taken from another. */
export function thingDirections(things: readonly SiteThing[], ground: DirectionGround): ThingDirections {
  const { resolved, pointNamed, say } = ground;
  const along = lookup(things, ({ shape }, index) => {
    const field = `/site/things/${String(index)}/shape`;
    switch (shape.shape) {
      case 'point':
        return null;
      case 'cylinder':
        return of(shape.axis, `${field}/axis`);
      case 'plane':
        return shape.plane.by === 'normal'
          ? of(shape.plane.normal, `${field}/plane/normal`)
          : normalThrough(shape.plane.points, `${field}/plane/points`);
    }
  });
  const of = (direction: Direction, field: string): Vector3 | null => {
    if (direction.by !== 'thing') return resolved(direction, field);
    const name = direction.thing;
    if (things.find((thing) => thing.name === name)?.shape.shape === 'point') {
      say(finding('direction-none', 'stop', `${field}/thing`));
      return null;
    }
    const told = along.named(name);
    if ('value' in told) return told.value;
    const why = untold(told, name, `${field}/thing`);
    if (why !== null) say(why);
    return null;
  };
  const normalThrough = (names: readonly string[], field: string): Vector3 | null => {
    const known = names.map((name, index) => pointNamed(name, `${field}/${String(index)}`));
    const [first, second, third] = known;
    if (!first || !second || !third) return null;
    const plane = planeThrough(first, second, third);
    if ('normal' in plane) return plane.normal;
    say(finding('points-in-line', 'stop', field, { value: plane.offLine }));
    return null;
  };
  return { of, along: along.at };
}
