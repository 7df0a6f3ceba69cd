import { about } from './finding-text.ts';

/** What is said about the readings on a frame that came back. */
export const findingsReturned = {
  'readings-none': about(
    'mm',
    'Nothing was measured on the frame that came back.',
    'Measure it: widths, legs and both diagonals say most.',
  ),
  'reading-no-such-size': about(
    'mm',
    'The wanted frame has no such size[: {check}].',
    'Choose one of its sizes; the reading is left out until then.',
  ),
  'reading-no-such-place': about(
    'mm',
    'The wanted frame has no such place[, on member {name}].',
    'Choose a place that it has; the reading is left out until then.',
  ),
  'reading-along-tube': about(
    'mm',
    'This line runs along the tube at one of its ends: there it has no outside and no inside.',
    'Measure from centre to centre, or between other places.',
  ),
  'reading-disagrees': about(
    'mm',
    'This reading does not agree with all the others.[ It stands {off} accuracies off them.]',
    'Measure it again before anything is cut.',
    'It was read as',
  ),
  'reading-angle-disagrees': about(
    'deg',
    'This angle does not agree with all the other readings.[ It stands {off} accuracies off them.]',
    'Measure it again before anything is cut.',
    'It was read as',
  ),
  'readings-contradict': about(
    'ratio',
    'No frame with these members has all these readings. This one is the furthest off.',
    'Measure again, this size first.',
    'In accuracies the misfit of all together is',
  ),
  'readings-piece-negative': about(
    'mm',
    'With these readings a straight [({piece}) ]would be shorter than nothing: no frame has them.',
    'Measure again the sizes that end beside it.',
    'Its length would be',
  ),
} as const;
