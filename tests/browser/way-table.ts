import type { Locator } from 'playwright-core';
import { expect } from 'vitest';
import { ways } from '../../server/language/en/ways.ts';
import { words } from '../../server/language/words.ts';
import type { CorrectionPlan, Way } from '../../server/plan/correction.ts';
import type { Figure } from '../../server/plan/figure.ts';
import { expectSaid } from './person.ts';

/** What the table says of every way, by the words that there are for it; each of them a column of the plan. */
type Row = keyof typeof ways extends infer Key
  ? Key extends `ways.column.${infer Name extends keyof Way}`
    ? Name
    : never
  : never;
const START = 'ways.column.';
const ROWS = Object.keys(ways)
  .filter((key) => key.startsWith(START))
  .map((key) => key.slice(START.length) as Row);

/** That one cell of the table says what the plan says; what is not known is 'open' or a least cost. */
function expectCell(cell: string, way: Way, row: Row): void {
  const value: Figure | null = way[row];
  const name = `${row} of ${way.key}`;
  if (value === null)
    expect(cell, name).toBe(row === 'cost' ? `≥ ${(way.costAtLeast.value / 100).toFixed(2)}` : 'open');
  else if (value.unit === 'minor') expect(cell, name).toBe((value.value / 100).toFixed(2));
  else if (cell === '< 0.1') expect([row, value.value > 0 && value.value < 0.1], name).toEqual(['days', true]);
  else expectSaid(cell, value);
}

/** That the table of the ways says what the plan says, row by row. */
export async function expectTable(table: Locator, { ways: all }: CorrectionPlan): Promise<void> {
  const possible = all.filter((way) => way.possible);
  expect(ROWS.length).toBeGreaterThan(10);
  for (const row of ROWS) {
    const head = table.page().getByRole('rowheader', { name: new RegExp(`^${words(`ways.column.${row}`)}`) });
    const cells = await table.getByRole('row').filter({ has: head }).getByRole('cell').allInnerTexts();
    expect(cells.length, row).toBe(possible.length);
    for (const [place, way] of possible.entries()) expectCell(cells[place]!.trim(), way, row);
  }
}
