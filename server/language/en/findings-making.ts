import { about } from './finding-text.ts';

/** What is said about the tube and the frame as it is to be made. */
export const findingsMaking = {
  'wall-over-half-diameter': about('mm', 'The wall is so thick that no bore is left.', 'Type a thinner wall.'),
  'wall-outside-usual': about('mm', 'This wall is unusual for frame tube.', 'Look at the tube again with a caliper.'),
  'grade-springback-estimated': about(
    'mm',
    'Its hardening values are estimated, so the springback is too.',
    'Make two test bends and type them in.',
  ),
  'tolerance-no-row': about(
    'mm',
    'What the tube was bought to has no row for this size[: {standard}], so no band counts its tolerance.',
    'Choose another tolerance, or type your own limits.',
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
};
