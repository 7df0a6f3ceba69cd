import { describeFinding } from '../language/finding-words.ts';
import { INCH, fixed } from '../language/length-format.ts';
import { letteredRisks } from '../language/lettered-risks.ts';
import { formatMoney, quantityParts } from '../language/quantity-format.ts';
import { words, wordsOf } from '../language/words.ts';
import type { CorrectionPlan, Way } from '../plan/correction.ts';
import type { Figure } from '../plan/figure.ts';
import { codeWords, type SheetInput } from './sheet-input.ts';
import { table, type Cell, type Column, type Table } from './table.ts';

const HEIGHT = 2;

/** A column: its head, and what it says of a way. */
type Told = { readonly head: string; readonly say: (way: Way) => string };

/** All ways with the same columns; one that is not possible says why instead. */
export function comparisonTable(input: SheetInput, correction: CorrectionPlan, width: number): Table {
  const told = columnsOf(input, correction);
  const columns: Column[] = [
    { head: words('sheet.way'), align: 'left' },
    ...told.map(({ head }): Column => ({ head, align: 'right' })),
  ];
  const rows = correction.ways.map((way, index): Cell[] => {
    const weight = way.key === correction.recommended ? 600 : 400;
    const name = { text: wayName(way, index + 1, correction), weight } as const;
    if (!way.possible) return [name, { text: whyNot(way, input), weight, span: true }];
    return [name, ...told.map(({ say }): Cell => ({ text: say(way), weight }))];
  });
  return table(columns, rows, { width, height: HEIGHT });
}

/** '3 splice, fewest welds (recommended)'. */
function wayName({ key }: Way, number: number, { recommended, chosen }: CorrectionPlan): string {
  const name = `${String(number)} ${wordsOf('wayShort', key)}`;
  if (key === recommended) return words('sheet.way-marked', { name, mark: words('sheet.recommended') });
  return key === chosen ? words('sheet.way-marked', { name, mark: words('sheet.chosen') }) : name;
}

/** The first stop that keeps a way from being possible, in the words of its finding. */
function whyNot({ key, reasons }: Way, { plan, job }: SheetInput): string {
  const found = plan.findings.find(
    ({ code, data }) => reasons.includes(code) && (data['way'] === undefined || data['way'] === key),
  );
  const [first] = reasons;
  const reason = found === undefined ? codeWords(first ?? '', job) : describeFinding(found, job.units);
  return words('sheet.not-possible-for', { reason });
}

/** Days to a half, rounded up; less than one is told as that. */
export const daysWords = ({ value }: Figure): string =>
  value < 1 ? words('sheet.under-a-day') : String(Math.ceil(2 * value - 1e-9) / 2);

function columnsOf({ job, plan }: SheetInput, correction: CorrectionPlan): Told[] {
  const { units } = job;
  const unit = units.length === 'mm' ? 'mm' : 'in';
  // a fraction of an inch would make most misfits nothing
  const close = (mm: number): string =>
    units.length === 'mm' ? quantityParts(mm, 'mm', units).number : fixed(mm / INCH, 3);
  const length = ({ value }: Figure): string => close(value);
  const withBand = ({ value, band }: Figure): string =>
    band === null ? close(value) : `${close(value)} ± ${close(band.plusMinus)}`;
  const off = (figure: Figure | null): string =>
    figure === null ? '—' : figure.value > 0 && /[1-9]/.test(length(figure)) ? `+${length(figure)}` : length(figure);
  const plain = ({ value, unit: own }: Figure): string => quantityParts(value, own, units).number;
  const currency = plan.quote?.currency ?? job.rates.currency;
  const digits = plan.quote?.minorDigits ?? job.rates.minorDigits;
  const money = ({ cost, costAtLeast }: Way): string => {
    const amount = formatMoney((cost ?? costAtLeast).value, currency, digits);
    if (cost !== null) return amount;
    return costAtLeast.value > 0 ? words('sheet.cost-from', { amount }) : words('sheet.rate-missing');
  };
  const risks = letteredRisks(correction.ways);
  return [
    { head: words('sheet.fixings-off', { unit }), say: (way) => withBand(way.fixingMisfit) },
    { head: words('sheet.corners-off', { unit }), say: (way) => withBand(way.cornerMisfit) },
    { head: words('sheet.corner-width-off', { unit }), say: (way) => off(way.cornerWidth) },
    { head: words('sheet.end-width-off', { unit }), say: (way) => off(way.endWidth) },
    { head: words('sheet.toe'), say: (way) => plain(way.toe) },
    { head: words('sheet.largest-kink'), say: (way) => plain(way.largestKink) },
    { head: words('sheet.largest-hi-lo', { unit }), say: (way) => length(way.largestHiLo) },
    { head: words('sheet.welds'), say: (way) => plain(way.welds) },
    { head: words('sheet.set-ups'), say: (way) => plain(way.purgeSetups) },
    { head: words('sheet.gas-litres'), say: (way) => plain(way.purgeGas) },
    {
      head: words('sheet.work-minutes'),
      say: ({ minutes }) => (minutes === null ? '—' : String(Math.round(minutes.value))),
    },
    { head: words('sheet.cost'), say: money },
    { head: words('sheet.days'), say: ({ days }) => (days === null ? '—' : daysWords(days)) },
    { head: words('sheet.unbeaten'), say: ({ unbeaten }) => (unbeaten ? '•' : '') },
    {
      head: words('sheet.risk-letters'),
      say: ({ key }) =>
        risks
          .filter(({ ways }) => ways.includes(key))
          .map(({ letter }) => letter)
          .join(' '),
    },
  ];
}
