import type { JointFace, SawSetting } from '../../plan/joint.ts';
import type { Tube } from '../../job/tube.ts';
import { band, figure, input } from '../figure.ts';
import type { MemberGeometry } from '../frame/frame-geometry.ts';
import { DEGREES } from '../geometry/angle.ts';
import { placeAt, type ArcPiece } from '../geometry/centreline.ts';
import { cross, dot, length, scale, subtract, type Vector3 } from '../geometry/vector.ts';
import { faceWrap, type CutFace } from '../joints/face-wrap.ts';
import { GENERATORS, generatorRuns } from '../joints/generators.ts';
import { outsideOf, type FrameSides } from '../joints/outside.ts';
import type { WrapFrame } from '../joints/wrap.ts';
import { tapeMarks } from './tape-marks.ts';
import type { QualityLevel } from './weld-limits.ts';

/** Leaning less than this a face is square and leans no way [rad]: rounding. */
const SQUARE = 1e-9;

/** What a face needs to know of the job: tube, tape [mm], paper [mm], how many stations a template prints, and whether. */
export type FaceContext = {
  readonly tube: Tube;
  readonly tape: number;
  readonly paperThickness: number;
  readonly templateStations: 16 | 24;
  readonly templates: boolean;
  /** Level that a step between two walls is graded by. */
  readonly quality: QualityLevel;
  /**
   * What is left on a let-in piece that is bent, both ends together, and cut off again [mm]: where it is bent on a die, and
   * where it is rolled. Nothing where it is left out.
   */
  readonly leftOn?: Readonly<Record<ArcPiece['made'], number>>;
};

/** A face as it leans [rad]: its tilt off square, and the generator (from the outside) whose ordinate is largest. */
export type Lean = { readonly tilt: number; readonly tiltDirection: number };

/** A face that is to be cut: member, station of it on the centreline [mm], unit normal towards the finish. */
export type FaceToCut = { readonly member: MemberGeometry; readonly station: number; readonly normal: Vector3 };

/**
 * The plane of a face, the generators round it, and how it leans. Generator 0 is the outside at the station, a quarter
 * turn on is at tangent × outside.
 */
export function cutFace({ member, station, normal }: FaceToCut, sides: FrameSides): CutFace & Lean {
  const place = placeAt(member.centreline, station);
  const outside = outsideOf(member, station, sides);
  const none = { x: 0, y: 0, z: 0 };
  const point = place?.point ?? none;
  const plane = { point, normal };
  if (place === undefined || outside === undefined) return { runs: [], station, plane, tilt: 0, tiltDirection: 0 };
  const runs = generatorRuns(member.centreline, station, outside);
  const across = subtract(normal, scale(place.tangent, dot(normal, place.tangent)));
  const tilt = Math.atan2(length(across), dot(normal, place.tangent));
  // z(φ) = −r (n · e(φ)) / (n · t): largest where the normal leans away
  const quarter = cross(place.tangent, outside);
  const direction = Math.atan2(-dot(across, quarter), -dot(across, outside));
  const square = tilt < SQUARE;
  return { runs, station, plane, tilt: square ? 0 : tilt, tiltDirection: square ? 0 : direction };
}

/** Degrees from 0 to under 360. */
const fullTurn = (angle: number): number => {
  const degrees = angle * DEGREES;
  const turned = degrees - 360 * Math.floor(degrees / 360);
  return turned > 360 - 1e-9 ? 0 : turned;
};

/** What a wrap of a joint needs besides its cut. */
export const jointFrame = (
  member: MemberGeometry,
  station: number,
  place: string,
  context: FaceContext,
): Omit<WrapFrame, 'scrap'> => ({
  key: `joint ${place}`,
  member: member.name,
  place,
  tube: context.tube,
  paperThickness: context.paperThickness,
  stations: context.templateStations,
  ringStation: station,
});

/**
 * One cut face of a joint, marked on the tube as it is.
 *
 * @param side A: the piece before the scrap is kept, B: the one after it
 * @param number of the joint
 */
export function jointFace(
  member: MemberGeometry,
  face: CutFace & Lean,
  { side, number }: { side: 'A' | 'B'; number: number },
  context: FaceContext,
): JointFace {
  const { station, tiltDirection } = face;
  const marked = { outsideDiameter: context.tube.outsideDiameter, tape: context.tape };
  const frame = jointFrame(member, station, `${String(number)}${side}`, context);
  const template = context.templates
    ? (faceWrap({ ...frame, scrap: side === 'A' ? 'finish' : 'start' }, face) ?? null)
    : null;
  return {
    station: figure(
      station,
      'mm',
      's',
      [input('s', 'station', station, 'mm')],
      ['geometry'],
      band(context.tape, 'tape'),
    ),
    tilt: tiltFigure(face),
    tiltDirection: fullTurn(tiltDirection),
    saw: sawSetting(face, side),
    ...tapeMarks(member, face, marked),
    template,
  };
}

const tiltFigure = ({ tilt, tiltDirection }: Lean) =>
  figure(
    tilt * DEGREES,
    'deg',
    'τ = ∠(n, t)',
    [input('δ', 'tilt-direction', fullTurn(tiltDirection), 'deg')],
    ['geometry'],
  );

/** The tube is left longest where face A reaches furthest towards the finish, face B furthest towards the start. */
function sawSetting(face: Lean, side: 'A' | 'B'): SawSetting {
  const longest = fullTurn(face.tiltDirection + (side === 'A' ? 0 : Math.PI));
  const quarter = Math.round(longest / 90) % 4;
  const from = longest - 90 * Math.round(longest / 90);
  return { offSquare: tiltFigure(face), longSide: GENERATORS[quarter]?.key ?? 'outside', fromLongSide: from || 0 };
}
