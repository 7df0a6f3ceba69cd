import type { SettledJob } from '../../job/job.ts';
import type { Figure } from '../../plan/figure.ts';
import type { Joint } from '../../plan/joint.ts';
import type { Procedure, Weld } from '../../plan/welding.ts';
import { band, figure, input } from '../figure.ts';
import type { FrameGeometry } from '../frame/frame-geometry.ts';
import { DEGREES } from '../geometry/angle.ts';
import { placeAt } from '../geometry/centreline.ts';
import { AXES, scale, type Vector3 } from '../geometry/vector.ts';
import type { SourceKey } from '../sources.ts';
import { gapLimits, tightGap } from './preparation.ts';
import { beadDoubt } from './section-figures.ts';
import { TRAVEL, type WeldSetting } from './settings.ts';
import { padFigure, saddleFigure } from './shrinkage-figures.ts';
import { tacksOf } from './tacks.ts';
import { lengthFigure } from './length-figure.ts';
import { weldMisfit } from './weld-misfit.ts';
import { weldPosition } from './weld-position.ts';
import type { WeldSite } from './weld-sites.ts';
import { weldSymbol } from './weld-symbol.ts';
import { plugWelds, ROD_ALLOWANCE, seatOf, WELD_METAL_DENSITY, type PlugWelds, type WeldWork } from './weld-work.ts';

/** What all welds of a job are planned from. */
export type WeldContext = {
  readonly job: SettledJob;
  readonly joints: readonly Joint[];
  readonly frame: FrameGeometry;
  /** Unit vector that points up as the frame is held. */
  readonly up: Vector3;
  /** What one butt pulls in. */
  readonly shrinkage: Figure;
};

/** Everything about one weld. */
export function weldOf(
  work: WeldWork,
  { setting, procedure }: { readonly setting: WeldSetting; readonly procedure: Procedure },
  context: WeldContext,
): Weld {
  const { site } = work;
  const { job, joints, frame, up, shrinkage } = context;
  const { welding, tube, closing } = job;
  const { form } = site;
  const joint = form === 'butt' ? joints.find(({ number }) => number === site.joint) : undefined;
  const plugs = plugWelds(form, job);
  const length = lengthFigure(site, work.length, { tube, frame });
  return {
    name: site.name,
    kind: site.kind,
    form,
    joint: site.joint,
    member: site.member,
    station: site.station,
    point: site.point,
    onto: site.onto,
    preparation: setting.preparation,
    gap:
      form === 'butt'
        ? figure(closing.gap, 'mm', 'b', [input('b', 'gap', closing.gap, 'mm')], ['typed'])
        : figure(0, 'mm', 'b = 0', [], ['weld-preparation']),
    ...bevelFigures(setting, job),
    endAngle: endAngle(site, joint, frame),
    squareness: squareness(setting, tube.wall, welding.backing),
    backing: form === 'butt' ? welding.backing : 'purge',
    length,
    position: weldPosition(form, awayFrom(site, frame), up),
    tacks: tacksOf({
      outsideDiameter: tube.outsideDiameter,
      thicker: Math.max(tube.wall, site.plate?.thickness ?? 0),
      length: work.length,
      process: setting.process,
    }),
    misfit: joint === undefined ? null : weldMisfit(joint, tube.wall, welding.quality),
    runs: procedure.runs,
    arcTime: arcTimeFigure(work, setting, { start: welding[form].travelSpeed === null, plugs }),
    ...fillerFigures(work, setting, plugs),
    shrinkage: form === 'butt' ? shrinkage : form === 'saddle' ? saddleFigure() : padFigure(),
    symbol: weldSymbol(setting, closing.gap, job),
  };
}

/** Unit vector along the tube at a weld; at an end, from the weld into its member. */
function awayFrom({ member: name, station, end }: WeldSite, { members }: FrameGeometry): Vector3 {
  const member = members.find((one) => one.name === name);
  const along = member === undefined ? undefined : placeAt(member.centreline, station)?.tangent;
  const tangent = along ?? AXES[0] ?? { x: 1, y: 0, z: 0 };
  return end === 'finish' ? scale(tangent, -1) : tangent;
}

/** Bevel of each side and land; null for square faces, saddles and fillets. */
function bevelFigures({ preparation }: WeldSetting, { welding, tube }: SettledJob): Pick<Weld, 'bevel' | 'land'> {
  if (preparation !== 'bevel') return { bevel: null, land: null };
  const { angle, land } = welding.groove;
  const wall = input('t', 'wall', tube.wall, 'mm');
  return {
    bevel: figure(angle, 'deg', 'β', [input('β', 'bevel-of-each-side', angle, 'deg')], ['typed']),
    land: figure(Math.min(land, tube.wall), 'mm', 'min(c, t)', [input('c', 'land', land, 'mm'), wall], ['typed']),
  };
}

