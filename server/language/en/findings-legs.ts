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
  'leg-stubby': about(
    'mm',
    'One side of this leg is shorter than the leg is wide[ ({name})], so that it is hard to mark and to hold.[ Its adjustment takes {adds:mm} of it.]',
    'Move its foot or its head, choose a shorter adjustment or a fitting in its place.',
    'That side is',
  ),
  'leg-adjust-long': about(
    'mm',
    'The adjustment takes more than the leg has[ ({name})].',
    'Choose a shorter one.',
    'It takes',
  ),
  'leg-adjust-travel': about(
    'mm',
    'The adjustment is to go further in than it is long[ ({name})]: in its middle it adds less than that.',
    'Type how far it goes either way from its middle, or what it adds there.',
    'Its travel either way is',
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
  'leg-no-saddle': about(
    'mm',
    'No saddle fits where this leg meets its tube[ ({name} on {member})]: the tube bends back into the leg there, or away from it.',
    'Move the head along the tube, bring the leg to it less flatly, or use a fitting.',
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
    '[Cut {name} at {cut:mm}, ± {band:mm}; {doubt} accounts for {part:mm} of it. ]Most of what is in doubt comes from one thing.',
    'Measure that again before you cut.',
    'The ± is',
  ),
  'leg-outside-adjustment': about(
    'mm',
    'The length of this leg is in doubt by more than its adjustment can take up[ ({name})].',
    'Measure again, or choose one with more travel.',
    'The doubt is ±',
  ),
  'leg-strikes': about(
    'mm',
    'This leg runs into another tube[: {name} into {other}].',
    'Move its foot or its head.',
    'They overlap by',
  ),
  'leg-near': about(
    'mm',
    'This leg passes close by another tube[: {name} by {other}].',
    'See that both can be fitted and welded, or move its foot or its head.',
    'Between the two are',
  ),
  'leg-slender': about(
    'ratio',
    'This leg is very slender[ ({name})].',
    'Use a larger tube or a shorter leg. A qualified person decides what it may carry.',
    'Its slenderness is',
  ),
  'legs-not-purged': about(
    'count',
    'Welds of the legs are in the price, but not on the weld and purge sheet.',
    'Purge each leg through its foot, as its procedure says.',
    'Number of legs:',
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
  'strut-adjusted': about(
    'count',
    'A leg with a thread or a slip piece in it[ ({name})] bends and gives where its parts meet. Its Euler load is that of a plain tube; what it carries is not told.',
    'A qualified person decides what it may carry, by what the maker says of the fitting.',
  ),
  'legs-hold-nothing': about(
    'count',
    'These legs are pinned at both ends, and nothing that is typed here keeps their heads from going sideways[: {names}]. What is told of them holds only if something else keeps the frame in place.',
    'Hinge the frame, fix an end of each leg, or brace them; have it looked at by a qualified person.',
  ),
};
