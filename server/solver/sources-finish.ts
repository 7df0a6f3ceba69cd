import { source } from './source.ts';

export const finishSources = {
  'thin-bead': source(
    'Cap of a bead on thin tube',
    '0.5 mm over the wall, as the filler is reckoned with; common practice, no source',
    'practice',
  ),
  'finish-steps': source(
    'Grinding a weld flush and polishing it, grit by grit',
    'knocked down to 0.1 to 0.2 mm first; common practice, no source',
    'practice',
  ),
  'finish-minutes': source(
    'Minutes for one joint, tube of 38 to 50 mm',
    'flush 3 to 6, satin 6 to 12, mirror 15 to 30, blending a saddle twice: common practice, no source; brushed and as delivered: our own choice',
    'practice',
  ),
  'en-10088-2': source(
    'EN 10088-2, surface finishes',
    'table 6, codes J, K and P with their roughness; quoted by a stockholder',
    'standard',
  ),
  'grit-roughness': source('Roughness that a 240 grit belt leaves', '0.3 to 0.5 µm; a trade article', 'practice'),
  'astm-a967': source(
    'ASTM A967, passivation by immersion',
    'nitric 1 to 4; the pages of two processors agree',
    'standard',
  ),
  'astm-a967-memory': source('ASTM A967, passivation by immersion', 'citric 1 to 3; from memory', 'memory'),
  'astm-a380-memory': source(
    'ASTM A380, annex A1, pickling of austenitic grades',
    'nitric and hydrofluoric acid; from memory',
    'memory',
  ),
  'pickle-paste': source(
    'Pickling paste on welds',
    '15 to 60 min; common practice, no source: its maker’s sheet decides',
    'practice',
  ),
} as const;
