import type { Tube } from '../../job/tube.ts';
import type { TestBend } from '../../job/machine.ts';
import type { SpringbackPlan } from '../../plan/bending.ts';
import type { WorkingInput } from '../../plan/figure.ts';
import type { Finding } from '../../plan/finding.ts';
import { band, figure, input } from '../figure.ts';
import { finding } from '../finding.ts';
import { DEGREES } from '../geometry/angle.ts';
import type { SourceKey } from '../sources.ts';
import type { ResolvedGrade } from '../tube/grades.ts';
import type { SetUp } from './set-up.ts';
import { springbackShare } from './springback.ts';
import { growthOf, possibleGrowth, possibleRadius, radiusOf } from './test-bends.ts';
import { fitFigures, stretchFigure } from './springback-fit-figures.ts';
import { LARGEST_SHARE, SHOP_AT_90, springbackLaw, type LawProblem, type SpringbackLaw } from './springback-law.ts';

/** Bend ratios R/D below which bends get hard: 1.5 and 2; common practice, no source. */
const TIGHT = { caution: 1.5, note: 2 } as const;

/**
 * How this tube springs back on this machine.
 *
 * @returns springback and law null with the stop 'die-radius-under-tube-radius' where the die, or the radius that test
 *   bends were measured to have, cannot be (R ≤ D/2), or
 *   'springback-too-large' where the grade's values leave no bend that holds
 */
export function planSpringback(
  tube: Tube,
  grade: ResolvedGrade,
  machine: SetUp,
): { springback: SpringbackPlan | null; law: SpringbackLaw | null; findings: Finding[] } {
  const { outsideDiameter, wall } = tube;
  const { dieRadius } = machine;
  const field = `${machine.dieField}/radius`;
  const wayOut = { field, value: TIGHT.note * outsideDiameter };
  if (dieRadius <= outsideDiameter / 2) {
    const range = { value: dieRadius, low: outsideDiameter / 2 };
    const stop = finding('die-radius-under-tube-radius', 'stop', field, range, wayOut);
    return { springback: null, law: null, findings: [stop] };
  }
  const findings: Finding[] = [];
  const ratio = dieRadius / outsideDiameter;
  if (ratio < TIGHT.note) {
    const tight = ratio < TIGHT.caution;
    const range = { value: dieRadius, low: (tight ? TIGHT.caution : TIGHT.note) * outsideDiameter, ratio };
    findings.push(finding('die-radius-tight', tight ? 'caution' : 'note', field, range, wayOut));
  }
  // from the proof stress on: a power law alone begins too low, which tells at the small strains of a crown
  const bend = { ...grade, hardening: 'swift' as const, outsideDiameter, wall, radius: dieRadius };
  const share = springbackShare(bend);
  if (share >= LARGEST_SHARE) {
    const over = { value: 100 * share, high: 100 * LARGEST_SHARE };
    const stop = finding('springback-too-large', 'stop', tube.grade.from === 'own' ? '/tube/grade' : field, over);
    return { springback: null, law: null, findings: [...findings, stop] };
  }
  const { law, problem } = springbackLaw(bend, tube, machine);
  if (law.radiusAfterRelease <= outsideDiameter / 2) {
    const range = { value: law.radiusAfterRelease, low: outsideDiameter / 2 };
    const stop = finding('die-radius-under-tube-radius', 'stop', '/machine/springback/bends', range);
    return { springback: null, law: null, findings: [...findings, stop] };
  }
  findings.push(...springbackFindings(law, problem, machine));
  return { springback: springbackFigures(law, { tube, grade, machine }), law, findings };
}

function springbackFindings(law: SpringbackLaw, problem: LawProblem, machine: SetUp): Finding[] {
  const findings: Finding[] = [];
  const field = '/machine/springback/bends';
  const { bends, method } = machine.springback;
  const ofTube = law.bendsOfTube.length;
  const angle = bends[law.bendsOfTube[0] ?? 0]?.commandedAngle ?? 0;
  if (problem === 'too-few') findings.push(finding('test-bends-too-few', 'caution', field, { value: ofTube, low: 2 }));
  if (problem === 'one-angle')
    findings.push(finding('test-bends-one-angle', 'caution', field, { count: ofTube, angle }));
  if (problem === 'no-fit') findings.push(finding('test-bends-no-fit', 'caution', field, { count: ofTube }));
  const others = law.bendsOfOthers;
  if (method === 'test-bends') findings.push(...impossibleReadings(bends));
  if (method === 'test-bends' && others > 0)
    findings.push(finding('test-bends-other-tube', 'note', field, { others, count: bends.length }));
  const residual = law.fit?.line.residual;
  const seen = residual === undefined ? 0 : 2 * residual * DEGREES;
  if (seen > machine.angleScatter) {
    const scatter = '/machine/accuracy/angleScatter';
    const data = { value: seen, high: machine.angleScatter };
    const wayOut = { field: scatter, value: Math.ceil(seen * 10) / 10 };
    findings.push(finding('scatter-over-typed', 'note', scatter, data, wayOut));
  }
  if (law.method === 'theory') {
    const value = law.commandFor(Math.PI / 2) * DEGREES - 90;
    const data = { value, shopLow: SHOP_AT_90.low * DEGREES, shopHigh: SHOP_AT_90.high * DEGREES };
    findings.push(finding('springback-estimate', 'note', '/machine/springback', data));
  }
  return findings;
}

