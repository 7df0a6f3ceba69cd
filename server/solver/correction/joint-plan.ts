import type { Closing } from '../../job/closing.ts';
import type { Joint } from '../../plan/correction.ts';
import type { Finding } from '../../plan/finding.ts';
import { band, figure, input } from '../figure.ts';
import { finding } from '../finding.ts';
import type { FrameGeometry } from '../frame/frame-geometry.ts';
import type { Vector3 } from '../geometry/vector.ts';
import { jointFace, type FaceContext } from './joint-face.ts';
import { lengthToRemove } from './moved-copy.ts';
import { scrapLength } from './slug.ts';
import type { Splice } from './splice.ts';

const DEGREES = 180 / Math.PI;

/** Room that the clamp, the torch and the polishing belt want beside a bend, in tube diameters: common practice. */
const CLEAR_OF_BEND = 1.5;

/** Hi-lo in walls: good enough to polish away; ASME BPE-2012 orbital; ISO 5817 imperfection 5072. */
const HI_LO_LIMITS = { good: 0.1, practice: 0.15, standard: 0.5 } as const;

/** A kink that the eye finds along a polished tube [rad]: 1 degree, common practice, no source. */
const VISIBLE_KINK = Math.PI / 180;

/** Least stretch of straight or crown that the joints of one crossing have, and what they need [mm]. */
type Room = { readonly free: number; readonly needed: number };

/** Joints of a splice as the sheets print them, with what there is to say about each. */
export function planJoints(
  splice: Splice,
  frame: FrameGeometry,
  closing: Closing,
  context: FaceContext,
  placeOf: (body: string, point: Vector3) => Vector3,
): { joints: Joint[]; findings: Finding[]; room: Room | null } {
  const findings: Finding[] = [];
  let room: Room | null = null;
  const joints = splice.joints.map(({ place, closed }, index): Joint => {
    const number = index + 1;
    const { member, crossing } = place;
    const take = closed.removed;
    const removed = lengthToRemove({ shortening: take, gap: closing.gap, shrinkage: closing.shrinkage });
    // what gap and shrinkage ask for is shared by the two faces
    const spare = (removed - take) / 2;
    const stationA = closed.stationA - spare;
    const stationB = closed.stationB + spare;
    const scrap = scrapLength({ removed, kerf: closing.kerf });
    const where = { joint: number, member: member.name };
    const edge = CLEAR_OF_BEND * context.tube.outsideDiameter;
    const fromBend = Math.min(stationA - crossing.pieceFrom, crossing.pieceTo - stationB);
    if (crossing.piece.kind === 'arc' && crossing.piece.made === 'die') {
      findings.push(finding('cut-no-place', 'stop', '/closing/cutOffset', where));
    } else if (fromBend < 0) {
      const free = crossing.pieceTo - crossing.pieceFrom;
      room = { free, needed: removed };
      findings.push(finding('cut-too-much', 'stop', '/cameBack/frame', { ...where, value: removed, high: free }));
    } else if (fromBend < edge) {
      findings.push(
        finding('cut-beside-bend', 'caution', '/closing/cutOffset', { ...where, value: fromBend, low: edge }),
      );
    }
    if (removed > 0 && scrap === undefined) {
      const data = { ...where, value: removed, low: 2 * closing.kerf };
      findings.push(finding('cut-narrower-than-kerf', 'note', '/closing/kerf', data));
    }
    const kink = Math.abs(closed.kink);
    if (kink > VISIBLE_KINK) {
      const data = { ...where, value: kink * DEGREES, high: VISIBLE_KINK * DEGREES };
      findings.push(finding('kink-visible', 'caution', '/closing/joints', data));
    }
    const hiLoGrade = gradeHiLo(Math.abs(closed.hiLo), context.tube.wall);
    if (hiLoGrade === 'standard' || hiLoGrade === 'over') {
      const limit = (hiLoGrade === 'over' ? HI_LO_LIMITS.standard : HI_LO_LIMITS.practice) * context.tube.wall;
      const code = hiLoGrade === 'over' ? 'hi-lo-over-standard' : 'hi-lo-over-practice';
      const data = { ...where, value: Math.abs(closed.hiLo), high: limit };
      findings.push(finding(code, hiLoGrade === 'over' ? 'stop' : 'caution', '/closing/joints', data));
    }
    const face = (side: 'A' | 'B', station: number) =>
      jointFace({ member, station, side, number, kink: closed.kink }, frame, context);
    const removedInputs = [
      input('Δ', 'shortening', take, 'mm'),
      input('g', 'gap', closing.gap, 'mm'),
      input('s', 'shrinkage', closing.shrinkage, 'mm'),
    ];
    return {
      number,
      member: member.name,
      on: crossing.piece.kind === 'straight' ? 'straight' : crossing.piece.made,
      faceA: face('A', stationA),
      faceB: face('B', stationB),
      removed: figure(removed, 'mm', 'L = Δ + g − s', removedInputs, ['geometry'], band(context.tape, 'tape')),
      scrap: figure(
        scrap ?? 0,
        'mm',
        'c = L − 2 k',
        [input('L', 'removed', removed, 'mm'), input('k', 'kerf', closing.kerf, 'mm')],
        ['geometry'],
        band(context.tape, 'tape'),
      ),
      kink: figure(
        kink * DEGREES,
        'deg',
        'k = ∠(C′(a), M C′(b))',
        [input('a', 'station-a', closed.stationA, 'mm'), input('b', 'station-b', closed.stationB, 'mm')],
        ['geometry'],
      ),
      hiLo: figure(
        Math.abs(closed.hiLo),
        'mm',
        'e = |M C(b) − C(a)| across',
        [input('a', 'station-a', closed.stationA, 'mm'), input('b', 'station-b', closed.stationB, 'mm')],
        ['geometry', 'iso-5817', 'asme-bpe'],
        band(context.tape, 'tape'),
      ),
      hiLoGrade,
      point: placeOf(place.before, closed.point),
    };
  });
  return { joints, findings, room };
}

function gradeHiLo(hiLo: number, wall: number): Joint['hiLoGrade'] {
  if (hiLo <= HI_LO_LIMITS.good * wall) return 'good';
  if (hiLo <= HI_LO_LIMITS.practice * wall) return 'practice';
  return hiLo <= HI_LO_LIMITS.standard * wall ? 'standard' : 'over';
}
