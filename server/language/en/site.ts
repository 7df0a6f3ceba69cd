/** What the page says of readings, points, things and how the frame stands. */
export const siteWords = {
  'side.boat.ahead': 'ahead',
  'side.boat.back': 'astern',
  'side.boat.port': 'port',
  'side.boat.starboard': 'starboard',
  'side.boat.up': 'up',
  'side.boat.down': 'down',
  'side.shore.ahead': 'front',
  'side.shore.back': 'back',
  'side.shore.port': 'left',
  'side.shore.starboard': 'right',
  'side.shore.up': 'up',
  'side.shore.down': 'down',
} as const;
