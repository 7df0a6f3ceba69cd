import type { JointFace } from '../../plan/correction.ts';
import type { Tube } from '../../job/tube.ts';
import { band, figure, input } from '../figure.ts';
import type { FrameGeometry, MemberGeometry } from '../frame/frame-geometry.ts';
import { placeAt } from '../geometry/centreline.ts';
import { pieceStations } from '../geometry/slice.ts';
import { wrapForPlane, type PlaneWrap } from '../joints/wrap.ts';
import { curvature } from './crossings.ts';
import { outsideLiesLeft } from './outside-lies-left.ts';
import { alongGenerator, GENERATORS } from './slug.ts';

const DEGREES = 180 / Math.PI;

/** What a face needs to know of the job: tube, tape [mm], paper [mm], how many stations a template prints, and whether. */
export type FaceContext = {
  readonly tube: Tube;
  readonly tape: number;
  readonly paperThickness: number;
  readonly templateStations: 16 | 24;
  readonly templates: boolean;
};

/**
 * One cut face of a joint in a flat frame, marked on the tube as it is.
 *
 * @param face member, station of the finished face on the centreline [mm], side A (the piece before the scrap) or B,
 *   joint number, and the joint's kink [rad, right-handed about z from A's centreline to B's]
 */
export function jointFace(
  face: { member: MemberGeometry; station: number; side: 'A' | 'B'; number: number; kink: number },
  frame: FrameGeometry,
  context: FaceContext,
): JointFace {
  const { member, station, side } = face;
  const { tube } = context;
  const outsideIsLeft = outsideLiesLeft(member, station, frame);
  // the face bisects the kink: A's normal is turned by +k/2 from its tangent, B's by −k/2; along the left generator
  // the plane then stands at ∓ r tan(k/2)
  const half = face.kink / 2;
  const leftOrdinate = side === 'A' ? -Math.tan(half) : Math.tan(half);
  const outsideOrdinate = outsideIsLeft ? leftOrdinate : -leftOrdinate;
  const tilt = Math.abs(half);
  const tiltDirection = outsideOrdinate >= 0 ? 0 : Math.PI;
  const saddle = member.start.kind === 'saddle' ? member.start : undefined;
  const standOff = saddle === undefined ? 0 : tube.outsideDiameter / 2 / Math.sin(saddle.axisAngle);
  const cut: PlaneWrap = {
    key: `joint ${face.number} ${side}`,
    member: member.name,
    place: `${face.number}${side}`,
    tube,
    paperThickness: context.paperThickness,
    stations: context.templateStations,
    tilt,
    tiltDirection,
    arc: arcAt(member, station),
    ringStation: station,
    scrap: side === 'A' ? 'finish' : 'start',
  };
  return {
    station: figure(
      station,
      'mm',
      's',
      [input('s', 'station', station, 'mm')],
      ['geometry'],
      band(context.tape, 'tape'),
    ),
    tilt: figure(tilt * DEGREES, 'deg', 'τ = |k| / 2', [input('k', 'kink', face.kink * DEGREES, 'deg')], ['geometry']),
    tiltDirection: tiltDirection * DEGREES,
    measuredFrom: member.closed ? 'closing-weld' : saddle === undefined ? 'datum-end' : 'saddle-face',
    generators: GENERATORS.map((generator) => {
      const angle = (generator.angle * Math.PI) / 180;
      const ordinate = (tube.outsideDiameter / 2) * outsideOrdinate * Math.cos(angle);
      const along = surfaceDistance(member, station, outsideIsLeft, tube.outsideDiameter, angle);
      const distance = along + ordinate - standOff;
      return {
        key: generator.key,
        angle: generator.angle,
        distance: figure(
          distance,
          'mm',
          'd = Σ ℓ (R + r cos φ) / R + r tan τ cos φ − a',
          [
            input('s', 'station', station, 'mm'),
            input('r', 'outside-radius', tube.outsideDiameter / 2, 'mm'),
            input('φ', 'generator', generator.angle, 'deg'),
            input('τ', 'face-tilt', tilt * DEGREES, 'deg'),
            input('a', 'stand-off', standOff, 'mm'),
          ],
          ['geometry'],
          band(context.tape, 'tape'),
        ),
      };
    }),
    template: context.templates ? (wrapForPlane(cut) ?? null) : null,
  };
}

/** The arc that a station stands on, with the centreline lengths back to its start and on to its end; null: none. */
function arcAt({ centreline }: MemberGeometry, station: number): PlaneWrap['arc'] {
  const piece = placeAt(centreline, station)?.piece;
  if (piece?.kind !== 'arc') return null;
  const index = centreline.pieces.indexOf(piece);
  const begin = pieceStations(centreline)[index] ?? 0;
  return { radius: piece.radius, before: station - begin, after: begin + piece.length - station };
}

/**
 * Length of a generator from the datum end to a square ring at a station [mm]: through every bend it runs at its own
 * radius. `angle` counts from the outside at that station; a bend the other way has its outside on the other side.
 */
function surfaceDistance(
  member: MemberGeometry,
  station: number,
  outsideIsLeft: boolean,
  outsideDiameter: number,
  angle: number,
): number {
  const stations = pieceStations(member.centreline);
  return member.centreline.pieces.reduce((sum, piece, index) => {
    const begin = stations[index] ?? 0;
    const last = index === member.centreline.pieces.length - 1;
    const length = Math.max(Math.min(station - begin, last ? Infinity : piece.length), index === 0 ? -Infinity : 0);
    if (piece.kind === 'straight') return sum + length;
    const sameSide = curvature(piece) < 0 === outsideIsLeft;
    const turned = sameSide ? angle : angle + Math.PI;
    return sum + alongGenerator({ radius: piece.radius, distance: length }, { outsideDiameter }, turned);
  }, 0);
}
