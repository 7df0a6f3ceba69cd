import type { Job } from '../job/job.ts';
import { doubtWords } from '../language/doubt-words.ts';
import { formatBand, formatFigure, formatPlusMinus } from '../language/quantity-format.ts';
import { thenWords } from '../language/then-words.ts';
import { words, wordsOf } from '../language/words.ts';
import type { Doubt, LegPlan } from '../plan/leg.ts';
import type { SitePlan } from '../plan/site.ts';
import { HEIGHTS } from './ink.ts';
import { bandOf, legName } from './site-words.ts';
import { table, tableBlock, type Cell } from './table.ts';
import { capital, paragraph, stacked, type Block } from './text-block.ts';

const SMALL = { height: HEIGHTS.small } as const;

/** No more parts of a band than this are listed; what is left is small beside them. */
const LISTED = 4;

/** What the ± of the cut length is made of, the largest part first, and what to measure again. */
export function legDoubts(leg: LegPlan, legs: number, job: Job, width: number): Block {
  const { measureAgain, doubts, order, cutLength } = leg;
  const rows = doubts.slice(0, LISTED).map((doubt, index): Cell[] => [
    { text: partWords(doubt, leg), weight: index === 0 ? 600 : 400 },
    {
      text: formatBand({ plusMinus: doubt.plusMinus.value, from: [] }, 'mm', job.units),
      weight: index === 0 ? 600 : 400,
    },
  ]);
  const list = table(
    [
      { head: words('sheet.doubt-of', { band: bandOf(cutLength, job) }), align: 'left' },
      { head: '', align: 'right' },
    ],
    rows,
    { width, height: 2 },
  );
  return stacked([
    tableBlock(list),
    ...(measureAgain === null
      ? []
      : [
          paragraph(
            capital(
              words('sheet.measure-again', {
                what: partWords(measureAgain, leg),
                part: formatPlusMinus(measureAgain.plusMinus.value, 'mm', job.units),
              }),
            ),
            width,
            { height: 2.1, weight: 600 },
          ),
        ]),
    ...(legs > 1 && order > 1 ? [paragraph(thenWords(leg, job.units), width, SMALL)] : []),
  ]);
}

/** Where a part comes from; a leg without a name is told by its number. */
const partWords = (doubt: Doubt, leg: LegPlan): string =>
  doubtWords(doubt.name === '' && doubt.field.startsWith(`${leg.field}/`) ? { ...doubt, name: legName(leg) } : doubt);

/** The leg as a strut, for information, with the loads that it may meet; null where nothing is said of it. */
export function legStrength(leg: LegPlan, site: SitePlan, job: Job, width: number): Block | null {
  const strut = site.strength.struts.find(({ field }) => field === leg.field);
  if (strut === undefined) return null;
  const { units } = job;
  const euler = formatFigure(strut.euler, units);
  const facts = words('sheet.strut', {
    length: formatFigure(strut.bucklingLength, units),
    factor: formatFigure(strut.factor, units),
    slenderness: formatFigure(strut.slenderness, units),
    euler: strut.eulerHolds ? euler : words('sheet.euler-fails', { euler }),
  });
  const reduced =
    strut.reduced === null
      ? words(strut.adjusted === null ? 'sheet.strut-no-proof' : 'sheet.strut-adjusted')
      : words('sheet.strut-reduced', { reduced: formatFigure(strut.reduced, units) });
  const most = site.strength.loads
    .flatMap(({ key, legs }) => legs.filter((one) => one.field === leg.field).map(({ force }) => ({ key, force })))
    .toSorted((one, other) => Math.abs(other.force.value) - Math.abs(one.force.value))[0];
  const load =
    most === undefined
      ? ''
      : words('sheet.strut-load', {
          load: wordsOf('load', most.key),
          force: formatFigure({ ...most.force, value: Math.abs(most.force.value) }, units),
        });
  const told = [facts, reduced, load];
  return stacked([
    paragraph(words('sheet.strength-information'), width, { height: 2, weight: 600 }),
    paragraph(told.filter((part) => part !== '').join(' '), width, SMALL),
  ]);
}