/** How far a face is off square: half the kink of a butt, the angle between the axes of a saddle; null for a pad. */
function endAngle(site: WeldSite, joint: Joint | undefined, { members }: FrameGeometry): Figure | null {
  if (site.form === 'pad') return null;
  if (site.form === 'saddle') {
    const angle = seatOf(site, members).axisAngle * DEGREES;
    return figure(angle, 'deg', 'β', [input('β', 'axis-angle', angle, 'deg')], ['geometry']);
  }
  const kink = joint?.kink.value ?? 0;
  const doubt = joint?.kink.band ?? null;
  return figure(
    kink / 2,
    'deg',
    'τ = κ/2',
    [input('κ', 'kink', kink, 'deg')],
    ['geometry'],
    doubt === null ? null : { plusMinus: doubt.plusMinus / 2, from: doubt.from },
  );
}

/** How far two faces may be out of parallel: half of what the gap may be off; common practice, no source. */
function squareness(
  { preparation, process, form }: WeldSetting,
  wall: number,
  backing: SettledJob['welding']['backing'],
): Figure {
  const limits = gapLimits(preparation, wall, backing);
  const { low, high } = process === '142' && form === 'butt' ? { low: 0, high: tightGap(wall) } : limits;
  const ends = [input('b₁', 'least-gap', low, 'mm'), input('b₂', 'largest-gap', high, 'mm')];
  return figure((high - low) / 2, 'mm', '(b₂ − b₁)/2', ends, ['weld-preparation']);
}

/** Arc time of all runs, and of the plug welds of a sleeve; by hand the torch goes faster or slower than it begins with. */
function arcTimeFigure(
  { length, arcTime }: WeldWork,
  { runs, travelSpeed }: WeldSetting,
  { start, plugs }: { readonly start: boolean; readonly plugs: PlugWelds },
): Figure {
  const plugged = plugs.count > 0;
  const pace: SourceKey = start ? 'hand-travel' : 'typed';
  return figure(
    arcTime,
    's',
    plugged ? 'T = (n l + l_p)/v' : 'T = n l/v',
    [
      input('n', 'runs', runs, 'count'),
      input('l', 'weld-length', length, 'mm'),
      ...(plugged ? [input('l_p', 'round-the-plug-holes', plugs.length, 'mm')] : []),
      input('v', 'travel-speed', travelSpeed, 'mm/s'),
    ],
    plugged ? ['geometry', pace, 'sleeve'] : ['geometry', pace],
    start ? band((arcTime * TRAVEL.doubt) / travelSpeed, 'setting-to-begin-with') : null,
  );
}

/** Filler to have at hand for one weld, and for the plug welds of its sleeve. */
function fillerFigures(
  { length, fillerLength, fillerMass }: WeldWork,
  { area, fillerDiameter, process }: WeldSetting,
  plugs: PlugWelds,
): Pick<Weld, 'fillerLength' | 'fillerMass'> {
  if (fillerDiameter === null || process === '142')
    return {
      fillerLength: figure(0, 'mm', 'L = 0', [], ['geometry']),
      fillerMass: figure(0, 'g', 'm = 0', [], ['geometry']),
    };
  const plugged = plugs.count > 0;
  const metal = [
    input('k', 'rod-allowance', ROD_ALLOWANCE, 'ratio'),
    input('A', 'weld-section', area, 'mm2'),
    input('l', 'weld-length', length, 'mm'),
    ...(plugged ? [input('V_p', 'metal-of-the-plugs', plugs.metal, 'mm3')] : []),
  ];
  const volume = plugged ? '(A l + V_p)' : 'A l';
  return {
    fillerLength: figure(
      fillerLength,
      'mm',
      `L = k ${volume}/(π d²/4)`,
      [...metal, input('d', 'filler-diameter', fillerDiameter, 'mm')],
      ['weld-metal', 'rod-allowance'],
      beadDoubt(fillerLength),
    ),
    fillerMass: figure(
      fillerMass,
      'g',
      `m = k ρ ${volume}`,
      [...metal, input('ρ', 'density', WELD_METAL_DENSITY * 1e6, 'kg/m3')],
      ['weld-metal', 'en-10088-1', 'rod-allowance'],
      beadDoubt(fillerMass),
    ),
  };
}
