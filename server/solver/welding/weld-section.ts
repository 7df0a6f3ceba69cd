import type { Welding } from '../../job/welding.ts';
import type { Preparation } from '../../plan/welding.ts';
import { RADIANS } from '../geometry/angle.ts';

/** Bead taken for the filler [mm], parabolic cap and root: typical of thin tube; common practice, no source. */
export const THIN_BEAD = { cap: { width: 4, height: 0.5 }, root: { width: 3, height: 0.4 } } as const;
/** The thinnest wall that has the whole of it [mm], for which its size was printed; our own choice. */
export const WHOLE_BEAD_FROM = 1.65;
/** How far the cap of a bevel runs over each of its edges [mm]: common practice, no source. */
export const OVER = 1;

type Crown = { readonly width: number; readonly height: number };
/** Share of that bead that a wall carries: a thinner wall has one that is smaller in proportion. */
export const beadShare = (wall: number): number => Math.min(1, wall / WHOLE_BEAD_FROM);

const shared = ({ width, height }: Crown, share: number): Crown => ({ width: share * width, height: share * height });

/** Cap and root of the bead on a wall [mm]. */
export const beadOn = (wall: number): { readonly cap: Crown; readonly root: Crown } => ({
  cap: shared(THIN_BEAD.cap, beadShare(wall)),
  root: shared(THIN_BEAD.root, beadShare(wall)),
});

type Square = { readonly wall: number; readonly gap: number };
/** A bevel: land [mm] and both sides together [rad]. */
type Bevel = Square & { readonly land: number; readonly angle: number };

/** Area under a parabola [mm²]: ⅔ w h. */
export const crownArea = ({ width, height }: Crown): number => (2 / 3) * width * height;

/** Weld metal between square faces [mm²]: b t, gap times wall. */
export const squareArea = ({ wall, gap }: Square): number => gap * wall;

/** Depth of the bevelled part of a wall over its land [mm]. */
const depth = ({ wall, land }: Pick<Bevel, 'wall' | 'land'>): number => Math.max(0, wall - land);

/** Weld metal in a bevel [mm²]: b t + (t − c)² tan(α/2); land c [mm], both sides together α [rad]. */
export const bevelArea = (bevel: Bevel): number => squareArea(bevel) + depth(bevel) ** 2 * Math.tan(bevel.angle / 2);

/** Area of a fillet of two equal legs [mm²]: z²/2. */
export const filletArea = (leg: number): number => leg ** 2 / 2;

/** Leg of a fillet by its throat [mm]: z = √2 a. */
export const filletLeg = (throat: number): number => Math.SQRT2 * throat;

/** What a section is reckoned from: wall and gap [mm], and the faces as typed. */
export type SectionOf = Square & { readonly preparation: Preparation; readonly groove: Welding['groove'] };

const bevelOf = ({ wall, gap, groove }: SectionOf): Bevel => ({
  wall,
  gap,
  land: groove.land,
  angle: 2 * groove.angle * RADIANS,
});

const cap = (bevel: Bevel): Crown => ({
  width: bevel.gap + 2 * depth(bevel) * Math.tan(bevel.angle / 2) + 2 * OVER * beadShare(bevel.wall),
  height: beadOn(bevel.wall).cap.height,
});

/**
 * Area of weld metal that is fed [mm²]: between the faces of a butt, with cap and root; a fillet for a saddle and a pad,
 * its throat as thick as the wall, so that it carries what the tube does.
 */
export function weldArea(section: SectionOf): number {
  switch (section.preparation) {
    case 'saddle':
    case 'fillet':
      return filletArea(filletLeg(section.wall));
    case 'bevel': {
      const bevel = bevelOf(section);
      return bevelArea(bevel) + crownArea(cap(bevel)) + crownArea(beadOn(section.wall).root);
    }
    case 'square-tight':
    case 'square-gap': {
      const bead = beadOn(section.wall);
      return squareArea(section) + crownArea(bead.cap) + crownArea(bead.root);
    }
  }
}

/**
 * Area of the metal that pulls across a butt [mm²], the Aw of published forms: what lies in a bevel, or what is fused
 * between square faces, as wide as the mean of its cap and its root.
 */
export function fusedArea(section: SectionOf): number {
  if (section.preparation === 'bevel') return bevelArea(bevelOf(section));
  const bead = beadOn(section.wall);
  return ((bead.cap.width + bead.root.width) / 2) * section.wall;
}