/** Radii and growths of test bends that no bend can have; they are left out. */
function impossibleReadings(bends: readonly TestBend[]): Finding[] {
  return bends.flatMap((bend, place) => {
    const field = `/machine/springback/bends/${String(place)}`;
    const { measuredRadius: radius, scribedBefore, scribedAfter } = bend;
    const found: Finding[] = [];
    if (radius !== null && radiusOf(bend) === null)
      found.push(
        finding('test-bend-impossible', 'caution', `${field}/measuredRadius`, {
          value: radius,
          ...possibleRadius(bend),
        }),
      );
    if (scribedBefore !== null && scribedAfter !== null && growthOf(bend) === null) {
      const { low, high } = possibleGrowth(bend);
      const data = { value: scribedAfter, low: scribedBefore + low, high: scribedBefore + high };
      found.push(finding('test-bend-impossible', 'caution', `${field}/scribedAfter`, data));
    }
    return found;
  });
}

function springbackFigures(
  law: SpringbackLaw,
  { tube, grade, machine }: { tube: Tube; grade: ResolvedGrade; machine: SetUp },
): SpringbackPlan {
  const quarter = Math.PI / 2;
  const command = law.commandFor(quarter);
  const bandAt90 = law.bandFor(quarter);
  const theoryInputs = [
    input('D', 'outside-diameter', tube.outsideDiameter, 'mm'),
    input('t', 'wall', tube.wall, 'mm'),
    input('R', 'die-radius', machine.dieRadius, 'mm'),
    input('E', 'elastic-modulus', grade.elasticModulus, 'MPa'),
    input('K', 'strength-coefficient', grade.strengthCoefficient, 'MPa'),
    input('n', 'hardening-exponent', grade.hardeningExponent, 'ratio'),
    input('Rp', 'proof-stress', grade.proofStress, 'MPa'),
  ];
  const fitInputs = [
    input('a', 'springback-fixed', law.fixed * DEGREES, 'deg'),
    input('b', 'springback-share', law.share, 'ratio'),
  ];
  const theorySources: [SourceKey, ...SourceKey[]] = [
    'pure-bending',
    'swift-hardening',
    grade.sources.elasticModulus,
    grade.sources.strengthCoefficient,
    grade.sources.proofStress,
    'springback-shop',
  ];
  const theory = law.method === 'theory';
  const inputs: WorkingInput[] = theory ? theoryInputs : fitInputs;
  const sources: [SourceKey, ...SourceKey[]] = theory ? theorySources : ['springback-fit', 'test-bends'];
  const angle = input('θ', 'angle', 90, 'deg');
  const lambda = input('λ', 'springback-share', law.share, 'ratio');
  return {
    method: law.method,
    shareAt90: figure(
      (command - quarter) / command,
      'ratio',
      theory
        ? 'λ = M R / (E I), M = 4 ∫∫ σ r² sin φ dφ dr, ε = r sin φ / R, σ = E ε up to Rp, above it K (ε₀ + ε_p)ⁿ'
        : 's = (c − θ) / c, c = (θ + a) / (1 − b)',
      [...inputs, angle],
      sources,
      band(bandAt90.plusMinus / command, ...bandAt90.from),
    ),
    bendTo90: figure(
      command * DEGREES,
      'deg',
      theory ? 'c = θ / (1 − λ)' : 'c = (θ + a) / (1 − b)',
      theory ? [angle, lambda] : [angle, ...fitInputs],
      sources,
      band(bandAt90.plusMinus * DEGREES, ...bandAt90.from),
    ),
    radiusAfterRelease: law.radiusMeasured
      ? figure(
          law.radiusAfterRelease,
          'mm',
          'R_f = mean of the measured radii',
          [input('R_f', 'radius-after-release', law.radiusAfterRelease, 'mm')],
          ['test-bends'],
          band(law.radiusPlusMinus, 'test-bends'),
        )
      : figure(
          law.radiusAfterRelease,
          'mm',
          'R_f = R / (1 − λ), λ = M R / (E I)',
          theoryInputs,
          theorySources,
          band(law.radiusPlusMinus, 'springback-model'),
        ),
    stretchAt90: stretchFigure(law),
    fit: law.fit === null ? null : fitFigures(law.fit, law),
    bendsTyped: machine.springback.bends.length,
    bendsOfTube: [...law.bendsOfTube],
  };
}
