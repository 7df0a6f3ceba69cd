import { source } from './source.ts';

/** Of legs, their cuts, and the room around tubes. */
export const legSources = {
  'leg-length': source(
    'Leg from foot to head',
    'distance of two points less what foot and head take; derived, checked against a geometry kernel',
    'derivation',
  ),
} as const;
