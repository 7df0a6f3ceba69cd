import { about } from './finding-text.ts';

/** What is said about machine, dies, test bends and the bending of each member. */
export const findingsBending = {
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
  'die-missing': about(
    'count',
    'The machine has no die of this number.',
    'Choose one of its dies.',
    'Chosen is number',
  ),
  'die-for-other-tube': about(
    'mm',
    'The die that is set up is for another tube.',
    'Choose the die for this tube, or correct the diameter of one of the two.',
    'Its groove is for',
  ),
  'test-bends-too-few': about(
    'count',
    'There are too few test bends on this tube and die to fit a line, so theory is used.',
    'Make test bends at two different angles, near 20 and 120 degrees.',
    'There are',
  ),
  'test-bends-one-angle': about(
    'deg',
    'All test bends on this tube and die are at one angle[: {angle}°]; a line needs two, so theory is used.',
    'Make another test bend at a different angle.',
  ),
  'test-bends-no-fit': about(
    'deg',
    'The line through the test bends is not one of springback: at one end it is negative, or half of the angle and more. Theory is used.',
    'Measure them again, and leave out a bend that was slipping.',
  ),
  'test-bends-other-tube': about(
    'count',
    '[{others} of {count}] test bends are on another tube, wall or die and are not used.',
    'They stay on record for their own tube.',
  ),
  'test-bend-impossible': about(
    'mm',
    'No bend can have this reading, so it is left out: release only opens a radius, and a bend grows by no more than its outside stretches.',
    'Measure it again.',
  ),
  'scatter-over-typed': about(
    'deg',
    'The test bends scatter more than the angle scatter that was typed.',
    'Take what they show.',
    'They scatter by ±',
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
    'The bends leave no straight[ between points {first} and {second}]: they overlap[; {shortage:mm} are missing][; with equal radii at both, at most {bothRadii:mm} would fit][; a radius of at most {oneRadius:mm} would fit].',
    'Make the size larger or the radius smaller.',
    'The length there is',
  ),
  'straight-short-for-machine': about(
    'mm',
    'The straight between two bends is too short for the clamp.',
    'Make the size larger, or ask the bender for a shorter clamp.',
    'The straight is',
  ),
  'grip-short': about(
    'mm',
    'The straight before the first bend is too short to grip[; {extra:mm} more is left on there].',
    'Cut it off after bending.',
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
    'A mandrel is advised for this bend[: {mandrel}]. Low confidence: a rule of the trade.',
    'Ask the bender.',
    'Diameter over wall is',
  ),
  'mandrel-not-on-die': about(
    'ratio',
    'This bend is likely to want more than the die has[: {mandrel}; it has {tooling}]. Low confidence: a rule of the trade.',
    'Ask the bender before the first tube.',
    'Diameter over wall is',
  ),
  'radius-not-of-die': about(
    'mm',
    'This radius is not what the die gives.',
    'Use another die, or leave the radius empty to take what the die gives.',
  ),
  'bend-angle-zero': about('deg', 'The tube goes straight on here, so there is no bend.', 'Take the point out.'),
  'bend-angle-straight-back': about(
    'deg',
    'The tube turns back on itself here.',
    'Move the point, or enter such a bend as an arc.',
  ),
  'last-straight-short': about(
    'mm',
    'The straight after the last bend is too short for the machine to hold[; {extra:mm} more is left on there].',
    'Cut it off after bending.',
    'The straight is',
  ),
  'crowned-bar-gripped': about(
    'mm',
    'The clamp grips the crowned part of the bar.',
    'Roll the crown after the corners, or ask the bender for a shaped clamp.',
    'The straight is',
  ),

  'size-doubtful': about(
    'mm',
    'As things stand a size may come out further off than its tolerance class allows[: {check}][; most of it comes from {band}].',
    'Bend one piece and measure it, or make test bends, before the first frame.',
    'It is sure to ±',
  ),
  'tube-strikes': about(
    'mm',
    'While it is bent the tube strikes[: {obstacle}], by a simple picture of the machine.',
    'Walk the tube round the machine before clamping it.',
    'The distance is',
  ),
  'bend-another-way': about(
    'mm',
    'It cannot be bent as planned, but it can in another way[: {making}].',
    'Take that way.',
  ),
  'bend-no-way': about(
    'mm',
    'No way of bending it in one piece on this machine gets by[; in two pieces with a joint {splitAt:mm} from its start it does].',
    'Use another machine, or change the frame.',
  ),
  'bending-member-missing': about(
    'mm',
    'A way of bending is kept for a member that the frame does not have.',
    'Nothing needs to be done.',
  ),
  'closing-weld-near-bend': about(
    'mm',
    'The closing weld stands near a bend: there is little room for clamp, torch and polishing belt.',
    'Close it in a longer straight, or make the closed tube larger.',
    'To the bend it is',
  ),
  'closing-straight-missing': about(
    'count',
    'There is no straight of this number to close in[; there are {straights}].',
    'The longest straight is taken.',
    'Asked for is number',
  ),
};
