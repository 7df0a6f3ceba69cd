/** Bead taken for the filler [mm], parabolic cap and root: typical of thin tube; common practice, no source. */
export const THIN_BEAD = { cap: { width: 4, height: 0.5 }, root: { width: 3, height: 0.4 } } as const;
/** Thickest wall that is welded square [mm], thicker ones get a V: ISO 9692-1 has up to 4; common practice for tube. */
const SQUARE_UP_TO = 3;
/** V of a thick wall: both sides together [rad], land [mm], and how far the cap runs over each edge [mm]; common practice. */
const GROOVE = { angle: Math.PI / 3, land: 1.5, over: 1 } as const;

type Crown = { readonly width: number; readonly height: number };

/** Area under a parabola [mm²]: ⅔ w h. */
export const crownArea = ({ width, height }: Crown): number => (2 / 3) * width * height;

/** Weld metal between square faces [mm²]: b t, gap times wall. */
export const squareArea = ({ wall, gap }: { readonly wall: number; readonly gap: number }): number => gap * wall;

/** Weld metal in a V [mm²]: b t + (t − c)² tan(α/2); land c [mm], both sides together α [rad]. */
export const grooveArea = (groove: { wall: number; gap: number; land: number; angle: number }): number =>
  squareArea(groove) + (groove.wall - groove.land) ** 2 * Math.tan(groove.angle / 2);

/** Area of weld metal round a tube of a wall with a gap [mm²]: square up to 3 mm, else a V, with cap and root. */
export function weldArea({ wall, gap }: { readonly wall: number; readonly gap: number }): number {
  if (wall <= SQUARE_UP_TO) return squareArea({ wall, gap }) + crownArea(THIN_BEAD.cap) + crownArea(THIN_BEAD.root);
  const mouth = gap + 2 * (wall - GROOVE.land) * Math.tan(GROOVE.angle / 2);
  const cap = { width: mouth + 2 * GROOVE.over, height: THIN_BEAD.cap.height };
  return grooveArea({ wall, gap, ...GROOVE }) + crownArea(cap) + crownArea(THIN_BEAD.root);
}
