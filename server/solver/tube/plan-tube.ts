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
import { tubeTolerance, type AllowedSize } from './tolerances.ts';

/** First-order ± of a value that depends on the tube's size, from both tolerances. */
function tolerance(valueOf: (size: TubeSize) => number, size: TubeSize, allowed: AllowedSize): number {
  const step = 1e-4;
  const slope = (change: Partial<TubeSize>) => (valueOf({ ...size, ...change }) - valueOf(size)) / step;
  return Math.hypot(
    slope({ outsideDiameter: size.outsideDiameter + step }) *
      Math.max(allowed.outsideDiameter.plus, allowed.outsideDiameter.minus),
    slope({ wall: size.wall + step }) * Math.max(allowed.wall.plus ?? 0, allowed.wall.minus),
  );
}

/** What the tube was bought to; null with the caution 'tolerance-no-row' where that says nothing of its size. */
function boughtTo(tube: Tube): { allowed: AllowedSize | null; findings: Finding[] } {
  const { by } = tube.tolerance;
  const allowed =
    by === 'own' ? tubeTolerance('own', tube, tube.tolerance) : tubeTolerance(tube.tolerance.standard, tube);
  if (allowed !== undefined) return { allowed, findings: [] };
  const field = '/tube/tolerance/standard';
  const data = { standard: by === 'own' ? by : tube.tolerance.standard };
  const caution = finding('tolerance-no-row', 'caution', field, data, { field, value: 'iso-1127-d3-t3' });
  return { allowed: null, findings: [caution] };
}

/**
 * What a tube is: section, mass and bore volume, each with the ± that its tolerance allows.
 *
 * @returns tube null with the stop 'wall-over-half-diameter' where there would be no bore
 */
export function planTube(tube: Tube): {
  tube: TubePlan | null;
  grade: ResolvedGrade;
  /** What its size may be off; null where that is not known. */
  tolerance: AllowedSize | null;
  findings: Finding[];
} {
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
    return { tube: null, grade, tolerance: null, findings };
  }
  const factor = outsideDiameter / wall;
  if (factor < USUAL_WALL_FACTOR.low || factor > USUAL_WALL_FACTOR.high) {
    const low = outsideDiameter / USUAL_WALL_FACTOR.high;
    const high = outsideDiameter / USUAL_WALL_FACTOR.low;
    findings.push(finding('wall-outside-usual', 'note', '/tube/wall', { value: wall, low, high }));
  }
  const { allowed, findings: told } = boughtTo(tube);
  findings.push(...told);
  return { tube: tubeFigures({ outsideDiameter, wall }, grade, allowed), grade, tolerance: allowed, findings };
}

function tubeFigures(size: TubeSize, grade: ResolvedGrade, allowed: AllowedSize | null): TubePlan {
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
    sources: [SourceKey, ...SourceKey[]] = ['geometry'],
  ): Figure =>
    allowed === null
      ? figure(valueOf(size), unit, formula, inputs, sources)
      : figure(
          valueOf(size),
          unit,
          formula,
          inputs,
          [...sources, allowed.source],
          band(tolerance(valueOf, size, allowed), 'tube-tolerance'),
        );
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
      ['geometry', grade.sources.density],
    ),
    litresPerMetre: toleranced(litresPerMetre, 'L/m', 'V = π d² / 4000', [bore]),
    elongation: figure(
      grade.elongation,
      'percent',
      'A',
      [input('A', 'elongation-at-break', grade.elongation, 'percent')],
      [grade.sources.elongation],
    ),
    ...limits(size, allowed),
  };
}

/** The least and the most that the tolerance lets the diameter and the wall be. */
function limits(size: TubeSize, allowed: AllowedSize | null): Pick<TubePlan, 'diameterLimits' | 'wallLimits'> {
  if (allowed === null) return { diameterLimits: null, wallLimits: null };
  const limit = (nominal: number, off: number, symbol: string, name: string): Figure =>
    figure(
      nominal + off,
      'mm',
      `${symbol} + δ`,
      [input(symbol, name, nominal, 'mm'), input('δ', 'tube-off-size', off, 'mm')],
      [allowed.source],
    );
  const { outsideDiameter, wall } = allowed;
  return {
    diameterLimits: {
      least: limit(size.outsideDiameter, -outsideDiameter.minus, 'D', 'outside-diameter'),
      most: limit(size.outsideDiameter, outsideDiameter.plus, 'D', 'outside-diameter'),
    },
    wallLimits: {
      least: limit(size.wall, -wall.minus, 't', 'wall'),
      most: wall.plus === null ? null : limit(size.wall, wall.plus, 't', 'wall'),
    },
  };
}
