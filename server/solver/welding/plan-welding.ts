import type { Welding } from '../../job/purge.ts';
import type { Tube } from '../../job/tube.ts';
import type { Finding } from '../../plan/finding.ts';
import type { WeldingPlan } from '../../plan/purge.ts';
import { band, figure, input } from '../figure.ts';
import { fillerFor } from './filler.ts';
import { CURRENT_FOR_WALL } from './heat.ts';
import { weldArea } from './weld-section.ts';

/** Density of stainless weld metal [kg/m³]; that of austenitic grades, EN 10088-1. */
const WELD_METAL_DENSITY = 7900;
/** Rod to buy for rod in the weld: 15 % of stubs and 5 % of losses on top; common practice, no source. */
const ROD_ALLOWANCE = 1.2;
/** Thinner than this there is no rod [mm]; the thinnest sold is 0.5, from memory. */
const THINNEST_ROD = 0.1;
/** The bead's size is a guess by half either way; our own judgement. */
const BEAD_DOUBT = 0.5;

/** Tacks by outside diameter [mm]: 3 at 120° up to 40, 4 at 90° up to 100, else one for 70 mm; common practice, no source. */
export function tacksRound(outsideDiameter: number): number {
  if (outsideDiameter <= 40) return 3;
  return outsideDiameter <= 100 ? 4 : Math.ceil((Math.PI * outsideDiameter) / 70);
}

/**
 * Lengths, times, current and filler of butt welds round the tube; values to begin with, to be proved on a test piece.
 *
 * @param work torch settings, tube, number of joints, the gap between their faces [mm], and where they are, in order
 * @returns the plan, all joints together; the arc time of one [s]; findings, of which there are none yet
 */
export function planWelding(work: {
  readonly welding: Welding;
  readonly tube: Tube;
  readonly joints: number;
  readonly gap: number;
  readonly places: readonly WeldingPlan['order'][number][];
}): { welding: WeldingPlan; arcTimeEach: number; findings: Finding[] } {
  const { welding, tube, joints } = work;
  const { outsideDiameter, wall } = tube;
  const lengthEach = Math.PI * (outsideDiameter - wall);
  const arcTimeEach = lengthEach / welding.travelSpeed;
  const outside = input('D', 'outside-diameter', outsideDiameter, 'mm');
  const thickness = input('t', 'wall', wall, 'mm');
  const count = input('n', 'joints', joints, 'count');
  const current = (perWall: number) => {
    const inputs = [input('i', 'current-for-wall', perWall, 'A/mm'), thickness];
    return figure(perWall * wall, 'A', 'I = i t', inputs, ['tube-weld-current']);
  };
  const tacks = tacksRound(outsideDiameter);
  return {
    arcTimeEach,
    findings: [],
    welding: {
      weldLength: figure(lengthEach * joints, 'mm', 'l = n π (D − t)', [count, outside, thickness], ['geometry']),
      arcTime: figure(
        arcTimeEach * joints,
        's',
        'T = n π (D − t)/v',
        [count, outside, thickness, input('v', 'travel-speed', welding.travelSpeed, 'mm/s')],
        ['geometry', 'typed'],
      ),
      joints: figure(joints, 'count', 'n', [count], ['geometry']),
      currentLow: current(CURRENT_FOR_WALL.low),
      currentHigh: current(CURRENT_FOR_WALL.high),
      ...fillerFigures(work, lengthEach * joints),
      tacks: figure(tacks, 'count', 'k(D)', [outside], ['tack-spacing']),
      order: work.places.map(({ number, member, station }) => ({ number, member, station })),
    },
  };
}

/** Filler to have at hand: as much as the welds take, with what is lost; nothing where the torch runs without. */
function fillerFigures(
  { welding, tube, gap }: { readonly welding: Welding; readonly tube: Tube; readonly gap: number },
  length: number,
): Pick<WeldingPlan, 'filler' | 'fillerMass' | 'fillerLength'> {
  const { fillerDiameter: diameter } = welding;
  const fed = diameter >= THINNEST_ROD;
  const area = fed ? weldArea({ wall: tube.wall, gap }) : 0;
  const mass = (ROD_ALLOWANCE * WELD_METAL_DENSITY * area * length) / 1e6;
  const rod = fed ? (ROD_ALLOWANCE * area * length) / ((Math.PI * diameter ** 2) / 4) : 0;
  const bead = [
    input('k', 'rod-allowance', ROD_ALLOWANCE, 'ratio'),
    input('A', 'weld-section', area, 'mm2'),
    input('l', 'weld-length', length, 'mm'),
  ];
  const doubt = (value: number) => (value > 0 ? band(BEAD_DOUBT * value, 'bead-size') : null);
  return {
    filler: fed ? fillerFor(tube.grade) : '',
    fillerMass: figure(
      mass,
      'g',
      'm = k ρ A l',
      [...bead, input('ρ', 'density', WELD_METAL_DENSITY, 'kg/m3')],
      ['weld-metal', 'filler-pairing', 'practice'],
      doubt(mass),
    ),
    fillerLength: figure(
      rod,
      'mm',
      'k A l/(π d²/4)',
      [...bead, input('d', 'filler-diameter', diameter, 'mm')],
      ['weld-metal', 'practice'],
      doubt(rod),
    ),
  };
}
