import type { Migration } from 'kysely';
import { jobs } from './001-jobs.ts';
import { shop } from './002-shop.ts';
import { weldSettings } from './003-weld-settings.ts';
import { rates } from './004-rates.ts';
import { stock } from './005-stock.ts';
import { quotes } from './006-quotes.ts';
import { together } from './007-together.ts';

/** Every change of the tables, in the order of their names. One that has been released is never edited. */
export const MIGRATIONS: Readonly<Record<string, Migration>> = {
  '001-jobs': jobs,
  '002-shop': shop,
  '003-weld-settings': weldSettings,
  '004-rates': rates,
  '005-stock': stock,
  '006-quotes': quotes,
  '007-together': together,
};
