/** Words of the view in space that can be turned. */
export const space = {
  'space.open': 'turn it',
  'space.label':
    'The frame in space: {members} members, {bends} bends. Arrow keys turn it, plus and minus bring it nearer or farther, 0 puts it back.',
  'space.labelOne':
    'The frame in space: one member, {bends} bends. Arrow keys turn it, plus and minus bring it nearer or farther, 0 puts it back.',
  'space.tools': 'Turn the frame',
  'space.left': 'Left',
  'space.right': 'Right',
  'space.up': 'Up',
  'space.down': 'Down',
  'space.nearer': 'Nearer',
  'space.farther': 'Farther',
  'space.reset': 'As at first',
  'space.datum': 'datum end',
  'space.member': '{name}: cut length {length}',
  'space.coming': 'The view in space is on its way.',
  'space.notCome': 'The view in space did not come: no answer from the server.',
  'space.again': 'Try again',
  'space.noWebGl':
    'This browser cannot draw in space: WebGL 2 is switched off or missing. The flat views show the same frame.',
  'space.lost': 'The browser has taken the drawing board away. It comes back by itself, or with the flat views.',
} as const;
