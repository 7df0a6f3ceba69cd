import { about } from './finding-text.ts';

/** How a bore that has no way out is opened, by what keeps it closed; each part is said where there is data for it. */
const OPENED_BY = [
  '[ The dams, {dams:mm} from the welds, cut it off from the openings of the frame: fill the whole frame, or drill a vent hole to the air between them.]',
  '[ Drill a hole through its plate ({plates}) before that is welded on, or a vent hole to the air in a place that nobody sees.]',
  '[ Drill holes under its saddle ends ({drill}) before they are fitted, or a vent hole to the air in a place that nobody sees.]',
  '[ Its saddle ends were welded before ({fitted}) and nobody can drill under them now: a vent hole to the air in a place that nobody sees is the only way. If holes were drilled when it was made and one has looked, by blowing through, say so in “Vent holes under saddle ends”.]',
  '[ A vent hole to the air is the only way into {bare}: drill it in a place that nobody sees.]',
].join('');

/** What is said about the bores that are filled with gas, the places where it passes, its flow, dams and meter readings. */
export const findingsPurge = {
  'closed-chamber': about(
    'count',
    `Nothing opens this bore, so no gas can go through it. A closed bore must never be welded: heated air bursts it.${OPENED_BY}`,
    'Open it first.',
  ),
  'one-opening': about(
    'mm',
    'This bore has one opening only.[ A lance of {lance:mm} goes in by it, and leaves no room for the gas to come back.]',
    'Push a lance through it to the far end, so that gas comes back past it, and leave room around it; or drill a vent hole at the far end.',
    'The opening is',
  ),
  'closed-by-weld': about(
    'count',
    `Only the gaps of joints open this bore[ (weld {welds})], and the last weld closes it. A closed tube must never be welded: heated gas blows out the pool or bursts it.${OPENED_BY}`,
    'Open it first.',
  ),
  'weld-in-dead-leg': about(
    'mm',
    'No gas runs past a weld[ ({welds})]: it stands in a bore that clears by diffusion alone[, in {minutes} min or more].',
    'Drill a vent hole at the far end of it.',
    'From the gas to its far end are',
  ),
  'dead-leg': about(
    'mm',
    'No gas runs through this bore: it clears by diffusion alone[, in {minutes} min or more].[ It leads {way} as the frame is held, so that air is caught in it.]',
    'Drill a vent hole at its far end, or wait until the meter stays low.',
    'From the gas to its far end are',
  ),
  'fed-high': about(
    'mm',
    'Argon is heavier than air. On its way it has to run down here, falls through the air below and mixes with it, so the time is the well-mixed one.',
    'Feed it at the lowest place and vent it at the highest: turn the frame, or drill a vent hole at the top.',
    'It runs down by',
  ),
  'held-level': about(
    'mm',
    'Feed and vent are as good as level while the frame is held like this, and argon runs along the bottom of the tube first.',
    'Lift the end with the vent.',
    'The vent is higher by',
  ),
  'up-no-direction': about(
    'count',
    'No direction points up: all three numbers are 0. The plan takes the frame as lying flat.',
    'Type which way is up while the frame is held for welding.',
  ),
  'bore-by-vent-holes': about(
    'count',
    'Only a small part of the gas[ ({share} %)] goes through this bore, by the holes under its saddle ends, and the chamber waits for it[: {times} times as long as gas that goes one way].',
    'Drill wider holes, or feed it by a vent hole of its own.',
  ),
  'except-not-a-saddle': about(
    'count',
    'This end sits on no other tube, so there is no hole under it to leave out or to add.',
    'Take it off the list, or choose a saddle end.',
  ),
  'hole-no-place': about(
    'count',
    'There is no such place for a vent hole[ (hole {hole})] on the frame.',
    'Choose a place that the tube has.',
  ),
  'hole-no-such': about('count', 'There is no such vent hole[: {hole}].', 'Choose one from the list.'),
  'feed-is-vent': about('count', 'Feed and vent are at the same place.', 'Choose two different places.'),
  'feed-not-an-end': about('count', 'There is no such end.', 'Choose an end from the list.'),
  'feed-not-free': about('count', 'This end is not open, so no gas can pass.', 'Choose an open end.'),
  'target-below-gas': about(
    'ppm',
    'The target is not over the oxygen in the gas itself: it is never reached.[ With this gas {next} ppm is the next target.]',
    'Use a purer gas.',
  ),
  'target-high': about(
    'ppm',
    'With so much oxygen the root scales, and does not resist corrosion.[ Near the sea it should have less than {sea} ppm while it is hot (ASSDA 2010, after AWS D18.1).]',
    'Wait for a lower target; where the gas itself holds too much, use a purer gas.',
    'The target is',
  ),
  'target-unreachable-leak': about(
    'ppm',
    'The readings settle above the target: air leaks in[, about {leak} mL/min], and more time does not help.[ The flow bears {most} mL/min.]',
    'Tighten the hose, tape the gaps, and look for a bore that was not cleared.',
    'They settle at',
  ),
  'vent-pressure-high': about(
    'Pa',
    'When a joint closes, the pressure inside would push out the weld pool[ at weld {weld}].',
    'Drill the hole that throttles the gas wider, or use a lower welding flow or a larger vent.',
    'The pressure is',
  ),
  'closing-flow-lower': about(
    'L/min',
    'The way out cannot carry the welding flow by itself. Turn it down before the last quarter of each joint closes.',
    'Turn the flow down there, or use a larger vent.',
    'The welding flow is',
  ),
  'hold-short': about(
    's',
    'The gas is turned off while the root is still hot enough to colour, as far as its cooling can be reckoned.',
    'Keep it on longer.',
    'The hold is',
  ),
  'dam-near-weld': about(
    'mm',
    'The dam is so close to the weld that it can burn[: it gets {rise} K hotter].',
    'Set it farther away.',
  ),
  'dam-beyond-end': about('mm', 'The dam would lie beyond the end of the tube.', 'Plug the end instead.'),
  'dam-in-bend': about(
    'mm',
    'A dam would lie inside a bend, where no disc sits square and gas leaks past it.',
    'Choose a distance at which all dams lie in straights, or fill the whole frame.',
  ),
  'dam-stays-inside': about(
    'count',
    'Once this tube is welded it has no open end to draw a dam out of.',
    'Make its dams of paper that dissolves in water, and rinse them out.',
  ),
  'purge-flow-turbulent': about(
    'ratio',
    'The flow is so fast that gas and air mix.',
    'Use a lower pre-purge flow.',
    'The Reynolds number is',
  ),
  'meter-no-chamber': about('count', 'There is no chamber with this number[: {number}].', 'Choose one of the plan.'),
  'meter-later': about(
    'ppm',
    'The meter shows more oxygen than even well-mixed gas would have left by now: air leaks in, a bore is not cleared, or the flow is not what was typed.',
    'Look at the hose, the tape and the flowmeter, and wait for the meter.',
    'It shows',
  ),
  'meter-below-gas': about(
    'ppm',
    'The meter shows less oxygen than the gas itself holds: one of the two numbers is off.',
    'Check the meter in air and in gas from the bottle, or type what the certificate says.',
    'It shows',
  ),
} as const;
