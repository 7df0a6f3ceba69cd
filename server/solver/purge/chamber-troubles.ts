import type { Finding } from '../../plan/finding.ts';
import { finding } from '../finding.ts';
import { pointsOf } from './chamber.ts';
import type { ChamberFlow } from './chamber-flow.ts';
import { chamberTimes, wayDescent, type ChamberTimes } from './chamber-times.ts';
import { closedBy } from './closed-bore.ts';
import { clearingTime, type DeadBore } from './dead-legs.ts';
import { gasWays } from './gas-ways.ts';
import { LANCE, LEAST_LANCE_HOLE, tightForLance } from './lance.ts';
import type { Filling, PurgeContext } from './purge-context.ts';

/** A chamber with its times and what no gas runs through. */
export type LookedAt = {
  readonly chamber: ChamberFlow;
  readonly times: ChamberTimes;
  readonly dead: readonly DeadBore[];
};

export function lookedAt(chamber: ChamberFlow, context: PurgeContext, filling: Filling): LookedAt {
  const { model } = context.purge;
  return {
    chamber,
    times: chamberTimes(chamber, context, { filling, model, withLong: true }),
    dead: chamber.dead,
  };
}

const named = ({ bores }: ChamberFlow, { members }: PurgeContext): string =>
  members[bores[0]?.member ?? -1]?.name ?? '';

/** What is wrong with the way that gas passes a chamber, whatever the target; without ways out. */
export function passingTroubles(chamber: ChamberFlow, context: PurgeContext): Finding[] {
  const { number, trouble, lance, feed } = chamber;
  const data = { chamber: number, member: named(chamber, context) };
  if (trouble !== null) {
    const by = closedBy(chamber, context);
    if (trouble === 'closed') return [finding('closed-chamber', 'stop', by.field, { ...data, ...by.data })];
    const welds = chamber.openings.map(({ name }) => name).join(', ');
    return [finding('closed-by-weld', 'stop', by.field, { ...data, ...by.data, welds })];
  }
  const tight = tightForLance(chamber);
  if (tight !== null) {
    const hole = { ...data, value: tight.bore, low: LEAST_LANCE_HOLE, lance: LANCE };
    return [finding('one-opening', 'stop', '/purge/vent', hole)];
  }
  // beside a dam both hoses go in, and one of them on to the far end, as a matter of course
  if (lance) return feed?.kind === 'dam' ? [] : [finding('one-opening', 'caution', '/purge/vent', data)];
  if (chamber.extent === 'dams') return [];
  return [...heldTroubles(chamber, context), ...starvedBore(chamber, context)];
}

/** Gas that runs down on its way, or hardly up. */
function heldTroubles(chamber: ChamberFlow, context: PurgeContext): Finding[] {
  const { number, network, feed, vents } = chamber;
  const { typed, bore } = context;
  const [vent] = vents;
  if (network === null || feed === null || vent === undefined) return [];
  const falls = Math.max(0, ...gasWays(network).ways.map((way) => wayDescent(way, chamber, network, context)));
  if (falls >= bore) {
    const field =
      feed === typed.feed ? '/purge/feed' : vents.some((one) => one === typed.vent) ? '/purge/vent' : '/purge/up';
    return [finding('fed-high', 'caution', field, { chamber: number, value: falls, high: bore })];
  }
  const rise = vent.height - feed.height;
  return rise >= bore ? [] : [finding('held-level', 'note', '/purge/up', { chamber: number, value: rise, low: bore })];
}

/** A chamber whose slowest way takes so many times as long as its gas would need in one way is starved there. */
const STARVED = 2;

/** Whether the whole chamber waits for bore that little gas reaches through holes under saddles. */
function isStarved({ network, slowest, residence, litres, extent }: ChamberFlow): boolean {
  if (network === null || extent === 'dams' || residence <= (STARVED * 60 * litres) / network.flow) return false;
  const { tubes, passages } = network.graph;
  return slowest.some((edge) => edge >= tubes.length && edge < tubes.length + passages.length);
}

function starvedBore(chamber: ChamberFlow, { members }: PurgeContext): Finding[] {
  const { network, slowest, number, bores, residence } = chamber;
  if (network === null || !isStarved(chamber)) return [];
  const { tubes } = network.graph;
  const flowOf = (edge: number): number => Math.abs(network.flows[edge] ?? 0);
  const least = slowest.filter((edge) => edge < tubes.length).reduce((a, b) => (flowOf(b) < flowOf(a) ? b : a));
  const member = members[bores[tubes[least]?.bore ?? -1]?.member ?? -1]?.name ?? '';
  const share = Number(((100 * flowOf(least)) / network.flow).toPrecision(2));
  const times = Number(((residence * network.flow) / (60 * chamber.litres)).toPrecision(2));
  return [finding('bore-by-vent-holes', 'caution', '/purge/holes/bore', { chamber: number, member, share, times })];
}

/** All that is wrong with a chamber, without ways out. */
export function troublesOf({ chamber, times, dead }: LookedAt, context: PurgeContext, { step }: Filling): Finding[] {
  const legs = dead.map((leg): Finding => {
    const clears = clearingTime(leg.length, step);
    const late = clears > times.printed;
    const member = context.members[chamber.bores[leg.parts[0]?.bore ?? -1]?.member ?? -1]?.name ?? '';
    const data = { chamber: chamber.number, member, value: leg.length, minutes: Math.ceil(clears / 60) };
    const field = '/purge/holes/toAir';
    if (leg.welds.length > 0 && late) {
      const welds = leg.welds.flatMap((weld) => context.welds[weld]?.site.name ?? []).join(', ');
      return finding('weld-in-dead-leg', 'stop', field, { ...data, welds });
    }
    const up = pointsOf(leg, context.bore) === 'up';
    return finding('dead-leg', up || late ? 'caution' : 'note', field, { ...data, ...(up ? { way: 'upwards' } : {}) });
  });
  return [...passingTroubles(chamber, context), ...legs];
}
