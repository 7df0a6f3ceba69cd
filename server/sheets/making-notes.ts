import type { Job } from '../job/job.ts';
import { formatLength } from '../language/length-format.ts';
import { formatFigure, formatQuantity } from '../language/quantity-format.ts';
import { words, wordsOf } from '../language/words.ts';
import type { MemberPlan } from '../plan/frame.ts';
import type { Clearance, Making, MakingProblem, Split } from '../plan/making.ts';
import { HEIGHTS } from './ink.ts';
import { paragraph, space, type Block } from './text-block.ts';

/** How a member goes through the machine: what is near, what is in the way, how else, and what is cut off afterwards. */
export function makingNotes({ making }: MemberPlan, job: Job, width: number): Block[] {
  const [planned, ...others] = making.ways;
  const said: { text: string; bold: boolean }[] = [];
  const say = (text: string, bold = false): unknown => said.push({ text, bold });
  if (planned !== undefined) {
    if (!planned.possible) say(words('sheet.way-not-possible'), true);
    for (const problem of planned.problems) say(problemWords(problem, job), true);
    if (planned.clearance !== null) say(clearanceWords(planned.clearance, job));
    if (making.bed === 'not-known') say(words('sheet.bed-not-known'), true);
    const possible = others.filter((way) => way.possible).map(({ key }) => wordsOf('making', key));
    if (possible.length > 0) say(words('sheet.other-ways', { ways: possible.join('; ') }));
    else if (!planned.possible) say(words('sheet.no-other-way'));
    if (making.split !== null) say(splitWords(making.split, job));
    say(extraWords(planned, job), true);
  }
  if (making.closing !== null) {
    const { straight, length, clear } = making.closing;
    const sizes = { straight, length: formatFigure(length, job.units), clear: formatFigure(clear, job.units) };
    say(words('sheet.closing-weld', sizes), true);
  }
  if (said.length === 0) return [];
  return [
    paragraph(words('sheet.through-machine'), width, { height: HEIGHTS.head, weight: 600 }),
    ...said.map(({ text, bold }) => paragraph(text, width, { weight: bold ? 600 : 400 })),
    ...(planned === undefined || planned.clearance === null
      ? []
      : [paragraph(words('sheet.by-simple-picture'), width, { height: HEIGHTS.small })]),
    space(2),
  ];
}

function clearanceWords(clearance: Clearance, { units }: Job): string {
  const { distance, bend } = clearance;
  const data = {
    distance: formatLength(Math.abs(distance.value), units),
    obstacle: wordsOf('obstacle', clearance.obstacle),
    bend,
  };
  if (distance.value > 0) {
    return clearance.while === 'bending' ? words('sheet.clear-bending', data) : words('sheet.clear-turning', data);
  }
  return clearance.while === 'bending' ? words('sheet.strikes-bending', data) : words('sheet.strikes-turning', data);
}

/** A problem with its size and its limit; the limit of a struck obstacle goes without saying. */
function problemWords({ code, bend, value, low, obstacle }: MakingProblem, { units }: Job): string {
  const problem = wordsOf('problem', code, {
    bend,
    obstacle: obstacle === null ? '' : wordsOf('obstacle', obstacle),
  });
  const unit = code === 'angle-over-machine' ? 'deg' : 'mm';
  if (code === 'strikes' || low === null) return `${problem} (${formatQuantity(value, unit, units)})`;
  const sizes = { problem, value: formatQuantity(value, unit, units), low: formatQuantity(low, unit, units) };
  return code === 'angle-over-machine'
    ? words('sheet.problem-high', { problem, value: sizes.value, high: sizes.low })
    : words('sheet.problem-low', sizes);
}

function splitWords({ station, clear, first, second }: Split, { units }: Job): string {
  return words('sheet.split-at', {
    station: formatFigure(station, units),
    clear: formatFigure(clear, units),
    first: formatFigure(first.length, units),
    firstWay: wordsOf('making', first.way),
    second: formatFigure(second.length, units),
    secondWay: wordsOf('making', second.way),
  });
}

/** What is cut off after bending; under a twentieth of a millimetre is nothing. */
function extraWords({ extraFirst, extraLast }: Making, { units }: Job): string {
  const [first, last] = [formatFigure(extraFirst, units), formatFigure(extraLast, units)];
  const [isFirst, isLast] = [extraFirst.value >= 0.05, extraLast.value >= 0.05];
  if (isFirst && isLast) return words('sheet.extra-both', { first, last });
  if (isFirst) return words('sheet.extra-first', { first });
  return isLast ? words('sheet.extra-last', { last }) : words('sheet.no-extra');
}
