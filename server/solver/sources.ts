import { finishSources } from './sources-finish.ts';
import { legSources } from './sources-legs.ts';
import { movementSources } from './sources-movement.ts';
import { purgeSources } from './sources-purge.ts';
import { quoteSources } from './sources-quote.ts';
import { roomSources } from './sources-room.ts';
import { siteSources } from './sources-site.ts';
import { strengthSources } from './sources-strength.ts';
import { weldingSources } from './sources-welding.ts';
import { source, type Source } from './source.ts';

export type { Source };

export const SOURCES = {
  typed: source('Typed in this job', '', 'typed'),
  geometry: source('Plane and solid geometry', 'derived, checked against a geometry kernel', 'derivation'),
  practice: source('Common practice, no source', '', 'practice'),
  // correction
  'iso-5817': source(
    'ISO 5817, quality levels for imperfections',
    'no. 5072 linear misalignment of tubes, no. 508 angular misalignment; seen second-hand',
    'standard',
  ),
  'asme-bpe': source('ASME BPE-2012, bioprocessing equipment', 'misalignment at most 15 % of the wall', 'standard'),
  horn: source(
    'Horn, closed-form absolute orientation by unit quaternions',
    'J. Opt. Soc. Am. A 4 (1987), section 4',
    'paper',
  ),
  'readings-fit': source(
    'Least squares fit of the frame to all readings',
    'Levenberg and Marquardt; leave-one-out by the hat matrix, Draper & Smith, Applied Regression Analysis, from memory',
    'handbook',
  ),
  'turns-fit': source(
    'Least squares over the turns of the bends',
    'Levenberg and Marquardt, each turn within its limits; derived',
    'derivation',
  ),
  'path-model': source('Bending the marks in software', 'straights and arcs laid end to end', 'derivation'),
  'weld-metal': source('Weld metal from gap, cap and root', 'area times length times 7.9 g/cm³, derived', 'derivation'),
  // tube and bending
  'en-10088-1': source(
    'EN 10088-1, physical properties',
    'annex, density and modulus; seen in secondary copies',
    'standard',
  ),
  'en-10217-7': source(
    'EN 10217-7, welded stainless tubes',
    'least proof stress and elongation; seen in a secondary copy',
    'standard',
  ),
  'en-10217-7-memory': source(
    'EN 10217-7, welded stainless tubes',
    'least proof stress and elongation; from memory',
    'memory',
  ),
  'elastic-modulus': source(
    'Modulus 193 GPa of austenitic grades',
    'value of US handbooks, from memory; EN 10088-1 has 200 GPa',
    'memory',
  ),
  callister: source('Callister, Fundamentals of Materials Science and Engineering', '2nd ed. 2005, p. 199', 'handbook'),
  considere: source(
    'Considère: n = ln(1 + Ag), K = Rm (1 + Ag) / n^n',
    'exact rule, typical Rm and Ag from memory',
    'memory',
  ),
  'iso-1127': source(
    'ISO 1127, tolerance classes D3 and T3',
    'as EN 10217-7 uses them up to 168.3 mm; secondary copies',
    'standard',
  ),
  'pure-bending': source(
    'Pure bending of a round tube, released elastically',
    'derived; a lower-side estimate',
    'derivation',
  ),
  'swift-hardening': source(
    'Swift, J. Mech. Phys. Solids 1 (1952) 1',
    'hardening law, from memory; begun at the proof stress, derived',
    'paper',
  ),
  'springback-shop': source(
    'Springback of annealed 304 and 316, 2D to 3D',
    '2 to 4 degrees at 90; common practice, no source',
    'practice',
  ),
  'test-bends': source('Test bends typed in this job', '', 'typed'),
  'springback-fit': source('US patent 3,821,525 (1974)', 'fixed and proportional springback from test bends', 'paper'),
  'line-fit': source(
    'Straight line by least squares',
    'Draper & Smith, Applied Regression Analysis, 1.4; Student’s t, 95 %; from memory',
    'handbook',
  ),
  'machine-envelope': source(
    'Bed, die block, clamp and pressure die as plain blocks',
    'our own simple picture of a machine, from the sizes typed: look at the machine',
    'derivation',
  ),
  'first-order': source(
    'First-order propagation through the path of the tube',
    'derived; held against a Monte Carlo run',
    'derivation',
  ),
  'closing-rule': source(
    'Closing weld in the longest straight, 1.5 D from bends',
    'common practice, no source',
    'practice',
  ),
  'faa-43-13': source('FAA AC 43.13-1B', 'Table 4-7, setback', 'handbook'),
  'bend-wall': source('Bend with all of the stretch in the wall', 'derived: plane strain, the safe side', 'derivation'),
  'u-tube-flattening': source(
    'Flattening rule of makers of U-tubes',
    '20 D/R % up to 4D, 5 % above; medium confidence',
    'practice',
  ),
  'iso-1127-sizes': source(
    'ISO 1127 and EN 10217-7, outside diameters and walls',
    'from memory; walls of 1.5 and 3 mm are common stock without a source',
    'memory',
  ),
  'tube-stock': source('Tube that is stocked', 'common practice, no source', 'practice'),
  'en-10312': source('EN 10312, tubes for pressed fittings', 'series 1 and 2; seen in an excerpt', 'standard'),
  'asme-b36-19': source('ASME B36.19, stainless pipe', 'sizes up to NPS 2; seen in two excerpts', 'standard'),
  'asme-b36-19-memory': source('ASME B36.19, stainless pipe', 'sizes above NPS 2; from memory', 'memory'),
  'iso-1127-classes': source(
    'ISO 1127, tolerance classes D1 to D4 and T1 to T4',
    'the larger of share and least value; two secondary copies agree',
    'standard',
  ),
  'astm-a554': source(
    'ASTM A554, round tube as welded',
    'diameter and ovality up to 3-1/2 in, wall 10 %; three secondary copies agree',
    'standard',
  ),
  'astm-a554-memory': source('ASTM A554, round tube as welded', 'above 3-1/2 up to 5 in; from memory', 'memory'),
  'astm-a269': source('ASTM A269, tube for general service', 'diameter and wall; secondary copies', 'standard'),
  'astm-a249': source('ASTM A249, tube for boilers and exchangers', 'diameter and wall; secondary copies', 'standard'),
  'astm-a312': source(
    'ASTM A312, pipe',
    'diameter, and 12.5 % under the wall; no limit over the wall was seen; secondary copies',
    'standard',
  ),
  'iso-13920': source(
    'ISO 13920, general tolerances of welded work',
    'tables 1 to 3, classes A to F; seen in a secondary copy',
    'standard',
  ),
  'iso-13920-memory': source(
    'ISO 13920, general tolerances of welded work',
    'table 3, classes G and H; from memory',
    'memory',
  ),
  'iso-2768-1': source(
    'ISO 2768-1:1989, general tolerances',
    'table 1, classes f, m, v; seen in secondary copies',
    'standard',
  ),
  'iso-2768-1-memory': source(
    'ISO 2768-1:1989, general tolerances',
    'class c and angles; from memory, because copies differ',
    'memory',
  ),
  // purge, welding and finish
  ...purgeSources,
  ...roomSources,
  ...weldingSources,
  ...movementSources,
  ...finishSources,
  // site
  ...siteSources,
  ...legSources,
  ...quoteSources,
  ...strengthSources,
} as const satisfies Record<string, Source>;

export type SourceKey = keyof typeof SOURCES;
