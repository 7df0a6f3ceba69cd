import { about } from './finding-text.ts';

/** What is said about a frame that came back, its cuts, the purge and the price. */
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

  'closed-chamber': about(
    'count',
    'Fewer than two ends of this bore are open, so gas cannot go through it. A closed bore must not be welded.',
    'Drill vent holes under its saddle ends before fitting, or feed it by a needle at a joint that is welded last.',
  ),
  'bore-by-vent-holes': about(
    'count',
    'Gas reaches this bore only through vent holes[ ({holes})], and not all of it goes that way: the time shown is for gas led straight through it.',
    'Fit the hose to a hole, or wait for the meter at the far hole.',
  ),
  'feed-is-vent': about('count', 'Feed and vent are the same end.', 'Choose two different ends.'),
  'feed-not-an-end': about('count', 'There is no such end[: {member}].', 'Choose an end from the list.'),
  'feed-not-free': about('count', 'This end is not open, so no gas can pass[: {member}].', 'Choose a free end.'),
  'target-below-gas': about(
    'ppm',
    'The target is lower than the oxygen in the gas itself: it is never reached.',
    'Use a purer gas or a higher target.',
  ),
  'vent-pressure-high': about(
    'Pa',
    'The pressure inside would push out the weld pool.',
    'Use a lower welding flow or a larger vent.',
    'The pressure is',
  ),
  'bottle-not-enough': about(
    'L',
    'The bottle holds too little gas for this job.',
    'Have a full bottle at hand.',
    'The job takes',
  ),
  'room-oxygen-low': about(
    'percent',
    'The argon of this job makes the air in the room dangerous.',
    'Bring in fresh air and wear an oxygen alarm.',
    'The air of the room would hold',
  ),
  'dam-near-weld': about('mm', 'The dam is so close to the weld that it can burn.', 'Set it farther away.'),
  'dam-beyond-end': about('mm', 'The dam would lie beyond the end of the tube.', 'Plug the end instead.'),
  'purge-flow-turbulent': about(
    'ratio',
    'The flow is so fast that gas and air mix.',
    'Use a lower pre-purge flow.',
    'The Reynolds number is',
  ),
  'argon-caution': about(
    'percent',
    'Argon takes the place of air. It cannot be seen or smelled and can kill without warning.',
    'Bring in fresh air, use an oxygen alarm, and never put your head inside.',
    "With this job's argon let out in it, the air of the room would hold",
  ),

  'rate-open': about('minor', 'No rate has been typed, so this line stays open.', 'Type the rate.'),
  'time-open': about('min', 'No time has been typed, so this line stays open.', 'Type the minutes.'),
};
