import type { Leg } from '../../../job/leg.ts';
import type { Figure } from '../../../plan/figure.ts';
import type { StrutPlan } from '../../../plan/strength.ts';
import { band, figure, input } from '../../figure.ts';
import { sectionProperties, type SectionProperties } from '../../tube/section.ts';
import type { LaidLeg, LaidSite, SiteSource } from '../laid-site.ts';
import { legWay } from '../legs/leg-way.ts';
import { siteBand, type SiteStudy } from '../site-study.ts';
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

/** A leg with what its strut is reckoned from. */
type Strut = {
  readonly leg: LaidLeg;
  readonly section: SectionProperties;
  readonly factor: BucklingFactor;
  readonly grade: SiteSource['grade'];
  readonly adjusted: StrutPlan['adjusted'];
  /** From foot to head [mm], and its ±: everything else of the strut follows from it. */
  readonly length: number;
  readonly doubt: Figure['band'];
};

/**
 * A leg as a strut, with bands from what was measured. Information: no approval. One with a thread or a slip piece in it is
 * no plain tube: what it carries is not told.
 *
 * @param index which leg of the site
 * @param sways whether nothing keeps its head from going sideways
 * @returns null for a leg without length or without a bore
 */
export function strutPlan(study: SiteStudy, index: number, typed: Leg, sways: boolean): StrutPlan | null {
  const leg = study.laid.legs[index] ?? null;
  if (leg === null) return null;
  const section = sectionProperties(leg);
  const lengthOn = (laid: LaidSite): number | undefined => {
    const one = laid.legs[index] ?? null;
    return one === null ? undefined : legWay(one)?.length;
  };
  const long = lengthOn(study.laid);
  if (long === undefined || section.bore <= 0) return null;
  const factor = bucklingFactor({ foot: typed.foot.held, head: typed.head.held, sways });
  const adjusted = typed.adjust?.by ?? null;
  return figures({
    leg,
    section,
    factor,
    grade: study.source.grade,
    adjusted,
    length: long,
    doubt: siteBand(study, lengthOn),
  });
}

function figures(strut: Strut): StrutPlan {
  const { leg, section, factor, grade, adjusted } = strut;
  const euler = eulerFigure(strut);
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
      bandOf(strut, (long) => factor.design * long),
    ),
    slenderness: figure(
      (factor.design * strut.length) / section.radiusOfGyration,
      'ratio',
      's = K L/i',
      [...lengthInputs(strut), input('i', 'radius-of-gyration', section.radiusOfGyration, 'mm')],
      ['geometry', 'aisc-360-slender'],
      bandOf(strut, (long) => (factor.design * long) / section.radiusOfGyration),
    ),
    euler,
    eulerHolds: grade.proofStress > 0 && euler.value / section.area < grade.proofStress,
    adjusted,
    reduced: grade.proofStress > 0 && adjusted === null ? reducedFigure(strut) : null,
  };
}

/** The design factor; the theoretical one stands beside it in the working. */
const factorFigure = ({ design, theory, sways }: BucklingFactor): Figure =>
  figure(
    design,
    'ratio',
    'K = K_d, in theory K_t',
    [
      input('K_d', sways ? 'factor-for-design-with-sway' : 'factor-for-design', design, 'ratio'),
      input('K_t', 'theoretical-factor', theory, 'ratio'),
    ],
    ['aisc-360-factors', 'free-to-sway'],
  );

function eulerFigure(strut: Strut): Figure {
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
    bandOf(strut, (long) => eulerOf(strut, long)),
  );
}

function reducedFigure(strut: Strut): Figure {
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
    bandOf(strut, (long) => reducedOf(strut, long).load),
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

/** Share of the length by which it is changed to see how fast something follows it: our own choice. */
const CHANGE = 1e-4;

/** The ± of what follows from the length: first order. */
function bandOf({ length: long, doubt }: Strut, of: (long: number) => number): Figure['band'] {
  if (doubt === null) return null;
  const step = CHANGE * long;
  const rate = (of(long + step) - of(long - step)) / (2 * step);
  return band(Math.abs(rate) * doubt.plusMinus, ...doubt.from);
}
