import type { Migration } from 'kysely';
import { jobs } from './001-jobs.ts';
import { shop } from './002-shop.ts';
import { weldSettings } from './003-weld-settings.ts';

/** Every change of the tables, in the order of their names. One that has been released is never edited. */
export const MIGRATIONS: Readonly<Record<string, Migration>> = {
  '001-jobs': jobs,
  '002-shop': shop,
  '003-weld-settings': weldSettings,
};
