import type { Tube } from '../../job/tube.ts';
import type { Welding } from '../../job/welding.ts';
import type { Sleeve } from '../../plan/welding.ts';
import { band, figure, input } from '../figure.ts';
import { tubeTolerance, type AllowedSize } from '../tube/tolerances.ts';

/** A sleeve slides by hand with this much play in the narrowest bore [mm]: common practice, no source. */
export const SLIDING = 0.3;
/** Length of a sleeve in diameters, half of it in each tube: common practice, no source. */
const DIAMETERS = 2;
/** Plug welds of each of the two tubes, 2 to 4, by outside diameter [mm]: common practice, no source. */
const PLUGS = { few: 2, many: 4, manyOver: 60 } as const;
/** Bore of a plug hole, 6 to 8 mm by wall [mm], and no more than this share of the tube: common practice, no source. */
const PLUG_BORE = { thin: 6, thick: 8, thickOver: 2, share: 0.25 } as const;
/** Play that is not known, where the tube's tolerance is not [mm]: our own judgement. */
const UNKNOWN_TOLERANCE = 0.5;

/** Sizes of a sleeve [mm]. `least` and `most` are the bores that the tube's tolerance allows. */
export type SleeveSize = {
  readonly outsideDiameter: number;
  readonly length: number;
  readonly least: number;
  readonly most: number;
  readonly off: AllowedSize | null;
};

/** Plug welds that hold a sleeve on both sides of one butt, and the bore of their holes [mm]. */
export const plugsOf = ({
  outsideDiameter,
  wall,
}: Pick<Tube, 'outsideDiameter' | 'wall'>): { readonly count: number; readonly bore: number } => ({
  count: 2 * plugsOfEach(outsideDiameter),
  bore: Math.min(wall > PLUG_BORE.thickOver ? PLUG_BORE.thick : PLUG_BORE.thin, PLUG_BORE.share * outsideDiameter),
});

const plugsOfEach = (outsideDiameter: number): number => (outsideDiameter > PLUGS.manyOver ? PLUGS.many : PLUGS.few);

/** Sizes of the sleeve for a tube, by what the tube was bought to. */
export function sleeveSize(tube: Tube, { length }: Welding['sleeve']): SleeveSize {
  const { by } = tube.tolerance;
  const off =
    (by === 'own' ? tubeTolerance('own', tube, tube.tolerance) : tubeTolerance(tube.tolerance.standard, tube)) ?? null;
  const { under, over, thin, thick } = limitsOf(off);
  const least = tube.outsideDiameter - under - 2 * (tube.wall + thick);
  return {
    outsideDiameter: least - SLIDING,
    length: length ?? DIAMETERS * tube.outsideDiameter,
    least,
    most: tube.outsideDiameter + over - 2 * (tube.wall - thin),
    off,
  };
}

/** What is on either side of the nominal sizes [mm]; a wall that is not limited upwards is taken as far off as down. */
const limitsOf = (off: AllowedSize | null): { under: number; over: number; thin: number; thick: number } => ({
  under: off?.outsideDiameter.minus ?? 0,
  over: off?.outsideDiameter.plus ?? 0,
  thin: off?.wall.minus ?? 0,
  thick: off?.wall.plus ?? off?.wall.minus ?? 0,
});

/** The sleeve that backs the butts of a job. */
export function planSleeve(tube: Tube, typed: Welding['sleeve'], size: SleeveSize): Sleeve {
  const outside = input('D', 'outside-diameter', tube.outsideDiameter, 'mm');
  const wall = input('t', 'wall', tube.wall, 'mm');
  const { off } = size;
  const { under, over, thin, thick } = limitsOf(off);
  const unknown = off === null ? band(UNKNOWN_TOLERANCE, 'tube-tolerance') : null;
  const source = off === null ? 'practice' : off.source;
  return {
    outsideDiameter: figure(
      size.outsideDiameter,
      'mm',
      'd = D − δ₁ − 2 (t + ε₁) − p',
      [
        outside,
        input('δ₁', 'diameter-under-size', under, 'mm'),
        wall,
        input('ε₁', 'wall-over-size', thick, 'mm'),
        input('p', 'sliding-play', SLIDING, 'mm'),
      ],
      ['sleeve', source],
      unknown,
    ),
    wall: figure(typed.wall, 'mm', 't', [input('t', 'sleeve-wall', typed.wall, 'mm')], ['typed']),
    length:
      typed.length === null
        ? figure(size.length, 'mm', 'l = 2 D', [outside], ['sleeve'])
        : figure(size.length, 'mm', 'l', [input('l', 'sleeve-length', size.length, 'mm')], ['typed']),
    clearance: figure(
      size.most - size.outsideDiameter,
      'mm',
      'c = D + δ₂ − 2 (t − ε₂) − d',
      [
        outside,
        input('δ₂', 'diameter-over-size', over, 'mm'),
        wall,
        input('ε₂', 'wall-under-size', thin, 'mm'),
        input('d', 'sleeve-diameter', size.outsideDiameter, 'mm'),
      ],
      ['sleeve', source],
      unknown,
    ),
    plugHoles: figure(plugsOfEach(tube.outsideDiameter), 'count', 'n(D)', [outside], ['sleeve']),
    plugHoleBore: figure(plugsOf(tube).bore, 'mm', 'b = min(b(t), D/4)', [wall, outside], ['sleeve']),
  };
}
