import type { Welding } from '../../job/purge.ts';
import type { Grade, Tube } from '../../job/tube.ts';
import type { Finding } from '../../plan/finding.ts';
import type { WeldingPlan } from '../../plan/purge.ts';
import { figure, input } from '../figure.ts';

/** Amperes for a millimetre of wall, closed butt in tube with or without a little filler: common practice, no source. */
const CURRENT_FOR_WALL = { low: 30, high: 40 } as const;

/** Reinforcement taken for the filler's mass, parabolic cap and root [mm]: typical of thin tube, common practice. */
const CAP = { width: 4, height: 0.5 } as const;
const ROOT = { width: 3, height: 0.4 } as const;

/** Density of deposited stainless weld metal [g/mm³]. */
const WELD_METAL_DENSITY = 7.9e-3;

/** Stubs and losses on top of the rod that ends up in the weld: 10 to 15 % and 5 %, common practice, no source. */
const ROD_ALLOWANCE = 1.2;

/** Tacks by outside diameter [mm]: three at 120° up to 40, four at 90° up to 100, else every 70 mm: common practice. */
function tacksFor(outsideDiameter: number): number {
  if (outsideDiameter <= 40) return 3;
  return outsideDiameter <= 100 ? 4 : Math.ceil((Math.PI * outsideDiameter) / 70);
}

/** Filler that goes with a grade, AWS A5.9 designations. */
function fillerFor(grade: Grade): string {
  if (grade.from === 'own') return '';
  const fillers = {
    '304': 'ER308L',
    '304L': 'ER308L',
    '316': 'ER316L',
    '316L': 'ER316L',
    '321': 'ER347',
    '2205': 'ER2209',
  } as const;
  return fillers[grade.key];
}

/**
 * Lengths, times and filler of the butt welds round the tube; settings to start from and prove on a test piece.
 *
 * @param work torch settings, tube, and the number of joints
 * @returns the plan, arc time of one joint [s], and what there is to say
 */
export function planWelding(work: { welding: Welding; tube: Tube; joints: number; gap: number }): {
  welding: WeldingPlan;
  arcTimeEach: number;
  findings: Finding[];
} {
  const { welding, tube, joints, gap } = work;
  const { outsideDiameter, wall } = tube;
  const girth = Math.PI * (outsideDiameter - wall);
  const arcTimeEach = girth / welding.travelSpeed;
  const withFiller = welding.fillerDiameter > 0;
  // A_w = b t + ⅔ (w_c h_c + w_r h_r), square butt
  const section = withFiller ? gap * wall + (2 / 3) * (CAP.width * CAP.height + ROOT.width * ROOT.height) : 0;
  const mass = WELD_METAL_DENSITY * section * girth * joints;
  const rodSection = (Math.PI / 4) * welding.fillerDiameter ** 2;
  const rod = withFiller ? ((section * girth) / rodSection) * ROD_ALLOWANCE * joints : 0;
  const inputs = [
    input('D', 'outside-diameter', outsideDiameter, 'mm'),
    input('t', 'wall', wall, 'mm'),
    input('n', 'joints', joints, 'count'),
  ];
  const bead = [...inputs, input('b', 'gap', gap, 'mm'), input('A', 'weld-section', section, 'mm2')];
  const current = (perWall: number) =>
    figure(
      perWall * wall,
      'A',
      'I = i t',
      [input('i', 'current-for-wall', perWall, 'A/mm'), ...inputs.slice(1, 2)],
      ['practice'],
    );
  return {
    arcTimeEach,
    findings: [],
    welding: {
      weldLength: figure(girth * joints, 'mm', 'l = n π (D − t)', inputs, ['geometry']),
      arcTime: figure(
        arcTimeEach * joints,
        's',
        'T = n π (D − t) / v',
        [...inputs, input('v', 'travel-speed', welding.travelSpeed, 'mm/s')],
        ['typed', 'geometry'],
      ),
      joints: figure(joints, 'count', 'n', inputs.slice(2), ['geometry']),
      currentLow: current(CURRENT_FOR_WALL.low),
      currentHigh: current(CURRENT_FOR_WALL.high),
      filler: withFiller ? fillerFor(tube.grade) : '',
      fillerMass: figure(mass, 'g', 'm = n ρ A π (D − t)', bead, ['weld-metal', 'practice']),
      fillerLength: figure(
        rod,
        'mm',
        'l = 1.2 n A π (D − t) / (π d² / 4)',
        [...bead, input('d', 'filler-diameter', welding.fillerDiameter, 'mm')],
        ['weld-metal', 'practice'],
      ),
      tacks: figure(tacksFor(outsideDiameter), 'count', '3 ≤ 40 mm < 4 ≤ 100 mm', inputs.slice(0, 1), ['practice']),
    },
  };
}
