import type { PurgeSetUp } from '../../plan/purge.ts';
import { DisjointSets } from '../disjoint-sets.ts';
import { figure, input } from '../figure.ts';
import { numbered, termsOf } from '../numbered-symbols.ts';
import type { ChamberFlow } from './chamber-flow.ts';
import type { LookedAt } from './chamber-troubles.ts';
import type { PurgeContext } from './purge-context.ts';

/** Chambers that are full at the same time, for the welds that are made then. */
export type SetUp = {
  readonly number: number;
  readonly chambers: readonly ChamberFlow[];
  /** By index, in order, each once. */
  readonly welds: readonly number[];
};

const firstWeld = ({ welds }: ChamberFlow): number => welds[0] ?? Infinity;

/**
 * Puts chambers into set-ups: a weld that heats several needs all of them full while it is made, so that chambers with a
 * weld in common belong together, and those that hang together by others too. Set-ups, and the chambers of one, come in
 * the order of their first welds as the welds are listed, then as they came; chambers are numbered anew through all of
 * them. The order of welding is left out of it: meter readings are typed by the number of a chamber, and would pass to
 * another one whenever that order was changed.
 */
export function setUpsOf(chambers: readonly ChamberFlow[]): SetUp[] {
  const sets = new DisjointSets(chambers.length);
  const heats = new Map<number, number>();
  for (const [index, { welds }] of chambers.entries())
    for (const weld of welds) {
      const other = heats.get(weld);
      if (other === undefined) heats.set(weld, index);
      else sets.join(index, other);
    }
  const order = [...chambers.keys()].sort((a, b) => {
    const [one, other] = [chambers[a], chambers[b]];
    return one === undefined || other === undefined ? 0 : firstWeld(one) - firstWeld(other) || a - b;
  });
  const groups = new Map<number, ChamberFlow[]>();
  for (const index of order) {
    const chamber = chambers[index];
    if (chamber === undefined) continue;
    const set = sets.of(index);
    const known = groups.get(set);
    if (known === undefined) groups.set(set, [chamber]);
    else known.push(chamber);
  }
  let number = 0;
  return [...groups.values()].map((group, index) => ({
    number: index + 1,
    chambers: group.map((chamber) => ({ ...chamber, number: (number += 1) })),
    welds: [...new Set(group.flatMap(({ welds }) => welds))].sort((a, b) => a - b),
  }));
}

/** A set-up as the plan shows it, its chambers looked at. */
export function setUpOf(
  { number, chambers, welds }: SetUp,
  looked: readonly (LookedAt & { readonly setup: number })[],
  context: PurgeContext,
): PurgeSetUp {
  const waits = looked
    .filter(({ setup }) => setup === number)
    .map(({ times }, index) => input(numbered('t', index + 1), 'wait-of-a-chamber', times.printed, 's'));
  const terms = termsOf('t', waits.length, ', ');
  return {
    number,
    chambers: chambers.map((chamber) => chamber.number),
    welds: welds.flatMap((weld) => context.welds[weld]?.site.name ?? []),
    wait: figure(
      Math.max(...waits.map(({ value }) => value)),
      's',
      waits.length > 1 ? `t = max(${terms})` : `t = ${terms}`,
      waits,
      ['gas-network', 'geometry'],
    ),
  };
}
