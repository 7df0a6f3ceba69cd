import type { Finding } from '../../plan/finding.ts';
import { chamberFlows, type ChamberFlow } from './chamber-flow.ts';
import { plateHoleField, platesOf, withPlateHole, withPurge } from './changed-context.ts';
import type { HoleDrop, PoolLoad } from './pool-load.ts';
import type { PurgeContext } from './purge-context.ts';
import { USUAL_PRESSURE } from './vent.ts';
import { worstPool, type VentLoad } from './vent-load.ts';
import { WIDEST_HOLE } from './wider-holes.ts';

/** Bores are told in tenths of a millimetre, flows in tenths of a litre. */
const TENTHS = 10;

/** A bore that can be made wider: its field, what it is now and what it may come to [mm], and the job with it. */
type Bored = {
  readonly field: string;
  readonly bore: number;
  readonly most: number;
  readonly with: (bore: number) => PurgeContext;
};

/** A flow rounded down to what is told, so that it is not over it; under a tenth as it is [L/min]. */
export const roundedDown = (flow: number): number =>
  flow < 1 / TENTHS ? flow : Math.floor(TENTHS * flow + 1e-9) / TENTHS;

/** The hole that most of the pressure is lost at. */
export const throttleOf = ({ holes }: Pick<PoolLoad, 'holes'>): HoleDrop | null =>
  holes.reduce<HoleDrop | null>((most, one) => (most === null || one.pressure > most.pressure ? one : most), null);

const ventBore = (context: PurgeContext): Bored => ({
  field: '/purge/ventBore',
  bore: context.purge.ventBore,
  most: context.bore,
  with: (wide) => withPurge(context, { ventBore: wide }),
});

/** What is typed of a hole that gas passes on its way to the air. */
function boredAs({ vent }: HoleDrop, context: PurgeContext): Bored {
  const { purge, bore } = context;
  const { holes } = purge;
  if (vent === null)
    return {
      field: '/purge/holes/bore',
      bore: holes.bore,
      most: WIDEST_HOLE * bore,
      with: (wide) => withPurge(context, { holes: { ...holes, bore: wide } }),
    };
  if (vent.kind === 'hole') {
    const at = Number(vent.name) - 1;
    const toAir = (wide: number) => holes.toAir.map((one, index) => (index === at ? { ...one, bore: wide } : one));
    return {
      field: `/purge/holes/toAir/${String(at)}/bore`,
      bore: vent.bore,
      most: WIDEST_HOLE * bore,
      with: (wide) => withPurge(context, { holes: { ...holes, toAir: toAir(wide) } }),
    };
  }
  const plate = platesOf(context).find(
    ({ member, station }) => vent.kind === 'plate' && member === vent.member && station === vent.station,
  );
  if (plate === undefined) return ventBore(context);
  return {
    field: plateHoleField(plate),
    bore: vent.bore,
    most: bore,
    with: (wide) => withPlateHole(context, plate, wide),
  };
}

/** Field of the bore that throttles the gas most. */
export const throttleField = ({ pool, holes }: VentLoad, context: PurgeContext): string => {
  const throttle = pool === null ? null : throttleOf({ holes });
  return throttle === null ? '/purge/ventBore' : boredAs(throttle, context).field;
};

/**
 * A wider bore that brings every pool to 100 Pa, by trying: that of the hole which throttles most, else the vents; a
 * lower welding flow where neither does by itself.
 */
export function easedPools(
  chambers: readonly ChamberFlow[],
  context: PurgeContext,
  { pool, holes, flowFor100Pa }: VentLoad,
): Finding['wayOut'] {
  const extent = chambers[0]?.extent ?? context.purge.extent;
  const throttle = pool === null ? null : throttleOf({ holes });
  const bored = [...(throttle === null ? [] : [boredAs(throttle, context)]), ventBore(context)];
  for (const one of bored.filter(({ field }, index) => bored.findIndex((other) => other.field === field) === index)) {
    const eases = (tenths: number): boolean => {
      const changed = one.with(tenths / TENTHS);
      const load = worstPool(chamberFlows(changed, extent), context.purge.weldingFlow);
      return load !== null && load.pressure <= USUAL_PRESSURE;
    };
    const value = pool === null ? null : least(Math.floor(TENTHS * one.bore) + 1, Math.floor(TENTHS * one.most), eases);
    if (value !== null) return { field: one.field, value: value / TENTHS };
  }
  const lower = Math.floor(TENTHS * flowFor100Pa) / TENTHS;
  return lower > 0 ? { field: '/purge/weldingFlow', value: lower } : null;
}

/** The least whole number between two that something holds for from there on; null where it does not even for the most. */
function least(from: number, to: number, holds: (one: number) => boolean): number | null {
  if (from > to || !holds(to)) return null;
  let [low, high] = [from, to];
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if (holds(middle)) high = middle;
    else low = middle + 1;
  }
  return high;
}
