import { about } from './finding-text.ts';

/** What is said about a frame that came back, its cuts and the price. */
export const findingsMending = {
  'came-back-as-wanted': about('mm', 'The frame came back as wanted, as far as the tape can tell.', 'Nothing to do.'),
  'no-single-slip': about(
    'mm',
    'None of the known slips explains what came back, by itself or two together.',
    'Measure again, and ask the bender how it was marked and bent.',
  ),

  'cut-narrower-than-kerf': about(
    'mm',
    'The piece to take out is narrower than the two saw cuts.',
    'Make one cut and dress the faces to the marks.',
    'The piece is',
  ),
  'cut-short-of-metal': about(
    'mm',
    'A joint lacks metal on its short side[ (joint {joint} on {member})]: both faces want the same piece of tube.',
    'Take more out and let in a piece, or share the kink between two joints.',
    'Missing are',
  ),
  'joint-twist': about(
    'deg',
    'At a joint[ (joint {joint} on {member})] the second piece is turned about its own axis.',
    'Scribe a line along the tube across the joint before it is cut, and set it over by that much.',
    'The turn is',
  ),
  'kink-visible': about(
    'deg',
    'The kink at this joint can be seen.',
    'Use two joints, so that each takes half.',
    'The kink is',
  ),
  'hi-lo-over-practice': about(
    'mm',
    'The step between the walls is more than good practice.',
    'Dress the ends, or move the cut.',
    'The step is',
  ),
  'hi-lo-over-standard': about(
    'mm',
    'The step between the walls is more than the standard allows.',
    'Move the cut, or choose another way.',
    'The step is',
  ),
  'leg-to-be-trimmed': about(
    'mm',
    'A leg[ (at the {end} of the tube)] is longer than wanted and is cut back at its foot.',
    'Cut after welding.',
    'It is longer by',
  ),
  'leg-too-short': about(
    'mm',
    'A leg is shorter than wanted. Cutting cannot mend that.',
    'Pack the foot, or let in a piece.',
    'It is shorter by',
  ),
  'rebend-cannot-narrow': about(
    'mm',
    'Rebending moves the feet and hardly changes the width at the corners.',
    'Choose a splice or a new frame.',
    'The corners stay off by',
  ),
  'rebend-opens-bend': about(
    'deg',
    'Rebending opens a finished bend. Worked stainless can wrinkle or flatten.',
    'Try it on a test piece, or choose a splice.',
  ),
  'rebend-over-machine': about('deg', 'The machine cannot rebend this far.', 'Choose another way.'),
  'way-not-possible': about('count', 'The way chosen is not possible here[: {way}].', 'Choose another way.'),
};
