import type { CatalogueGradeKey, Grade, OwnGrade } from '../../server/job/tube.ts';
import type { Catalogue } from '../api/client.ts';

export const CATALOGUE_GRADES = [
  '304',
  '304L',
  '316',
  '316L',
  '321',
  '2205',
] as const satisfies readonly CatalogueGradeKey[];

/** The values of a grade, each with the unit that it is typed in. */
export const GRADE_VALUES = [
  { name: 'density', unit: 'kg/m³' },
  { name: 'elasticModulus', unit: 'MPa' },
  { name: 'strengthCoefficient', unit: 'MPa' },
  { name: 'hardeningExponent', unit: '' },
  { name: 'proofStress', unit: 'MPa' },
  { name: 'elongation', unit: '%' },
] as const;

/** An own grade starts with the values of the catalogue grade that it replaces, to be typed over. */
export function ownGradeFrom(catalogue: Catalogue, grade: Grade): Grade {
  if (grade.from === 'own') return grade;
  const values = catalogue.grades.find(({ key }) => key === grade.key);
  if (values === undefined) return grade;
  const { density, elasticModulus, strengthCoefficient, hardeningExponent, proofStress, elongation } = values;
  const own: OwnGrade = {
    from: 'own',
    name: grade.key,
    density,
    elasticModulus,
    strengthCoefficient,
    hardeningExponent,
    proofStress,
    elongation,
  };
  return own;
}
