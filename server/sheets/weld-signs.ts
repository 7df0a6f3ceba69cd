import { words } from '../language/words.ts';
import type { Weld } from '../plan/welding.ts';
import { HEIGHTS } from './ink.ts';
import { BARE, CLOCK, quarterClock } from './quarter-clock.ts';
import type { SheetInput } from './sheet-input.ts';
import { beside, paragraph, space, stacked, type Block } from './text-block.ts';
import { lengthUnit } from './weld-table.ts';
import { weldSymbol } from './weld-symbol.ts';

/** Air between two drawings [mm]. */
const AIR = 5;

/** Welds that are alike in what a drawing of them says. */
export function alike(welds: readonly Weld[], what: (weld: Weld) => unknown): Weld[][] {
  const kinds = new Map<string, Weld[]>();
  for (const weld of welds) {
    const key = JSON.stringify(what(weld));
    kinds.set(key, [...(kinds.get(key) ?? []), weld]);
  }
  return [...kinds.values()];
}

export const namesOf = (welds: readonly Weld[]): string => welds.map(({ name }) => name).join(', ');

/** A drawing over what it holds for. */
type Drawing = { readonly block: Block; readonly width: number };

function symbolOf(welds: readonly Weld[], { job }: SheetInput): Drawing[] {
  const [first] = welds;
  if (first === undefined) return [];
  const { width, ...symbol } = weldSymbol(first.symbol, job);
  const said = words('sheet.symbol-for', { welds: namesOf(welds) });
  const room = Math.max(width, 30);
  return [{ block: stacked([symbol, paragraph(said, room, { height: HEIGHTS.small, weight: 600 })]), width: room }];
}

function clockOf(welds: readonly Weld[], index: number): Drawing[] {
  const [first] = welds;
  if (first === undefined) return [];
  const width = index === 0 ? CLOCK.width : BARE;
  const said = words('sheet.clock-for', { welds: namesOf(welds) });
  return [
    {
      block: stacked([
        quarterClock(first.tacks, index === 0),
        paragraph(said, width, { height: HEIGHTS.small, weight: 600 }),
      ]),
      width,
    },
  ];
}

/** Drawings beside one another, in as many rows as they need. */
function rowsOf(drawings: readonly Drawing[], width: number): Block[] {
  const rows: { left: number; block: Block }[][] = [];
  let left = Infinity;
  for (const { block, width: own } of drawings) {
    if (left + own > width) {
      rows.push([]);
      left = 0;
    }
    rows.at(-1)?.push({ left, block });
    left += own + AIR;
  }
  return rows.map(beside);
}

/**
 * The symbol of each different kind of weld, and the tube's quarters with its tacks for each different set of them, with
 * the names of the welds that they hold for.
 */
export function weldSigns(welds: readonly Weld[], input: SheetInput, width: number): Block {
  if (welds.length === 0) return space(0);
  const symbols = alike(welds, ({ symbol }) => symbol).flatMap((kind) => symbolOf(kind, input));
  const clocks = alike(welds, ({ tacks }) => tacks.angles).flatMap(clockOf);
  const how = words(input.job.welding.symbols === 'iso-2553' ? 'sheet.symbols-iso' : 'sheet.symbols-aws', {
    unit: lengthUnit(input.job),
  });
  return stacked([
    ...rowsOf([...symbols, ...clocks], width),
    paragraph(`${how} ${words('sheet.quarters-how')}`, width, { height: HEIGHTS.small }),
  ]);
}
