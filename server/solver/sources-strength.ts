import { source } from './source.ts';

/** Of struts, beams and published loads. Information: no approval rests on them. */
export const strengthSources = {
  'strut-euler': source(
    'Euler’s load of a pinned strut',
    'N = π² E I / (K L)²; textbooks of mechanics of materials',
    'handbook',
  ),
  'aisc-360-factors': source(
    'AISC 360, commentary, table C-A-7.1',
    'buckling length over length by how the ends are held, for design, beside the theoretical values',
    'standard',
  ),
  'free-to-sway': source(
    'Whether the head of a leg can go sideways',
    'frame taken as rigid, on its hinge and on legs that turn freely at both ends; derived',
    'derivation',
  ),
  'aisc-360-slender': source('AISC 360, E2, user note', 'slenderness at most 200; from memory', 'memory'),
  'en-1993-1-4': source(
    'EN 1993-1-4, flexural buckling of stainless hollow sections',
    'α 0.49, λ₀ 0.40, γ 1.1; from memory',
    'memory',
  ),
  'simple-beam': source(
    'Statics of simple beams',
    'P L/4 and P L³/(48 E I) at the middle, P L and P L³/(3 E I) at the free end; along it w L²/8 and 5 w L⁴/(384 E I), w L²/2 and w L⁴/(8 E I); checked by integration',
    'derivation',
  ),
  'leg-alone': source(
    'One leg that carries a load alone',
    'moment about the hinge over the leg’s lever about it, the frame taken as rigid; derived',
    'derivation',
  ),
  'cfr-46-177': source(
    'US 46 CFR 177.900(b)',
    'rails of small passenger vessels, any way: 200 lb (91 kg) at a point, and not together with it 50 lb/ft (74 kg/m) along the top rail; newtons from the pounds',
    'standard',
  ),
  'cfr-29-1910': source(
    'US 29 CFR 1910.29(b)(3) and (5)',
    'guardrail 200 lb (890 N), midrail 150 lb (667 N), out or down',
    'standard',
  ),
  'en-1502': source(
    'EN 1502:2020, 4.4, boarding stairs of inland vessels',
    'a step 1.5 kN, its handrail 0.3 kN any way',
    'standard',
  ),
} as const;
