/** Names of what a plan says about bottle and room: `room.<name>`, `room.bottle.<name>`. */
export const roomWords = {
  'room.title': 'Air of the room',
  'room.oxygenStill': 'oxygen when the job is done, still air',
  'room.oxygenFan': 'oxygen when the job is done, with the fan',
  'room.alarmStill': 'gas left on, time to the alarm in still air',
  'room.alarmFan': 'gas left on, time to the alarm with the fan',
  'room.alarmNever': 'with the fan the alarm is not reached',
  'room.leftOn': 'oxygen after 8 h with the gas left on, fan as typed',
  'room.bottleOut': 'oxygen if the whole bottle came out at once',
  'room.airToStaySafe': 'fresh air that holds 20.5 % oxygen',
  'room.recovers': 'time with the fan on, after the gas is shut off, until 20.5 % oxygen',
  'room.low': 'Low space, as if no gas left it',
  'room.low.alarm': 'time to the alarm at the largest flow',
  'room.low.oxygen': 'oxygen when the job is done',
  'room.receives.all': 'all of the gas',
  'room.receives.torch': "the torch's alone: a hose leads the vent outside",
  'room.alarm': 'The alarm stands at 19.5 % oxygen.',
  'room.mixed':
    'Reckoned as if the gas mixed with all of the air. Argon lies low, so at the floor it is worse: measure there.',
  'room.no-permit':
    'These figures let nobody in. Local rules, the permit of the site and qualified people decide; measure before and all the time.',
  'room.bottle': 'Bottle',
  'room.bottle.contents': 'contents',
  'room.bottle.usable': 'gas down to the reserve',
  'room.bottle.share': 'share that the job takes',
  'room.bottle.bottles': 'bottles filled like this one',
  'room.bottle.bottles-none': 'nothing can be taken from this one',
  'room.bottle.gaugeAfter': 'gauge when the whole job is done, from the last reading',
  'room.bottle.taken': 'taken since the first reading',
  'room.bottle.left': 'left above the reserve',
  'room.bottle.settled':
    'Read the gauge when the bottle has settled: 10 K warmer or colder is about 5 % of a full one.',
} as const;
