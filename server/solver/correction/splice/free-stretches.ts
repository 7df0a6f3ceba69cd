import { isDieBend } from '../../geometry/centreline.ts';
import type { BarredStretch } from '../../../job/closing.ts';
import type { MemberGeometry } from '../../frame/frame-geometry.ts';
import { pieceStations } from '../../geometry/slice.ts';
import type { KeepOut } from '../../../plan/joint.ts';
import type { FrameGraph } from './frame-graph.ts';

/** Room that the clamp, the torch and the polishing belt want beside a bend, in tube diameters: common practice. */
const CLEAR_OF_BEND = 1.5;

/** Room beside another weld [mm]: 1.5 diameters, and 25 mm at the least; common practice, no source. */
export const clearOfWeld = (outsideDiameter: number): number => Math.max(1.5 * outsideDiameter, 25);

/** A saddle flatter than this runs along its main as far as one with this sine; our own choice. */
const LEAST_SINE = 0.2;

/** Where a short straight leaves no such room, a joint may come so near, in tube diameters, and is told: common practice. */
const TIGHT = 0.5;

/** A stretch of one piece of a member on which a joint may stand [mm along the centreline], with the rules that end it. */
export type FreeStretch = {
  readonly member: number;
  readonly piece: number;
  readonly on: 'straight' | 'rolled';
  readonly from: number;
  readonly to: number;
  readonly startRule: KeepOut;
  readonly endRule: KeepOut;
  /** True where the usual room beside bends and welds is not there. */
  readonly tight: boolean;
};

type Closed = { readonly from: number; readonly to: number; readonly rule: KeepOut };

/** What a job says about where cuts may go. */
export type CutRules = {
  readonly outsideDiameter: number;
  readonly cutMembers: readonly string[];
  readonly barred: readonly BarredStretch[];
};

/**
 * Where joints may stand on each member. Where the usual room leaves a member no place at all, the tight one is tried.
 *
 * @returns stretches in the order of members and stations
 */
export function freeStretches(graph: FrameGraph, rules: CutRules): FreeStretch[] {
  return graph.members.flatMap((member, index) => {
    const usual = stretchesOf(graph, index, member, rules, 1);
    return usual.length > 0 ? usual : stretchesOf(graph, index, member, rules, TIGHT / CLEAR_OF_BEND);
  });
}

function stretchesOf(
  graph: FrameGraph,
  index: number,
  member: MemberGeometry,
  rules: CutRules,
  share: number,
): FreeStretch[] {
  if (rules.cutMembers.length > 0 && !rules.cutMembers.includes(member.name)) return [];
  const closed = closedStretches(graph, index, member, rules, share);
  const stations = pieceStations(member.centreline);
  return member.centreline.pieces.flatMap((piece, number): FreeStretch[] => {
    if (isDieBend(piece)) return [];
    const begin = stations[number] ?? 0;
    let open: (Closed & { endRule: KeepOut })[] = [
      { from: begin, to: begin + piece.length, rule: 'bend', endRule: 'bend' },
    ];
    for (const out of closed) {
      open = open.flatMap((one) => {
        if (out.to <= one.from || out.from >= one.to) return [one];
        return [
          ...(out.from > one.from ? [{ ...one, to: out.from, endRule: out.rule }] : []),
          ...(out.to < one.to ? [{ ...one, from: out.to, rule: out.rule }] : []),
        ];
      });
    }
    return open.map(({ from, to, rule, endRule }) => ({
      member: index,
      piece: number,
      on: piece.kind === 'straight' ? ('straight' as const) : ('rolled' as const),
      from,
      to,
      startRule: rule,
      endRule,
      tight: share < 1,
    }));
  });
}

/** Every stretch of a member on which no joint may stand, and why. */
function closedStretches(
  graph: FrameGraph,
  index: number,
  member: MemberGeometry,
  rules: CutRules,
  share: number,
): Closed[] {
  const { outsideDiameter } = rules;
  const { length, pieces } = member.centreline;
  const besideBend = share * CLEAR_OF_BEND * outsideDiameter;
  const besideWeld = share * clearOfWeld(outsideDiameter);
  const closed: Closed[] = [];
  const around = (at: number, room: number, rule: KeepOut) => closed.push({ from: at - room, to: at + room, rule });
  const stations = pieceStations(member.centreline);
  for (const [number, piece] of pieces.entries()) {
    if (!isDieBend(piece)) continue;
    const begin = stations[number] ?? 0;
    closed.push({ from: begin - besideBend, to: begin + piece.length + besideBend, rule: 'bend' });
  }
  for (const { sitting, end, main, station } of graph.nodes) {
    // the weld runs round the sitting tube's foot: half a diameter over the sine of the angle either side
    const seat = graph.members[sitting];
    const geometry = end === 0 ? seat?.start : seat?.finish;
    const sine = geometry?.kind === 'saddle' ? Math.max(Math.sin(geometry.axisAngle), LEAST_SINE) : 1;
    const foot = outsideDiameter / 2 / sine;
    if (main === index) around(station, foot + besideWeld, 'weld');
    if (sitting === index) around(end, foot + besideWeld, 'weld');
  }
  if (member.closed) {
    around(0, besideWeld, 'weld');
    around(length, besideWeld, 'weld');
  } else {
    around(0, besideBend, 'end');
    around(length, besideBend, 'end');
  }
  for (const { member: name, from, to, why } of rules.barred) {
    if (name !== member.name) continue;
    const room = why === 'weld' ? besideWeld : 0;
    const rule = why === 'fitting' ? 'fitting' : why === 'weld' ? 'weld' : 'barred';
    closed.push({ from: Math.min(from, to) - room, to: Math.max(from, to) + room, rule });
  }
  return closed;
}
