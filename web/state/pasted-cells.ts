import Papa from 'papaparse';
import { parseLength } from '../../server/language/length-text.ts';
import { withClearCommas } from './pasted-commas.ts';

/** A row of cells, with its number in what was pasted, from 1. */
export type PastedRow = { readonly number: number; readonly cells: readonly string[] };

/** What a first row says about the column below: which it is, and the unit of its numbers where it names one. */
export type Heading = { readonly text: string; readonly name: string | null; readonly unit: string | null };

/** Cells as they were copied, blank rows left out; `headings` where the first row names the columns. */
export type PastedCells = { readonly headings: readonly Heading[] | null; readonly rows: readonly PastedRow[] };

/** A comma between the digits of one number, with nothing else in the line: 12,5 or −12,5 mm. */
const ONE_NUMBER = /^\s*[+\-\u2212]?\d*,\d+\s*\p{L}*\s*$/u;

/**
 * What parts the cells: spreadsheets copy tabs; files part by semicolons or commas. A column of numbers with a decimal
 * comma and nothing else is one column.
 */
function delimiterOf(text: string): string {
  if (text.includes('\t')) return '\t';
  if (text.includes(';')) return ';';
  const lines = text.split('\n').filter((line) => line.trim() !== '');
  return text.includes(',') && !lines.every((line) => ONE_NUMBER.test(line)) ? ',' : '\t';
}

/** Other names of a column, in lower case; the empty ones are known and carry nothing to put into the table. */
const NAMES: Readonly<Record<string, string>> = {
  x: 'x',
  y: 'y',
  z: 'z',
  r: 'radius',
  rad: 'radius',
  radius: 'radius',
  'bend radius': 'radius',
  'centreline radius': 'radius',
  'centerline radius': 'radius',
  clr: 'radius',
  '#': '',
  no: '',
  'no.': '',
  nr: '',
  'nr.': '',
  number: '',
  point: '',
  pt: '',
};

/** Units of a heading as a length is written with them. */
const UNITS: Readonly<Record<string, string>> = {
  mm: 'mm',
  cm: 'cm',
  m: 'm',
  in: 'in',
  'in.': 'in',
  inch: 'in',
  inches: 'in',
  '"': 'in',
  ft: 'ft',
  feet: 'ft',
};

/** A name with a unit behind it: 'x mm', 'x (in)', 'x [mm]', 'x, mm', 'x / mm', 'x_mm'. */
const WITH_UNIT = /^(.+?)(?:\s+|\s*[([,/_]\s*)(mm|cm|m|in\.?|inch|inches|ft|feet|")\s*[)\]]?$/;

function headingOf(text: string): Heading {
  const plain = text.toLowerCase().replace(/\s+/g, ' ').trim();
  const [, before = plain, unit = ''] = WITH_UNIT.exec(plain) ?? [];
  const name = NAMES[before] ?? null;
  return name === null ? { text, name, unit: null } : { text, name, unit: UNITS[unit] ?? null };
}

/** The headings of a first row: one of them at least names a column, and none is a length. */
function headingsOf(cells: readonly string[]): readonly Heading[] | null {
  const headings = cells.map(headingOf);
  const names = headings.some(({ name }) => name !== null && name !== '');
  return names && !cells.some((cell) => parseLength(cell, 'mm').ok) ? headings : null;
}

/** Reads what was copied from a spreadsheet or a file: tabs, semicolons or commas, and quoted cells. */
export function cellsOf(pasted: string): PastedCells {
  const text = pasted.replace(/\r\n?/g, '\n');
  const parsed = Papa.parse<string[]>(text, { delimiter: delimiterOf(text), newline: '\n', skipEmptyLines: false });
  const rows = parsed.data
    .map((cells, index) => ({ number: index + 1, cells: withoutEmptyEnd(cells.map((cell) => cell.trim())) }))
    .filter(({ cells }) => cells.length > 0);
  const headings = headingsOf(rows[0]?.cells ?? []);
  return { headings, rows: withClearCommas(headings === null ? rows : rows.slice(1)) };
}

function withoutEmptyEnd(cells: readonly string[]): readonly string[] {
  const last = cells.findLastIndex((cell) => cell !== '');
  return cells.slice(0, last + 1);
}
