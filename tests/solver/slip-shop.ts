import type { CameBack } from '../../server/job/came-back.ts';
import type { Frame, Hoop } from '../../server/job/frame.ts';
import type { SlipKey } from '../../server/plan/slip.ts';
import { measureCheck } from '../../server/solver/frame/frame-geometry.ts';
import { misreadings, type Misreading, type ShopContext } from '../../server/solver/correction/misreadings.ts';
import { readingsOn } from '../../server/solver/correction/readings-on.ts';
import { slipPairs } from '../../server/solver/correction/slip-pairs.ts';
import { drawFrame } from '../../server/solver/frame/expand-frame.ts';
import type { FrameGeometry } from '../../server/solver/frame/frame-geometry.ts';
import { UNMOVED } from '../../server/solver/geometry/rigid-motion.ts';
import { linesLike } from '../../server/solver/returned/lines.ts';
import { readingsOf } from '../../server/solver/returned/readings.ts';
import { sizesOf } from '../../server/solver/returned/sizes.ts';
import type { SolvedReadings } from '../../server/solver/returned/solved-readings.ts';

export const DIAMETER = 38.1;
export const RADIUS = 114.3;

/** Springback of 2 + 0.03 c, bends that grow by 2 mm a right angle, bars with 150 mm to spare, a second die. */
const FIXED = (2 * Math.PI) / 180;
const SHARE = 0.03;

export const draw = (frame: Frame): FrameGeometry | null =>
  drawFrame(frame, { outsideDiameter: DIAMETER, cornerRadius: RADIUS, root: '/frame' }).geometry;

export const SHOP: ShopContext = {
  draw,
  outsideDiameter: DIAMETER,
  released: (told) => told * (1 - SHARE) - FIXED,
  told: (wanted) => (wanted + FIXED) / (1 - SHARE),
  stretch: (angle) => (4 * angle) / Math.PI,
  from: () => 'start',
  spareLength: 150,
  ofDie: (piece) => piece.kind === 'arc' && piece.made === 'die' && piece.radius === RADIUS,
  otherDies: [{ radius: 75, leaves: 76.2 }],
};

export type SlipCase = { readonly wanted: FrameGeometry; readonly found: readonly Misreading[] };

/** A frame with everything that can go wrong with it. */
export function slipCase(frame: Frame, shop: Partial<ShopContext> = {}): SlipCase {
  const wanted = draw(frame);
  if (wanted === null) throw new Error('the frame cannot be drawn');
  return { wanted, found: misreadings(frame, wanted, { ...SHOP, ...shop }) };
}

/**
 * All that can be measured on a frame with the pieces of the wanted one, exactly, or each off by `off` accuracies.
 *
 * @param off by how many accuracies the reading of a number is off
 */
export function readingsFrom(
  wanted: FrameGeometry,
  frame: FrameGeometry,
  off: (place: number) => number = () => 0,
): SolvedReadings {
  const sizes = sizesOf(wanted, DIAMETER);
  const cameBack: CameBack = { tapeAccuracy: 1, angleAccuracy: 0.3, readings: readingsOn(wanted, wanted) ?? [] };
  const { measured } = readingsOf(cameBack, { wanted, sizes, radius: DIAMETER / 2 });
  const predictAll = (one: FrameGeometry): (number | undefined)[] => {
    const lines = linesLike(wanted, one);
    return measured.map(({ predict }) => (lines === undefined ? undefined : predict(lines, UNMOVED)));
  };
  const found = predictAll(frame);
  return {
    readings: measured.map(({ field, name, unit, accuracy, posed }, place) => ({
      field,
      name,
      unit,
      accuracy,
      posed,
      measured: (found[place] ?? NaN) + off(place) * accuracy,
      predict: (one: FrameGeometry) => predictAll(one)[place],
    })),
    predictAll,
  };
}

export const LEG = 600;
/** A U frame with square corners. */
export const U: Hoop = {
  shape: 'hoop',
  width: { value: 950, reference: 'outside' },
  widthAtFeet: null,
  leftLeg: { value: LEG, reference: 'centre' },
  rightLeg: { value: LEG, reference: 'centre' },
  crossbar: { form: 'straight' },
  innerCrossbars: [],
};
export const CROWNED: Hoop = {
  ...U,
  crossbar: { form: 'crowned', radius: 2400 },
  innerCrossbars: [{ fromFoot: { value: 250, reference: 'centre' } }],
};
/** The slip, or the pair of slips, of a case. */
export const find = ({ found }: SlipCase, ...keys: SlipKey[]): Misreading =>
  [...found, ...slipPairs(found)].find(({ slips }) => slips.map(({ key }) => key).join() === keys.join())!;

/** By how much each size of the made frame is off, centre to centre [mm]. */
export function off(made: SlipCase, ...keys: SlipKey[]): Record<string, number> {
  const frame = find(made, ...keys).made!.frame();
  return Object.fromEntries(
    made.wanted.checks.map((check) => {
      const own = frame.checks.find(({ key, index }) => key === check.key && index === check.index)!;
      return [check.key, measureCheck(own) - measureCheck(check)];
    }),
  );
}
