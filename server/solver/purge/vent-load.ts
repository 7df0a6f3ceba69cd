import type { ChamberFlow } from './chamber-flow.ts';
import { USUAL_PRESSURE, ventFlow, ventPressure } from './vent.ts';

/** The vents of the chamber whose pool bears the most, as one hole of the same area. */
export type VentLoad = {
  readonly chamber: ChamberFlow | null;
  /** Bore of that hole [mm]. */
  readonly bore: number;
  /** Pressure behind it at the welding flow [Pa], and the flow that makes 100 Pa [L/min]. */
  readonly pressure: number;
  readonly flowFor100Pa: number;
};

/** Bore of one hole with the area of several [mm]. */
export const asOneHole = (bores: readonly number[]): number => Math.hypot(...bores);

/** What the vents in use bear while the joints close, when they carry all of the welding flow [L/min]. */
export function ventLoad(chambers: readonly ChamberFlow[], weldingFlow: number, ventBore: number): VentLoad {
  const loads = chambers
    .filter(({ vents }) => vents.length > 0)
    .map((chamber) => ({ chamber, bore: asOneHole(chamber.vents.map(({ bore }) => bore)) }));
  const narrowest = loads.reduce<(typeof loads)[number] | null>(
    (least, one) => (least === null || one.bore < least.bore ? one : least),
    null,
  );
  const bore = narrowest?.bore ?? ventBore;
  return {
    chamber: narrowest?.chamber ?? null,
    bore,
    pressure: ventPressure({ flow: weldingFlow, bore }),
    flowFor100Pa: ventFlow({ pressure: USUAL_PRESSURE, bore }),
  };
}
