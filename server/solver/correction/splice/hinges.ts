import { pieceStations } from '../../geometry/slice.ts';
import { isDieBend, placeOn, type ArcPiece } from '../../geometry/centreline.ts';
import { turnAbout, type RigidMotion, composed } from '../../geometry/rigid-motion.ts';
import { arcCentre } from '../../geometry/slice.ts';
import { scale, type Vector3 } from '../../geometry/vector.ts';
import { bodiesAfter, type Cut, type FrameGraph } from './frame-graph.ts';

/** A die bend that may be turned a little further or less: everything behind it moves with it. */
export type Hinge = {
  readonly member: number;
  readonly piece: number;
  readonly arc: ArcPiece;
  /** Where the bend ends [mm along its member]. */
  readonly station: number;
  /** How far it may be opened (negative) and closed [rad]. */
  readonly low: number;
  readonly high: number;
};

/**
 * The die bends of a cut frame that can be turned: those in a loop that no cut opens are held by the loop.
 *
 * @param limits for each bend, how far it may be opened and closed [rad]; undefined: not at all
 */
export function hingesOf(
  graph: FrameGraph,
  cuts: readonly Cut[],
  limits: (arc: ArcPiece, member: number, piece: number) => { low: number; high: number } | undefined,
): Hinge[] {
  const whole = bodiesAfter(graph, cuts).count;
  return graph.members.flatMap(({ centreline }, member) => {
    const stations = pieceStations(centreline);
    return centreline.pieces.flatMap((arc, piece): Hinge[] => {
      if (!isDieBend(arc)) return [];
      const station = stations[piece + 1] ?? 0;
      const range = limits(arc, member, piece);
      // cutting a bend that is in a loop leaves everything hanging together
      const opens = bodiesAfter(graph, [...cuts, { member, station }]).count > whole;
      return range === undefined || !opens ? [] : [{ member, piece, arc, station, low: range.low, high: range.high }];
    });
  });
}

/** Axis, centre and end direction of a hinge on the frame as it came back. */
export const hingeAxis = ({ arc }: Hinge): { axis: Vector3; centre: Vector3; end: Vector3 } => ({
  axis: arc.normal,
  centre: arcCentre(arc),
  end: placeOn(arc, arc.length).tangent,
});

/**
 * What lies behind a bend moves like this when the bend is turned by δ: it keeps its start mark and its radius, so R δ
 * of the straight behind goes into the bend, and the rest turns about the bend's centre.
 *
 * @param turn δ [rad], positive: bent further
 */
export function hingeMotion(hinge: Hinge, turn: number): RigidMotion {
  const { axis, centre, end } = hingeAxis(hinge);
  const drawnIn = scale(end, -hinge.arc.radius * turn);
  return composed(turnAbout(centre, scale(axis, turn), { x: 0, y: 0, z: 0 }), {
    x: { x: 1, y: 0, z: 0 },
    y: { x: 0, y: 1, z: 0 },
    z: { x: 0, y: 0, z: 1 },
    shift: drawnIn,
  });
}
