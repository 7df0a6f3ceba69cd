import { Type } from 'typebox';
import { SHAPES } from '../job/default-frame.ts';
import { newJob } from '../job/default-job.ts';
import { SOURCES } from '../solver/sources.ts';
import { STANDARD_SIZES } from '../solver/tube/catalogue.ts';
import { CATALOGUE_GRADES } from '../solver/tube/grades.ts';
import type { App } from './app-type.ts';
import { JobDocument } from './schemas.ts';

const Catalogue = Type.Object(
  {
    sizes: Type.Array(
      Type.Object({
        family: Type.String(),
        name: Type.String(),
        outsideDiameter: Type.Number(),
        wall: Type.Number(),
        source: Type.String(),
        tolerance: Type.Union([Type.String(), Type.Null()]),
      }),
    ),
    grades: Type.Array(
      Type.Object({
        key: Type.String(),
        name: Type.String(),
        density: Type.Number(),
        elasticModulus: Type.Number(),
        strengthCoefficient: Type.Number(),
        hardeningExponent: Type.Number(),
        proofStress: Type.Number(),
        elongation: Type.Number(),
        hardeningEstimated: Type.Boolean(),
        sources: Type.Record(Type.String(), Type.String()),
      }),
    ),
    sources: Type.Record(
      Type.String(),
      Type.Object({ title: Type.String(), place: Type.String(), kind: Type.String() }),
    ),
    newJobs: Type.Record(Type.String(), JobDocument),
  },
  { title: 'catalogue' },
);

/** Usual sizes, one row a wall, with source and tolerance standard; grades with their sources; what every source key stands for; a new job of each shape. */
const CATALOGUE = {
  sizes: STANDARD_SIZES.flatMap(({ family, name, outsideDiameter, walls, source, tolerance }) =>
    walls.map((wall) => ({ family, name, outsideDiameter, wall, source, tolerance })),
  ),
  grades: Object.entries(CATALOGUE_GRADES).map(([key, grade]) => ({ key, ...grade })),
  sources: SOURCES,
  newJobs: Object.fromEntries(SHAPES.map((shape) => [shape, newJob(shape)])),
};

export function catalogueRoutes(app: App): void {
  app.get(
    '/api/catalogue',
    {
      schema: {
        tags: ['catalogue'],
        summary: 'Usual sizes and grades of tube, what every source key stands for, and a new job of each shape',
        response: { 200: Catalogue },
      },
    },
    () => CATALOGUE,
  );
}
