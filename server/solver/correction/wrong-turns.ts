import { RADIANS } from '../geometry/angle.ts';
import { isDieBend, type Centreline, type Link } from '../geometry/centreline.ts';
import { chainOf, laidAgain } from '../geometry/chain.ts';

/** What a bend has by way of an angle is a half turn short of its supplement. */
const HALF_TURN = Math.PI;

/** A member whose rotations were all counted the other way: its own mirror image. Null where none is turned. */
export function rotatedOtherWay(planned: Centreline): Centreline | null {
  const chain = chainOf(planned);
  if (chain === undefined || !isInSpace(chain.links)) return null;
  return laidAgain(
    chain,
    chain.links.map((link) => (link.kind === 'arc' ? turnedTo(link, -link.rotation) : link)),
  );
}

/**
 * A member with one bend made to the other side: the tube was turned half a turn too far before it, and back after it.
 *
 * @param number of the die bend from the start; the first has nothing to be turned from, but the rest has
 */
export function bentOtherWay(planned: Centreline, number: number): Centreline | null {
  const chain = chainOf(planned);
  if (chain === undefined) return null;
  let count = 0;
  let owed = 0;
  const links = chain.links.map((link): Link => {
    if (link.kind !== 'arc') return link;
    count += link.made === 'die' ? 1 : 0;
    const here = link.made === 'die' && count === number;
    const rotation = link.rotation + owed + (here ? HALF_TURN : 0);
    owed = here ? -HALF_TURN : 0;
    return turnedTo(link, rotation);
  });
  return laidAgain(chain, links);
}

/** A member whose straights were laid out in the order from its other end; null where that is the same. */
export function fromOtherEnd(planned: Centreline): Centreline | null {
  const chain = chainOf(planned);
  if (chain === undefined) return null;
  const gaps: Link[][] = [[]];
  const bends: Link[] = [];
  for (const link of chain.links) {
    if (isDieBend(link)) {
      bends.push(link);
      gaps.push([]);
    } else gaps.at(-1)?.push(link);
  }
  const turned = gaps.map((gap) => [...gap].reverse()).reverse();
  const sizes = (all: readonly (readonly Link[])[]) => all.map((gap) => gap.map(lengthOf));
  if (sameSizes(sizes(gaps), sizes(turned))) return null;
  // a piece that comes or goes would leave another tube to compare
  if (turned.some((gap, place) => gap.map(kindOf).join() !== gaps[place]?.map(kindOf).join())) return null;
  return laidAgain(
    chain,
    turned.flatMap((gap, place) => {
      const bend = bends[place];
      return bend === undefined ? gap : [...gap, bend];
    }),
  );
}

/**
 * A member each of whose bends was made to the angle inside the corner, from the planned start marks: it uses so much
 * more or less of the next straight. Null where a corner has no such angle, or all of them are square.
 */
export function toSupplements(planned: Centreline): Centreline | null {
  const chain = chainOf(planned);
  if (chain === undefined) return null;
  const bends = chain.links.filter(isDieBend);
  const other = (angle: number): number => HALF_TURN - angle;
  if (bends.some((link) => link.kind === 'arc' && other(link.angle) < LEAST)) return null;
  if (bends.every((link) => link.kind === 'arc' && Math.abs(other(link.angle) - link.angle) < LEAST)) return null;
  let owed = 0;
  const links = chain.links.map((link): Link => {
    if (isDieBend(link)) {
      const angle = other(link.angle);
      owed += link.radius * (angle - link.angle);
      return { kind: 'arc', radius: link.radius, angle, rotation: link.rotation, made: 'die' };
    }
    const length = lengthOf(link) - owed;
    owed = 0;
    return link.kind === 'straight'
      ? { kind: 'straight', length }
      : { kind: 'arc', radius: link.radius, angle: length / link.radius, rotation: link.rotation, made: link.made };
  });
  return laidAgain(chain, links);
}

/** A smaller angle is none [rad]: 0.01°, common practice. */
const LEAST = 0.01 * RADIANS;

const isInSpace = (links: readonly Link[]): boolean =>
  links.some((link) => link.kind === 'arc' && Math.abs(Math.sin(link.rotation)) > LEAST);

const turnedTo = (link: Extract<Link, { kind: 'arc' }>, rotation: number): Link => ({
  kind: 'arc',
  radius: link.radius,
  angle: link.angle,
  rotation,
  made: link.made,
});

const lengthOf = (link: Link): number => (link.kind === 'straight' ? link.length : link.radius * link.angle);

const kindOf = (link: Link): string => (link.kind === 'straight' ? 'straight' : link.made);

/** Lengths nearer than this are one [mm]; what a tape shows. */
const TAPE = 0.1;

const sameSizes = (one: readonly (readonly number[])[], other: readonly (readonly number[])[]): boolean =>
  one.every((sizes, place) =>
    sizes.every((size, index) => Math.abs(size - (other[place]?.[index] ?? Infinity)) < TAPE),
  ) && one.every((sizes, place) => sizes.length === other[place]?.length);
