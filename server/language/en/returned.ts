const place = (name: 'from' | 'to' | 'at') =>
  `{${name}Member}, {${name}Spot}[ {${name}Number}][ {${name}Along:mm} from its start]` as const;

/** What was measured on a frame that came back, and why the readings may not agree. */
export const returned = {
  'measured.length': 'length of piece {piece} of {member}',
  'measured.radius': 'radius of piece {piece} of {member}',
  'measured.angle': 'angle of piece {piece} of {member}',
  'measured.rotation': 'rotation before piece {piece} of {member}',
  'measured.distance': `${place('from')} to ${place('to')}`,
  'measured.bevel': `angle between ${place('from')} and ${place('to')}`,
  'measured.level': `slope at ${place('at')}`,
  'measured.x': `x of ${place('at')}`,
  'measured.y': `y of ${place('at')}`,
  'measured.z': `z of ${place('at')}`,
  'spot.start': 'start',
  'spot.finish': 'finish',
  'spot.corner': 'corner',
  'spot.bend-start': 'start of bend',
  'spot.bend-end': 'end of bend',
  'spot.middle': 'middle of piece',
  'spot.along': 'place',
  'doubt.diagonals-differ':
    'The two diagonals differ by {difference:mm}: the frame is out of square, or one of them was misread.',
  'doubt.reading-disagrees':
    'One reading stands {off:mm} off what all the others say. It is left out of the fit; measure it again.',
  'doubt.angle-disagrees':
    'One angle stands {off:deg} off what all the others say. It is left out of the fit; measure it again.',
  'doubt.readings-disagree':
    'Together the readings are {misfit} times as far off as their accuracies, and no single one explains it.',
} as const;
