import { source } from './source.ts';

/** Of legs, their cuts, and the room around tubes. */
export const legSources = {
  'leg-length': source(
    'Leg from foot to head',
    'distance of two points less what foot and head take; derived, checked against a geometry kernel',
    'derivation',
  ),
  'leg-saw': source(
    'What sawing and welding leave open',
    'a cut is off by 0.5 mm, what a weld pulls in by half of itself; common practice, no source',
    'practice',
  ),
  'leg-slope': source(
    'Leg for a degree of slope',
    'how fast the head goes along the leg while the frame turns about its hinge, or as little as it can on legs alone, over how fast its slope rises; derived',
    'derivation',
  ),
  'leg-turn': source(
    'Leg for a degree of turn about the hinge',
    'no slope is asked for, or the hinge does not give it: how fast the head goes along the leg while the frame turns; derived',
    'derivation',
  ),
  'leg-roll': source(
    'Roll between two cuts of one tube',
    'angle about the leg between two planes through its axis; derived',
    'derivation',
  ),
  'leg-order': source(
    'The leg that fixes the slope best is set up first',
    'what was wrong with it is then a turn of the frame, and no longer in doubt for the others; derived, the order is our own choice',
    'derivation',
  ),
} as const;
