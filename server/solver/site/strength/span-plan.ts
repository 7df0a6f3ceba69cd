import type { Figure } from '../../../plan/figure.ts';
import type { SpanPlan } from '../../../plan/strength.ts';
import { band, figure, input } from '../../figure.ts';
import { sectionProperties } from '../../tube/section.ts';
import type { LaidSite } from '../laid-site.ts';
import { siteBand, type SiteStudy } from '../site-study.ts';
import { beamSag, beamStress, loadAtProof, MOMENT, SAG, type Beam, type LoadKind } from './beam.ts';
import { loadInput, type ListedLoad } from './published-loads.ts';
import { spansOf, type Span } from './spans.ts';

/** A span as a beam, and how far its length is in doubt [mm]: everything else of it goes by a power of the length. */
type Studied = {
  readonly beam: Beam;
  readonly doubt: Figure['band'];
  readonly proofStress: number;
  readonly sources: SiteStudy['source']['grade']['sources'];
};

/** The ± of a number that goes as the length to a power: first order. */
const bandOf = (value: number, power: number, { beam, doubt }: Studied): Figure['band'] =>
  doubt === null ? null : band((Math.abs(power * value) * doubt.plusMinus) / beam.length, ...doubt.from);

/** The simple straight stretches of the frame as beams under each load of the list. Information: no approval. */
export function spanPlans(study: SiteStudy, loads: readonly ListedLoad[]): SpanPlan[] {
  const { tube, grade } = study.source;
  const { bore, elasticModulus: sectionModulus, secondMoment } = sectionProperties(tube);
  if (bore <= 0) return [];
  const found = new Map<LaidSite, ReadonlyMap<string, Span>>();
  const spansOn = (laid: LaidSite): ReadonlyMap<string, Span> => {
    const known = found.get(laid) ?? new Map(spansOf(study.source, laid).map((span) => [nameOf(span), span]));
    found.set(laid, known);
    return known;
  };
  return [...spansOn(study.laid).values()].map((span) => {
    const on = (of: (span: Span) => number): Figure['band'] =>
      siteBand(study, (laid) => {
        const same = spansOn(laid).get(nameOf(span));
        return same === undefined ? undefined : of(same);
      });
    const { member, case: kind, from, to } = span;
    const length = to - from;
    const doubt = on((same) => same.to - same.from);
    const beam = { case: kind, length, elasticModulus: grade.elasticModulus, sectionModulus, secondMoment };
    const studied: Studied = { beam, doubt, proofStress: grade.proofStress, sources: grade.sources };
    const ends = [input('a', 'from', from, 'mm'), input('b', 'to', to, 'mm')];
    return {
      member,
      case: kind,
      from: stationFigure(
        from,
        on((same) => same.from),
      ),
      to: stationFigure(
        to,
        on((same) => same.to),
      ),
      length: figure(length, 'mm', 'L = b − a', ends, ['geometry'], doubt),
      atProof: grade.proofStress > 0 ? proofFigure(studied) : null,
      loads: loads.map((load) => loadOn(studied, load)),
    };
  });
}

/** What a span is known by on every laying of the site. */
const nameOf = ({ key, case: kind }: Span): string => `${kind} ${key}`;

const stationFigure = (station: number, doubt: Figure['band']): Figure =>
  figure(station, 'mm', 'a', [input('a', 'station', station, 'mm')], ['geometry'], doubt);

function proofFigure(studied: Studied): Figure {
  const { beam, proofStress, sources } = studied;
  const load = loadAtProof(beam, proofStress);
  const inputs = [input('f', 'proof-stress', proofStress, 'MPa'), ...momentInputs(beam, 'point')];
  const from = ['simple-beam', sources.proofStress] as const;
  return figure(load, 'N', 'P = f W/(c L)', inputs, from, bandOf(load, -1, studied));
}

function loadOn(studied: Studied, load: ListedLoad): SpanPlan['loads'][number] {
  const { beam, proofStress, sources } = studied;
  const { key, kind, value, source } = load;
  const isAlong = kind === 'along';
  const on = { kind, whole: isAlong ? (value * beam.length) / 1000 : value };
  const stress = beamStress(beam, on);
  const sag = beamSag(beam, on);
  const bends = [loadInput(load), ...momentInputs(beam, kind)];
  const sags = [
    loadInput(load),
    input('L', 'length', beam.length, 'mm'),
    input('k', 'divisor-of-the-sag', SAG[kind][beam.case], 'ratio'),
    input('E', 'elastic-modulus', beam.elasticModulus, 'MPa'),
    input('I', 'second-moment', beam.secondMoment, 'mm4'),
  ];
  const more = isAlong ? 1 : 0;
  return {
    key,
    stress: figure(
      stress,
      'MPa',
      isAlong ? 'σ = c w L²/(1000 W)' : 'σ = c P L/W',
      bends,
      ['simple-beam', source],
      bandOf(stress, 1 + more, studied),
    ),
    sag: figure(
      sag,
      'mm',
      isAlong ? 's = w L⁴/(1000 k E I)' : 's = P L³/(k E I)',
      sags,
      ['simple-beam', sources.elasticModulus],
      bandOf(sag, 3 + more, studied),
    ),
    overProof: proofStress > 0 && stress > proofStress,
  };
}

const momentInputs = (beam: Beam, kind: LoadKind) => [
  input('c', 'moment-over-load-and-length', MOMENT[kind][beam.case], 'ratio'),
  input('L', 'length', beam.length, 'mm'),
  input('W', 'section-modulus', beam.sectionModulus, 'mm3'),
];
