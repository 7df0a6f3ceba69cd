import type { Finding } from '../../plan/finding.ts';
import { finding } from '../finding.ts';
import { isDieBend } from '../geometry/centreline.ts';
import { NEAR, type Bore } from './bores.ts';
import type { ChamberFlow } from './chamber-flow.ts';
import { peakRise } from './dam-heat.ts';
import { damPockets, damStations } from './dam-pockets.ts';
import type { PurgeContext } from './purge-context.ts';
import { mostHeat } from './purge-work.ts';

/** Nearest and usual distance of a dam from the weld [mm]: paper and tape char nearer; common practice, no source. */
const DAM_DISTANCE = { least: 100, usual: 150 } as const;
/** Farthest that can be typed [mm]; server/job/purge.ts. */
const FARTHEST = 5000;
/** Rounding of stations that does not count as inside of a bend [mm]. */
const ROUNDING = 1e-6;
const FIELD = '/purge/damDistance';

/** What the dams of a frame have to say: where they are near, in a bend, beyond an end, or cannot be taken out again. */
export function damFindings(all: readonly ChamberFlow[], context: PurgeContext): Finding[] {
  const chambers = all.filter(({ extent }) => extent === 'dams');
  return [
    ...nearDams(chambers, context),
    ...damsInBends(chambers, context),
    ...beyondEnds(chambers, context),
    ...staying(chambers, context),
  ];
}

const hasDams = ({ dams }: Bore): boolean => dams.from || dams.to;

/** Dams so near that the weld may burn them, with the rise of temperature there [K]. */
function nearDams(chambers: readonly ChamberFlow[], context: PurgeContext): Finding[] {
  const { damDistance: value } = context.purge;
  if (value >= DAM_DISTANCE.least || !chambers.some(({ bores }) => bores.some(hasDams))) return [];
  const { least, usual } = DAM_DISTANCE;
  const rise = Math.round(peakRise({ heat: mostHeat(context.welds), wall: context.job.tube.wall }, value));
  const clear = clearDistance(context, usual) ?? usual;
  return [finding('dam-near-weld', 'caution', FIELD, { value, low: least, rise }, { field: FIELD, value: clear })];
}

/** Stations of the die bends of each member [mm], by its index. */
const bendsOf = ({ members }: PurgeContext): { from: number; to: number }[][] =>
  members.map(({ centreline }) => {
    let begin = 0;
    return centreline.pieces.flatMap((piece) => {
      const from = begin;
      begin += piece.length;
      return isDieBend(piece) ? [{ from, to: begin }] : [];
    });
  });

/** Members with a dam inside a bend, by index: discs and plugs sit square in a straight only. */
function bentDams(bores: readonly Bore[], context: PurgeContext, bends = bendsOf(context)): number[] {
  return bores.flatMap((bore) => {
    const member = context.members[bore.member];
    if (member === undefined) return [];
    const inside = (station: number) =>
      (bends[bore.member] ?? []).some(({ from, to }) => station > from + ROUNDING && station < to - ROUNDING);
    return damStations(bore, member).some(inside) ? [bore.member] : [];
  });
}

function damsInBends(chambers: readonly ChamberFlow[], context: PurgeContext): Finding[] {
  const { damDistance: value } = context.purge;
  const bends = bendsOf(context);
  const bent = chambers.flatMap(({ number, bores }) =>
    bentDams(bores, context, bends).map((member) => ({ number, member })),
  );
  if (bent.length === 0) return [];
  const clear = clearDistance(context, value);
  const wayOut = clear === null ? { field: '/purge/extent', value: 'whole-frame' } : { field: FIELD, value: clear };
  return bent.map(({ number, member }) =>
    finding(
      'dam-in-bend',
      'stop',
      FIELD,
      { chamber: number, member: context.members[member]?.name ?? '', value },
      wayOut,
    ),
  );
}

/** The distance nearest to a wished one at which every dam lies in a straight [whole mm]; null where there is none. */
function clearDistance(context: PurgeContext, wished: number): number | null {
  const { sites, holes, members } = context;
  const bends = bendsOf(context);
  const clear = (distance: number): boolean =>
    bentDams(damPockets(sites, holes, members, distance), context, bends).length === 0;
  const edges = sites.flatMap(({ member, station }) => {
    const geometry = members[member];
    if (geometry === undefined) return [];
    const { length } = geometry.centreline;
    const turns = geometry.closed ? [-length, 0, length] : [0];
    return (bends[member] ?? []).flatMap(({ from, to }) =>
      turns.flatMap((turn) => [
        ...[from - station + turn, station - to + turn].map((distance) => Math.floor(distance + ROUNDING)),
        ...[to - station + turn, station - from + turn].map((distance) => Math.ceil(distance - ROUNDING)),
      ]),
    );
  });
  const inReach = [wished, DAM_DISTANCE.least, ...edges]
    .filter((distance) => distance >= DAM_DISTANCE.least && distance <= FARTHEST)
    .sort((a, b) => Math.abs(a - wished) - Math.abs(b - wished));
  return [...new Set(inReach)].find(clear) ?? null;
}

/** Welds nearer to an open end than the dams are far: a plug in the end does instead; the nearest weld of each end. */
function beyondEnds(chambers: readonly ChamberFlow[], { members, purge, welds }: PurgeContext): Finding[] {
  const { damDistance: value } = purge;
  const nearest = new Map<string, Finding & { readonly room: number }>();
  for (const { number, sites } of chambers)
    for (const site of sites) {
      const member = members[site.member];
      if (member === undefined || member.closed) continue;
      const rooms = { start: site.station, finish: member.centreline.length - site.station };
      for (const end of ['start', 'finish'] as const) {
        const room = rooms[end];
        const key = `${end} ${member.name}`;
        if (member[end].kind !== 'free' || room >= value || room <= NEAR) continue;
        if ((nearest.get(key)?.room ?? Infinity) <= room) continue;
        const weld = welds[site.weld]?.site.name ?? '';
        const data = { chamber: number, weld, member: member.name, value, high: room };
        nearest.set(key, { ...finding('dam-beyond-end', 'note', FIELD, data), room });
      }
    }
  return [...nearest.values()].map(({ room: _room, ...found }) => found);
}

/** Dams in tubes that no open end lets them be drawn out of once all is welded. */
function staying(chambers: readonly ChamberFlow[], { members, openings }: PurgeContext): Finding[] {
  const told = new Set<number>();
  return chambers.flatMap(({ number, bores }) =>
    bores.flatMap((bore): Finding[] => {
      const open = openings.some(({ kind, member }) => kind === 'end' && member === bore.member);
      if (!hasDams(bore) || open || told.has(bore.member)) return [];
      told.add(bore.member);
      const member = members[bore.member]?.name ?? '';
      return [finding('dam-stays-inside', 'note', '/purge/extent', { chamber: number, member })];
    }),
  );
}
