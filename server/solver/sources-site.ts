import { source } from './source.ts';

/** Of readings on site, points, and how a frame stands. */
export const siteSources = {
  'level-vector': source(
    'Up by gravity from two inclinations',
    'u = (sin p, sin r, √(1 − sin²p − sin²r)); derived, checked with random rotations',
    'derivation',
  ),
  'level-accuracy': source(
    'Accuracy of levels, hose levels and tapes on site',
    'common practice, no source',
    'practice',
  ),
  'level-in-plane': source(
    'What a level shows: arcsin(d · u) along a line, atan2(d · u, e · u) in a plane',
    'it turns in its own plane, e square to d in that plane; derived, checked with random rotations',
    'derivation',
  ),
  'level-fit': source(
    'Least squares over level readings, each by its accuracy',
    'Gauss and Newton on the two freedoms of up; derived, held against a linear solution',
    'derivation',
  ),
  'level-drift': source(
    'Moved where the turn is more than three times its ±',
    'three standard deviations; common practice, no source',
    'practice',
  ),
  'level-scatter': source(
    'Readings that scatter further than their accuracy',
    'accuracies times k = √(Σ (v/σ)² / (n − 2)) where that is over 1: the root of the reduced sum of squares (Birge’s ratio), usual in least squares; from memory',
    'memory',
  ),
  'site-first-order': source(
    'The site laid once more with each measured value off by its accuracy',
    'root of the sum of the squared changes; derived, held against random errors of everything that is measured',
    'derivation',
  ),
  'level-own-axes': source('The structure’s own axes taken for level', 'nobody has read a level', 'typed'),
  'standing-turn': source(
    'How a frame stands: turned about its hinge, or by the least turn, to slopes and heights',
    'sin a = A + B cos θ + C sin θ about a hinge; derived, checked on rotated points of random frames',
    'derivation',
  ),
  'site-plumb': source(
    'Tape and plumb line',
    'P = A + a x_h + b y_h + c u, x_h = unit(x − (x·u) u), y_h = u × x_h; derived, checked there and back',
    'derivation',
  ),
  'site-distances': source(
    'A place from its distances to known points',
    'spheres that meet, in closed form; of more than it takes the least squares; checked by differences of squares',
    'derivation',
  ),
  'gap-search': source(
    'Least gap over all that swings',
    'bounds by the slope of a convex distance over stretches and turns, halved until nothing is left; derived, checked against sampling',
    'derivation',
  ),
} as const;
