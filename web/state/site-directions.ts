import type { Direction } from '../../server/job/direction.ts';
import type { Site } from '../../server/job/site.ts';
import { words } from '../../server/language/words.ts';
import { setInUse } from './level-readings.ts';
import { namesIn, type NameOption } from './site-names.ts';
import type { Tube } from './tubes.ts';

export type DirectionBy = Direction['by'];

const WAYS = ['lean', 'plumb', 'points', 'thing', 'tube', 'axes'] as const satisfies readonly DirectionBy[];

/** What a direction can be said by: tubes of the frame, and what stands on the site. */
export type DirectionKnown = {
  readonly site: Site;
  readonly tubes: readonly Tube[];
  /** The thing whose own direction it is: nothing stands as itself. */
  readonly own?: string;
};

/** Upright: a place to type over. */
export const uprightLean: Direction = { by: 'lean', ahead: 0, port: 0 };

/** Things that have a direction: the axis of a cylinder, the way out of a plane. */
export const thingsWithDirection = ({ site, own }: DirectionKnown): readonly NameOption[] =>
  namesIn('things', site, (index) => {
    const thing = site.things[index];
    return thing !== undefined && thing.shape.shape !== 'point' && thing.name !== own;
  });

/** A direction to begin with; null where there is nothing yet that it could be said by. */
export function freshDirection(by: DirectionBy, known: DirectionKnown): Direction | null {
  const { site, tubes } = known;
  const set = setInUse(site.level.sets);
  switch (by) {
    case 'lean':
      return uprightLean;
    case 'plumb':
      return set === 0 ? null : { by, ahead: 0, port: 0, set };
    case 'axes':
      return { by, vector: { x: 0, y: 0, z: 1 } };
    case 'tube': {
      const [tube] = tubes;
      return tube === undefined ? null : { by, at: { member: tube.name, spot: 'middle', number: 1, distance: 0 } };
    }
    case 'thing': {
      const [thing] = thingsWithDirection(known);
      return thing === undefined ? null : { by, thing: thing.value };
    }
    case 'points': {
      const [from, to] = site.points;
      return from === undefined || to === undefined ? null : { by, from: from.name, to: to.name };
    }
  }
}

/** Ways that can be chosen now, and the one that is. */
export const directionOptions = (current: DirectionBy, known: DirectionKnown) =>
  WAYS.filter((by) => by === current || freshDirection(by, known) !== null).map((value) => ({
    value,
    words: words(`direction.by.${value}`),
  }));
