import type { Hoop } from '../../job/frame.ts';
import { centrelineFromChain, type Centreline, type Link } from '../geometry/centreline.ts';
import { centreSize } from './reference.ts';

/** Why a hoop cannot be drawn; the caller turns it into a finding. Sizes in mm. */
export type HoopFailure = {
  readonly failure: 'width-under-tube' | 'leg-short-for-bend' | 'width-short-for-bends' | 'crown-radius-too-small';
  readonly value: number;
  readonly low: number;
};

/**
 * The corner between an upright leg and the crossbar, seen from the leg's line (x = 0) inwards.
 * `angle` of the bend [rad], `setback` from the corner down the leg to the tangent point [mm], `half` of the
 * crossbar between the two tangent points [mm along the centreline].
 */
type Corner = { readonly angle: number; readonly setback: number; readonly half: number };

function straightCorner(width: number, radius: number): Corner {
  return { angle: Math.PI / 2, setback: radius, half: width / 2 - radius };
}

/**
 * A fillet of `radius` between the leg and a crown. The bend's centre stands `radius` off the leg and
 * `crown − radius` off the crown's centre; sin β = (width/2 − radius)/(crown − radius) is where the crown ends.
 */
function crownedCorner(width: number, radius: number, crown: number): Corner {
  const beta = Math.asin((width / 2 - radius) / (crown - radius));
  const cornerHeight = Math.sqrt(crown ** 2 - (width / 2) ** 2);
  const bendHeight = (crown - radius) * Math.cos(beta);
  return { angle: Math.PI / 2 - beta, setback: cornerHeight - bendHeight, half: crown * beta };
}

/**
 * The outer centreline of a hoop with parallel legs: from the left foot up the leg, over the crossbar, down to
 * the right foot. It lies in x-y: x to the right with its origin midway between the legs, legs along +y, the
 * corners (where a leg's line meets the crossbar's) at y = 0. The datum end is the left foot.
 *
 * @param hoop typed sizes; a leg over the outside reaches to where the outer lines of leg and crossbar meet
 * @param tube outside diameter [mm]
 * @param cornerRadius centreline radius of the corners after release [mm]
 * @returns the centreline, or why there is none
 */
export function hoopCentreline(
  hoop: Pick<Hoop, 'width' | 'leftLeg' | 'rightLeg' | 'crossbar'>,
  tube: { outsideDiameter: number },
  cornerRadius: number,
): Centreline | HoopFailure {
  const { outsideDiameter } = tube;
  const width = centreSize(hoop.width, { outsideDiameter, overlap: 1 });
  if (width <= outsideDiameter) return { failure: 'width-under-tube', value: width, low: outsideDiameter };
  if (width < 2 * cornerRadius) return { failure: 'width-short-for-bends', value: width, low: 2 * cornerRadius };
  const { crossbar } = hoop;
  // below this the fillet would have to be larger than the crown that it leads into
  if (crossbar.form === 'crowned' && crossbar.radius <= width / 2) {
    return { failure: 'crown-radius-too-small', value: crossbar.radius, low: width / 2 };
  }
  const corner =
    crossbar.form === 'straight'
      ? straightCorner(width, cornerRadius)
      : crownedCorner(width, cornerRadius, crossbar.radius);
  const legs = [hoop.leftLeg, hoop.rightLeg].map((leg) => legToCorner(leg, hoop, outsideDiameter, width));
  const [left = 0, right = 0] = legs;
  for (const leg of [left, right]) {
    if (leg < corner.setback) return { failure: 'leg-short-for-bend', value: leg, low: corner.setback };
  }
  const bend: Link = { kind: 'arc', radius: cornerRadius, angle: corner.angle, rotation: 0, made: 'die' };
  const links: Link[] = [
    { kind: 'straight', length: left - corner.setback },
    bend,
    crossbar.form === 'straight'
      ? { kind: 'straight', length: 2 * corner.half }
      : {
          kind: 'arc',
          radius: crossbar.radius,
          angle: (2 * corner.half) / crossbar.radius,
          rotation: 0,
          made: 'rolled',
        },
    bend,
    { kind: 'straight', length: right - corner.setback },
  ];
  return centrelineFromChain(
    { point: { x: -width / 2, y: -left, z: 0 }, direction: { x: 0, y: 1, z: 0 }, normal: { x: 0, y: 0, z: -1 } },
    links.filter((link) => link.kind === 'arc' || link.length > 0),
  );
}

/** A leg from foot to corner, measured on the lines of its reference, turned to the centrelines' corner [mm]. */
function legToCorner(
  leg: Hoop['leftLeg'],
  hoop: Pick<Hoop, 'crossbar'>,
  outsideDiameter: number,
  width: number,
): number {
  if (hoop.crossbar.form === 'straight') return centreSize(leg, { outsideDiameter, overlap: 0.5 });
  const cornerHeight = (offset: number, crown: number) => Math.sqrt((crown + offset) ** 2 - (width / 2 + offset) ** 2);
  const side = leg.reference === 'outside' ? 1 : leg.reference === 'inside' ? -1 : 0;
  const { radius } = hoop.crossbar;
  return leg.value - (cornerHeight((side * outsideDiameter) / 2, radius) - cornerHeight(0, radius));
}
