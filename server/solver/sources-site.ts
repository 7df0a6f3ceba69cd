import { source } from './source.ts';

/** Of readings on site, points, and how a frame stands. */
export const siteSources = {
  'level-vector': source(
    'Up by gravity from two inclinations',
    'u = (sin p, sin r, √(1 − sin²p − sin²r)); derived, checked with random rotations',
    'derivation',
  ),
  'level-accuracy': source('Accuracy of levels, hose levels and tapes on site', 'common practice, no source', 'practice'),
} as const;
