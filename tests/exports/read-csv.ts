import papaparse from 'papaparse';
import { expect } from 'vitest';
import type { Exported } from '../../server/exports/export-file.ts';

/** The rows of a table, by the heads of its columns. */
export function readCsv(made: Exported): Record<string, string>[] {
  if (!made.ok) throw new Error(made.reason);
  const { data, errors } = papaparse.parse<Record<string, string>>(made.text, { header: true, skipEmptyLines: true });
  expect(errors).toEqual([]);
  return data;
}
