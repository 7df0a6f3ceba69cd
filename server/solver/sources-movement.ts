import { source } from './source.ts';

/** What the movement of a frame from tacked to welded rests on. */
export const movementSources = {
  'elastic-frame': source(
    'Tacked frame as a linear-elastic one, by the flexibility method',
    'Castigliano; bending, torsion and axial strain; Poisson 0.3, from memory; held against a stiffness model',
    'derivation',
  ),
  'weld-pull': source(
    'Pull of a tube towards the part of a joint that is welded last',
    '0.5 to 1 degree for one joint welded once round without a jig; common practice, no source',
    'practice',
  ),
  'weld-quarters': source(
    'How much each quarter of a joint pulls by its turn',
    'our own choice: −1.5, −0.5, 0.5, 1.5, so that opposed quarters pull half of once round',
    'derivation',
  ),
} as const;
