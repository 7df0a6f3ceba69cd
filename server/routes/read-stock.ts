import type { JobProblem } from '../job/problem.ts';
import { parseStockBar, parseStockLayout } from '../job/stock-row.ts';
import type { StockBar, StockLayout } from '../job/stock.ts';
import { RequestError } from './request-error.ts';

const refused = (code: string, called: string, problems: readonly JobProblem[]): RequestError => {
  const count = problems.length === 1 ? 'one value' : `${String(problems.length)} values`;
  const message = `This ${called} has ${count} that cannot be taken. ${problems[0]?.message ?? ''}`;
  return new RequestError(422, code, message, { problems });
};

/** A bar or a remnant out of a request, held against its schema. */
export function readStockBar(input: unknown): StockBar {
  const parsed = parseStockBar(input);
  if (parsed.ok) return parsed.document;
  throw refused('stock-not-valid', 'bar', parsed.problems);
}

/** A layout of bars out of a request, held against its schema. */
export function readStockLayout(input: unknown): StockLayout {
  const parsed = parseStockLayout(input);
  if (parsed.ok) return parsed.layout;
  throw refused('layout-not-valid', 'layout of bars', parsed.problems);
}
