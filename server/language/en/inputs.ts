/** Names of what goes into a formula: `input.<name>`, where the name's own words are not clear enough. */
export const inputs: Readonly<Record<string, string>> = {
  'wall-at-outside': 'wall on the outside of the bend',
  'count-bend': 'bends',
  'count-cut': 'cuts',
  'count-fit': 'joints',
  'count-purge': 'fillings',
  'count-bottle': 'bottles changed',
  'count-weld': 'welds',
  'count-finish': 'welds',
  'set-up-time': 'set-up',
  'time-each': 'time for each',
  'time-of-each': 'time for each',
  'time-each-metre': 'time for each metre',
  'process-time': 'arc, waiting, grinding',
  minutes: 'labour',
  'hours-a-day': 'hours of a day',
  'usable-gas': 'gas that a full bottle gives',
  'bender-at-least': 'what the bender takes at least',
  'bender-each-order': 'bender: each order',
  'bender-each-bend': 'bender: each bend',
  'price-rounded-to': 'the price goes in steps of',
  'taken-beside-arc-waiting-and-grinding': 'taken beside arc, waiting and grinding',
  'days-at-bender-outside': 'days at the bender',
  'days-at-bender-own': 'days at the bender: none, the shop bends itself',
  'days-at-bender-none': 'days at the bender: none, nothing is bent',
};

/** Names of what a band comes from: `band.<name>`, likewise. */
export const bands: Readonly<Record<string, string>> = {
  tape: 'accuracy of the tape',
  readings: 'accuracy of the readings',
  'angle-scatter': 'scatter of the angles',
  'rotation-scatter': 'scatter of the rotation',
  'springback-model': 'springback that was not measured',
  'test-bends': 'the test bends',
  'tube-tolerance': 'tolerance of the tube',
  'site-level': 'the level',
  'site-point': 'points of the site',
  'site-foot': 'where the legs stand',
  'site-surface': 'surfaces under the legs',
  'site-placing': 'where the frame is placed',
  'site-thing': 'things of the site',
  'site-frame': 'marks on the frame',
  'site-made': 'the frame as it is made',
  'site-cutting': 'sawing and welding',
  'site-left-out': 'less what cannot be told',
};

const readable = (name: string): string => name.replaceAll('-', ' ');

export const inputName = (name: string): string => inputs[name] ?? readable(name);
export const bandName = (name: string): string => bands[name] ?? readable(name);
