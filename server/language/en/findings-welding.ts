import { about } from './finding-text.ts';

/** What is said about preparing and making the welds, and about what they do to the frame. */
export const findingsWelding = {
  'gap-for-wall': about(
    'mm',
    'The gap does not suit faces like these[ on a wall of {wall:mm}].',
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
  'pad-closes-bore': about(
    'count',
    'This plate closes the last way out of the tube[: {name}]. Air that is heated in a closed tube bursts out through the weld.',
    'Drill a hole through the plate before you weld it on.',
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
  'current-out-of-band': about(
    'A',
    'The current is outside everything that is published for this wall.',
    'Look at it again, or prove it on a test piece.',
    'The current is',
  ),
  'sleeve-does-not-fit': about(
    'mm',
    'The sleeve does not go in[ at weld {weld}].',
    'Take a shorter or a thinner one, or weld without a sleeve.',
    'It would need',
  ),
  'sleeve-crevice': about(
    'count',
    'A sleeve leaves a crevice on either side of the weld, where salt water stays and eats the tube.',
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
