import type { MemberGeometry } from '../frame/frame-geometry.ts';
import type { Centreline, Link } from '../geometry/centreline.ts';
import { reverseCentreline } from '../geometry/reverse-centreline.ts';
import { chainOf, laidAgain } from '../geometry/chain.ts';
import { withLine } from './with-line.ts';

/** What is changed at one arc of a member; what is left out stays. */
export type ArcChange = {
  /** Turned further (positive) or opened [rad]. A crown is rolled to this much more angle on the same length of tube. */
  readonly turn?: number;
  /** Its plane is turned about the tube by this much more, right-handed in the order of bending [rad]. */
  readonly rotation?: number;
  /** Its mark stands this much further on in the order of bending [mm]. */
  readonly mark?: number;
  /** A die bend's radius is larger by this [mm]. */
  readonly radius?: number;
};

/** Changes at the arcs of one member, by index of the piece. */
export type MemberChange = ReadonlyMap<number, ArcChange>;

/**
 * The centreline of a member whose arcs were changed, laid from the end that it is bent from, which stays where it is.
 * A die bend keeps its start mark, and its radius unless that is changed: turned by δ it uses R δ more of the tube that
 * follows it (and gives it back where it is opened). A crown keeps its curvature where some of it is used for a bend.
 * No tube is stretched: a place on a straight or a crown keeps its station.
 *
 * @param fromFinish true: the member is bent from its finish
 */
function relaidLine(line: Centreline, change: MemberChange, fromFinish: boolean): Centreline {
  if (change.size === 0) return line;
  const back = fromFinish ? reverseCentreline(line) : line;
  const chain = chainOf(back);
  if (chain === undefined) return line;
  const last = line.pieces.length - 1;
  const changeOf = (index: number): ArcChange | undefined => change.get(fromFinish ? last - index : index);
  /** Taken from the piece that follows by the bend before it [mm]. */
  let taken = 0;
  const links = chain.links.map((link, index): Link => {
    const used = taken - (changeOf(index + 1)?.mark ?? 0);
    taken = 0;
    if (link.kind === 'straight') return { kind: 'straight', length: link.length - used };
    const own = changeOf(index);
    const rotation = link.rotation + (own?.rotation ?? 0);
    const long = link.radius * link.angle;
    const angle = link.angle + (own?.turn ?? 0);
    if (link.made === 'rolled') {
      const radius = long / angle;
      return { kind: 'arc', radius, angle: (long - used) / radius, rotation, made: 'rolled' };
    }
    const radius = link.radius + (own?.radius ?? 0);
    taken = radius * angle - long + (own?.mark ?? 0);
    return { kind: 'arc', radius, angle, rotation, made: 'die' };
  });
  const relaid = laidAgain(chain, links);
  return fromFinish ? reverseCentreline(relaid) : relaid;
}

/** A member with its arcs changed. */
export const relaidMember = (member: MemberGeometry, change: MemberChange, fromFinish: boolean): MemberGeometry =>
  change.size === 0 ? member : withLine(member, relaidLine(member.centreline, change, fromFinish));
