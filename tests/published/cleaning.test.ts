/**
 * Baths of ASTM A967 (nitric: the pages of two processors agree; citric: from memory), pickles of ASTM A380, annex A1 (from
 * memory), paste by practice.
 */
import { expect, it } from 'vitest';
import { CLEANINGS } from '../../server/job/finish.ts';
import { finishWords } from '../../server/language/en/finish.ts';
import { cleaningPlan } from '../../server/solver/finish/cleaning.ts';

it.each([
  ['nitric-1', 49, 54, 20, null],
  ['nitric-2', 21, 32, 30, null],
  ['nitric-3', 49, 60, 20, null],
  ['nitric-4', 49, 54, 30, null],
  ['citric-1', 60, 71, 4, null],
  ['citric-2', 49, 60, 10, null],
  ['citric-3', 21, 49, 20, null],
  ['pickle-bath', 20, 60, 5, 30],
  ['pickle-paste', null, null, 15, 60],
] as const)('%s: %s to %s °C, %s to %s min', (key, low, high, least, most) => {
  const plan = cleaningPlan(key);
  expect(plan?.key).toBe(key);
  expect(plan?.temperatureLow?.value ?? null).toBe(low);
  expect(plan?.temperatureHigh?.value ?? null).toBe(high);
  expect(plan?.timeLeast.value).toBe(least);
  expect(plan?.timeMost?.value ?? null).toBe(most);
});

it.each([
  ['nitric-1', '20 to 25 %', '2.5 % dichromate'],
  ['nitric-2', '20 to 45 %', 'nitric'],
  ['nitric-3', '20 to 25 %', 'nitric'],
  ['nitric-4', '45 to 55 %', 'nitric'],
  ['citric-1', '4 to 10 %', 'citric'],
  ['citric-2', '4 to 10 %', 'citric'],
  ['citric-3', '4 to 10 %', 'citric'],
  ['pickle-bath', '15 to 25 % nitric', '1 to 8 % hydrofluoric'],
] as const)('%s holds %s, %s', (key, ...parts) => {
  for (const part of parts) expect(finishWords[`finish.bath.${key}`]).toContain(part);
});

it('no bath is none, and every other is one', () => {
  for (const key of CLEANINGS) expect(cleaningPlan(key) === null).toBe(key === 'none');
});
