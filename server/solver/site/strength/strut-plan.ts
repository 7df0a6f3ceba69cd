import type { Leg } from '../../../job/leg.ts';
import type { Figure } from '../../../plan/figure.ts';
import type { StrutPlan } from '../../../plan/strength.ts';
import { figure, input } from '../../figure.ts';
import { length, subtract } from '../../geometry/vector.ts';
import { sectionProperties, type SectionProperties } from '../../tube/section.ts';
import type { LaidLeg, LaidSite, SiteSource } from '../laid-site.ts';
import { siteBand, type Pick, type SiteStudy } from '../site-study.ts';
import {
  bucklingFactor,
  eulerLoad,
  IMPERFECTION,
  PLATEAU,
  reducedStrut,
  SAFETY,
  type BucklingFactor,
  type ReducedStrut,
} from './strut.ts';

/** Shorter than this a leg is none [mm]; a finding of its own says so. */
const NO_LENGTH = 0.001;

/** A leg with what its strut is reckoned from. */
type Strut = {
  readonly leg: LaidLeg;
  readonly section: SectionProperties;
  readonly factor: BucklingFactor;
  readonly grade: SiteSource['grade'];
  /** Length from foot to head [mm] and what follows from it, on any site of the study. */
  readonly lengthOn: Pick;
  readonly length: number;
};

/**
 * A leg as a strut, with bands from what was measured. Information: no approval.
 *
 * @param index which leg of the site
 * @param sways whether nothing keeps its head from going sideways
 * @returns null for a leg without length or without a bore
 */
export function strutPlan(study: SiteStudy, index: number, typed: Leg, sways: boolean): StrutPlan | null {
  const leg = study.laid.legs[index] ?? null;
  if (leg === null) return null;
  const section = sectionProperties(leg);
  const lengthOn = (laid: LaidSite): number | undefined => legLength(laid.legs[index] ?? null);
  const long = lengthOn(study.laid);
  if (long === undefined || section.bore <= 0) return null;
  const factor = bucklingFactor({ foot: typed.foot.held, head: typed.head.held, sways });
  return figures(study, { leg, section, factor, grade: study.source.grade, lengthOn, length: long });
}

function legLength(leg: LaidLeg | null): number | undefined {
  if (leg === null) return undefined;
  const long = length(subtract(leg.head, leg.foot));
  return long < NO_LENGTH ? undefined : long;
}

function figures(study: SiteStudy, strut: Strut): StrutPlan {
  const { leg, section, factor, grade } = strut;
  const euler = eulerFigure(study, strut);
  return {
    leg: leg.name,
    field: leg.field,
    factor: factorFigure(factor),
    bucklingLength: figure(
      factor.design * strut.length,
      'mm',
      'L_k = K L',
      lengthInputs(strut),
      ['aisc-360-factors', 'leg-length'],
      bandOf(study, strut, (long) => factor.design * long),
    ),
    slenderness: figure(
      (factor.design * strut.length) / section.radiusOfGyration,
      'ratio',
      's = K L/i',
      [...lengthInputs(strut), input('i', 'radius-of-gyration', section.radiusOfGyration, 'mm')],
      ['geometry', 'aisc-360-slender'],
      bandOf(study, strut, (long) => (factor.design * long) / section.radiusOfGyration),
    ),
    euler,
    eulerHolds: grade.proofStress > 0 && euler.value / section.area < grade.proofStress,
    reduced: grade.proofStress > 0 ? reducedFigure(study, strut) : null,
  };
}

/** The design factor; the theoretical one stands beside it in the working. */
const factorFigure = ({ design, theory, sways }: BucklingFactor): Figure =>
  figure(
    design,
    'ratio',
    'K = max(K_d, K_t)',
    [
      input('K_d', sways ? 'factor-for-design-with-sway' : 'factor-for-design', design, 'ratio'),
      input('K_t', 'theoretical-factor', theory, 'ratio'),
    ],
    ['aisc-360-factors', 'free-to-sway'],
  );

function eulerFigure(study: SiteStudy, strut: Strut): Figure {
  const { section, grade } = strut;
  return figure(
    eulerOf(strut, strut.length),
    'N',
    'N = π² E I/(K L)²',
    [
      input('E', 'elastic-modulus', grade.elasticModulus, 'MPa'),
      input('I', 'second-moment', section.secondMoment, 'mm4'),
      ...lengthInputs(strut),
    ],
    ['strut-euler', grade.sources.elasticModulus, 'aisc-360-factors'],
    bandOf(study, strut, (long) => eulerOf(strut, long)),
  );
}

function reducedFigure(study: SiteStudy, strut: Strut): Figure {
  const { section, grade } = strut;
  const { slenderness, middle, share, load } = reducedOf(strut, strut.length);
  return figure(
    load,
    'N',
    'N = χ A f/γ, χ = min(1, 1/(φ + √(φ² − λ²))), φ = (1 + α (λ − λ₀) + λ²)/2, λ = √(A f/N_cr)',
    [
      input('χ', 'share-that-buckling-leaves', share, 'ratio'),
      input('φ', 'middle-value-of-the-reduction', middle, 'ratio'),
      input('λ', 'slenderness-against-yield', slenderness, 'ratio'),
      input('α', 'imperfection', IMPERFECTION, 'ratio'),
      input('λ₀', 'slenderness-that-costs-nothing', PLATEAU, 'ratio'),
      input('A', 'area', section.area, 'mm2'),
      input('f', 'proof-stress', grade.proofStress, 'MPa'),
      input('N_cr', 'load-of-euler', eulerOf(strut, strut.length), 'N'),
      input('γ', 'safety-of-the-resistance', SAFETY, 'ratio'),
    ],
    ['en-1993-1-4', grade.sources.proofStress],
    bandOf(study, strut, (long) => reducedOf(strut, long).load),
  );
}

const lengthInputs = ({ factor, length: long }: Strut) => [
  input('K', 'factor-of-buckling-length', factor.design, 'ratio'),
  input('L', 'centre-length', long, 'mm'),
];

const eulerOf = ({ section, factor, grade }: Strut, long: number): number =>
  eulerLoad({
    elasticModulus: grade.elasticModulus,
    secondMoment: section.secondMoment,
    bucklingLength: factor.design * long,
  });

const reducedOf = (strut: Strut, long: number): ReducedStrut =>
  reducedStrut({ area: strut.section.area, proofStress: strut.grade.proofStress, euler: eulerOf(strut, long) });

const bandOf = (study: SiteStudy, { lengthOn }: Strut, of: (long: number) => number) =>
  siteBand(study, (laid) => {
    const long = lengthOn(laid);
    return long === undefined ? undefined : of(long);
  });
