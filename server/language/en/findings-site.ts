import { about } from './finding-text.ts';

/** What is said about readings taken on site, the points and things there, and how the frame stands among them. */
export const findingsSite = {
  'level-not-read': about(
    'deg',
    'Nobody has read a level: the structure is taken to lie as its own axes do.',
    'Read a level along it and across it, on surfaces known to be level in the structure.',
  ),
  'level-reading-over-45': about(
    'deg',
    'A level on a surface that is level in the structure cannot read so much: it was read from the upright, or the surface is another one.',
    'Type the angle from the horizontal, or the direction that the level really lay along.',
    'It reads',
  ),
  'level-readings-too-few': about(
    'deg',
    'These readings tell one direction only.',
    'Read a level across the first one, or the height of a mark off the line of the others.',
  ),
  'level-readings-in-line': about(
    'deg',
    'All these readings lie along one line: how the structure leans across it is not known.',
    'Read a level across that line, or the height of a mark beside it.',
  ),
  'level-readings-impossible': about(
    'mm',
    'These heights differ by more than the marks are apart.',
    'Look at the heights and at the places of the marks again.',
    'They are further apart by',
  ),
  'level-angle-disagrees': about(
    'deg',
    'This reading disagrees with the others of its set.',
    'Read it again; somebody may have come aboard meanwhile.',
    'It is off by',
  ),
  'level-height-disagrees': about(
    'mm',
    'This height disagrees with the other readings of its set.',
    'Read it again; somebody may have come aboard meanwhile.',
    'It is off by',
  ),
  'level-no-time': about(
    'h',
    'When these readings were taken is not noted, so that nobody can tell whether they are old.',
    'Note day and time.',
  ),
  'level-drift': about(
    'deg',
    'The structure has moved since the set of readings before[ by {trim}° lengthwise and {list}° sideways].',
    'Keep everybody still, read again just before marking or drilling.',
    'It turned by',
  ),
  'level-set-missing': about(
    'count',
    'There is no such set of level readings, or it does not tell how the structure lay.',
    'Name a set that tells.',
    'It is set',
  ),
  'site-name-twice': about('count', 'Two of them are called {name}.', 'Give each a name of its own.'),
  'site-name-missing': about('count', 'Nothing here is called {name}.', 'Choose one from the list, or add it.'),
  'site-point-circle': about(
    'count',
    'This is measured from {name}, which is itself measured from this.',
    'Measure one of them from somewhere else.',
  ),
  'direction-none': about(
    'mm',
    'This does not give a direction: it has no length.',
    'Type a direction, or choose two points that are apart.',
  ),
  'points-in-line': about(
    'mm',
    'The known points lie in one line, so that they do not fix a place or a plane.',
    'Take a point that lies well off that line.',
    'The middle one is off the line by',
  ),
  'distances-too-few': about(
    'count',
    'Two distances leave a whole circle of places open.',
    'Add a distance from a third point, or say on which plane the point lies.',
    'There are',
  ),
  'distances-cannot-meet': about(
    'mm',
    'These distances cannot meet in one place[: {one} and {other} are at odds].',
    'Measure again, and look at which points the tape was held to.',
    'They lack',
  ),
  'distances-disagree': about(
    'mm',
    'This distance disagrees with the others.',
    'Measure it again.',
    'It is off by',
  ),
  'point-doubtful': about(
    'mm',
    'This place is badly fixed by what was measured: the lines cross at a flat angle.',
    'Measure it from a point that lies in another direction.',
    'It is known to ±',
  ),
  'placing-no-axes': about(
    'deg',
    'x and y of the frame must be two directions that are not in line.',
    'Type another direction.',
  ),
  'placing-in-line': about(
    'mm',
    'The places that the frame is laid by lie in one line: it could turn about that.',
    'Add a place that lies well off that line.',
    'Off the line is',
  ),
  'placing-misfit': about(
    'mm',
    'This place of the frame does not come to lie on {name}.',
    'Measure the point again, or look at the size of the frame.',
    'It is off by',
  ),
  'site-place-missing': about(
    'count',
    'The frame has no such place[ ({member}, {place} {number})].',
    'Choose a place from the list.',
  ),
  'hinge-too-short': about(
    'mm',
    'The two places of the hinge are one place.',
    'Choose two places that are apart.',
    'They are apart by',
  ),
  'slope-not-reached': about(
    'deg',
    'The frame cannot come to this slope by turning.',
    'Type a slope that it can reach, or move the hinge.',
    'It is asked for as',
  ),
  'slopes-at-odds': about(
    'deg',
    'Both slopes cannot be had at once: they are asked for along nearly one line, or are steeper than that allows.',
    'Take one of them out, or ask along another line.',
  ),
  'slope-needs-no-second': about(
    'deg',
    'A frame on a hinge has one slope to choose: the second is what follows.',
    'Take it out, or take out the hinge.',
    'It becomes',
  ),
  'height-not-reached': about(
    'mm',
    'That place of the frame cannot come to this height by turning about the hinge.',
    'Type a height that it can reach.',
    'It is asked for as',
  ),
  'height-follows': about(
    'mm',
    'The hinge and the slope leave no height to choose: it is what follows.',
    'Take out the slope or the height.',
    'It becomes',
  ),
  'swing-without-hinge': about('deg', 'A frame without a hinge does not swing.', 'Choose a hinge.'),
  'gap-struck': about(
    'mm',
    '{name} runs into {thing}[, {swung}° round its swing].',
    'Move the tube or the thing, or make the frame around it.',
    'They overlap by',
  ),
  'gap-under': about(
    'mm',
    '{name} comes nearer to {thing} than is asked for[, {swung}° round its swing].',
    'Make room, or ask for less.',
    'The gap is',
  ),
};
