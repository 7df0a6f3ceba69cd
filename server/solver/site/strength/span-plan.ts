import type { Figure } from '../../../plan/figure.ts';
import type { SpanPlan } from '../../../plan/strength.ts';
import { figure, input } from '../../figure.ts';
import { sectionProperties } from '../../tube/section.ts';
import type { LaidSite } from '../laid-site.ts';
import { siteBand, type SiteStudy } from '../site-study.ts';
import { beamSag, beamStress, loadAtProof, MOMENT, SAG, type Beam } from './beam.ts';
import type { PointLoad } from './published-loads.ts';
import { spansOf, type Span } from './spans.ts';

/** A span as a beam, and the number of it on any site of the study. */
type Studied = {
  readonly beam: Beam;
  readonly proofStress: number;
  readonly sources: SiteStudy['source']['grade']['sources'];
  readonly band: (of: (beam: Beam, span: Span) => number) => Figure['band'];
};

/** The simple straight stretches of the frame as beams under each load of the list. Information: no approval. */
export function spanPlans(study: SiteStudy, loads: readonly PointLoad[]): SpanPlan[] {
  const { tube, grade } = study.source;
  const { bore, elasticModulus: sectionModulus, secondMoment } = sectionProperties(tube);
  if (bore <= 0) return [];
  const found = new Map<LaidSite, readonly Span[]>();
  const spansOn = (laid: LaidSite): readonly Span[] => {
    const known = found.get(laid) ?? spansOf(study.source, laid);
    found.set(laid, known);
    return known;
  };
  const beamOf = (span: Span): Beam => ({
    case: span.case,
    length: span.to - span.from,
    elasticModulus: grade.elasticModulus,
    sectionModulus,
    secondMoment,
  });
  return spansOn(study.laid).map((span) => {
    const studied: Studied = {
      beam: beamOf(span),
      proofStress: grade.proofStress,
      sources: grade.sources,
      band: (of) =>
        siteBand(study, (laid) => {
          const same = spansOn(laid).find(({ key, case: kind }) => key === span.key && kind === span.case);
          return same === undefined ? undefined : of(beamOf(same), same);
        }),
    };
    return {
      member: span.member,
      case: span.case,
      from: stationFigure(span.from, studied, (_, same) => same.from),
      to: stationFigure(span.to, studied, (_, same) => same.to),
      length: figure(
        span.to - span.from,
        'mm',
        'L = b − a',
        [input('a', 'from', span.from, 'mm'), input('b', 'to', span.to, 'mm')],
        ['geometry'],
        studied.band(({ length }) => length),
      ),
      atProof: grade.proofStress > 0 ? proofFigure(studied) : null,
      loads: loads.map((load) => loadOn(studied, load)),
    };
  });
}

const stationFigure = (station: number, { band }: Studied, of: (beam: Beam, span: Span) => number): Figure =>
  figure(station, 'mm', 'a', [input('a', 'station', station, 'mm')], ['geometry'], band(of));

function proofFigure({ beam, proofStress, sources, band }: Studied): Figure {
  return figure(
    loadAtProof(beam, proofStress),
    'N',
    'P = f W/(c L)',
    [input('f', 'proof-stress', proofStress, 'MPa'), ...momentInputs(beam)],
    ['simple-beam', sources.proofStress],
    band((one) => loadAtProof(one, proofStress)),
  );
}

function loadOn({ beam, proofStress, sources, band }: Studied, load: PointLoad): SpanPlan['loads'][number] {
  const { key, value } = load;
  const stress = beamStress(beam, value);
  const point = input('P', 'point-load', value, 'N');
  return {
    key,
    stress: figure(
      stress,
      'MPa',
      'σ = c P L/W',
      [point, ...momentInputs(beam)],
      ['simple-beam', load.source],
      band((one) => beamStress(one, value)),
    ),
    sag: figure(
      beamSag(beam, value),
      'mm',
      's = P L³/(k E I)',
      [
        point,
        input('L', 'length', beam.length, 'mm'),
        input('k', 'divisor-of-the-sag', SAG[beam.case], 'ratio'),
        input('E', 'elastic-modulus', beam.elasticModulus, 'MPa'),
        input('I', 'second-moment', beam.secondMoment, 'mm4'),
      ],
      ['simple-beam', sources.elasticModulus],
      band((one) => beamSag(one, value)),
    ),
    overProof: proofStress > 0 && stress > proofStress,
  };
}

const momentInputs = (beam: Beam) => [
  input('c', 'moment-over-load-and-length', MOMENT[beam.case], 'ratio'),
  input('L', 'length', beam.length, 'mm'),
  input('W', 'section-modulus', beam.sectionModulus, 'mm3'),
];
