import { about } from './finding-text.ts';

/** What is said about legs. None of it is leave to stand on one. */
export const findingsLegs = {
  'leg-head-off-tube': about(
    'mm',
    'The head of this leg is not on a tube of the frame[ ({name}; the nearest is {member})].',
    'Choose a place on a tube, or measure the point again.',
    'It is off the middle of that tube by',
  ),
  'leg-no-length': about(
    'mm',
    'The foot and the head of this leg are one place[ ({name})].',
    'Choose a foot or a head that is elsewhere.',
    'They are apart by',
  ),
  'leg-short': about(
    'mm',
    'This leg is too short for its own cuts[ ({name})].',
    'Move its foot or its head, use a thinner tube, or leave out the fitting.',
    'What is left is',
  ),
  'leg-adjust-long': about(
    'mm',
    'The adjustment takes more than the leg has[ ({name})].',
    'Choose a shorter one.',
    'It takes',
  ),
  'leg-along-surface': about(
    'deg',
    'The surface under the foot runs along the leg[ ({name})], so that no cut would stand on it.',
    'Give the foot a pad that faces the leg.',
    'Between the leg and the surface are',
  ),
  'leg-head-flat': about(
    'deg',
    'This leg runs along the tube that it carries[ ({name}, {member})], so that no saddle can be cut.',
    'Move its foot or its head.',
    'Between the two are',
  ),
  'leg-too-wide': about(
    'mm',
    'The tube of this leg is wider than the tube that it sits on[ ({name} on {member})]: its saddle would hang over.',
    'Use a thinner tube or a fitting.',
    'Its diameter is',
  ),
  'leg-over-end': about(
    'mm',
    'The saddle of this leg hangs over the end of the tube that it carries[ ({name}, {member})].',
    'Move the head away from the end of the tube.',
    'It hangs over by',
  ),
  'leg-square-rocks': about(
    'mm',
    'Cut square, this foot touches the surface on one side only[ ({name})].',
    'Mitre it, or set a wedge under it.',
    'The other side stands off by',
  ),
  'leg-measure-again': about(
    'mm',
    '[Cut {name} at {cut:mm}, ± {band:mm}; {doubt}][ ({which})][ accounts for {part:mm} of it. ]Most of what is in doubt comes from one thing.',
    'Measure that again before you cut.',
    'The ± is',
  ),
  'leg-outside-adjustment': about(
    'mm',
    'The length of this leg is in doubt by more than its adjustment can take up[ ({name})].',
    'Measure again, or choose one with more travel.',
    'The doubt is ±',
  ),
  'leg-slender': about(
    'ratio',
    'This leg is very slender[ ({name})].',
    'Use a larger tube or a shorter leg. A qualified person decides what it may carry.',
    'Its slenderness is',
  ),
  'legs-not-priced': about(
    'count',
    'Tube, cuts and welds of the legs are not in the price.',
    'Add them by hand.',
    'There are',
  ),
  'load-over-proof': about(
    'MPa',
    'One load[, {load},] would bend a straight stretch of it beyond its proof stress, reckoned as a simple beam.',
    'This is no design, and nobody may rely on it: local codes and a qualified person decide.',
    'The stress would be',
  ),
  'strut-over-load': about(
    'N',
    'One load[, {load},] could press this leg[ ({name})] with more than it carries as a strut, if it carried that load alone.',
    'This is no design, and nobody may rely on it: local codes and a qualified person decide.',
    'The force would be',
  ),
  'legs-sway': about(
    'count',
    'Nothing that is typed here keeps the heads of these legs from going sideways[: {names}]. They are reckoned as struts that sway.',
    'Hinge the frame, brace the legs, or have it looked at by a qualified person.',
  ),
  'legs-hold-nothing': about(
    'count',
    'These legs are pinned at both ends, and nothing that is typed here keeps their heads from going sideways[: {names}]. What is told of them holds only if something else keeps the frame in place.',
    'Hinge the frame, fix an end of each leg, or brace them; have it looked at by a qualified person.',
  ),
};
