import type { Purge } from '../../job/purge.ts';
import { tubePlaceEnd } from '../frame/tube-place-end.ts';
import { alongBore } from './bores.ts';
import type { ChamberFlow } from './chamber-flow.ts';
import { purgeContext, type PurgeContext } from './purge-context.ts';

/** The same frame and welds with another purge. */
export const withPurge = ({ job, frame, welds }: PurgeContext, change: Partial<Purge>): PurgeContext =>
  purgeContext({ ...job, purge: { ...job.purge, ...change } }, frame, welds);

/** A plate that is welded to an end of a tube: its place in the list of fixing points, and its weld by index. */
export type Plate = { readonly fixing: number; readonly name: string; readonly weld: number; readonly hole: number };

/** The plates that a job has on the ends of its tubes. */
export function platesOf({ job, members, welds }: PurgeContext): (Plate & { member: number; station: number })[] {
  return job.fixing.flatMap((point, fixing) => {
    if (point.fixing !== 'pad' || point.plate === null) return [];
    const member = members.findIndex(({ name }) => name === point.at.member);
    const geometry = members[member];
    const end = geometry === undefined ? undefined : tubePlaceEnd(point.at, geometry);
    const weld = welds.findIndex(
      ({ site }) => site.kind === 'pad' && site.member === point.at.member && site.end === end,
    );
    const site = welds[weld]?.site;
    if (site === undefined) return [];
    return [{ fixing, name: point.name, weld, hole: point.plate.hole, member, station: site.station }];
  });
}

/** The plates of a chamber that no hole goes through. */
export const blindPlates = ({ bores, members }: ChamberFlow, context: PurgeContext): Plate[] =>
  platesOf(context).filter(({ hole, member, station }) => {
    const geometry = members[member];
    return (
      hole === 0 &&
      geometry !== undefined &&
      bores.some((bore) => bore.member === member && alongBore(bore, geometry, station) !== undefined)
    );
  });

/** The same with a hole [mm] through one plate. */
export function withPlateHole(
  { job, frame, welds }: PurgeContext,
  { fixing, weld }: Plate,
  hole: number,
): PurgeContext {
  const points = job.fixing.map((point, index) =>
    index === fixing && point.plate !== null ? { ...point, plate: { ...point.plate, hole } } : point,
  );
  const holed = welds.map((one, index) =>
    index === weld && one.site.plate !== null
      ? { ...one, site: { ...one.site, plate: { ...one.site.plate, hole } } }
      : one,
  );
  return purgeContext({ ...job, fixing: points }, frame, holed);
}

/** JSON pointer of the hole through a plate. */
export const plateHoleField = ({ fixing }: Plate): string => `/fixing/${String(fixing)}/plate/hole`;
