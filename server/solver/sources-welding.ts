import { source } from './source.ts';

export const weldingSources = {
  // current, electrode, gas
  'tube-weld-current': source(
    'Current of a closed butt in thin stainless tube',
    '30 to 40 A for each mm of wall; common practice, no source. With filler it begins there too; our own choice',
    'practice',
  ),
  'run-table-handbook': source(
    'Chinese Welding Handbook, vol. 1, 2nd ed., p. 150',
    'single-run TIG butt in stainless, 0.8 to 3.2 mm; quoted in an equipment manual',
    'handbook',
  ),
  'run-table-maker': source(
    'Reference table of a maker of welding equipment',
    'flat TIG butt in stainless, 0.5 to 3 mm; seen second-hand',
    'practice',
  ),
  'fillet-table': source(
    'Welder’s handbook of a gas supplier',
    'TIG fillets in stainless of 1.6 and 3.2 mm',
    'handbook',
  ),
  'plate-heat': source(
    'Current of a fillet on a plate',
    'the high end is read at the mean of tube and plate, the plate as three walls at most, and no thicker than the table goes; our own choice',
    'practice',
  ),
  'hand-travel': source(
    'Travel by hand round a tube',
    '1 to 2.5 mm/s for walls of 1 to 2 mm; common practice, no source',
    'practice',
  ),
  'arc-voltage': source('Arc voltage in argon', '9 to 12 V; common practice, no source', 'practice'),
  'electrode-ranges': source(
    'AWS A5.12 and ISO 6848, currents of tungsten electrodes',
    'guidance, electrode negative, from memory; widened by one manual, seen second-hand',
    'memory',
  ),
  'torch-gas': source(
    'Cup, torch flow, pre-flow and post-flow',
    '1 L/min for each mm of cup, 6 to 10 in all; post-flow 1 s for 10 A, at least 5 s; common practice, no source',
    'practice',
  ),
  'arc-starts': source('Starts of a weld', 'one for each quarter of each run; our own choice', 'practice'),
  // filler and runs
  'filler-size': source(
    'Diameter of the filler rod',
    '1.2 mm up to 1.2 mm of wall, 1.6 up to 3, 2.4 over; common practice, no source',
    'practice',
  ),
  'run-count': source(
    'Runs of a weld',
    'one up to 3 mm of wall; more by area, 10 mm² each; common practice and our own choice',
    'practice',
  ),
  'rod-allowance': source('Stubs and losses of rod', '15 % and 5 %; common practice, no source', 'practice'),
  'bead-size': source(
    'Size of a bead on thin tube',
    'cap 4 × 0.5, root 3 × 0.4 mm from 1.65 mm of wall on; common practice, no source; smaller in proportion on thinner walls, our own choice',
    'practice',
  ),
  'full-throat': source(
    'Throat of a fillet as thick as the wall',
    'so that the weld carries what the tube does; derived',
    'derivation',
  ),
  interpass: source(
    'EN 1011-3, interpass temperature',
    '150 °C austenitic and 22Cr duplex, 100 °C superduplex; from memory',
    'memory',
  ),
  // heat and shrinkage
  'en-1011-1': source('EN 1011-1, heat input', 'Q = k U I/v with k 0.6 for TIG; seen in two summaries', 'standard'),
  'iso-18491': source('ISO/TR 18491, arc energy', 'E = U I/v, without a factor', 'standard'),
  'full-depth-heat': source(
    'Shrinkage across a wall that is heated through',
    'Okerblom’s form S = (α/ρc) H/t, derived; steel against stainless agrees with Capel',
    'derivation',
  ),
  'aws-shrinkage': source(
    'AWS Welding Handbook, vol. 1, distortion',
    '0.2 Aw/t + 0.05 d for carbon steel, from memory; 1.3 times that for stainless by Capel, from memory',
    'memory',
  ),
  'blodgett-shrinkage': source(
    'Blodgett, shrinkage across a butt',
    '0.10 Aw/t, a lower bound; second-hand',
    'handbook',
  ),
  'twi-fillet': source(
    'TWI, distortion: types and causes',
    '0.8 mm for each fillet with a leg up to 3/4 of the thickness; used beyond that here',
    'handbook',
  ),
  // preparation, tacks, position
  'weld-preparation': source(
    'Preparation of thin tube for TIG',
    'gaps, lands and bevels by wall; common practice, no source',
    'practice',
  ),
  'tack-spacing': source(
    'Tacks round a tube',
    'number and order, 60 to 80 mm apart on a long weld; common practice, no source',
    'practice',
  ),
  'tack-length': source(
    'EN 1011-1, tack welds',
    'at least four times the thicker part, as reprinted by a filler maker; dots of 3 to 5 mm without filler are practice',
    'standard',
  ),
  'iso-6947': source(
    'ISO 6947, welding positions',
    'codes with the American ones beside them; between them our own boundaries, 22.5° and 67.5°, 45° for fillets',
    'standard',
  ),
  'iso-5817-kink': source(
    'ISO 5817:2003, no. 508',
    'D 4°, C 2°, B 1°, from memory; later editions have no limit in their main table',
    'memory',
  ),
  'polish-step': source('A step that a belt takes away', 'a tenth of the wall; common practice, no source', 'practice'),
  'operating-factor': source(
    'Share of the time that an arc burns',
    '0.1 to 0.3 by hand; common practice, no source',
    'practice',
  ),
  sleeve: source(
    'Sleeve inside a butt',
    'gap, clearance, length and plug holes; common practice, no source. A plug is welded once round its hole; our own choice',
    'practice',
  ),
} as const;
