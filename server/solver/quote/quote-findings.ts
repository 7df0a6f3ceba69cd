import type { Job } from '../../job/job.ts';
import type { Finding } from '../../plan/finding.ts';
import type { OwnTime, QuoteOption } from '../../plan/quote.ts';
import { finding } from '../finding.ts';
import { ownRatio } from './own-times.ts';

/** Currencies without decimals, and those with three: ISO 4217, from memory. All others are taken to have two. */
const NO_DECIMALS = 'BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF'.split(' ');
const THREE_DECIMALS = 'BHD IQD JOD KWD LYD OMR TND'.split(' ');

/** Fewer entries than this tell nothing; our own choice. */
const LEAST_ENTRIES = 3;
/** Times that are off by less than this share are as planned; our own choice. */
const AS_PLANNED = 0.2;
/** And those within so many standard errors may be chance; our own choice, the usual one. */
const ERRORS = 2;

/** Rounding of more than this share of the price is much [percent]; our own choice. */
const MUCH_ROUNDED = 5;

type Quoted = Pick<Job, 'quote' | 'rates' | 'log'>;

/** What to look at in rounding, dates, currency, quantities and times before a quote goes out. */
export const quoteFindings = (
  job: Quoted,
  shown: Pick<QuoteOption, 'lines' | 'net'>,
  own: readonly OwnTime[],
): Finding[] => [
  ...largeRounding(shown),
  ...notInEffect(job),
  ...unlikeDigits(job),
  ...repeated(job),
  ...differing(job, own),
];

/** ISO 8601 days stand in their order as texts do; one that was left out is no limit. */
function notInEffect({ quote: { date }, rates: { from, until } }: Quoted): Finding[] {
  const early = from !== '' && date < from;
  const late = until !== '' && date > until;
  if (date === '' || (!early && !late)) return [];
  const limits = { ...(from === '' ? {} : { from }), ...(until === '' ? {} : { until }) };
  return [finding('rates-not-in-effect', 'caution', '/quote/date', { date, ...limits })];
}

/** Rounding that eats the whole margin, or that is a large share of the price, whichever way it goes. */
function largeRounding({ lines, net }: Pick<QuoteOption, 'lines' | 'net'>): Finding[] {
  const of = (key: 'rounding' | 'margin'): number => lines.find((line) => line.key === key)?.amount ?? 0;
  const rounding = of('rounding');
  const margin = of('margin');
  const price = net - rounding;
  const percent = (amount: number): number => Math.round((1000 * amount) / price) / 10;
  const eaten = margin > 0 && -rounding > margin;
  if (price <= 0 || (!eaten && percent(Math.abs(rounding)) <= MUCH_ROUNDED)) return [];
  const data = { value: percent(Math.abs(rounding)), ...(eaten ? { margin: percent(margin) } : {}) };
  return [finding('rounding-large', 'caution', '/rates/roundTo', data)];
}

function unlikeDigits({ rates: { currency, minorDigits } }: Quoted): Finding[] {
  const usual = NO_DECIMALS.includes(currency) ? 0 : THREE_DECIMALS.includes(currency) ? 3 : 2;
  const field = '/rates/minorDigits';
  return minorDigits === usual
    ? []
    : [finding('minor-digits-unlike', 'note', field, { currency, usual, value: minorDigits }, { field, value: usual })];
}

const repeated = ({ quote: { quantities } }: Quoted): Finding[] =>
  quantities.flatMap((value, index) =>
    quantities.indexOf(value) === index
      ? []
      : [finding('quantity-repeated', 'note', `/quote/quantities/${String(index)}`, { value })],
  );

/** Operations that took clearly longer or shorter than planned: by more than a fifth, and by more than chance. */
function differing({ log }: Quoted, own: readonly OwnTime[]): Finding[] {
  return own.flatMap(({ operation }): Finding[] => {
    const ratio = ownRatio(log, operation);
    if (ratio === null || ratio.entries < LEAST_ENTRIES || ratio.spread === null) return [];
    const off = Math.abs(ratio.value - 1);
    const error = ratio.spread / Math.sqrt(ratio.entries);
    if (off <= AS_PLANNED || off <= ERRORS * error) return [];
    return [finding('own-times-differ', 'note', '/log', { line: operation, value: ratio.value })];
  });
}
