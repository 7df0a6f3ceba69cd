import { about } from './finding-text.ts';

/** What is said about preparing and making the welds, and about what they do to the frame. */
export const findingsWelding = {
  'gap-for-wall': about(
    'mm',
    'The gap does not suit faces like these[ over a {backing}][ on a wall of {wall:mm}].',
    'Dress the faces until the gap is right, or type the gap that you will have.',
    'The gap is',
  ),
  'bevel-thin-wall': about(
    'mm',
    'A wall this thin needs no bevel: it melts away at the edge.',
    'Leave the faces square.',
    'The wall is',
  ),
  'square-thick-wall': about(
    'mm',
    'An arc from one side does not melt square faces of such a wall right through.',
    'Bevel the faces.',
    'The wall is',
  ),
  'land-over-wall': about(
    'mm',
    'The land is as thick as the wall, so nothing is left to bevel.',
    'Make the land smaller, or leave the faces square.',
    'The land is',
  ),
  'pad-not-an-end': about(
    'count',
    'The plate of a pad stands at no open end of a tube[: {name}], so its weld is not planned.',
    'Put the pad at a free end, or plan it without a plate.',
  ),
  'pad-thick-plate': about(
    'mm',
    'The plate takes most of the heat, so that the arc melts through the tube[ of {wall:mm} wall] before it melts the plate.',
    'Aim the arc at the plate and wash it up to the tube, with more current than for the tube alone; find it on a test piece, and type what it was proved on.',
    'The plate is',
  ),
  'saddle-acute': about(
    'deg',
    'This tube lies so flat[ on {onto}] that torch and wire do not get into the heel of its saddle[ at weld {weld}].',
    'Let it stand steeper, or agree how its heel is closed; weld a test piece and cut it open.',
    'The axes are apart by',
  ),
  'no-filler-for-grade': about(
    'count',
    'No filler is known for this grade[: {grade}].',
    'Ask the maker of the tube, and type the filler.',
  ),
  'autogenous-not-for-grade': about(
    'count',
    'This grade should not be welded without filler[: {grade}]: the weld gets too little austenite.',
    'Weld it with filler, unless a procedure has been proved without.',
  ),
  'autogenous-with-gap': about(
    'mm',
    'Without filler there is nothing to fill the gap.',
    'Weld with filler, or dress the faces until they touch all round.',
    'The gap is',
  ),
  'electrode-range': about(
    'A',
    'The electrode[ of {diameter:mm}] does not carry this current well: too much melts it, too little lets the arc wander.',
    'Take another electrode or another current.',
    'The current is',
  ),
  'heat-over-grade': about(
    'kJ/mm',
    'The weld gets more heat than this grade stands.',
    'Go faster, or use less current.',
    'The heat input is',
  ),
  'duplex-gas': about(
    'count',
    'A duplex loses nitrogen in the arc[: {grade}]. Class rules allow argon with up to 2 % nitrogen for torch and backing (Lloyd’s Register, Rules for Materials, ch. 13 sec. 7.4); the plan reckons with plain argon. The colour samples are of 304L and 316L.',
    'Ask for a gas that a procedure was proved with, and compare colours with a sample of this grade.',
  ),
  'current-out-of-band': about(
    'A',
    'The current is outside everything that is published for this wall.',
    'Look at it again, or prove it on a test piece.',
    'The current is',
  ),
  'sleeve-does-not-fit': about(
    'mm',
    'The sleeve does not go in[ at weld {weld}][: with {outside:mm} over its outside it is left no bore][: along it the tube bows away by {bow:mm}, and its play is {play:mm}][: it meets the sleeve of weld {other}][: it sticks out of the end of {tube}][: it covers the hole that opens into {branch}].',
    'Take a shorter or a thinner one, or weld without a sleeve.',
  ),
  'sleeve-crevice': about(
    'count',
    'A sleeve leaves a crevice on either side of the weld, where salt water stays and eats the tube.[ It leaves gas and water a bore of {bore:mm}.]',
    'Weld without a sleeve, or keep it for dry places; drill a drain below it, and purge all the same.',
  ),
  'shrinkage-differs': about(
    'mm',
    'The shrinkage that is typed is far from what heat and gap make of it.',
    'Measure one test piece, and type what it shows.',
    'It is typed as',
  ),
  'order-no-such-weld': about('count', 'There is no such weld[: {weld}].', 'Take it out of the order.'),
  'order-twice': about(
    'count',
    'A weld stands in the order twice[: {weld}]. The first place counts.',
    'Take the other one out.',
  ),
  'order-pulls-more': about(
    'mm',
    'Your own order pulls the frame further than the order that is proposed[: {check}].',
    'Take the proposed order, or hold the frame in a stiff jig.',
    'It moves by',
  ),
  'pull-out-of-size': about(
    'mm',
    'Even in the best order the welds can pull the frame out of size[: {check}].',
    'Hold the frame in a stiff jig, tack more often, and measure before every weld.',
    'It can move by',
  ),
  'settings-not-proved': about(
    'count',
    'These settings are only to begin with[ ({forms})]. Nobody has proved them.',
    'Weld a test piece of the same tube, cut it open, and type what it was proved on.',
  ),
};
