import type { Finish } from '../../job/finish.ts';
import type { WeldForm } from '../../job/welding.ts';
import type { Figure } from '../../plan/figure.ts';
import type { FinishPlan } from '../../plan/finish.ts';
import { band, figure, input } from '../figure.ts';
import type { WeldWork } from '../welding/weld-work.ts';
import { isFlush } from './finish-steps.ts';

type Range = { readonly low: number; readonly high: number };

/** Minutes to grind one butt flush, tube of 38 to 50 mm: common practice, no source. */
const FLUSH: Range = { low: 3, high: 6 };
/** Minutes more to blend it in; satin and mirror by practice without a source, the others our own choice below satin. */
const BLEND: Readonly<Record<Finish['surface'], Range>> = {
  'as-delivered': { low: 3, high: 6 },
  brushed: { low: 4, high: 8 },
  satin: { low: 6, high: 12 },
  mirror: { low: 15, high: 30 },
};
/** A belt does not get round inside a saddle: blending takes twice as long; common practice, no source. */
const SADDLE_TIMES = 2;

const NOTHING: Figure = figure(0, 'min', 't = 0', [], ['typed']);

/** As typed for a butt, or the middle of what practice says, times n [min]. */
const minutesOf = (typed: number | null, { low, high }: Range, n: number): number =>
  typed !== null ? n * typed : (n * (low + high)) / 2;

/** Minutes of one kind of work on one weld, with their working. */
function workTime(typed: number | null, range: Range, times: { readonly n: number; readonly typed: boolean }): Figure {
  const { n } = times;
  const value = minutesOf(typed, range, n);
  const often = input('n', 'times-a-butt', n, 'ratio');
  if (typed !== null) {
    const known = n === 1 || times.typed;
    return figure(
      value,
      'min',
      't = n t₁',
      [often, input('t₁', 'minutes-for-a-butt', typed, 'min')],
      known ? ['typed'] : ['typed', 'finish-minutes'],
    );
  }
  return figure(
    value,
    'min',
    't = n (t_low + t_high)/2',
    [often, input('t_low', 'fewest-minutes', range.low, 'min'), input('t_high', 'most-minutes', range.high, 'min')],
    ['finish-minutes'],
    band((n * (range.high - range.low)) / 2, 'range-of-practice'),
  );
}

/** How many times as long as on a butt a weld takes, and whether that is typed or needs no typing. */
const timesOf = (
  form: WeldForm,
  { saddleTimes }: Finish['minutes'],
): { readonly n: number; readonly typed: boolean } =>
  form === 'saddle' ? { n: saddleTimes ?? SADDLE_TIMES, typed: saddleTimes !== null } : { n: 1, typed: true };

const isGround = (form: WeldForm, treatment: Finish['treatment']): boolean => form === 'butt' && isFlush(treatment);

/** Minutes of grinding flush and of blending in, all welds together, in plain numbers by the rules of `finishMinutes`. */
export function finishMinutesOf(
  { treatment, surface, minutes }: Finish,
  welds: readonly { readonly site: { readonly form: WeldForm } }[],
): { readonly grinding: number; readonly blending: number } {
  let grinding = 0;
  let blending = 0;
  for (const { site } of welds) {
    const { n } = timesOf(site.form, minutes);
    if (isGround(site.form, treatment)) grinding += minutesOf(minutes.flush, FLUSH, n);
    if (treatment !== 'none') blending += minutesOf(minutes.surface, BLEND[surface], n);
  }
  return { grinding, blending };
}

/**
 * Minutes for each weld and together. Only a butt is ground flush: in the corner of a saddle or a pad the bead stays, and
 * blending it by hand takes so many times a butt in a saddle, as long as a butt on a pad. A weld that is left alone takes
 * no time. What practice leaves open is alike for all welds, so that it adds up in the sum.
 */
export function finishMinutes(
  { treatment, surface, minutes }: Finish,
  welds: readonly Pick<WeldWork, 'site'>[],
): Pick<FinishPlan, 'minutes' | 'total'> {
  const rows = welds.map(({ site }) => {
    const times = timesOf(site.form, minutes);
    return {
      weld: site.name,
      flush: isGround(site.form, treatment) ? workTime(minutes.flush, FLUSH, times) : NOTHING,
      surface: treatment === 'none' ? NOTHING : workTime(minutes.surface, BLEND[surface], times),
    };
  });
  const sum = (pick: (row: (typeof rows)[number]) => number): number =>
    rows.reduce((total, row) => total + pick(row), 0);
  const flush = sum((row) => row.flush.value);
  const blend = sum((row) => row.surface.value);
  const open = sum((row) => (row.flush.band?.plusMinus ?? 0) + (row.surface.band?.plusMinus ?? 0));
  const total = figure(
    flush + blend,
    'min',
    't = t_f + t_s',
    [input('t_f', 'minutes-grinding-flush', flush, 'min'), input('t_s', 'minutes-blending-in', blend, 'min')],
    open > 0 ? ['finish-minutes', 'typed'] : ['typed'],
    open > 0 ? band(open, 'range-of-practice') : null,
  );
  return { minutes: rows, total };
}
