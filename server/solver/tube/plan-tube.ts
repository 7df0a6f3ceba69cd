import type { Tube } from '../../job/tube.ts';
import type { TubePlan } from '../../plan/bending.ts';
import type { Figure, Unit, WorkingInput } from '../../plan/figure.ts';
import type { Finding } from '../../plan/finding.ts';
import { band, figure, input } from '../figure.ts';
import { finding } from '../finding.ts';
import type { SourceKey } from '../sources.ts';
import { likelyWall, USUAL_WALL_FACTOR } from './catalogue.ts';
import { resolveGrade, type ResolvedGrade } from './grades.ts';
import { litresPerMetre, massPerMetre, sectionProperties, type TubeSize } from './section.ts';

/** Diameter tolerance, ISO 1127 class D3: ±0.75 %, at least 0.30 mm. */
const diameterTolerance = (outsideDiameter: number): number => Math.max(0.0075 * outsideDiameter, 0.3);
/** Wall tolerance, ISO 1127 class T3: ±10 %, at least 0.20 mm. */
const wallTolerance = (wall: number): number => Math.max(0.1 * wall, 0.2);

/** First-order ± of a value that depends on the tube's size, from both tolerances. */
function tolerance(valueOf: (size: TubeSize) => number, size: TubeSize): number {
  const step = 1e-4;
  const slope = (change: Partial<TubeSize>) => (valueOf({ ...size, ...change }) - valueOf(size)) / step;
  return Math.hypot(
    slope({ outsideDiameter: size.outsideDiameter + step }) * diameterTolerance(size.outsideDiameter),
    slope({ wall: size.wall + step }) * wallTolerance(size.wall),
  );
}

/**
 * What a tube is: section, mass and bore volume, each with the ± that ISO 1127 D3/T3 allows.
 *
 * @returns tube null with the stop 'wall-over-half-diameter' where there would be no bore
 */
export function planTube(tube: Tube): { tube: TubePlan | null; grade: ResolvedGrade; findings: Finding[] } {
  const grade = resolveGrade(tube.grade);
  const { outsideDiameter, wall } = tube;
  const findings: Finding[] = [];
  if (grade.hardeningEstimated) {
    findings.push(finding('grade-springback-estimated', 'note', '/tube/grade', { grade: grade.name }));
  }
  if (wall >= outsideDiameter / 2) {
    const likely = likelyWall(tube);
    const wayOut = likely === undefined ? null : { field: '/tube/wall', value: likely };
    const range = { value: wall, low: 0, high: outsideDiameter / 2 };
    findings.push(finding('wall-over-half-diameter', 'stop', '/tube/wall', range, wayOut));
    return { tube: null, grade, findings };
  }
  const factor = outsideDiameter / wall;
  if (factor < USUAL_WALL_FACTOR.low || factor > USUAL_WALL_FACTOR.high) {
    const low = outsideDiameter / USUAL_WALL_FACTOR.high;
    const high = outsideDiameter / USUAL_WALL_FACTOR.low;
    findings.push(finding('wall-outside-usual', 'note', '/tube/wall', { value: wall, low, high }));
  }
  return { tube: tubeFigures({ outsideDiameter, wall }, grade), grade, findings };
}

function tubeFigures(size: TubeSize, grade: ResolvedGrade): TubePlan {
  const section = sectionProperties(size);
  const outside = input('D', 'outside-diameter', size.outsideDiameter, 'mm');
  const wall = input('t', 'wall', size.wall, 'mm');
  const bore = input('d', 'bore', section.bore, 'mm');
  const second = input('I', 'second-moment', section.secondMoment, 'mm4');
  const toleranced = (
    valueOf: (of: TubeSize) => number,
    unit: Unit,
    formula: string,
    inputs: WorkingInput[],
    sources: [SourceKey, ...SourceKey[]] = ['geometry', 'iso-1127'],
  ): Figure => figure(valueOf(size), unit, formula, inputs, sources, band(tolerance(valueOf, size), 'tube-tolerance'));
  const density = input('ρ', 'density', grade.density, 'kg/m3');
  return {
    bore: toleranced((of) => sectionProperties(of).bore, 'mm', 'd = D − 2 t', [outside, wall]),
    area: toleranced((of) => sectionProperties(of).area, 'mm2', 'A = π (D − t) t', [outside, wall]),
    secondMoment: toleranced((of) => sectionProperties(of).secondMoment, 'mm4', 'I = π (D⁴ − d⁴) / 64', [
      outside,
      bore,
    ]),
    elasticModulus: toleranced((of) => sectionProperties(of).elasticModulus, 'mm3', 'W = 2 I / D', [second, outside]),
    plasticModulus: toleranced((of) => sectionProperties(of).plasticModulus, 'mm3', 'Wp = (D³ − d³) / 6', [
      outside,
      bore,
    ]),
    radiusOfGyration: toleranced((of) => sectionProperties(of).radiusOfGyration, 'mm', 'i = √(D² + d²) / 4', [
      outside,
      bore,
    ]),
    wallFactor: toleranced((of) => of.outsideDiameter / of.wall, 'ratio', 'w = D / t', [outside, wall]),
    massPerMetre: toleranced(
      (of) => massPerMetre({ ...of, density: grade.density }),
      'kg/m',
      'm = π ρ (D − t) t / 10⁶',
      [density, outside, wall],
      ['geometry', grade.sources.density, 'iso-1127'],
    ),
    litresPerMetre: toleranced(litresPerMetre, 'L/m', 'V = π d² / 4000', [bore]),
  };
}
