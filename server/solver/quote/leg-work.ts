import type { SettledJob } from '../../job/job.ts';
import type { WeldForm } from '../../job/welding.ts';
import type { LegPlan } from '../../plan/leg.ts';
import type { QuotePart } from '../../plan/quote.ts';
import { finishMinutesOf } from '../finish/finish-minutes.ts';
import { RADIANS } from '../geometry/angle.ts';
import { gasOxygen } from '../purge/gas.ts';
import { fromAir, wellMixedVolumes } from '../purge/purge-models.ts';
import { holdTime } from '../purge/purge-work.ts';
import { rootCooling } from '../purge/root-cooling.ts';
import { cutList } from '../stock/cut-list.ts';
import { floorTime } from '../welding/operating-factor.ts';
import { weldSetting } from '../welding/settings.ts';
import { mitreLength, padLength, saddleLength } from '../welding/weld-length.ts';
import { takenBy, type WeldWork } from '../welding/weld-work.ts';
import { byOperation } from './operations.ts';
import type { Quantities } from './quantities.ts';

/** Ends of a leg that are sawn or shaped. */
const ENDS = 2;

/** One weld of a leg: at its head on the frame's tube, or round its foot on a plate. */
type LegWeld = Omit<WeldWork, 'site'> & { readonly form: WeldForm };

/** What one leg takes beside its piece: minutes, gas [L], filler [g], round sawn and welded [m]. */
type OneLeg = {
  readonly name: string;
  readonly welds: readonly LegWeld[];
  readonly sawn: number;
  readonly welded: number;
  readonly arc: number;
  readonly wait: number;
  readonly grinding: number;
  readonly purgeGas: number;
  readonly torchGas: number;
  readonly filler: number;
};

/**
 * What the legs of a job take for one frame. Each is a piece with two ends to be cut. A saddle is welded to the frame's tube,
 * a foot with a plate round its end; an eye, a socket and a plain foot have no weld. A leg with a weld is filled by itself,
 * once, for all its welds, as one vessel that is well mixed. The bore of the frame's tube under a saddle is not in it.
 *
 * @param legs those that could be told
 * @returns null where there is none
 */
export function legWork(job: SettledJob, legs: readonly LegPlan[]): Quantities | null {
  if (legs.length === 0) return null;
  const all = legs.map((leg) => oneLeg(job, leg));
  const total = (of: (leg: OneLeg) => number): number => all.reduce((sum, leg) => sum + of(leg), 0);
  const parts = (of: (leg: OneLeg) => number, unit: QuotePart['unit']): QuotePart[] =>
    all.flatMap((leg) => (of(leg) > 0 ? [{ key: 'leg', name: leg.name, value: of(leg), unit }] : []));
  const welds = total((leg) => leg.welds.length);
  const welded = total((leg) => leg.welded);
  const left = job.finish.treatment === 'none' && job.finish.cleaning === 'none';
  return {
    pieces: cutList({ effort: { pieces: [] }, legs, tube: job.tube }),
    counts: {
      ...NONE,
      cut: ENDS * legs.length,
      fit: welds,
      purge: total((leg) => Number(leg.wait > 0)),
      weld: welds,
      finish: left ? 0 : welds,
    },
    metres: { ...NONE, cut: total(({ sawn }) => sawn), fit: welded, weld: welded, finish: left ? 0 : welded },
    process: {
      ...NONE,
      purge: total(({ wait }) => wait),
      weld: total(({ arc }) => arc),
      finish: total(({ grinding }) => grinding),
    },
    purgeGas: total(({ purgeGas }) => purgeGas),
    torchGas: total(({ torchGas }) => torchGas),
    filler: total(({ filler }) => filler),
    welds,
    parts: {
      gas: parts(({ purgeGas, torchGas }) => purgeGas + torchGas, 'L'),
      filler: parts(({ filler }) => filler, 'g'),
      purge: parts(({ wait }) => wait, 'min'),
      weld: parts(({ arc }) => arc, 'min'),
      finish: parts(({ grinding }) => grinding, 'min'),
    },
  };
}

const NONE = byOperation(() => 0);

function oneLeg(job: SettledJob, leg: LegPlan): OneLeg {
  const welds = weldsOf(job, leg);
  const total = (of: (weld: LegWeld) => number): number => welds.reduce((sum, weld) => sum + of(weld), 0);
  const { grinding, blending } = finishMinutesOf(
    job.finish,
    welds.map(({ form }) => ({ site: { form } })),
  );
  return {
    // as the cut list calls it
    name: leg.name === '' ? `leg ${String(leg.number)}` : leg.name,
    welds,
    sawn: (ENDS * padLength(leg)) / 1000,
    welded: total(({ length }) => length) / 1000,
    arc: total(({ arcTime }) => arcTime) / 60,
    grinding: grinding + blending,
    ...purgeOf(job, leg, welds),
    torchGas: total(({ torchGas }) => torchGas),
    filler: total(({ fillerMass }) => fillerMass),
  };
}

/** Welds of a leg: along its own wall, by the job's settings for a saddle and for a plate. */
function weldsOf(
  { tube, welding, closing: { gap } }: SettledJob,
  { outsideDiameter, wall, head, foot }: LegPlan,
): LegWeld[] {
  const welded = (form: WeldForm, length: number): LegWeld => {
    const setting = weldSetting(form, { welding, tube: { wall, grade: tube.grade }, gap, plate: foot.plate });
    return { form, ...takenBy(length, setting) };
  };
  const seat = { axisAngle: head.axisAngle.value * RADIANS, offset: 0 };
  const saddle = saddleLength(seat, { outsideDiameter, wall, main: tube.outsideDiameter });
  const round =
    foot.end === 'mitre'
      ? mitreLength({ outsideDiameter }, foot.tilt.value * RADIANS)
      : padLength({ outsideDiameter, wall });
  return [
    ...(head.end === 'saddle' ? [welded('saddle', saddle)] : []),
    ...(foot.end !== 'socket' && foot.plate > 0 ? [welded('pad', round)] : []),
  ];
}

/**
 * Filling a leg with argon once and keeping it full for its welds: the wait [min], t = V/Q ln((C₀ − Cᵢ)/(C₂ − Cᵢ)), and the
 * gas [L] until the hold is over. Nothing where it has no weld or the gas never reaches the target.
 */
function purgeOf(
  { purge }: SettledJob,
  { outsideDiameter, wall, cutLength }: LegPlan,
  welds: readonly LegWeld[],
): Pick<OneLeg, 'wait' | 'purgeGas'> {
  const supply = gasOxygen(purge.gas).value;
  const bore = Math.max(0, outsideDiameter - 2 * wall);
  const litres = ((Math.PI / 4) * bore ** 2 * Math.max(0, cutLength.value)) / 1e6;
  if (welds.length === 0 || purge.targetOxygen <= supply || litres === 0) return { wait: 0, purgeGas: 0 };
  const { prePurgeFlow, weldingFlow, targetOxygen, hold } = purge;
  const filled = litres * wellMixedVolumes(fromAir({ target: targetOxygen, supply }));
  const heat = Math.max(...welds.map((weld) => weld.heat));
  const arcs = welds.reduce((sum, { arcTime }) => sum + arcTime, 0);
  const kept = floorTime(arcs) + holdTime(hold, rootCooling({ heat, wall }));
  return { wait: filled / prePurgeFlow, purgeGas: filled + (weldingFlow * kept) / 60 };
}
