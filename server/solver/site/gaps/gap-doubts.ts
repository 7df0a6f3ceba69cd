import { once } from '../../once.ts';
import { length, subtract, type Vector3 } from '../../geometry/vector.ts';
import type { LaidFrame, LaidLeg, LaidSite, LaidThing } from '../laid-site.ts';
import type { SiteStudy } from '../site-study.ts';
import type { GapTube } from './gap-tubes.ts';

/** The study with those doubtful values alone that move a thing or a tube. */
export type GapStudies = (thing: number, tube: GapTube) => SiteStudy;

/**
 * Most doubtful values of a large site move neither this thing nor that tube: they are found out once for each of them, and
 * not asked for every gap.
 */
export function gapStudies(study: SiteStudy): GapStudies {
  const movesFrame = movedBy(study, (laid) => laid.frame, isSameFrame);
  const movesThing = study.laid.things.map((_, index) =>
    once(() => movedBy(study, ({ things }) => things[index], isSameThing)),
  );
  const movesLeg = study.laid.legs.map((_, index) => once(() => movedBy(study, ({ legs }) => legs[index], isSameLeg)));
  return (thing, { leg }) => {
    const [ofThing, ofTube] = [movesThing[thing]?.(), leg === null ? movesFrame : movesLeg[leg]?.()];
    return {
      ...study,
      varied: study.varied.filter((_, index) => ofThing?.[index] === true || ofTube?.[index] === true),
    };
  };
}

function movedBy<Part>(
  { laid, varied }: SiteStudy,
  pick: (of: LaidSite) => Part | null | undefined,
  isSame: (one: Part, other: Part) => boolean,
): boolean[] {
  const exact = pick(laid) ?? null;
  return varied.map((other) => {
    const own = pick(other.laid) ?? null;
    return own !== exact && (own === null || exact === null || !isSame(own, exact));
  });
}

const isSamePoint = (one: Vector3, other: Vector3): boolean => length(subtract(one, other)) === 0;

/** Its hinge lies on its lines, so that those tell. */
const isSameFrame = (one: LaidFrame, other: LaidFrame): boolean =>
  one.lines.every((line, index) => {
    const like = other.lines[index]?.centreline.pieces;
    return line.centreline.pieces.every(({ start, direction, length: size }, piece) => {
      const own = like?.[piece];
      return (
        own !== undefined &&
        own.length === size &&
        isSamePoint(own.start, start) &&
        isSamePoint(own.direction, direction)
      );
    });
  });

const isSameLeg = (one: LaidLeg, other: LaidLeg): boolean =>
  isSamePoint(one.foot, other.foot) && isSamePoint(one.head, other.head);

function isSameThing({ body: one, swing }: LaidThing, { body: other, swing: otherSwing }: LaidThing): boolean {
  const isSameBody =
    isSamePoint(one.at, other.at) &&
    (one.shape !== 'plane' || (other.shape === 'plane' && isSamePoint(one.normal, other.normal))) &&
    (one.shape !== 'cylinder' || (other.shape === 'cylinder' && isSamePoint(one.axis, other.axis)));
  return (
    isSameBody &&
    (swing === null ||
      (otherSwing !== null && isSamePoint(swing.about, otherSwing.about) && isSamePoint(swing.axis, otherSwing.axis)))
  );
}
