/** The known slips, and what each tells the bender for the next frame; common practice, no source. */
export const slips = {
  'slip.outside-read-as-centre': 'The outside size was read as centre to centre.',
  'slip.outside-read-as-inside': 'The outside size was read as inside to inside.',
  'slip.inside-read-as-outside': 'The inside size was read as over the outside.',
  'slip.centre-read-as-outside': 'The size between centres was read as over the outside.',
  'slip.centre-read-as-inside': 'The size between centres was read as inside to inside.',
  'slip.inside-read-as-centre': 'The inside size was read as centre to centre.',
  'slip.apex-as-start': 'The marks of the corners were used as the start of each bend.',
  'slip.apex-as-middle': 'The marks of the corners were used as the middle of each bend.',
  'slip.start-as-end': 'Each bend was made on the wrong side of its mark: it ended where it should begin.',
  'slip.marks-from-other-end': 'The straights were laid out from the wrong end of the tube.',
  'slip.cut-to-apexes': 'The tube was sawn to the sum of the sizes between the corners.',
  'slip.stretch-left-out': 'Marks and cut did not allow for what the bends grow by.',
  'slip.stretch-twice': 'What the bends grow by was taken off twice.',
  'slip.other-die': 'It was bent on another die with the same marks.',
  'slip.springback-left-out': 'Springback was left out.',
  'slip.springback-twice': 'Springback was added twice.',
  'slip.angle-as-supplement': 'The angle inside the corner was bent instead of the change of direction.',
  'slip.rotations-other-way': 'The tube was turned the other way round between its bends.',
  'slip.bend-other-way': 'One bend was made to the wrong side.',
  'slip.other-hand': 'The frame was made for the other hand.',

  'tell.outside-read-as-centre': 'Write “over the outside” beside the size, and draw its arrows to the outer edges.',
  'tell.outside-read-as-inside': 'Write “over the outside” beside the size, and draw its arrows to the outer edges.',
  'tell.inside-read-as-outside': 'Write “inside to inside” beside the size, and draw its arrows to the inner edges.',
  'tell.centre-read-as-outside': 'Write “centre to centre” beside the size, and draw its arrows to the middle lines.',
  'tell.centre-read-as-inside': 'Write “centre to centre” beside the size, and draw its arrows to the middle lines.',
  'tell.inside-read-as-centre': 'Write “inside to inside” beside the size, and draw its arrows to the inner edges.',
  'tell.apex-as-start':
    'Lay the start marks of the bend table on the tube. The sizes to the corners are no marks: each bend begins before its corner.',
  'tell.apex-as-middle':
    'Lay the start marks of the bend table on the tube. The middle of a bend does not lie at the size to its corner.',
  'tell.start-as-end':
    'At each mark draw an arrow to the side that the bend goes to, and set the mark where the die begins to bend.',
  'tell.marks-from-other-end': 'Write “datum end” on the tube before it is marked, and measure every mark from there.',
  'tell.cut-to-apexes': 'Saw to the cut length of the sheet: a bend is shorter than the two sides of its corner.',
  'tell.stretch-left-out': 'Use the marks and the cut length of the sheet: they allow for what the bends grow by.',
  'tell.stretch-twice': 'Take the marks and the cut length of the sheet as they are. Take nothing more off.',
  'tell.other-die': 'Read the radius stamped on the die before bending. For another die print another sheet.',
  'tell.springback-left-out': 'Bend to the angle in the column “bend to”, and check the first bend when it is let go.',
  'tell.springback-twice':
    'Type either the wanted angle into a machine that adds springback itself, or “bend to” into one that does not. Check the first bend.',
  'tell.angle-as-supplement': 'Write “bend by” beside each angle: straight on is 0°.',
  'tell.rotations-other-way':
    'Write “clockwise” or “anticlockwise, seen along the feed” beside each rotation, and try it on a bent wire first.',
  'tell.bend-other-way':
    'Draw each bend as it lies in the machine, and hold the tube against the picture before it is bent.',
  'tell.other-hand': 'Write “left hand” or “right hand” on the sketch, with a view from above.',
} as const;
