import { words } from '../language/words.ts';
import type { Finding } from '../plan/finding.ts';
import type { PurgePlan } from '../plan/purge.ts';
import { shortCautions } from './cautions.ts';
import type { Flow } from './flow.ts';
import { COLOURS, HEIGHTS, STROKES, box, moved } from './ink.ts';
import { ordinary, topsOf } from './set-up-top.ts';
import type { SetUp } from './set-up.ts';
import { findingBlocks, findingWords, type SheetInput } from './sheet-input.ts';
import { tableHeight } from './table.ts';
import { beside, paragraph, space, stacked, type Block } from './text-block.ts';
import { weldLog } from './weld-log.ts';
import { namesOf, weldSigns } from './weld-signs.ts';
import { weldTable } from './weld-table.ts';

/** Width of the cautions beside the log, and the air between [mm]. */
const CAUTIONS = 90;
const AIR = 4;
const INSET = 2.5;

/** Rows of the log that are tried with each picture until everything stands on one page; what is not welded needs none. */
const ROWS_TRIED = [6, 5, 4] as const;
const STOPPED = [...ROWS_TRIED, 0] as const;

/** One page for one set-up, to be taped up where it is welded; what does not fit follows on a page that says so. */
export function setUpPage(flow: Flow, setUp: SetUp, purge: PurgePlan, input: SheetInput, head: Block): void {
  const { number, welds, told } = setUp;
  const { width } = flow;
  const name = words('sheet.set-up', { number });
  flow.begin(name, words('sheet.set-up-continued', { number }));
  const above = [head, ...stopFrame(setUp.stops, input, width)];
  const joints = weldTable(welds, input, width);
  const signs = weldSigns(welds, input, width);
  const notes = findingBlocks(told, input.job, width);
  const below = (rows: number): Block =>
    rows === 0
      ? shortCautions(width)
      : beside([
          { left: 0, block: weldLog(rows, width - CAUTIONS - AIR) },
          { left: width - CAUTIONS, block: shortCautions(CAUTIONS) },
        ]);
  const tops = topsOf(setUp, purge, input, width);
  const fixed = stacked([...above, signs]).height + tableHeight(joints) + 6;
  const noted = stacked(notes).height;
  const pointer = paragraph(words('sheet.notes-follow'), width, { height: HEIGHTS.small, weight: 600 });
  const ways = tops.flatMap((drawn) =>
    (setUp.stops.length > 0 ? STOPPED : ROWS_TRIED).map((rows) => ({ drawn, log: below(rows) })),
  );
  const fitting = (room: number, large: boolean): (typeof ways)[number] | undefined =>
    ways.find(({ drawn, log }) => (drawn.large || !large) && fixed + drawn.height + log.height <= room);
  // notes go over to a page of their own before the picture becomes small
  const whole = fitting(flow.left - noted, true);
  const over = flow.left - pointer.height;
  const chosen = whole ?? fitting(over, true) ?? fitting(flow.left - noted, false) ?? fitting(over, false);
  const together = chosen !== undefined && fixed + noted + chosen.drawn.height + chosen.log.height <= flow.left;
  const last = stacked([space(2), chosen?.log ?? below(ROWS_TRIED[0])]);
  for (const block of above) flow.add(block);
  flow.add((chosen?.drawn ?? ordinary(tops)).draw());
  flow.add(space(1));
  flow.addTable(joints, [], true);
  flow.add(stacked([space(2), signs, space(1)]));
  if (chosen !== undefined && !together) flow.add(stacked([pointer, last]));
  for (const block of notes) flow.add(block);
  if (chosen === undefined || together) flow.add(last);
}

/** The head of a set-up's page: which it is of how many, and its welds. */
export const setUpTitle = ({ number, welds }: SetUp, of: number): string =>
  welds.length === 0
    ? words('sheet.set-up-bare', { number, of })
    : words(welds.length === 1 ? 'sheet.set-up-title-one' : 'sheet.set-up-title', {
        number,
        of,
        welds: namesOf(welds),
      });

/** What keeps a set-up from being welded, in a frame above everything else. */
export function stopFrame(stops: readonly Finding[], input: SheetInput, width: number): Block[] {
  if (stops.length === 0) return [];
  const text = stacked(
    stops.map((stop) => paragraph(findingWords(stop, input.job), width - 2 * INSET, { height: 2, weight: 600 })),
  );
  const height = text.height + 2 * INSET;
  return [
    {
      height: height + 2,
      items: [
        box('frame', { left: 0, top: 0, width, height }, { ...STROKES.edge, width: 1, colour: COLOURS.red }),
        ...text.items.map((item) => moved(item, [INSET, INSET])),
      ],
    },
  ];
}
