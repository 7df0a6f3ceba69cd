import { Type, type Static } from 'typebox';
import { PositiveLength, ShortText } from './quantities.ts';

/** Keys of the grades in the catalogue (server/solver/tube/grades.ts). */
export const CatalogueGradeKey = Type.Union(
  [
    Type.Literal('304'),
    Type.Literal('304L'),
    Type.Literal('316'),
    Type.Literal('316L'),
    Type.Literal('321'),
    Type.Literal('2205'),
  ],
  { title: 'grade' },
);
export type CatalogueGradeKey = Static<typeof CatalogueGradeKey>;

/** A grade that the shop describes itself, for instance from a mill certificate. */
export const OwnGrade = Type.Object(
  {
    from: Type.Literal('own'),
    name: ShortText('grade name', 40),
    density: Type.Number({ minimum: 1000, maximum: 20_000, title: 'density', unit: 'kg/m3' }),
    elasticModulus: Type.Number({ minimum: 10_000, maximum: 400_000, title: 'elastic modulus', unit: 'MPa' }),
    strengthCoefficient: Type.Number({ minimum: 50, maximum: 5000, title: 'strength coefficient', unit: 'MPa' }),
    hardeningExponent: Type.Number({ minimum: 0, maximum: 0.8, title: 'hardening exponent', unit: 'ratio' }),
    proofStress: Type.Number({ minimum: 10, maximum: 2500, title: 'proof stress', unit: 'MPa' }),
    elongation: Type.Number({ minimum: 1, maximum: 90, title: 'elongation at break', unit: 'percent' }),
  },
  { title: 'own grade', additionalProperties: false },
);
export type OwnGrade = Static<typeof OwnGrade>;

export const Grade = Type.Union(
  [
    Type.Object(
      { from: Type.Literal('catalogue'), key: CatalogueGradeKey },
      { title: 'grade from the catalogue', additionalProperties: false },
    ),
    OwnGrade,
  ],
  { title: 'grade' },
);
export type Grade = Static<typeof Grade>;

const PlusMinus = (title: string) => Type.Number({ minimum: 0, maximum: 20, title, unit: 'mm' });

/** What the tube was bought to (server/solver/tube/tube-tolerances.ts), or the shop's own limits. */
export const TubeTolerance = Type.Union(
  [
    Type.Object(
      {
        by: Type.Literal('standard'),
        standard: Type.Union(
          [
            Type.Literal('iso-1127-d2-t3'),
            Type.Literal('iso-1127-d3-t3'),
            Type.Literal('iso-1127-d4-t3'),
            Type.Literal('iso-1127-d4-t4'),
            Type.Literal('astm-a554'),
            Type.Literal('astm-a269'),
            Type.Literal('astm-a249'),
            Type.Literal('astm-a312'),
          ],
          { title: 'tolerance standard' },
        ),
      },
      { title: 'tolerance of a standard', additionalProperties: false },
    ),
    Type.Object(
      {
        by: Type.Literal('own'),
        /** ± on the outside diameter, ± on the wall [mm]. */
        outsideDiameter: PlusMinus('outside diameter ±'),
        wall: PlusMinus('wall ±'),
      },
      { title: 'own tolerance', additionalProperties: false },
    ),
  ],
  { title: 'tolerance' },
);
export type TubeTolerance = Static<typeof TubeTolerance>;

/** The tube that the whole frame is made of. */
export const Tube = Type.Object(
  {
    outsideDiameter: PositiveLength(400, 'outside diameter'),
    wall: PositiveLength(40, 'wall'),
    grade: Grade,
    /** Heat from the certificate, so that test bends of the same material count first; empty: not known. */
    heat: ShortText('heat', 40),
    tolerance: TubeTolerance,
  },
  { title: 'tube', additionalProperties: false },
);
export type Tube = Static<typeof Tube>;
