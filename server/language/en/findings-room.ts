import { about } from './finding-text.ts';

/** What is said about the bottle and about the air of the room. None of it is leave to go in. */
export const findingsRoom = {
  'bottle-not-enough': about(
    'L',
    'The bottle cannot give enough gas for this job before its reserve is reached.[ It reads {now} bar now: this counts the whole job as still to do.][ The job takes {bottles} bottles filled like this one.][ A bottle of this size would have to read {gauge} bar.]',
    'Have another bottle at hand.',
    'The job takes',
  ),
  'bottle-under-reserve': about(
    'bar',
    'The bottle reads less than what is to stay in it: nothing can be taken from it.',
    'Have another bottle at hand, or leave less in this one, but never less than 5 bar.',
    'The reserve is',
  ),
  'bottle-gauge-rose': about(
    'bar',
    'The gauge reads more than before: the bottle is warmer, or it is another one.',
    'Let it settle until it is as warm as before and read it again; for another bottle, type its reading as the first.',
    'It reads',
  ),
  'bottle-in-room': about(
    'percent',
    'If the whole bottle came out at once, by a hose off or a valve that fails, the air of this room would be dangerous.',
    'Keep the bottle outside the room, shut it at its valve whenever you stop, and carry an oxygen alarm. Local rules and qualified people decide.',
    'The room would hold',
  ),
  'room-oxygen-low': about(
    'percent',
    'The argon of this job makes the air in the room dangerous.',
    'Lead the vent outside or bring in fresh air, and carry an oxygen alarm. Local rules and qualified people decide who goes in.',
    'When the job is done the air of the room would hold',
  ),
  'room-fan-short': about(
    'L/min',
    'A fan that draws out less than the argon that comes in brings no fresh air into the room.',
    'Use a stronger fan, or blow fresh air in.',
    'It draws',
  ),
  'low-space-fills': about(
    's',
    'Argon gathers in the low space. If none of it got out, the air there would be dangerous before the work is done[: {oxygen} % oxygen by then].',
    'Keep out, lead the vent outside and keep an oxygen meter at its floor. Local rules and qualified people decide who goes in, never this figure.',
    'Gas at the largest flow brings it to the alarm in',
  ),
  'low-space-larger': about(
    'm3',
    'The low space is a part of the room and cannot be larger than it. It is reckoned as large as the room.',
    'Type the volume of the low part alone.',
    'It is typed as',
  ),
  'argon-caution': about(
    'percent',
    'Argon takes the place of air. It cannot be seen or smelled and can kill without warning.[ Left on, it brings still air to the alarm after {minutes} min.][ If none of it left the low space, it would be at the alarm after {lowMinutes} min.][ After a night left on, the room would hold {night} % oxygen.]',
    'Bring in fresh air, carry an oxygen alarm, keep your head out of low and purged spaces. Local rules and qualified people decide.',
    "With this job's argon let out in still air, the room would hold",
  ),
};
