import type { Job, Units } from '../../server/job/job.ts';
import type { Die, Machine } from '../../server/job/machine.ts';
import { formatClosely } from '../../server/language/length-format.ts';
import { words } from '../../server/language/words.ts';
import { withoutRow, withRowAdded } from './rows.ts';

const DIES = '/machine/dies';

/** Where the die that is set up stands in the list; the first where the list has become shorter than that. */
export const placeOfDie = ({ dies, die }: Machine): number => (die < dies.length ? die : 0);

export function dieSetUp(machine: Machine): Die {
  const die = machine.dies[placeOfDie(machine)];
  if (die === undefined) throw new Error('A machine has at least one die.');
  return die;
}

/** The job with one more die, which starts as the one that is set up. */
export const withDieAdded = (job: Job): Job =>
  withRowAdded(job, DIES, { ...dieSetUp(job.machine), name: '' } satisfies Die);

/** The job without a die that is not set up; the one that is stays set up. */
export function withoutDie(job: Job, index: number): Job {
  const setUp = placeOfDie(job.machine);
  if (index === setUp || job.machine.dies[index] === undefined) return job;
  const left = withoutRow(job, DIES, index);
  return { ...left, machine: { ...left.machine, die: index < setUp ? setUp - 1 : setUp } };
}

/** A die in a few words, by its name or else its number: 'Old block, for 38.1 mm, radius 114.3 mm'. */
export const dieWords = ({ name, tubeDiameter, radius }: Die, index: number, units: Units): string =>
  words('die.said', {
    name: name === '' ? words('die.card', { number: index + 1 }) : name,
    tube: formatClosely(tubeDiameter, units),
    radius: formatClosely(radius, units),
  });
