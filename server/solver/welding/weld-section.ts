import type { Welding } from '../../job/welding.ts';
import type { Preparation } from '../../plan/welding.ts';
import { RADIANS } from '../geometry/angle.ts';

/** Bead taken for the filler [mm], parabolic cap and root: typical of thin tube; common practice, no source. */
export const THIN_BEAD = { cap: { width: 4, height: 0.5 }, root: { width: 3, height: 0.4 } } as const;
/** How far the cap of a bevel runs over each of its edges [mm]: common practice, no source. */
export const OVER = 1;

type Crown = { readonly width: number; readonly height: number };
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
  width: bevel.gap + 2 * depth(bevel) * Math.tan(bevel.angle / 2) + 2 * OVER,
  height: THIN_BEAD.cap.height,
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
      return bevelArea(bevel) + crownArea(cap(bevel)) + crownArea(THIN_BEAD.root);
    }
    case 'square-tight':
    case 'square-gap':
      return squareArea(section) + crownArea(THIN_BEAD.cap) + crownArea(THIN_BEAD.root);
  }
}

/**
 * Area of the metal that pulls across a butt [mm²], the Aw of published forms: what lies in a bevel, or what is fused
 * between square faces, as wide as the mean of its cap and its root.
 */
export const fusedArea = (section: SectionOf): number =>
  section.preparation === 'bevel'
    ? bevelArea(bevelOf(section))
    : ((THIN_BEAD.cap.width + THIN_BEAD.root.width) / 2) * section.wall;
