import type { GapRow } from '../../../plan/gap.ts';
import { straightPiece, type Centreline } from '../../geometry/centreline.ts';
import type { Turning } from '../../geometry/turning.ts';
import { dot, length, subtract, unit } from '../../geometry/vector.ts';
import type { LaidLeg, LaidSite, LaidThing } from '../laid-site.ts';
import type { SiteStudy } from '../site-study.ts';
import { frameTravel } from './frame-travel.ts';

/** A tube of the frame, or a leg, as a laid site has it [mm]. */
export type GapTube = {
  readonly of: GapRow['of'];
  readonly name: string;
  /** Job field of a leg; empty for a tube of the frame. */
  readonly field: string;
  readonly outsideDiameter: number;
  /** Place of a leg among the legs; null for a tube of the frame. */
  readonly leg: number | null;
  /** Its centreline; undefined where that site has none. */
  readonly lineIn: (laid: LaidSite) => Centreline | undefined;
};

/** The tubes of the frame in their order, then the legs. */
export function tubesOf({ source, laid }: SiteStudy): GapTube[] {
  const { outsideDiameter } = source.tube;
  const members = source.made.map(({ name }, index) => ({
    of: 'member' as const,
    name,
    field: '',
    outsideDiameter,
    leg: null,
    lineIn: (site: LaidSite) => site.frame?.lines[index]?.centreline,
  }));
  const legs = laid.legs.flatMap((leg, index) =>
    leg === null
      ? []
      : [
          {
            of: 'leg' as const,
            name: leg.name,
            field: leg.field,
            outsideDiameter: leg.outsideDiameter,
            leg: index,
            lineIn: (site: LaidSite) => legLine(site.legs[index]),
          },
        ],
  );
  return [...members, ...legs];
}

/** A leg from its foot to its head. */
export function legLine(leg: Pick<LaidLeg, 'foot' | 'head'> | null | undefined): Centreline | undefined {
  if (leg === null || leg === undefined) return undefined;
  const along = subtract(leg.head, leg.foot);
  const direction = unit(along);
  if (direction === undefined) return undefined;
  const piece = straightPiece({ start: leg.foot, direction, length: length(along) });
  return { pieces: [piece], length: piece.length };
}

/** Legs stay where they are: they carry the frame only where it stands. */
export const tubeTravel = ({ of }: Pick<GapTube, 'of'>, { source }: SiteStudy, { frame }: LaidSite): Turning | null =>
  of === 'leg' || frame === null ? null : frameTravel(frame, source.site);

/** A foot nearer to a plane than this stands on it [mm]: our own choice, what a tape tells. */
const ON_PLANE = 1;

/** Whether a leg stands on a thing, by name or because its foot lies on that plane: it touches that, as it must. */
export function standsOn({ leg }: Pick<GapTube, 'leg'>, { name, body }: LaidThing, study: SiteStudy): boolean {
  if (leg === null) return false;
  const surface = study.source.site.legs[leg]?.foot.surface;
  if (surface?.by === 'thing' && surface.thing === name) return true;
  const laid = study.laid.legs[leg];
  if (body.shape !== 'plane' || laid === undefined || laid === null) return false;
  const off = dot(subtract(laid.foot, body.at), body.normal);
  return Math.abs(off) < ON_PLANE && dot(subtract(laid.head, laid.foot), body.normal) > 0;
}
