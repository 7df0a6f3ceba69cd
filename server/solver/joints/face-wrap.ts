import type { WrapTemplate } from '../../plan/frame.ts';
import { lengthAlong, planeCrossing, type Generator, type GeneratorRun, type Plane } from './generators.ts';
import { wrapTemplate, type WrapFrame } from './wrap.ts';

/** A plane across a tube through its centreline at a station [mm], and the generators of the tube there. */
export type CutFace = {
  readonly runs: readonly GeneratorRun[];
  readonly station: number;
  readonly plane: Plane;
};

/** Station of the centreline at which a face cuts a generator [mm]; undefined where its plane misses it. */
export const faceStation = (face: CutFace, generator: Generator): number | undefined =>
  planeCrossing(face.runs, generator, face.plane, face.station);

/** Where a face cuts a generator: length along it from a square ring at a station [mm]; undefined: it misses it. */
export function faceOrdinate(face: CutFace, generator: Generator, ring: number): number | undefined {
  const station = faceStation(face, generator);
  return station === undefined ? undefined : lengthAlong(face.runs, generator, ring, station);
}

/**
 * The wrap of one face, cut by a plane that goes straight through the wall: the line to cut to is the one on the outer
 * surface. A part of it may run out of an arc into the straight beside it.
 *
 * @returns undefined where the plane misses a generator
 */
export function faceWrap(frame: WrapFrame, face: CutFace): WrapTemplate | undefined {
  const { outside, inside } = surfaces(frame);
  let missed = false;
  let onArc = false;
  const template = wrapTemplate(frame, 'plane', (angle) => {
    const station = faceStation(face, { radius: outside, angle });
    const inner = faceOrdinate(face, { radius: inside, angle }, frame.ringStation);
    if (station === undefined || inner === undefined) {
      missed = true;
      return { outer: 0, inner: 0, cut: 0, second: null };
    }
    onArc ||= face.runs.find(({ to }) => station <= to)?.piece.kind === 'arc';
    const outer = lengthAlong(face.runs, { radius: outside, angle }, frame.ringStation, station);
    return { outer, inner, cut: outer, second: null };
  });
  if (missed) return undefined;
  return onArc ? { ...template, kind: 'plane-on-arc' } : template;
}

/** Both faces of one joint; their generators are the same ones. */
export type FacePair = { readonly first: CutFace; readonly second: CutFace };

/**
 * Both faces of a wedge or a dart on one wrap: two lines, the scrap between them. On a straight their distance is
 * w(φ) = (tan α1 + tan α2)(h + r cos φ). Ordinates count from a square ring at `ringStation`; the ones of the inner
 * surface are face A's. Beyond the hinge, where the lines would cross, both run along their middle.
 *
 * @param hinge a dart's wall that is not cut: generator of its middle and half its width [rad]; null for a wedge
 * @returns undefined where a plane misses a generator
 */
export function wedgeWrap(
  frame: WrapFrame,
  { first, second }: FacePair,
  hinge: { readonly angle: number; readonly half: number } | null,
): WrapTemplate | undefined {
  const { outside, inside } = surfaces(frame);
  let missed = false;
  const template = wrapTemplate(frame, hinge === null ? 'wedge' : 'dart', (angle) => {
    const outer = faceOrdinate(first, { radius: outside, angle }, frame.ringStation);
    const inner = faceOrdinate(first, { radius: inside, angle }, frame.ringStation);
    const other = faceOrdinate(second, { radius: outside, angle }, frame.ringStation);
    if (outer === undefined || inner === undefined || other === undefined) {
      missed = true;
      return { outer: 0, inner: 0, cut: 0, second: 0 };
    }
    const crossed = other < outer;
    const middle = (outer + other) / 2;
    return { outer, inner, cut: crossed ? middle : outer, second: crossed ? middle : other };
  });
  if (missed || hinge === null) return missed ? undefined : template;
  const turn = hinge.angle / (2 * Math.PI);
  const girth = template.wrapLength * (turn - Math.floor(turn));
  return { ...template, hinge: { girth, width: (template.wrapLength * hinge.half) / Math.PI } };
}

const surfaces = ({ tube }: WrapFrame): { outside: number; inside: number } => ({
  outside: tube.outsideDiameter / 2,
  inside: tube.outsideDiameter / 2 - tube.wall,
});
