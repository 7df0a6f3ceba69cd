import { source } from './source.ts';

export const roomSources = {
  'argon-state': source(
    'Tegeler, Span, Wagner 1999',
    'equation of state of argon; fit of Z within 0.00003, 0.5 to 302 bar, −5 to 45 °C',
    'paper',
  ),
  'bottle-warmth': source(
    'How far a bottle is from the warmth typed',
    '10 K, and 2 K between two settled readings: our own choice; what that does by the equation of state',
    'practice',
  ),
  'gas-grades': source(
    'Oxygen by grade of argon',
    'typical of suppliers, common practice, no source: ask for the certificate',
    'practice',
  ),
  'oxygen-balance': source(
    'Balance of oxygen, perfectly mixed',
    'form of oxygen-deficiency models, fans checked by integration; derived; layers make it worse',
    'derivation',
  ),
  'sudden-release': source(
    'A whole bottle at once, air pushed out before it mixes',
    'form of a gas makers’ association, with 20.9 % to begin with; seen second-hand',
    'standard',
  ),
  'oxygen-alarm': source(
    'US 29 CFR 1910.146(b) and EIGA Doc 44/18',
    'air below 19.5 % oxygen is hazardous; seen second-hand',
    'standard',
  ),
  'oxygen-held': source('Oxygen that fresh air should hold, 20.5 %', 'clear of the alarm: our own choice', 'practice'),
} as const;
