import type { Welding } from '../../job/welding.ts';

/** Quality level of ISO 5817, B the strictest. */
export type QualityLevel = Welding['quality'];

/** Hi-lo in walls: good enough to polish away (a tenth); ASME BPE-2012 orbital; ISO 5817 imperfection 5072. */
export const HI_LO_LIMITS = { good: 0.1, practice: 0.15, standard: 0.5 } as const;

/** The largest step that ISO 5817 imperfection 5072 allows round a tube of any wall [mm], by level; seen second-hand. */
export const HI_LO_CAPS: Readonly<Record<QualityLevel, number>> = { B: 2, C: 3, D: 4 };

/** Step that ISO 5817 imperfection 5072 allows [mm]: 0.5 t, no more than its level has. */
export const hiLoLimit = (wall: number, quality: QualityLevel): number =>
  Math.min(HI_LO_LIMITS.standard * wall, HI_LO_CAPS[quality]);

/** Kink by level [degrees]: ISO 5817:2003 imperfection 508, from memory; later editions have none in their main table. */
export const KINK_LIMITS: Readonly<Record<QualityLevel, number>> = { B: 1, C: 2, D: 4 };

/** An opening that filler still bridges, in walls: half the wall, common practice, no source. */
export const BRIDGED = 0.5;

/** A weld pulls in this share of what is told more or less: the spread of published forms; measure one test piece. */
export const SHRINKAGE_DOUBT = 0.5;

/** A kink that the eye finds along a polished tube [rad]: 1 degree, common practice; ISO 5817 imperfection 508 asks as much. */
export const VISIBLE_KINK = Math.PI / 180;

/** A turn about the tube's own axis that is lost without a scribed line [rad]: half a degree, our own choice. */
export const TWIST_TO_SCRIBE = Math.PI / 360;
