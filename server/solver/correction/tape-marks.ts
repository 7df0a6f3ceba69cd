import type { TapeMarks } from '../../plan/joint.ts';
import { band, figure, input } from '../figure.ts';
import type { MemberGeometry } from '../frame/frame-geometry.ts';
import { DEGREES } from '../geometry/angle.ts';
import { isDieBend } from '../geometry/centreline.ts';
import { pieceStations } from '../geometry/slice.ts';
import { faceStation, type CutFace } from '../joints/face-wrap.ts';
import { GENERATORS, lengthAlong } from '../joints/generators.ts';

/** A bend's scribed line is taken where it is nearer than every end by more than this [mm]: our own choice. */
const WORTH_A_BEND = 200;

/** A point of a member that a tape finds; `standOff` is how far along the tube the long point of a saddle lies from its axis' end [mm]. */
type TapePoint = Pick<TapeMarks, 'from' | 'bend'> & { readonly station: number; readonly standOff: number };

/** What marks are laid out with: outside diameter and ± of the tape [mm]. */
export type Tape = { readonly outsideDiameter: number; readonly tape: number };

/** The two ends of a member as a tape finds them; of a closed one its weld, from either side. */
function endPoints({ centreline, closed, start, finish }: MemberGeometry, outsideDiameter: number): TapePoint[] {
  const { length } = centreline;
  const none = { bend: 0, standOff: 0 };
  if (closed)
    return [
      { ...none, from: 'closing-weld', station: 0 },
      { ...none, from: 'closing-weld', station: length },
    ];
  // the long point of a saddle on a tube of the same size: (D/2) / sin β from where the axes meet
  const off = (end: typeof start): number =>
    end.kind === 'saddle' ? outsideDiameter / 2 / Math.sin(end.axisAngle) : 0;
  return [
    { bend: 0, standOff: off(start), from: start.kind === 'saddle' ? 'saddle-face' : 'datum-end', station: 0 },
    {
      bend: 0,
      standOff: -off(finish),
      from: finish.kind === 'saddle' ? 'far-saddle-face' : 'far-end',
      station: length,
    },
  ];
}

/** Start and end of every die bend, which are scribed on the tube, counted from the datum end. */
function bendPoints({ centreline }: MemberGeometry): TapePoint[] {
  const stations = pieceStations(centreline);
  const points: TapePoint[] = [];
  let bend = 0;
  for (const [index, piece] of centreline.pieces.entries()) {
    if (!isDieBend(piece)) continue;
    bend += 1;
    points.push({ from: 'bend-start', bend, station: stations[index] ?? 0, standOff: 0 });
    points.push({ from: 'bend-end', bend, station: stations[index + 1] ?? 0, standOff: 0 });
  }
  return points;
}

/**
 * Where a face is marked on the tube as it is: from the nearest point that a tape finds, and from another one to check
 * with. A bend's line is taken only where every end is much further off; the other point is always an end.
 */
export function tapeMarks(
  member: MemberGeometry,
  face: CutFace,
  tape: Tape,
): { marks: TapeMarks; check: TapeMarks | null } {
  const away = ({ station, standOff }: TapePoint): number => Math.abs(face.station - station - standOff);
  const nearer = (a: TapePoint, b: TapePoint): number => away(a) - away(b);
  const [near, other] = endPoints(member, tape.outsideDiameter).sort(nearer);
  const [bend] = bendPoints(member).sort(nearer);
  const end = near ?? { from: 'datum-end' as const, bend: 0, station: 0, standOff: 0 };
  const fromBend = bend !== undefined && away(end) - away(bend) > WORTH_A_BEND;
  const check = fromBend ? end : other;
  return {
    marks: marksFrom(fromBend ? bend : end, face, tape),
    check: check === undefined ? null : marksFrom(check, face, tape),
  };
}

/** Distances along the four generators from a point to a face [mm], counted the way the tape runs. */
function marksFrom(from: TapePoint, face: CutFace, { outsideDiameter, tape }: Tape): TapeMarks {
  const radius = outsideDiameter / 2;
  const forwards = face.station >= from.station;
  return {
    from: from.from,
    bend: from.bend,
    towards: forwards ? 'finish' : 'start',
    generators: GENERATORS.map(({ key, angle }) => {
      const generator = { radius, angle: angle / DEGREES };
      const cut = faceStation(face, generator) ?? face.station;
      const ring = lengthAlong(face.runs, generator, from.station, face.station);
      const ordinate = lengthAlong(face.runs, generator, face.station, cut);
      const along = ring + ordinate - from.standOff;
      const way = forwards ? 1 : -1;
      return {
        key,
        angle,
        distance: figure(
          way * along,
          'mm',
          forwards ? 'd = Σ ℓ (R + r cos φ) / R + z(φ) − a' : 'd = Σ ℓ (R + r cos φ) / R − z(φ) − a',
          [
            input('s', 'station', face.station, 'mm'),
            input('r', 'outside-radius', radius, 'mm'),
            input('φ', 'generator', angle, 'deg'),
            input('z', 'face-ordinate', ordinate, 'mm'),
            input('a', 'stand-off', Math.abs(from.standOff), 'mm'),
          ],
          ['geometry'],
          band(tape, 'tape'),
        ),
        ordinate,
      };
    }),
  };
}
