import { formatClosely, numberForField } from '../../server/language/length-format.ts';
import { hasWords, words, wordsOf } from '../../server/language/words.ts';
import type { Job } from '../../server/job/job.ts';
import type { Finding } from '../../server/plan/finding.ts';
import { dieWords } from './dies.ts';
import { isAngle, readingOfField } from './readings.ts';
import { isLengthField } from './length-fields.ts';
import { placeWords } from './tube-places.ts';

/** The value that a finding offers as a person says it; empty where the plan is to choose. */
export function wayOutWords(wayOut: NonNullable<Finding['wayOut']>, job: Job): string {
  const { field, value } = wayOut;
  if (value === null) return '';
  if (Array.isArray(value))
    return value
      .map((one) =>
        'station' in one
          ? `${one.member}: ${formatClosely(one.station, job.units)}`
          : `${one.member}: ${words(`choice.from.${one.from}`)}, ${words(`choice.side.${one.side}`)}`,
      )
      .join('; ');
  if (typeof value === 'object') return `${value.member}, ${placeWords(value, undefined)}`;
  if (field === '/machine/die') {
    const index = Number(value);
    const die = job.machine.dies[index];
    return die === undefined ? '' : dieWords(die, index, job.units);
  }
  if (typeof value === 'number' && isAngleReading(field, job)) return `${numberForField(value)}°`;
  if (typeof value === 'number') return isLengthField(field) ? formatClosely(value, job.units) : numberForField(value);
  const choice = `choice.${field.slice(field.lastIndexOf('/') + 1)}`;
  return hasWords(`${choice}.${value}`) ? wordsOf(choice, value) : value;
}

/** Readings of both kinds stand in one list. */
const isAngleReading = (field: string, job: Job): boolean => {
  const reading = job.cameBack?.readings[readingOfField(field)];
  return reading !== undefined && isAngle(reading);
};
