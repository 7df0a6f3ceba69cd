import { about } from './finding-text.ts';

/** What is said about the points that a frame is fixed at, and about bending a finished frame again. */
export const findingsRebend = {
  'fixing-no-place': about(
    'count',
    'The frame has no such place[: {name}].',
    'Choose a member, a bend or a distance that the frame has.',
  ),
  'rebend-no-bends': about('count', 'The frame has no bend that could be turned.', 'Choose another way.'),
  'rebend-not-needed': about(
    'deg',
    'No turn of a bend that the machine can hold brings the frame nearer.',
    'Leave the bends as they are.',
  ),
  'rebend-ring-closed': about(
    'count',
    'A closed ring cannot be bent again: its ends are welded to each other.',
    'Cut it open first, or choose a splice.',
  ),
  'rebend-no-grip': about(
    'mm',
    'The clamp has too little straight to hold this bend by, so it is not turned again[; it would need {turn} degrees].',
    'Ask the bender for a shorter clamp, or choose another way.',
    'The straight before it is',
  ),
  'rebend-no-straight': about(
    'mm',
    'This bend cannot be turned further: too little tube follows it[; it would need {turn} degrees].',
    'Choose another way.',
    'The straight after it is',
  ),
  'rebend-at-limit': about(
    'deg',
    'This bend is turned as far as it may be, and the frame would need more.',
    'See what is left over, or choose another way.',
    'It is turned by',
  ),
  're-roll-between-bends': about(
    'mm',
    'This crown stands between two bends: the rolls reach its middle only, and the bent ends swing while it is rolled.',
    'Ask the bender whether his rolls have the room, and keep clear of the ends.',
    'The crown is',
  ),
  'rebend-saddle-off': about(
    'mm',
    'A bent tube that sits on two others no longer reaches its far seat.',
    'Let a piece in, or make this tube anew.',
    'It stands off by',
  ),
};
