import type { Joint, JointFace, LetInPiece, TapeMarks } from '../../server/plan/joint.ts';
import type { WrapTemplate } from '../../server/plan/frame.ts';
import { figure } from './fixture-figure.ts';
import { heightOf, planeWrap, wedgeWrap, type FaceSpec } from './fixture-wrap.ts';

const KEYS = ['outside', 'top', 'inside', 'bottom'] as const;

export type JointSpec = Partial<Omit<Joint, 'faceA' | 'faceB'>> & {
  readonly number: number;
  readonly member: string;
  readonly a: FaceSpec;
  readonly b: FaceSpec;
};

function marks(
  from: TapeMarks['from'],
  towards: TapeMarks['towards'],
  distance: (angle: number) => number,
  height: (angle: number) => number,
): TapeMarks {
  const bend = from === 'bend-end' || from === 'bend-start' ? 1 : 0;
  return {
    from,
    bend,
    towards,
    generators: KEYS.map((key, index) => ({
      key,
      angle: index * 90,
      distance: figure(distance(index * 90), 'mm', 1),
      ordinate: height(index * 90),
    })),
  };
}

/** A wedge and a dart have one wrap for both faces. */
function wrapOf(
  { kind = 'slug', member, number, a, b }: JointSpec,
  side: 'A' | 'B',
  diameter: number,
): WrapTemplate | null {
  if (kind === 'wedge' || kind === 'dart') {
    return side === 'A' ? wedgeWrap(kind, { member, number }, { a, b }, diameter) : null;
  }
  return planeWrap({ member, place: `${String(number)}${side}`, side }, side === 'A' ? a : b, diameter);
}

function face(joint: JointSpec, side: 'A' | 'B', diameter: number): JointFace {
  const spec = side === 'A' ? joint.a : joint.b;
  const height = heightOf(spec, side, diameter / 2);
  const quarter = Math.round(spec.longest / 90) % 4;
  return {
    station: figure(spec.station, 'mm', 1),
    tilt: figure(spec.offSquare, 'deg'),
    tiltDirection: spec.longest,
    saw: {
      offSquare: figure(spec.offSquare, 'deg'),
      longSide: KEYS[quarter] ?? 'outside',
      fromLongSide: spec.longest - 90 * Math.round(spec.longest / 90),
    },
    marks: marks('bend-end', 'finish', (angle) => spec.station - 300 + height(angle), height),
    check: marks('far-end', 'start', (angle) => 2080 - spec.station - height(angle), height),
    template: wrapOf(joint, side, diameter),
  };
}

/** A joint made up from its two faces; whatever else it says may be given. */
export function joint({ a, b, ...spec }: JointSpec, diameter: number): Joint {
  const removed = b.station - a.station;
  return {
    on: 'straight',
    kind: 'slug',
    place: (a.station + b.station) / 2,
    range: { from: a.station - 80, to: b.station + 120 },
    bounds: { from: 'bend', to: 'end' },
    removed: figure(removed, 'mm', 1),
    scrap: figure(removed - 2.4, 'mm', 1),
    scrapShort: figure(removed - 2.4, 'mm', 1),
    kink: figure(0.74, 'deg'),
    hiLo: figure(0.12, 'mm', 0.1),
    hiLoGrade: 'good',
    twist: figure(0, 'deg'),
    letIn: null,
    point: { x: 0, y: 60, z: 0 },
    ...spec,
    faceA: face({ a, b, ...spec }, 'A', diameter),
    faceB: face({ a, b, ...spec }, 'B', diameter),
  };
}

/** A bent piece of new tube with a wrap for each of its ends. */
export function letIn(number: number, member: string, diameter: number): LetInPiece {
  const wrap = (side: 'A' | 'B', station: number): WrapTemplate =>
    planeWrap({ member, place: `${String(number)}${side}`, side }, { station, offSquare: 0.6, longest: 0 }, diameter);
  return {
    length: figure(81.7, 'mm', 1),
    cutLength: figure(84.2, 'mm', 1),
    radius: figure(2400, 'mm'),
    angle: figure(1.95, 'deg'),
    tiltA: figure(0.6, 'deg'),
    tiltB: figure(0.6, 'deg'),
    templates: [wrap('B', 0), wrap('A', 81.7)],
  };
}
