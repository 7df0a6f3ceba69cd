import type { PlacedJoint } from '../../../job/closing.ts';
import type { Finding } from '../../../plan/finding.ts';
import { finding } from '../../finding.ts';
import type { Candidate } from './candidate.ts';
import type { FreeStretch } from './free-stretches.ts';
import { layoutOf, type CutPlace } from './layouts.ts';
import { pieceStations } from '../../geometry/slice.ts';
import { solvedAs, type Ground, type SpliceTask } from './search-splices.ts';

/** Two joints nearer than this on one member cannot both be welded, in tube diameters: common practice, no source. */
const LEAST_BETWEEN = 1.5;

/**
 * The splice with the joints where a person put them. A joint in a place that is kept free is told, and made all the
 * same where there is tube to cut; joints that part nothing, or leave a scrap of a piece, are stops.
 *
 * @returns candidate null where the joints cannot be worked out
 */
export function ownSplice(
  asked: readonly PlacedJoint[],
  ground: Ground,
  task: SpliceTask,
): { candidate: Candidate | null; findings: Finding[] } {
  const findings: Finding[] = [];
  const places: CutPlace[] = [];
  for (const [index, { member, station }] of asked.entries()) {
    const field = `/closing/joints/${String(index)}`;
    const number = ground.memberIndex.get(member);
    const line = number === undefined ? undefined : ground.graph.members[number]?.centreline;
    if (number === undefined || line === undefined) {
      findings.push(finding('own-joint-no-member', 'stop', `${field}/member`, { member }));
      continue;
    }
    const closed = ground.graph.members[number]?.closed === true;
    if (closed && (station === 0 || station === line.length)) {
      // a closed tube has a weld there already
      const near = nearest(ground.stretches, number, station);
      const wayOut = near === null ? null : { field: `${field}/station`, value: near.at };
      const data = { member, value: station, keepOut: 'weld' };
      findings.push(finding('own-joint-kept-out', 'stop', `${field}/station`, data, wayOut));
      continue;
    }
    if (station <= 0 || station >= line.length) {
      const data = { member, value: station, low: 0, high: line.length };
      findings.push(finding('own-joint-off-tube', 'stop', `${field}/station`, data));
      continue;
    }
    const free = ground.stretches.find((one) => one.member === number && one.from <= station && station <= one.to);
    if (free === undefined) {
      const near = nearest(ground.stretches, number, station);
      const data = { member, value: station, keepOut: near?.rule ?? 'bend' };
      const wayOut = near === null ? null : { field: `${field}/station`, value: near.at };
      findings.push(finding('own-joint-kept-out', 'caution', `${field}/station`, data, wayOut));
    }
    places.push({ stretch: free ?? pieceAt(ground, number, station), at: station, movable: false });
  }
  findings.push(...tooShort(places, ground, task));
  if (places.length === 0 || findings.some(({ grade }) => grade === 'stop')) return { candidate: null, findings };
  const candidate = solvedAs(layoutOf(ground.graph, places), ground, task);
  if (candidate === undefined)
    findings.push(finding('cut-parts-nothing', 'stop', '/closing/joints', { joints: places.length }));
  else if (!candidate.possible) findings.push(finding('own-joints-no-fit', 'stop', '/closing/joints'));
  return { candidate: candidate ?? null, findings };
}

/** The nearest place on a member where a joint may stand, and the rule that keeps the asked one out. */
function nearest(stretches: readonly FreeStretch[], member: number, station: number) {
  let found: { at: number; rule: string; away: number } | null = null;
  for (const { member: own, from, to, startRule, endRule } of stretches) {
    if (own !== member) continue;
    const [at, rule] = station < from ? [from, startRule] : [to, endRule];
    const away = Math.abs(station - at);
    if (found === null || away < found.away) found = { at, rule, away };
  }
  return found;
}

/** The whole piece that a station stands on, for a joint that no free stretch has. */
function pieceAt({ graph }: Ground, member: number, station: number): FreeStretch {
  const line = graph.members[member]?.centreline;
  const stations = line === undefined ? [0, 0] : pieceStations(line);
  const piece = Math.max(0, stations.findIndex((at) => at > station) - 1);
  const [from = 0, to = 0] = [stations[piece], stations[piece + 1]];
  const on = line?.pieces[piece]?.kind === 'straight' ? 'straight' : 'rolled';
  const last = (line?.pieces.length ?? 0) - 1;
  const closed = graph.members[member]?.closed === true;
  const [startRule, endRule] = [
    piece === 0 && !closed ? 'end' : 'bend',
    piece === last && !closed ? 'end' : 'bend',
  ] as const;
  return { member, piece, on, from, to, startRule, endRule, tight: true };
}

/** Neighbouring joints of one member with too little tube between them. */
function tooShort(places: readonly CutPlace[], ground: Ground, { sizes }: SpliceTask): Finding[] {
  const low = LEAST_BETWEEN * sizes.outsideDiameter;
  return places.flatMap(({ stretch, at }, index) => {
    const next = places
      .filter(
        (other, place) =>
          other.stretch.member === stretch.member && (other.at > at || (other.at === at && place > index)),
      )
      .sort((a, b) => a.at - b.at)[0];
    if (next === undefined || next.at - at >= low) return [];
    const member = ground.graph.members[stretch.member]?.name ?? '';
    return [finding('own-joints-too-near', 'stop', '/closing/joints', { member, value: next.at - at, low })];
  });
}
