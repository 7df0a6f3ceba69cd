import { about } from './finding-text.ts';

/** What is said about joints, where they stand, and what cuts can reach. */
export const findingsSplice = {
  'cut-no-place': about(
    'mm',
    'No joint has a place to stand: bends, welds, fittings and what you barred leave no tube free.',
    'Allow another member, or take a barred stretch away.',
  ),
  'cut-beside-bend': about(
    'mm',
    'This joint has less room beside a bend or a weld than clamp, torch and belt like.',
    'Ask the welder, or put the joint elsewhere.',
  ),
  'cut-holds-together': about(
    'count',
    'Cutting the members that may be cut does not part the frame, so nothing can be moved.',
    'Allow another member to be cut.',
  ),
  'cut-member-missing': about('count', 'The frame has no such member.', 'Choose one that it has, or take this out.'),
  'splice-gains-nothing': about(
    'mm',
    'No splice brings the frame nearer to the wanted one than it is.',
    'Leave it, or allow other members to be cut.',
    'As it is, it is off by',
  ),
  'post-struck': about(
    'mm',
    'Where it stands, the wanted frame itself has too little room beside this[: {name}].',
    'Look at where it stands, or change the frame.',
    'At rest it lacks',
  ),
  'cut-parts-nothing': about(
    'count',
    'These joints do not part the frame: other tubes still hold both sides of a cut.',
    'Cut every tube that leads from one side to the other.',
    'Joints put down:',
  ),
  'cut-in-many-pieces': about(
    'count',
    'These cuts leave the frame in many loose pieces at once.',
    'Close one side before the next is cut, or lay the frame in a jig.',
    'Loose pieces:',
  ),
  'own-joint-no-member': about('count', 'The frame has no such member.', 'Choose one that it has.'),
  'own-joint-off-tube': about('mm', 'This joint is not on the tube.', 'Put it on the tube.', 'It stands at'),
  'own-joint-kept-out': about(
    'mm',
    'This joint stands where none should: [{keepOut}].',
    'Move it to the next free place, or ask the welder.',
    'It stands at',
  ),
  'own-joints-too-near': about(
    'mm',
    'Two joints of one member leave a piece that nobody can hold.',
    'Move them apart.',
    'Between them are',
  ),
  'own-joints-no-fit': about(
    'mm',
    'These joints cannot be closed: tube is missing at a face, new tube would be too short to let in, or the walls do not meet.',
    'Move the joints, or put others down.',
  ),
  'joint-pushed': about(
    'mm',
    'This joint stands as far over as it may: [{keepOut}].',
    'Nothing to do, unless that place is free after all.',
  ),
  'target-out-of-reach': about(
    'mm',
    'No cut brings this point where it must be[: {name}][; it would come to stand at {x:mm}, {y:mm}, {z:mm}].',
    'Let more members be cut, allow more joints, or choose another way.',
    'It is off by',
  ),
};
