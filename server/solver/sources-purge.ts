import { source } from './source.ts';

export const purgeSources = {
  'sweep-through': source(
    'Crowl & Louvar, Chemical Process Safety',
    'sweep-through purging: well mixed all the time; from memory, computed again',
    'handbook',
  ),
  'taylor-aris': source(
    'Taylor 1953 and Aris 1956, Proc. R. Soc. A 219 and 235; Ogata & Banks 1961',
    'laminar dispersion along a tube; first term, on the long side',
    'paper',
  ),
  'argon-data': source(
    'Argon at 20 °C: Tegeler, Span, Wagner 1999; Lemmon & Jacobsen 2004; CRC Handbook',
    'density, viscosity, diffusivity in air',
    'paper',
  ),
  'inlet-jet': source('Mixed share near the feed', '5 bores of a free jet; derived, on the long side', 'derivation'),
  'dispersion-in-row': source(
    'Tubes in a row: variances of the time on the way add up',
    'axial dispersion as in Levenspiel, Chemical Reaction Engineering, from memory; derived',
    'derivation',
  ),
  'gas-network': source(
    'Flow through connected bores and holes',
    'Hagen and Poiseuille in tubes, Bernoulli through holes, gas balanced at every place; derived',
    'derivation',
  ),
  'dead-leg': source(
    'Bore that no gas runs through',
    'diffusion out of a blind bore, first term of its series; at least that long; derived',
    'derivation',
  ),
  orifice: source('Flow through a sharp-edged hole', 'Bernoulli, discharge coefficient 0.61', 'derivation'),
  'root-pressure': source(
    'Sag of a weld root 3 mm wide under pressure',
    'derived: 332 Pa sags by a tenth of a 1.65 mm wall; no published figure was found',
    'derivation',
  ),
  'dam-heat': source(
    'Heat of a weld that spreads along the tube',
    'plane source at one moment, nothing cooled; usual values of austenitic steel from memory; derived',
    'derivation',
  ),
  'root-cooling': source(
    'Cooling of a weld root in a thin wall',
    'line source that loses heat at its outside, 25 W/(m² K) from memory; derived, ± 50 %',
    'derivation',
  ),
  'heat-tint': source(
    'Force Technology report 1337-4-da-en, 2016',
    'colour on stainless begins to show from 200 to 300 °C',
    'paper',
  ),
  'aws-d18-2': source(
    'AWS D18.2:2009, guide to weld discolouration',
    'oxygen in the backing gas of ten samples; names a tint, is not a limit',
    'standard',
  ),
  'meter-reading': source(
    'Oxygen meter at the vent, held against the models',
    'a reading within 2 % of a model is as reckoned; our own choice',
    'derivation',
  ),
} as const;
