import { about } from './finding-text.ts';

/** What is said about the tube, the bends and the frame as it is to be made. */
export const findingsMaking = {
  'wall-over-half-diameter': about('mm', 'The wall is so thick that no bore is left.', 'Type a thinner wall.'),
  'wall-outside-usual': about('mm', 'This wall is unusual for frame tube.', 'Look at the tube again with a caliper.'),
  'grade-springback-estimated': about(
    'mm',
    'Its hardening values are estimated, so the springback is too.',
    'Make two test bends and type them in.',
  ),

  'die-radius-under-tube-radius': about(
    'mm',
    'The die radius is smaller than the tube allows.',
    'Type the radius to the centreline of the tube.',
  ),
  'die-radius-tight': about(
    'mm',
    'This is a tight bend for this tube.',
    'Ask the bender for a larger die, or for a mandrel.',
  ),
  'test-bends-too-few': about(
    'count',
    'There are too few test bends to fit a line, so a simple share is used.',
    'Make another test bend at a different angle.',
  ),
  'test-bends-no-fit': about(
    'deg',
    'The test bends do not lie on one line.',
    'Measure them again, and leave out a bend that was slipping.',
  ),
  'springback-estimate': about(
    'deg',
    'It is computed, not measured[; shops see {shopLow} to {shopHigh} degrees at 90].',
    'Bend one piece and measure it before the first real tube.',
    'At 90° it is',
  ),
  'springback-extrapolated': about(
    'deg',
    'This angle lies outside the test bends.',
    'Make a test bend near this angle.',
  ),
  'springback-too-large': about(
    'percent',
    'By these values the tube springs back by half of the angle or more, so no bend holds.',
    'Check the modulus and the hardening values of the grade, or type a smaller die radius.',
  ),
  'angle-over-machine': about('deg', 'The machine cannot bend this far.', 'Use a smaller angle or another machine.'),
  'straight-negative': about(
    'mm',
    'Two bends overlap: no straight is left between them.',
    'Make the size larger or the radius smaller.',
    'The straight is',
  ),
  'straight-short-for-machine': about(
    'mm',
    'The straight between two bends is too short for the clamp.',
    'Make the size larger, or ask the bender for a shorter clamp.',
    'The straight is',
  ),
  'grip-short': about(
    'mm',
    'The straight before the first bend is too short to grip.',
    'Leave extra length on this end and cut it off after bending.',
    'The straight is',
  ),
  'elongation-over-grade': about(
    'percent',
    'The outside of this bend stretches more than the grade is sure to allow.',
    'Use a larger radius.',
    'The stretch is',
  ),
  'flattening-likely': about(
    'percent',
    'The tube is likely to flatten in this bend.',
    'Use a mandrel or a larger radius.',
    'The flattening is',
  ),
  'mandrel-advised': about(
    'ratio',
    'A mandrel is advised for this bend[: {mandrel}].',
    'Ask the bender.',
    'Diameter over wall is',
  ),
  'radius-not-of-die': about(
    'mm',
    'This radius is not what the die gives.',
    'Use another die, or leave the radius empty to take what the die gives.',
  ),
  'bend-angle-zero': about('deg', 'The tube goes straight on here, so there is no bend.', 'Take the point out.'),
  'bend-angle-straight-back': about('deg', 'The tube turns straight back on itself here.', 'Move the point.'),
  'last-straight-short': about(
    'mm',
    'The straight after the last bend is short.',
    'Leave extra length and cut it off after bending.',
    'The straight is',
  ),

  'width-under-tube': about('mm', 'The size is too small for two tubes side by side.', 'Type a larger size.'),
  'leg-short-for-bend': about('mm', 'The leg is too short for its corner bend.', 'Make the leg longer.'),
  'width-short-for-bends': about(
    'mm',
    'The width is too small for the two corner bends.',
    'Make it wider, or use a smaller die radius.',
  ),
  'crown-radius-too-small': about('mm', 'The crown radius is too small for this width.', 'Type a larger crown radius.'),
  'crossbar-outside-legs': about(
    'mm',
    'This inner crossbar does not meet the straight part of both legs.',
    'Move it along the legs.',
  ),
  'saddle-partner-missing': about(
    'mm',
    'The member that this end sits on is not there[: {onto}].',
    'Choose a member from the list.',
  ),
  'saddle-end-off-partner': about(
    'mm',
    'This end does not reach the member that it sits on[: {onto}].',
    'Move the end onto the other member.',
  ),
  'member-name-twice': about('count', 'Two members have the same name[: {name}].', 'Give each its own name.'),
  'members-cross': about(
    'mm',
    'Two members run through each other[: {first} and {second}].',
    'Move one, or end it as a saddle.',
  ),
  'member-crosses-itself': about('mm', 'This tube runs through itself.', 'Move its points.'),
  'path-not-possible': about('mm', 'No tube can follow these sizes.', 'Change the size that was typed last.'),
  'points-coincide': about('mm', 'Two points lie on the same spot.', 'Take one of them out.'),
  'frame-too-large': about(
    'count',
    'The frame has too many straights and arcs to be looked at in one piece.',
    'Split it into several jobs.',
    'There are',
  ),
  'crowned-bar-gripped': about(
    'mm',
    'The clamp grips the crowned part of the bar.',
    'Roll the crown after the corners, or ask the bender for a shaped clamp.',
    'The straight is',
  ),
};
