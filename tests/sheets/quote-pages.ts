import type { Job } from '../../server/job/job.ts';
import { formatMoney } from '../../server/language/quantity-format.ts';
import type { Plan } from '../../server/plan/plan.ts';
import type { QuotePlan } from '../../server/plan/quote.ts';
import type { Page } from '../../server/sheets/page.ts';
import { layoutSheet, renderSheet } from '../../server/sheets/render-sheet.ts';
import type { SheetInput } from '../../server/sheets/sheet-input.ts';
import { makeJob, makePlan } from './fixture.ts';
import { figure } from './fixture-figure.ts';
import { line, option, quote, quotePlan } from './fixture-work.ts';
import { saidOn } from './laid-pages.ts';
import { readPdf } from './read-pdf.ts';

type Asked = { quote?: QuotePlan; plan?: Partial<Plan>; job?: Job; issued?: SheetInput['issued'] };
type Name = 'quote' | 'quote-working';

const input = ({ quote: priced = quote(), plan = {}, job = makeJob(), issued = null }: Asked = {}): SheetInput => ({
  plan: { ...makePlan(), quote: priced, ...plan },
  job,
  revision: null,
  issued,
});

/** The pages of a sheet of the made-up quote, or of what is asked for. */
export function pages(name: Name, asked: Asked = {}): readonly Page[] {
  const sheet = layoutSheet(name, input(asked));
  if (!sheet.ok) throw new Error(sheet.reason);
  return sheet.pages;
}

/** All that they say. */
export const said = (name: Name, asked: Asked = {}): string =>
  pages(name, asked).map(saidOn).join(' ').replaceAll('\u00a0', ' ');

/** The same, read back from the PDF. */
export async function printed(name: Name, asked: Asked = {}): Promise<string> {
  const sheet = await renderSheet(name, input(asked));
  if (!sheet.ok) throw new Error(sheet.reason);
  return (await readPdf(sheet.pdf)).map(({ texts }) => texts.join(' ')).join(' ');
}

/** The made-up job with another quote asked for. */
export const jobWith = (change: Partial<Job['quote']>): Job => {
  const made = makeJob();
  return { ...made, quote: { ...made.quote, ...change } };
};

/** An amount without its currency, as tables have it. */
export const bare = (minor: number, digits = 2): string => formatMoney(minor, 'EUR', digits).replace('EUR\u00a0', '');

/** A quote whose one rate is an example. */
export const example = (): QuotePlan =>
  quotePlan([option('new-frame', [line('tube', figure(6, 'm'), 1450, { example: true, since: '' })])]);
