import { cameBack } from './en/came-back.ts';
import { checks } from './en/checks.ts';
import { choices } from './en/choices.ts';
import { comparing } from './en/comparing.ts';
import { exportWords } from './en/exports.ts';
import { finishWords } from './en/finish.ts';
import { legWords } from './en/legs.ts';
import { making } from './en/making.ts';
import { page } from './en/page.ts';
import { quoteWords } from './en/quote.ts';
import { reading } from './en/reading.ts';
import { returned } from './en/returned.ts';
import { roomWords } from './en/room.ts';
import { sheets } from './en/sheets.ts';
import { quoteSheets } from './en/sheets-quote.ts';
import { siteSheets } from './en/sheets-site.ts';
import { siteWords } from './en/site.ts';
import { slips } from './en/slips.ts';
import { space } from './en/space.ts';
import { shop } from './en/shop.ts';
import { stages } from './en/stages.ts';
import { stockWords } from './en/stock.ts';
import { tables } from './en/tables.ts';
import { ways } from './en/ways.ts';
import { weldWords } from './en/weld.ts';

const catalogue = {
  ...making,
  ...reading,
  ...page,
  ...stages,
  ...cameBack,
  ...choices,
  ...checks,
  ...comparing,
  ...returned,
  ...sheets,
  ...slips,
  ...space,
  ...tables,
  ...exportWords,
  ...shop,
  ...ways,
  ...weldWords,
  ...finishWords,
  ...roomWords,
  ...siteWords,
  ...legWords,
  ...siteSheets,
  ...stockWords,
  ...quoteWords,
  ...quoteSheets,
} as const;

type Catalogue = typeof catalogue;
export type WordKey = keyof Catalogue;

type Placeholders<Text extends string> = Text extends `${string}{${infer Name}}${infer Rest}`
  ? Name | Placeholders<Rest>
  : never;

type Data<Key extends WordKey> = Readonly<Record<Placeholders<Catalogue[Key]>, string | number>>;
type DataOf<Key extends WordKey> = Placeholders<Catalogue[Key]> extends never ? [] : [data: Data<Key>];

/** Fills {placeholders}; one without data stays as it is, so that it is seen. */
export function fill(text: string, data: Readonly<Record<string, string | number>>): string {
  return text.replace(/\{(\w+)\}/g, (whole, name: string) => {
    const value = data[name];
    return value === undefined ? whole : String(value);
  });
}

/** The words of a key. A missing key or a missing placeholder is an error of the type check. */
export function words<Key extends WordKey>(key: Key, ...data: DataOf<Key>): string {
  const text: string = catalogue[key];
  const [values] = data;
  return values === undefined ? text : fill(text, values);
}

export const hasWords = (key: string): key is WordKey => Object.hasOwn(catalogue, key);

/**
 * The words of a key that only a plan knows (`check.<key>`, `way.<key>`): where the catalogue has none, the key's
 * own words, which are the trade's too ('cut-length' reads 'cut length').
 */
export function wordsOf(area: string, name: string, data: Readonly<Record<string, string | number>> = {}): string {
  const key = `${area}.${name}`;
  return hasWords(key) ? fill(catalogue[key], data) : name.replaceAll('-', ' ');
}
