import type { Locator } from 'playwright-core';
import { expect } from 'vitest';
import { words } from '../../server/language/words.ts';
import type { CorrectionPlan, Way } from '../../server/plan/correction.ts';
import type { Figure } from '../../server/plan/figure.ts';
import { expectSaid } from './person.ts';

/** What the table says of every way; each of them a column of the plan. */
const ROWS = [
  'fixingMisfit',
  'cornerMisfit',
  'cornerWidth',
  'endWidth',
  'toe',
  'largestKink',
  'largestHiLo',
  'welds',
  'purgeSetups',
  'purgeGas',
  'minutes',
  'cost',
  'days',
] as const satisfies readonly (keyof Way)[];

/** That one cell of the table says what the plan says; what is not known is 'open' or a least cost. */
function expectCell(cell: string, way: Way, row: (typeof ROWS)[number]): void {
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
  for (const row of ROWS) {
    const head = table.page().getByRole('rowheader', { name: new RegExp(`^${words(`ways.column.${row}`)}`) });
    const cells = await table.getByRole('row').filter({ has: head }).getByRole('cell').allInnerTexts();
    expect(cells.length, row).toBe(possible.length);
    for (const [place, way] of possible.entries()) expectCell(cells[place]!.trim(), way, row);
  }
}
