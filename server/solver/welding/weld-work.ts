import type { Tube } from '../../job/tube.ts';
import type { WeldForm, Welding } from '../../job/welding.ts';
import type { MemberGeometry } from '../frame/frame-geometry.ts';
import { weldSetting, type WeldSetting } from './settings.ts';
import { plugsOf } from './sleeve.ts';
import { buttLength, padLength, saddleLength, type Seat } from './weld-length.ts';
import type { WeldSite } from './weld-sites.ts';

/** Density of stainless weld metal [g/mm³]; that of austenitic grades, EN 10088-1. */
export const WELD_METAL_DENSITY = 0.0079;
/** Rod to have for rod in the weld: 15 % of stubs and 5 % of losses on top; common practice, no source. */
export const ROD_ALLOWANCE = 1.2;
/** Starts of the arc in one run: each quarter has its own; our own choice. */
export const STARTS = 4;

/** What one weld takes. */
export type WeldWork = {
  readonly site: WeldSite;
  /** Of all its way round [mm]; plug welds of a sleeve are not in it. */
  readonly length: number;
  /** With the plug welds of its sleeve [s]. */
  readonly arcTime: number;
  /** Filler to have at hand [g, mm]. */
  readonly fillerMass: number;
  readonly fillerLength: number;
  readonly torchFlow: number;
  /** Gas of the torch [L]. */
  readonly torchGas: number;
  /** Heat of each run for each length [J/mm], Q of EN 1011-1 with its factor. */
  readonly heat: number;
};

/** Welds that hold a sleeve behind a butt: how many, the way of the arc round all their holes [mm], what fills them [mm³]. */
export type PlugWelds = { readonly count: number; readonly length: number; readonly metal: number };

const NO_PLUGS: PlugWelds = { count: 0, length: 0, metal: 0 };

/** Plug welds that belong to one weld: those of its sleeve, each fused once round its hole and filled; our own choice. */
export function plugWelds(
  form: WeldForm,
  { welding, tube }: { readonly welding: Pick<Welding, 'backing'>; readonly tube: Tube },
): PlugWelds {
  if (form !== 'butt' || welding.backing !== 'sleeve') return NO_PLUGS;
  const { count, bore } = plugsOf(tube);
  return { count, length: count * Math.PI * bore, metal: (count * Math.PI * bore ** 2 * tube.wall) / 4 };
}

/** The thickest plate that a pad of these welds is on [mm]; 0: none. */
export const thickestPlate = (sites: readonly WeldSite[]): number =>
  sites.reduce((most, { plate }) => Math.max(most, plate?.thickness ?? 0), 0);

/**
 * Lengths, times, filler, gas and heat of welds; plain numbers, because every way of a correction asks for them.
 *
 * @param work settings, tube, gap between the faces of a butt [mm], and the members that the welds are on
 */
export function weldWork(
  sites: readonly WeldSite[],
  work: {
    readonly welding: Welding;
    readonly tube: Tube;
    readonly gap: number;
    readonly members: readonly MemberGeometry[];
  },
): WeldWork[] {
  const settings = new Map<WeldForm, WeldSetting>();
  const plate = thickestPlate(sites);
  const settingOf = (form: WeldForm): WeldSetting => {
    const known = settings.get(form);
    if (known !== undefined) return known;
    const found = weldSetting(form, { ...work, plate });
    settings.set(form, found);
    return found;
  };
  return sites.map((site): WeldWork => {
    const setting = settingOf(site.form);
    const length = lengthOf(site, work);
    const plugs = plugWelds(site.form, work);
    return { site, ...takenBy(length, setting, plugs) };
  });
}

/** What one weld of a length takes by its settings. */
export function takenBy(length: number, setting: WeldSetting, plugs: PlugWelds = NO_PLUGS): Omit<WeldWork, 'site'> {
  const { fillerDiameter, torchFlow, preFlow, postFlow, runs, travelSpeed, heat } = setting;
  const arcTime = (length * runs + plugs.length) / travelSpeed;
  const rod = setting.process === '142' ? 0 : ROD_ALLOWANCE * (setting.area * length + plugs.metal);
  return {
    length,
    arcTime,
    fillerMass: WELD_METAL_DENSITY * rod,
    fillerLength: fillerDiameter === null ? 0 : rod / ((Math.PI * fillerDiameter ** 2) / 4),
    torchFlow,
    torchGas: (torchFlow * (arcTime + (STARTS * runs + plugs.count) * (preFlow + postFlow))) / 60,
    heat,
  };
}

/** Length of a weld by its form [mm]. */
function lengthOf(site: WeldSite, { tube, members }: { tube: Tube; members: readonly MemberGeometry[] }): number {
  switch (site.form) {
    case 'butt':
      return buttLength(tube);
    case 'pad':
      return padLength(tube);
    case 'saddle':
      return saddleLength(seatOf(site, members), tube);
  }
}

/** How a saddle sits: as its member ends, else square and in the middle. */
export function seatOf({ member: name, end }: WeldSite, members: readonly MemberGeometry[]): Seat {
  const member = members.find((one) => one.name === name);
  const seat = member === undefined || end === null ? undefined : member[end];
  return seat?.kind === 'saddle' ? seat : { axisAngle: Math.PI / 2, offset: 0 };
}
