import { words } from '../language/words.ts';
import type { Procedure, Weld } from '../plan/welding.ts';
import { Flow } from './flow.ts';
import { widthOf } from './fonts.ts';
import { COLOURS, HEIGHTS, STROKES, line, write, type Item } from './ink.ts';
import { jointSketch } from './joint-sketch.ts';
import type { Drafts } from './page.ts';
import { formTitle, procedureRows, type ProcedureRow } from './procedure-rows.ts';
import type { SheetInput } from './sheet-input.ts';
import { signatureLine } from './sign.ts';
import { beside, lineHeight, paragraph, space, stacked, wrap, type Block } from './text-block.ts';
import { alike, namesOf } from './weld-signs.ts';
import { weldSymbol } from './weld-symbol.ts';

/** Width of the headings, that of one on the right half, height of what stands beside them, and air round it [mm]. */
const HEADS = 42;
const RIGHT = 34;
const HEIGHT = 2;
const PADDING = 0.35;

/** A page for each form of weld that occurs: what would be proved, with lines for what nobody knows yet. A draft only. */
export function procedureSheet(input: SheetInput): Drafts {
  const { plan, job } = input;
  const { welding } = plan;
  if (plan.frame === null) return { ok: false, reason: 'frame-not-possible' };
  if (welding === null || welding.welds.length === 0) return { ok: false, reason: 'nothing-to-weld' };
  const flow = new Flow(job.print.paper, 'upright');
  for (const procedure of welding.procedures) {
    const welds = welding.welds.filter(({ form }) => form === procedure.form);
    if (welds.length > 0) addProcedure(flow, procedure, welds, input);
  }
  return { ok: true, drafts: flow.drafts() };
}

function addProcedure(flow: Flow, procedure: Procedure, welds: readonly Weld[], input: SheetInput): void {
  const { width } = flow;
  const title = formTitle(procedure);
  flow.begin(title, words('procedure.continued', { form: title }));
  flow.add(
    stacked([
      paragraph(words('procedure.draft'), width, { height: HEIGHTS.big, weight: 600 }),
      paragraph(words('procedure.draft-words'), width, { height: 2, weight: 600 }),
      space(1),
      paragraph(words('procedure.title', { form: title, welds: namesOf(welds) }), width, {
        height: HEIGHTS.head,
        weight: 600,
      }),
      paragraph(words('procedure.headings'), width, { height: HEIGHTS.small }),
      space(1),
    ]),
  );
  for (const pair of inPairs(procedureRows(procedure, welds, input), width)) {
    flow.add(rowOf(pair, width));
    // the standard has the joint's design between the process and the position
    if (pair.some(({ head }) => head === words('procedure.process'))) flow.add(jointDesign(welds, input, width));
  }
  flow.add(
    stacked([
      space(2),
      paragraph(words('procedure.test-record'), width, { weight: 600 }),
      signatureLine([words('procedure.test-piece'), words('procedure.examined'), words('procedure.result')], width),
      signatureLine(
        [words('procedure.prepared-by'), words('procedure.checked-by'), words('procedure.approved-by')],
        width,
      ),
    ]),
  );
}

/** Section and symbol of each kind of joint that differs. */
function jointDesign(welds: readonly Weld[], { job }: SheetInput, width: number): Block {
  const kinds = alike(welds, ({ symbol, gap, bevel, land }) => [symbol, gap.value, bevel?.value, land?.value]);
  const rows = kinds.slice(0, 2).flatMap((kind): Block[] => {
    const [first] = kind;
    if (first === undefined) return [];
    const plate = job.fixing.find((point) => point.name === first.onto);
    const thick = plate?.fixing === 'pad' ? (plate.plate?.thickness ?? null) : null;
    return [
      beside([
        { left: HEADS, block: jointSketch(first, job, thick) },
        { left: HEADS + 76, block: stacked([space(4), weldSymbol(first.symbol, job)]) },
        ...(kinds.length === 1
          ? []
          : [{ left: 0, block: stacked([space(8), paragraph(namesOf(kind), HEADS - 2, { weight: 600 })]) }]),
      ]),
    ];
  });
  const head: Block = {
    height: 5,
    items: [write([0, 4], words('procedure.joint-design'), { height: HEIGHT, weight: 600 })],
  };
  const drawn = stacked(rows);
  return {
    height: drawn.height + 1,
    items: [...head.items, ...drawn.items, rule(drawn.height + 1, width)],
    scales: drawn.scales ?? [],
  };
}

const rule = (y: number, width: number): Item =>
  line(
    'table',
    [
      [0, y],
      [width, y],
    ],
    STROKES.thin,
  );

/** Short rows stand two beside each other, in their order. */
function inPairs(rows: readonly ProcedureRow[], width: number): ProcedureRow[][] {
  const pairs: ProcedureRow[][] = [];
  for (const row of rows) {
    const last = pairs.at(-1);
    const [before] = last?.length === 1 ? last : [];
    const room = width / 2 - RIGHT;
    const both = before !== undefined && isShort(before, width / 2 - HEADS) && isShort(row, room);
    if (both && before.head !== words('procedure.process')) last?.push(row);
    else pairs.push([row]);
  }
  return pairs;
}

const isShort = ({ said, open }: ProcedureRow, room: number): boolean =>
  open === undefined && widthOf(said, HEIGHT, 400) < room - 2;

/** One heading, or two beside each other, over a rule. */
function rowOf(pair: readonly ProcedureRow[], width: number): Block {
  const half = width / 2;
  const block =
    pair.length === 1
      ? stacked(pair.map((row) => cellOf(row, HEADS, width)))
      : beside(
          pair.map((row, index) => ({
            left: index * half,
            block: cellOf(row, index === 0 ? HEADS : RIGHT, half),
          })),
        );
  return { height: block.height, items: [...block.items, rule(block.height, width)] };
}

/** A heading with its words, and a line to write on behind the name of what is missing. */
function cellOf({ head, said, open }: ProcedureRow, heads: number, width: number): Block {
  const room = width - heads;
  const told = wrap(said, room, { height: HEIGHT, weight: 400 });
  const names = wrap(head, heads - 2, { height: HEIGHT, weight: 600 });
  const pitch = lineHeight(HEIGHT);
  const base = (index: number): number => PADDING + pitch * index + 1.4 * HEIGHT;
  const items: Item[] = [
    ...names.map((text, index) => write([0, base(index)], text, { height: HEIGHT, weight: 600 })),
    ...told.map((text, index) => write([heads, base(index)], text, { height: HEIGHT })),
  ];
  let lines = told.length;
  if (open !== undefined) {
    const name = write([heads, base(lines) + 0.8], open, { height: HEIGHTS.small, colour: COLOURS.grey });
    const y = base(lines) + 1.2;
    const from = heads + name.width + (open === '' ? 0 : 2);
    items.push(
      ...(open === '' ? [] : [name]),
      line(
        'log',
        [
          [from, y],
          [width, y],
        ],
        STROKES.narrow,
      ),
    );
    lines += 1.4;
  }
  return { height: Math.max(1, names.length, lines) * pitch + 2 * PADDING, items };
}
