import type { Tube } from '../../job/tube.ts';
import type { TemplateStation, WrapTemplate } from '../../plan/frame.ts';
import { planeOrdinate } from './plane-cut.ts';
import { planeOnBend, type BentTubeSpan, type CutPlane } from './plane-on-bend.ts';

/** Points of the drawn curve, the closing one included: one every three degrees keeps chords within 0.01 mm. */
export const CURVE_POINTS = 121;

/** What every wrap needs: its names, the tube, the paper [mm], and where its ring (ordinate 0) stands [mm]. */
export type WrapFrame = {
  readonly key: string;
  readonly member: string;
  readonly place: string;
  readonly tube: Pick<Tube, 'outsideDiameter' | 'wall'>;
  readonly paperThickness: number;
  readonly stations: 16 | 24;
  readonly ringStation: number;
  readonly scrap: WrapTemplate['scrap'];
};

/** A generator's ordinates on the outer and inner surface, the line to cut to, and a second one where there is one [mm]. */
export type Ordinates = {
  readonly outer: number;
  readonly inner: number;
  readonly cut: number;
  readonly second: number | null;
};

/**
 * Lays ordinates on paper. Generators count from the outside; looking at the printed side with the far end of the
 * tube up, angles grow to the right: the quarter turn is at tangent × outside. The paper lies outside the tube, so its
 * girth is π (D + p).
 */
export function wrapTemplate(
  frame: WrapFrame,
  kind: WrapTemplate['kind'],
  ordinatesAt: (generator: number) => Ordinates,
): WrapTemplate {
  const wrapLength = Math.PI * (frame.tube.outsideDiameter + frame.paperThickness);
  const stations: TemplateStation[] = Array.from({ length: frame.stations }, (_, index) => {
    const share = index / frame.stations;
    const { outer, inner, cut, second } = ordinatesAt(2 * Math.PI * share);
    return { angle: 360 * share, girth: wrapLength * share, outer, inner, cut, second };
  });
  const curve: [number, number][] = [];
  const other: [number, number][] = [];
  for (let index = 0; index < CURVE_POINTS; index += 1) {
    const share = index / (CURVE_POINTS - 1);
    const { cut, second } = ordinatesAt(2 * Math.PI * share);
    curve.push([wrapLength * share, cut]);
    if (second !== null) other.push([wrapLength * share, second]);
  }
  const ordinates = [...curve, ...other].map(([, ordinate]) => ordinate);
  for (const { cut, second } of stations) ordinates.push(cut, second ?? cut);
  return {
    key: frame.key,
    kind,
    member: frame.member,
    place: frame.place,
    wrapLength,
    low: Math.min(...ordinates),
    high: Math.max(...ordinates),
    ringStation: frame.ringStation,
    scrap: frame.scrap,
    edge: 0,
    stations,
    curve,
    second: other.length === 0 ? null : other,
    hinge: null,
  };
}

/**
 * A plane cut through the centreline at the ring, tilted off square.
 * `tilt` [rad, 0 … under π/2]; `tiltDirection` [rad] the generator whose ordinate is largest (furthest towards the
 * far end). `arc`: null on a straight, else the arc's centreline radius and, where the cut may run out of the arc,
 * the centreline lengths from the ring back to the arc's start and on to its end [mm].
 */
export type PlaneWrap = WrapFrame & {
  readonly tilt: number;
  readonly tiltDirection: number;
  readonly arc: { readonly radius: number; readonly before?: number; readonly after?: number } | null;
};

/**
 * The wrap of a plane cut. On a straight z = r tan τ cos(φ − δ). On an arc each generator has its own radius ρ, and
 * the ordinate is the length along it from a square ring on the centreline. A plane goes straight through the wall,
 * so the line to cut to is the one on the outer surface.
 *
 * @returns undefined where the plane misses a generator of the arc
 */
export function wrapForPlane(wrap: PlaneWrap): WrapTemplate | undefined {
  const outside = wrap.tube.outsideDiameter / 2;
  const inside = outside - wrap.tube.wall;
  let missed = false;
  const template = wrapTemplate(wrap, wrap.arc === null ? 'plane' : 'plane-on-arc', (generator) => {
    const outer = ordinate(wrap, outside, generator);
    const inner = ordinate(wrap, inside, generator);
    if (outer === undefined || inner === undefined) missed = true;
    return { outer: outer ?? 0, inner: inner ?? 0, cut: outer ?? 0, second: null };
  });
  return missed ? undefined : template;
}

function ordinate(
  wrap: Pick<PlaneWrap, 'tilt' | 'tiltDirection' | 'arc'>,
  radius: number,
  generator: number,
): number | undefined {
  const { tilt, tiltDirection, arc } = wrap;
  if (arc === null) return planeOrdinate({ radius, tilt, generator: generator - tiltDirection });
  // the ring is the line θ = 0; the bend's z is outside × tangent, so angles round the tube run the other way there
  const bend: BentTubeSpan = {
    radius: arc.radius,
    from: arc.before === undefined ? -Infinity : -arc.before / arc.radius,
    to: arc.after === undefined ? Infinity : arc.after / arc.radius,
  };
  const slope = Math.tan(tilt);
  const normal = { x: -slope * Math.cos(tiltDirection), y: 1, z: slope * Math.sin(tiltDirection) };
  const plane: CutPlane = { normal, distance: normal.x * arc.radius };
  return planeOnBend(bend, plane, { radius, angle: -generator }, 0)?.along;
}
