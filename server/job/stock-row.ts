import { Type, type Static } from 'typebox';
import { describeProblem } from './problem-words.ts';
import type { JobProblem } from './problem.ts';
import { LaidBar, StockBar, StockLayout } from './stock.ts';
import { problemsOf } from './validate.ts';

/** A row of the shop's stock, as its latest save or taking left it (ISO 8601). */
export type StockRow = {
  readonly id: string;
  readonly revision: number;
  readonly savedAt: string;
  readonly document: StockBar;
};

/** A job that bars were taken for, by the name that its pieces bear in the layout. */
const JobTaken = Type.Object({ id: Type.String(), name: Type.String() });

/** What was taken of the stock at once. Numbered from 1 in the shop's book, and never changed but by taking it back. */
export const Taking = Type.Object(
  {
    number: Type.Integer(),
    takenAt: Type.String(),
    jobId: Type.Union([Type.String(), Type.Null()]),
    /** Every job, where the bars are cut for several at once: each piece then bears the name of its own. */
    together: Type.Array(JobTaken),
    title: Type.String(),
    layout: StockLayout,
    /** How many bars of each row, and what they were: `document` counts these alone. */
    taken: Type.Array(
      Type.Object({ id: Type.String(), name: Type.String(), count: Type.Integer(), document: StockBar }),
    ),
    /** Offcuts that came back as remnants. */
    returned: Type.Array(Type.Object({ id: Type.String(), document: StockBar })),
    undoneAt: Type.Union([Type.String(), Type.Null()]),
  },
  { title: 'bars taken' },
);
export type Taking = Static<typeof Taking>;

/** A taking as the list has it: its bars without what is cut from them. */
export const ListedTaking = Type.Object(
  {
    ...Taking.properties,
    layout: Type.Object({ ...StockLayout.properties, bars: Type.Array(Type.Omit(LaidBar, ['pieces'])) }),
  },
  { title: 'bars taken, without their pieces' },
);
export type ListedTaking = Static<typeof ListedTaking>;

export type ParsedBar =
  { readonly ok: true; readonly document: StockBar } | { readonly ok: false; readonly problems: readonly JobProblem[] };

/** True where nothing was refused; the walk over the schema is what makes the value a bar. */
const isBar = (_document: unknown, problems: readonly JobProblem[]): _document is StockBar => problems.length === 0;

/** A tube has a bore: its wall is less than half of its outside diameter. */
function boreProblems({ outsideDiameter, wall }: StockBar): JobProblem[] {
  const high = outsideDiameter / 2;
  if (wall < high) return [];
  const allowed = { low: 0, lowOpen: true, high, highOpen: true, unit: 'mm' };
  return [
    describeProblem({ code: 'above-range', field: '/wall', title: 'wall', value: wall, wanted: 'number', allowed }),
  ];
}

/** Any value at all to a bar in stock, or to what is wrong with it. Never throws. */
export function parseStockBar(input: unknown): ParsedBar {
  const problems = problemsOf(StockBar, input);
  if (!isBar(input, problems)) return { ok: false, problems };
  const thick = boreProblems(input);
  return thick.length === 0 ? { ok: true, document: input } : { ok: false, problems: thick };
}

export type ParsedLayout =
  | { readonly ok: true; readonly layout: StockLayout }
  | { readonly ok: false; readonly problems: readonly JobProblem[] };

const isLayout = (_document: unknown, problems: readonly JobProblem[]): _document is StockLayout =>
  problems.length === 0;

/** Any value at all to a layout of bars, or to what is wrong with it. Never throws. */
export function parseStockLayout(input: unknown): ParsedLayout {
  const problems = problemsOf(StockLayout, input);
  return isLayout(input, problems) ? { ok: true, layout: input } : { ok: false, problems };
}
