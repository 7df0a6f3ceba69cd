import type { Tube } from '../../job/tube.ts';
import type { WeldForm, Welding } from '../../job/welding.ts';
import type { Preparation } from '../../plan/welding.ts';
import { electrodeFor } from './electrodes.ts';
import { fillerDiameterFor, fillerFor, isDuplex } from './filler.ts';
import { heatInput } from './heat.ts';
import { preparationOf } from './preparation.ts';
import { startCurrent, type StartCurrent } from './start-current.ts';
import { filletLeg, weldArea } from './weld-section.ts';

/** Thickest wall that a tight butt is fused on without filler where nobody says otherwise [mm]: common practice. */
const FUSED_ALONE = 2;
/** Arc voltage in argon [V], 9 to 12: common practice, no source. */
export const ARC_VOLTAGE = { start: 10.5, low: 9, high: 12 } as const;
/** Travel by hand [mm/s]: 2.5 on 1 mm of wall down to 1.5 on 2 mm, ± 0.5; 1 to 2.5 is common practice, no source. */
export const TRAVEL = { thin: { wall: 1, speed: 2.5 }, thick: { wall: 2, speed: 1.5 }, doubt: 0.5 } as const;
/** Bores of cups no. 5 to 8 [mm] and the thickest wall of each [mm]; no. n is n/16 in, which cup goes where is practice. */
const CUPS = [
  { upTo: 1, bore: 7.9 },
  { upTo: 2, bore: 9.5 },
  { upTo: 3, bore: 11.1 },
  { upTo: Infinity, bore: 12.7 },
] as const;
const WIDEST_CUP = CUPS[3];
/** Torch flow for each mm of cup [L/min], and its least and most: common practice, no source. */
export const TORCH_FLOW = { perBore: 1, least: 6, most: 10 } as const;
/** Gas before the arc [s], and after it for each ampere and at least [s]: common practice, no source. */
export const PRE_FLOW = 1;
export const POST_FLOW = { perAmpere: 0.1, least: 5 } as const;
/** Thickest wall of one run [mm], and the most that one run fills beyond it [mm²]: common practice; our own choice. */
const ONE_RUN = { wall: 3, area: 10 } as const;
/** Interpass temperature at most [°C], austenitic and 22Cr duplex: EN 1011-3, from memory. */
const INTERPASS = 150;

/** The forms of weld, in the order in which they are told. */
export const FORMS: readonly WeldForm[] = ['butt', 'saddle', 'pad'];

/** What settings are found for. */
export type SettingWork = {
  readonly welding: Welding;
  readonly tube: Pick<Tube, 'wall' | 'grade'>;
  /** Between the faces of a butt [mm]. */
  readonly gap: number;
  /** The thickest plate that a pad is welded to [mm]; 0 or not there: none. */
  readonly plate?: number;
};

/** Settings of one form of weld as they are used: typed, or to begin with. */
export type WeldSetting = {
  readonly form: WeldForm;
  readonly preparation: Preparation;
  readonly process: '141' | '142';
  readonly start: StartCurrent;
  readonly current: number;
  readonly voltage: number;
  readonly travelSpeed: number;
  readonly electrode: number;
  readonly cup: number;
  readonly torchFlow: number;
  readonly preFlow: number;
  readonly postFlow: number;
  /** Empty where there is none, or none is known. */
  readonly filler: string;
  /** null: no filler. */
  readonly fillerDiameter: number | null;
  readonly runs: number;
  readonly interpass: number;
  /** Metal that is fed [mm²], and the leg of a fillet of it [mm]; nothing without filler. */
  readonly area: number;
  readonly leg: number | null;
  /** Q of EN 1011-1 [J/mm]. */
  readonly heat: number;
};

/**
 * Process to begin with: no filler in a tight square butt of a thin wall, unless the grade is a duplex or a sleeve lies
 * behind it, into which it has to be melted.
 */
export const startProcess = (
  preparation: Preparation,
  { tube, welding }: Pick<SettingWork, 'tube' | 'welding'>,
): '141' | '142' =>
  preparation === 'square-tight' && tube.wall <= FUSED_ALONE && !isDuplex(tube.grade) && welding.backing !== 'sleeve'
    ? '142'
    : '141';

/** Travel by hand for a wall [mm/s]: in a straight line between two walls, held beyond them. */
export function startTravel(wall: number): number {
  const { thin, thick } = TRAVEL;
  const share = Math.min(1, Math.max(0, (wall - thin.wall) / (thick.wall - thin.wall)));
  return thin.speed + share * (thick.speed - thin.speed);
}

/** Runs that fill an area [mm²] on a wall [mm]: one up to 3 mm; beyond it a root and a cap, and more by area. */
export const startRuns = (wall: number, area: number): number =>
  wall <= ONE_RUN.wall ? 1 : Math.max(2, Math.ceil(area / ONE_RUN.area));

/** Settings of a form of weld: every typed value, and for the others one to begin with. */
export function weldSetting(form: WeldForm, { welding, tube, gap, plate = 0 }: SettingWork): WeldSetting {
  const typed = welding[form];
  const { wall, grade } = tube;
  const { groove } = welding;
  const preparation = preparationOf(form, { wall, gap, groove });
  const process = typed.process ?? startProcess(preparation, { tube, welding });
  const fed = process === '141';
  const start = startCurrent(form, process, wall, form === 'pad' ? plate : 0);
  const current = typed.current ?? (start.low + start.high) / 2;
  const voltage = typed.voltage ?? ARC_VOLTAGE.start;
  const travelSpeed = typed.travelSpeed ?? startTravel(wall);
  const cup = typed.cup ?? startCup(wall);
  const area = fed ? weldArea({ wall, gap, preparation, groove }) : 0;
  return {
    form,
    preparation,
    process,
    start,
    current,
    voltage,
    travelSpeed,
    electrode: typed.electrode ?? electrodeFor(current),
    cup,
    torchFlow: typed.torchFlow ?? Math.min(TORCH_FLOW.most, Math.max(TORCH_FLOW.least, TORCH_FLOW.perBore * cup)),
    preFlow: typed.preFlow ?? PRE_FLOW,
    postFlow: typed.postFlow ?? Math.max(POST_FLOW.least, POST_FLOW.perAmpere * current),
    filler: fed ? (typed.filler === '' ? fillerFor(grade) : typed.filler) : '',
    fillerDiameter: fed ? (typed.fillerDiameter ?? fillerDiameterFor(wall)) : null,
    runs: typed.runs ?? startRuns(wall, area),
    interpass: typed.interpass ?? INTERPASS,
    area,
    leg: fed && form !== 'butt' ? filletLeg(wall) : null,
    heat: heatInput({ current, voltage, travelSpeed }),
  };
}

const startCup = (wall: number): number => (CUPS.find(({ upTo }) => wall <= upTo) ?? WIDEST_CUP).bore;
