import { about } from './finding-text.ts';

/** What is said about legs. None of it is leave to stand on one. */
export const findingsLegs = {
  'leg-head-off-tube': about(
    'mm',
    'The head of {name} is not on a tube of the frame; the nearest is {member}.',
    'Choose a place on a tube, or measure the point again.',
    'It is off the middle of that tube by',
  ),
  'leg-no-length': about(
    'mm',
    'The foot and the head of {name} are one place.',
    'Choose a foot or a head that is elsewhere.',
    'They are apart by',
  ),
  'leg-short': about(
    'mm',
    '{name} is shorter than its own cuts take.',
    'Move its foot or its head, use a thinner tube, or leave out the fitting.',
    'What is left is',
  ),
  'leg-adjust-long': about(
    'mm',
    'The adjustment of {name} takes more than the leg has.',
    'Choose a shorter one.',
    'It takes',
  ),
  'leg-along-surface': about(
    'deg',
    'The surface under the foot of {name} runs along the leg, so that no cut would stand on it.',
    'Give the foot a pad that faces the leg.',
    'Between the leg and the surface are',
  ),
  'leg-head-flat': about(
    'deg',
    '{name} runs along {member}, so that no saddle can be cut.',
    'Move its foot or its head.',
    'Between the two are',
  ),
  'leg-too-wide': about(
    'mm',
    'The tube of {name} is wider than the tube that it sits on ({member}): its saddle would hang over.',
    'Use a thinner tube or a fitting.',
    'Its diameter is',
  ),
  'leg-square-rocks': about(
    'mm',
    'Cut square, the foot of {name} touches the surface on one side only.',
    'Mitre it, or set a wedge under it.',
    'The other side stands off by',
  ),
  'leg-measure-again': about(
    'mm',
    'Cut {name} at {cut:mm}, ± {band:mm}; {source} accounts for {part:mm} of it.',
    'Measure that again before you cut.',
    'Good to know first: a leg cut once should be known to',
  ),
  'leg-outside-adjustment': about(
    'mm',
    'The length of {name} is in doubt by more than its adjustment can take up.',
    'Measure again, or choose one with more travel.',
    'The doubt is ±',
  ),
  'leg-slender': about(
    'ratio',
    '{name} is very slender.',
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
    'A published load would bend a straight stretch of {member} beyond its proof stress[ ({load})], reckoned as the simplest case.',
    'This is no design: have it looked at by a qualified person.',
    'The stress would be',
  ),
  'strut-over-load': about(
    'N',
    'A published load could press {name} with more than it carries as a strut[ ({load})], if it carried that load alone.',
    'This is no design: have it looked at by a qualified person.',
    'The force would be',
  ),
};
