import { opensUnder } from '../frame/opens-under.ts';
import { connectedBores, wholeBores } from './bores.ts';
import { blindPlates, plateHoleField } from './changed-context.ts';
import type { ChamberFlow } from './chamber-flow.ts';
import type { PurgeContext } from './purge-context.ts';

/** A saddle end without a hole under it: the end, the tube that it sits on, and its weld where it is made in this work. */
export type ShutSaddle = {
  readonly member: number;
  readonly onto: number;
  readonly end: 'start' | 'finish';
  readonly weld: string | null;
};

/** The saddle ends of a frame that no hole opens. */
export function shutSaddles({ members, purge, welds }: PurgeContext): ShutSaddle[] {
  return members.flatMap((member, index) =>
    (['start', 'finish'] as const).flatMap((end): ShutSaddle[] => {
      const seat = member[end];
      if (seat.kind !== 'saddle' || opensUnder(purge.holes, member.name, end)) return [];
      const onto = members.findIndex(({ name }) => name === seat.onto);
      const weld = welds.find(({ site }) => site.kind === 'saddle' && site.member === member.name && site.end === end);
      return [{ member: index, onto, end, weld: weld?.site.name ?? null }];
    }),
  );
}

/** Whether dams part a chamber from openings that its bores are connected to without them. */
function cutOffByDams({ bores, extent }: ChamberFlow, { members, holes, openings }: PurgeContext): boolean {
  if (extent !== 'dams' || !bores.some(({ dams }) => dams.from || dams.to)) return false;
  const own = new Set(bores.map(({ member }) => member));
  // whole bores are one for each member, by its index
  const groups = connectedBores(wholeBores(members), holes, members).filter((group) =>
    group.some((member) => own.has(member)),
  );
  return openings.some(({ kind, member }) => kind !== 'gap' && groups.some((group) => group.includes(member)));
}

/**
 * What keeps a chamber without a way out closed, in the order in which it is opened most easily, as the field that it
 * is typed in and what the words need: dams, plates without a hole, saddles that are welded now, saddles that were welded
 * before, or nothing but the wall of its tubes.
 */
export function closedBy(
  chamber: ChamberFlow,
  context: PurgeContext,
): { field: string; data: Record<string, string | number> } {
  const { members, purge } = context;
  if (cutOffByDams(chamber, context)) return { field: '/purge/extent', data: { dams: purge.damDistance } };
  const blind = blindPlates(chamber, context);
  const [plate] = blind;
  if (plate !== undefined)
    return { field: plateHoleField(plate), data: { plates: blind.map(({ name }) => name).join(', ') } };
  const touches = ({ member, onto }: ShutSaddle): boolean =>
    chamber.bores.some((bore) => bore.member === member || bore.member === onto);
  const shut = shutSaddles(context).filter(touches);
  const now = shut.flatMap(({ weld }) => weld ?? []);
  if (now.length > 0) return { field: '/purge/holes/underSaddles', data: { drill: now.join(', ') } };
  const names = new Set(shut.flatMap(({ member }) => members[member]?.name ?? []));
  if (names.size > 0) return { field: '/purge/holes/underSaddles', data: { fitted: [...names].join(', ') } };
  return { field: '/purge/holes/toAir', data: { bare: members[chamber.bores[0]?.member ?? -1]?.name ?? '' } };
}
