import { source } from './source.ts';

/** Of struts, beams and published loads. Information: no approval rests on them. */
export const strengthSources = {
  'strut-euler': source('Euler’s load of a pinned strut', 'N = π² E I / (K L)²; textbooks of mechanics of materials', 'handbook'),
} as const;
