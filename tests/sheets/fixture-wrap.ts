import type { WrapTemplate } from '../../server/plan/frame.ts';

const RADIAN = Math.PI / 180;
const PAPER = 0.1;
const WALL = 1.65;

/** A face as the made-up joints need it: where [mm], how far off square and where the tube is left longest [degrees]. */
export type FaceSpec = { readonly station: number; readonly offSquare: number; readonly longest: number };
export type WrapPlace = { readonly member: string; readonly place: string; readonly side: 'A' | 'B' };

type Curve = WrapTemplate['curve'];

/** Height of a plane cut over its ring: z = ± r tan τ cos (φ − the long side), up on face A and down on face B. */
export function heightOf({ offSquare, longest }: FaceSpec, side: 'A' | 'B', radius: number): (angle: number) => number {
  const most = (side === 'A' ? 1 : -1) * radius * Math.tan(offSquare * RADIAN);
  return (angle) => most * Math.cos((angle - longest) * RADIAN);
}

const round = (wrapLength: number, height: (angle: number) => number): Curve =>
  Array.from({ length: 181 }, (_, index): [number, number] => [(wrapLength * index) / 180, height(index * 2)]);

const extremes = (...curves: readonly Curve[]): { low: number; high: number } => {
  const heights = curves.flat().map(([, height]) => height);
  return { low: Math.min(...heights), high: Math.max(...heights) };
};

/** The wrap of one plane face. */
export function planeWrap(of: WrapPlace, spec: FaceSpec, diameter: number): WrapTemplate {
  const wrapLength = Math.PI * (diameter + PAPER);
  const outer = heightOf(spec, of.side, diameter / 2);
  const inner = heightOf(spec, of.side, diameter / 2 - WALL);
  const curve = round(wrapLength, outer);
  return {
    key: `joint ${of.place}`,
    kind: 'plane',
    member: of.member,
    place: of.place,
    wrapLength,
    ...extremes(curve),
    ringStation: spec.station,
    scrap: of.side === 'A' ? 'finish' : 'start',
    edge: 0,
    stations: Array.from({ length: 16 }, (_, index) => ({
      angle: index * 22.5,
      girth: (wrapLength * index) / 16,
      outer: outer(index * 22.5),
      inner: inner(index * 22.5),
      cut: outer(index * 22.5),
      second: null,
    })),
    curve,
    second: null,
    hinge: null,
  };
}

/** Both faces of a wedge, or of a dart whose wall opposite to its wide side stays. */
export function wedgeWrap(
  kind: 'wedge' | 'dart',
  of: { readonly member: string; readonly number: number },
  faces: { readonly a: FaceSpec; readonly b: FaceSpec },
  diameter: number,
): WrapTemplate {
  const ring = (faces.a.station + faces.b.station) / 2;
  const place = `joint ${String(of.number)}`;
  const single = planeWrap({ ...of, place, side: 'A' }, faces.a, diameter);
  const { wrapLength } = single;
  const height = (side: 'A' | 'B', radius: number): ((angle: number) => number) => {
    const spec = side === 'A' ? faces.a : faces.b;
    const above = heightOf(spec, side, radius);
    return (angle) => spec.station - ring + above(angle);
  };
  const [a, b, inner] = [height('A', diameter / 2), height('B', diameter / 2), height('A', diameter / 2 - WALL)];
  const [curve, second] = [round(wrapLength, a), round(wrapLength, b)];
  return {
    ...single,
    key: place,
    kind,
    ...extremes(curve, second),
    ringStation: ring,
    scrap: 'between',
    stations: single.stations.map((station) => ({
      ...station,
      outer: a(station.angle),
      inner: inner(station.angle),
      cut: a(station.angle),
      second: b(station.angle),
    })),
    curve,
    second,
    hinge: kind === 'dart' ? { girth: wrapLength / 2, width: 12 } : null,
  };
}

/** The hole of a branch of radius r square on a main: girth R asin (r sin φ / R), r cos φ along the main. */
export function holeWrap(member: string, diameter: number, branch: number): WrapTemplate {
  const wrapLength = Math.PI * (diameter + PAPER);
  const [main, outer] = [(diameter + PAPER) / 2, branch / 2];
  const at = (angle: number, radius: number): [number, number] => [
    wrapLength / 2 + main * Math.asin((radius * Math.sin(angle * RADIAN)) / (diameter / 2)),
    radius * Math.cos(angle * RADIAN),
  ];
  return {
    key: 'hole 1',
    kind: 'hole',
    member,
    place: 'hole 1',
    wrapLength,
    low: -outer,
    high: outer,
    ringStation: 640,
    scrap: 'inside',
    edge: 90,
    stations: Array.from({ length: 16 }, (_, index) => {
      const [girth, height] = at(index * 22.5, outer);
      const inner = at(index * 22.5, outer - WALL)[1];
      return { angle: index * 22.5, girth, outer: height, inner, cut: height, second: null };
    }),
    curve: Array.from({ length: 181 }, (_, index) => at(index * 2, outer)),
    second: null,
    hinge: null,
  };
}
