/** Hi-lo in walls: good enough to polish away (a tenth); ASME BPE-2012 orbital; ISO 5817 imperfection 5072. */
export const HI_LO_LIMITS = { good: 0.1, practice: 0.15, standard: 0.5 } as const;

/** A kink that the eye finds along a polished tube [rad]: 1 degree, common practice; ISO 5817 imperfection 508 asks as much. */
export const VISIBLE_KINK = Math.PI / 180;

/** A turn about the tube's own axis that is lost without a scribed line [rad]: half a degree, our own choice. */
export const TWIST_TO_SCRIBE = Math.PI / 360;
