import type { FindingCode } from '../../plan/finding.ts';
import type { Unit } from '../../plan/figure.ts';

/**
 * What each finding says. `text` is the fact, `out` what a person can do. Parts in [square brackets] are left out
 * where the finding brings no data for them. `unit` is the unit of data.value, data.low and data.high.
 */
export type FindingText = { readonly text: string; readonly unit: Unit; readonly out: string };

const about = (unit: Unit, text: string, out: string): FindingText => ({ text, unit, out });

export const findings: Readonly<Record<FindingCode, FindingText>> = {
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
    'It is computed, not measured.',
    'Bend one piece and measure it before the first real tube.',
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
  ),
  'straight-short-for-machine': about(
    'mm',
    'The straight between two bends is too short for the clamp.',
    'Make the size larger, or ask the bender for a shorter clamp.',
  ),
  'grip-short': about(
    'mm',
    'The straight before the first bend is too short to grip.',
    'Leave extra length on this end and cut it off after bending.',
  ),
  'elongation-over-grade': about(
    'percent',
    'The outside of this bend stretches more than the grade is sure to allow.',
    'Use a larger radius.',
  ),
  'flattening-likely': about(
    'percent',
    'The tube is likely to flatten in this bend.',
    'Use a mandrel or a larger radius.',
  ),
  'mandrel-advised': about('ratio', 'A mandrel is advised for this bend[: {mandrel}].', 'Ask the bender.'),
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
  'crowned-bar-gripped': about(
    'mm',
    'The clamp grips the crowned part of the bar.',
    'Roll the crown after the corners, or ask the bender for a shaped clamp.',
  ),

  'came-back-not-possible': about('mm', 'No tube has the sizes as they came back.', 'Measure them again.'),
  'came-back-other-shape': about(
    'count',
    'The frame that came back has another shape than the one wanted.',
    'Copy the wanted frame and change its sizes.',
  ),
  'came-back-as-wanted': about('mm', 'The frame came back as wanted, as far as the tape can tell.', 'Nothing to do.'),
  'came-back-narrower': about(
    'mm',
    'The frame came back narrower than wanted: a cut cannot widen it.',
    'Let in a piece, rebend it, or make a new frame.',
  ),
  'no-single-slip': about(
    'mm',
    'No single slip explains what came back.',
    'Measure again; more than one thing may have gone wrong.',
  ),

  'cut-too-much': about('mm', 'More would be cut out than the member has.', 'Choose another way.'),
  'cut-no-place': about(
    'mm',
    'No place is free for this cut.',
    'Move the cut off the middle, or choose another number of joints.',
  ),
  'cut-beside-bend': about(
    'mm',
    'A joint stands close to a bend: clamp, torch and belt have little room.',
    'Move the cut away from the bend.',
  ),
  'cut-not-planar': about(
    'mm',
    'The frame does not lie in one plane, so this cut does not close.',
    'Choose another way.',
  ),
  'cut-narrower-than-kerf': about(
    'mm',
    'The piece to take out is narrower than the two saw cuts.',
    'Make one cut and dress the faces to the marks.',
  ),
  'kink-visible': about('deg', 'The kink at this joint can be seen.', 'Use two joints, so that each takes half.'),
  'hi-lo-over-practice': about(
    'mm',
    'The step between the walls is more than good practice.',
    'Dress the ends, or move the cut.',
  ),
  'hi-lo-over-standard': about(
    'mm',
    'The step between the walls is more than the standard allows.',
    'Move the cut, or choose another way.',
  ),
  'leg-to-be-trimmed': about('mm', 'A leg is longer than wanted and is cut back at its foot.', 'Cut after welding.'),
  'leg-too-short': about(
    'mm',
    'A leg is shorter than wanted. Cutting cannot mend that.',
    'Pack the foot, or let in a piece.',
  ),
  'rebend-cannot-narrow': about(
    'mm',
    'Rebending changes the feet, never the width at the corners.',
    'Choose a splice or a new frame.',
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
    'Drill vent holes under its coped ends before fitting, or feed it by a needle at a joint that is welded last.',
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
  ),
  'bottle-not-enough': about('L', 'The bottle holds too little gas for this job.', 'Have a full bottle at hand.'),
  'room-oxygen-low': about(
    'percent',
    'The argon of this job makes the air in the room dangerous.',
    'Bring in fresh air and wear an oxygen alarm.',
  ),
  'dam-near-weld': about('mm', 'The dam is so close to the weld that it can burn.', 'Set it farther away.'),
  'dam-beyond-end': about('mm', 'The dam would lie beyond the end of the tube.', 'Plug the end instead.'),
  'purge-flow-turbulent': about('ratio', 'The flow is so fast that gas and air mix.', 'Use a lower pre-purge flow.'),
  'argon-caution': about(
    'percent',
    'Argon takes the place of air. It cannot be seen or smelled and can kill without warning.',
    'Bring in fresh air, use an oxygen alarm, and never put your head inside.',
  ),

  'rate-open': about('minor', 'No rate has been typed, so this line stays open.', 'Type the rate.'),
  'time-open': about('min', 'No time has been typed, so this line stays open.', 'Type the minutes.'),
};
