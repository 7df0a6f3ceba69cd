import { words } from '../language/words.ts';
import type { Finding } from '../plan/finding.ts';
import type { PurgePlan } from '../plan/purge.ts';
import { shortCautions } from './cautions.ts';
import type { Flow } from './flow.ts';
import { COLOURS, HEIGHTS, STROKES, box, moved } from './ink.ts';
import { ordinary, topsOf, type Top } from './set-up-top.ts';
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

/** Rows of a log on the page that follows, where the picture and the joints leave no room for it. */
const LONG_LOG = 12;

/** A way of laying the page out: its head, and the log beside the cautions with so many rows (0: without a log). */
type Way = { readonly drawn: Top; readonly log: Block; readonly rows: number };

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
  const follows = (key: 'sheet.notes-follow' | 'sheet.log-follows'): Block =>
    paragraph(words(key), width, { height: HEIGHTS.small, weight: 600 });
  const pointer = follows('sheet.notes-follow');
  const withRows = (tried: readonly number[]): Way[] =>
    tops.flatMap((drawn) => tried.map((rows) => ({ drawn, log: below(rows), rows })));
  const stopped = setUp.stops.length > 0;
  const ways = withRows(stopped ? STOPPED : ROWS_TRIED);
  const fitting = (room: number, sizes: readonly Top['size'][], of: readonly Way[] = ways): Way | undefined =>
    of.find(({ drawn, log }) => sizes.includes(drawn.size) && fixed + drawn.height + log.height <= room);
  // notes go over to a page of their own before the picture becomes fair, and the log before it becomes small
  const here = flow.left - noted;
  const over = flow.left - pointer.height;
  const chosen =
    fitting(here, ['large']) ??
    fitting(over, ['large']) ??
    fitting(here, ['fair']) ??
    fitting(over, ['fair']) ??
    fitting(over, ['large'], withRows([0])) ??
    fitting(here, ['fair', 'small']) ??
    fitting(over, ['fair', 'small']);
  const logAfter = !stopped && chosen?.rows === 0;
  const together =
    chosen !== undefined && !logAfter && fixed + noted + chosen.drawn.height + chosen.log.height <= flow.left;
  const last = stacked([space(2), chosen?.log ?? below(ROWS_TRIED[0])]);
  for (const block of above) flow.add(block);
  flow.add((chosen?.drawn ?? ordinary(tops)).draw());
  flow.add(space(1));
  flow.addTable(joints, [], true);
  flow.add(stacked([space(2), signs, space(1)]));
  if (chosen !== undefined && !together) flow.add(stacked([logAfter ? follows('sheet.log-follows') : pointer, last]));
  if (logAfter) flow.runOver();
  for (const block of notes) flow.add(block);
  if (logAfter) flow.add(stacked([space(2), weldLog(LONG_LOG, width)]));
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
