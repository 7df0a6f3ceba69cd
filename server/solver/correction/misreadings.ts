import type { Frame } from '../../job/frame.ts';
import type { Dimension, Reference } from '../../job/quantities.ts';
import type { SlipKey } from '../../plan/slip.ts';
import type { FrameGeometry } from '../frame/frame-geometry.ts';
import type { Centreline, Piece } from '../geometry/centreline.ts';
import { reverseCentreline } from '../geometry/reverse-centreline.ts';
import { canBe, type Rebent } from './remeasure.ts';
import { cutToApexes, onOtherDie, withoutOverbend, wrongMarks } from './wrong-marks.ts';

/** What a shop would work with: how a frame is drawn, the angle lost, the bar as it was sawn, its other dies. */
export type ShopContext = {
  readonly draw: (frame: Frame) => FrameGeometry | null;
  /** What is left of an angle that the machine was told without overbending [rad]. */
  readonly released: (told: number) => number;
  /** Which end of a member its marks are laid out from. */
  readonly from: (member: string) => 'start' | 'finish';
  /** What the bar is longer than the finished member [mm]. */
  readonly spareLength: number;
  /** Whether a bend's radius is what the machine's own die leaves. */
  readonly ofDie: (piece: Piece) => boolean;
  /** Centreline radii that other dies for this tube leave [mm], each with the die's own. */
  readonly otherDies: readonly { readonly radius: number; readonly leaves: number }[];
};

/** A way in which a sketch or its marks are taken wrong, with the frame that it makes; null: it cannot be made. */
export type Misreading = {
  readonly slip: SlipKey;
  /** JSON pointer of the size that is read another way, or empty for a slip at the marks. */
  readonly field: string;
  readonly dieRadius: number | null;
  readonly made: { readonly drawn: FrameGeometry; readonly rebent: Rebent } | null;
};

const REFERENCES: readonly Reference[] = ['outside', 'centre', 'inside'];

/**
 * Every classic way of taking a sketch wrong: each width read by either other reference, and the slips at the marks,
 * bent in software through the same straights and arcs as the plan. The slips are common practice, no source.
 *
 * @param drawn the frame as wanted
 */
export function misreadings(frame: Frame, drawn: FrameGeometry, shop: ShopContext): Misreading[] {
  const read = widthsOf(frame).flatMap(({ name, width, withWidth }) =>
    REFERENCES.filter((reference) => reference !== width.reference).map((reference): Misreading => {
      const other = shop.draw(withWidth({ value: width.value, reference }));
      return {
        slip: `${width.reference}-read-as-${reference}` as SlipKey,
        field: `/frame/${name}`,
        dieRadius: null,
        made: other === null ? null : { drawn: other, rebent: new Map() },
      };
    }),
  );
  if (!drawn.members.some(hasDieBend)) return read;
  const bent = (
    slip: SlipKey,
    bend: (line: Centreline) => Centreline | null,
    dieRadius: number | null = null,
  ): Misreading => {
    const rebent = new Map<string, Centreline>();
    let possible = true;
    for (const { name, centreline } of drawn.members.filter(hasDieBend)) {
      // marks are laid out from the end that is bent first, and the slip runs on from there
      const back = shop.from(name) === 'finish';
      const made = bend(back ? reverseCentreline(centreline) : centreline);
      if (made === null || !canBe(made)) possible = false;
      else rebent.set(name, back ? reverseCentreline(made) : made);
    }
    const made = possible ? { drawn, rebent } : null;
    return { slip, field: '', dieRadius, made };
  };
  return [
    ...read,
    bent('apex-as-start', (line) => wrongMarks(line, 'start', shop.spareLength)),
    bent('apex-as-middle', (line) => wrongMarks(line, 'middle', shop.spareLength)),
    bent('cut-to-apexes', cutToApexes),
    bent('springback-left-out', (line) => withoutOverbend(line, shop.released)),
    ...shop.otherDies.map(({ radius, leaves }) =>
      bent('other-die', (line) => onOtherDie(line, leaves, shop.ofDie), radius),
    ),
  ];
}

const isDieBend = (piece: Piece): boolean => piece.kind === 'arc' && piece.made === 'die';

const hasDieBend = ({ centreline }: { readonly centreline: Centreline }): boolean => centreline.pieces.some(isDieBend);

/** A width of the sketch, across two tubes, and the frame with another one in its place. */
type SketchWidth = {
  readonly name: string;
  readonly width: Dimension;
  readonly withWidth: (width: Dimension) => Frame;
};

function widthsOf(frame: Frame): SketchWidth[] {
  switch (frame.shape) {
    case 'hoop': {
      const { widthAtFeet } = frame;
      const feet: SketchWidth[] =
        widthAtFeet === null
          ? []
          : [{ name: 'widthAtFeet', width: widthAtFeet, withWidth: (width) => ({ ...frame, widthAtFeet: width }) }];
      return [{ name: 'width', width: frame.width, withWidth: (width) => ({ ...frame, width }) }, ...feet];
    }
    case 'ring':
      return [
        { name: 'width', width: frame.width, withWidth: (width) => ({ ...frame, width }) },
        { name: 'height', width: frame.height, withWidth: (height) => ({ ...frame, height }) },
      ];
    case 'offset':
      return [{ name: 'across', width: frame.across, withWidth: (across) => ({ ...frame, across }) }];
    case 'straight':
    case 'run':
    case 'members':
      return [];
  }
}
